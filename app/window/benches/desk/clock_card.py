"""Day and hour: a clock that cannot be right is said here, and put right by a person's word."""

from datetime import datetime
from random import Random

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.moments import board_words
from app.lookups.clock import ClockSeen, WaitingLot, clock_seen
from app.window.bench import Bench
from app.window.benches.desk.desk_words import how_many, long_moment
from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words
from app.work.dyeing import name_lot
from app.work.studio import confirm_day


class ClockCard(Card):
    """Shown only while the clock is behind the last entry, or a lot waits for its code."""

    def __init__(self) -> None:
        super().__init__("Day and hour", in_hand=True)
        self.said = Words(bold=True)
        self.confirm_key = KeyButton("The day and hour here are right")
        self.name_keys: dict[int, KeyButton] = {}
        self.waiting = Words(ink=SECOND)
        self._lots = QVBoxLayout()
        self._lots.setSpacing(Gap.HAIR)
        self.add(self.said, Actions(self.confirm_key), self.waiting, self._lots)
        self.hide()

    def show_clock(self, seen: ClockSeen, now: datetime) -> None:
        """What this computer's clock says, and which lots wait."""
        behind = seen.behind(now)
        self.said.setText(
            f"This computer says {board_words(now)}, and the last entry was written "
            f"{long_moment(seen.written)}: no lot gets a code until that is cleared. Set the "
            "computer's clock; if it is right as it is, say so." if behind
            else f"This computer says {board_words(now)}: the day is sure again.")
        self.confirm_key.setVisible(behind)
        self.waiting.setText(
            f"{how_many(len(seen.lots), 'lot')} without a code yet. Each gets one of the week "
            "its bath is put down for; enter it with Written late, F12, if that was another."
            if seen.lots else "")
        self.waiting.setVisible(bool(seen.lots))
        self._show_lots(seen, behind)
        self.setVisible(behind or bool(seen.lots))

    def _show_lots(self, seen: ClockSeen, behind: bool) -> None:
        take_down(self._lots)
        self.name_keys = {}
        for lot in seen.lots:
            self._lots.addWidget(self._line(lot, behind))

    def _line(self, lot: WaitingLot, behind: bool) -> QWidget:
        key = KeyButton("Give it its code")
        key.setAccessibleName(f"give {lot.colourway} its code")
        if behind:
            key.refuse("The day is not sure yet.")
        self.name_keys[lot.lot] = key
        line = QWidget()
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        row.addWidget(Words(f"{lot.colourway}, {lot.base}: {how_many(lot.count)}, "
                            f"{long_moment(lot.happened)}"), 1)
        row.addWidget(key)
        return line


class Clock(QObject):
    """What the card asks of the book, and does in it."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.card = bench, ClockCard()
        self.card.confirm_key.clicked.connect(lambda: bench.do(confirm_day, happened=None))

    def look_again(self) -> None:
        """The clock as it is now."""
        self._bench.ask(self._show, clock_seen)

    def _show(self, seen: ClockSeen) -> None:
        self.card.show_clock(seen, self._bench.around.session.book.clock())
        for lot in seen.lots:
            self.card.name_keys[lot.lot].clicked.connect(
                lambda _=False, lot=lot: self._name(lot))

    def _name(self, lot: WaitingLot) -> None:
        then = self._bench.around.session.late or lot.happened
        self._bench.do(name_lot, lot.lot, Random(), happened=then)
