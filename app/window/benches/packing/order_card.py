"""The order in hand: who it is for, its lines, and the keys that send it."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import day_words
from app.lookups.offers import Offer
from app.lookups.orders import OrderNow
from app.window.benches.packing.asked_above import AskedAbove
from app.window.benches.packing.line_row import LineRow
from app.window.benches.packing.packing_words import NOBODY, skeins
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import BigNumber


class OrderCard(AskedAbove):
    """`sent` when the parcel leaves and the rest stays open; `sent_whole` calls the rest off."""

    sent = Signal()
    called_off = Signal()
    left = Signal()

    def __init__(self) -> None:
        self.send = KeyButton("", "Enter", strong=True)
        self.part = KeyButton("", "F6")
        self.off = KeyButton("", "F7")
        self.leave = KeyButton("Leave it", "F8")
        super().__init__(Actions(self.send, self.part, self.off, self.leave))
        self.order: OrderNow | None = None
        self.offered: Mapping[int, Sequence[Offer]] = {}
        self.rows: list[LineRow] = []
        self.number = BigNumber(size=Size.HUGE)
        for key, signal in ((self.send, self.sent), (self.part, self.sent),
                            (self.off, self.called_off), (self.leave, self.left)):
            key.clicked.connect(signal)
        self._lay_out()

    def show_order(self, order: OrderNow, offered: Mapping[int, Sequence[Offer]]) -> None:
        """Show how the order stands now."""
        self.order, self.offered = order, offered
        who = f"for {order.name or NOBODY} · of {day_words(order.placed)}"
        if order.open:
            self.number.show_number(str(order.open), f"to take for order {order.number}",
                                    f"{who} · {order.filled} of {order.wanted} taken")
        elif order.taken:
            self.number.show_number(str(order.taken), f"taken: order {order.number} may leave",
                                    who)
        else:
            self.number.show_number(str(order.filled), f"sent: order {order.number} is done", who)
        take_down(self._lines)
        self.rows = [LineRow(line, offered.get(line.id, ())) for line in order.lines]
        for row in self.rows:
            self._lines.addWidget(row)
        self._show_keys(order)

    def _show_keys(self, order: OrderNow) -> None:
        still, ready = order.open, order.taken
        self.send.say(f"Send the parcel: {skeins(ready)}" if ready else "Send the parcel")
        if ready and not still:
            self.send.allow()
        else:
            self.send.refuse(f"{still} {'is' if still == 1 else 'are'} still to be taken."
                             if still else "Nothing is in it.")
        self.part.say(f"Send {ready}, keep {still} open")
        self.part.setVisible(bool(ready and still))
        self.off.say(f"Send {ready}, call {still} off" if ready else f"Call {still} off")
        self.off.setVisible(bool(still))

    def _lay_out(self) -> None:
        lines = QWidget()
        self._lines = QVBoxLayout(lines)
        self._lines.setContentsMargins(0, Gap.SMALL, 0, Gap.SMALL)
        self._lines.setSpacing(Gap.PART)
        self.card.add(self.number, lines)
