"""Weighing at the tag table: whose weight it is, what it is worth, and what is done about it."""

from collections.abc import Callable
from decimal import Decimal

from PySide6.QtCore import QElapsedTimer, QObject

from app.calculations.codes import shown
from app.calculations.put_up_weight import CheckedWeight
from app.calculations.units import grams, milligrams
from app.lookups.put_up_weights import ToWeigh, Weighed, to_weigh, weighed
from app.problems import Refused
from app.scanning.balance_ear import Heard
from app.scanning.balance_lines import NoWeight, read_line
from app.window.bench import Bench
from app.window.benches.tagging.weigh_card import WeighCard
from app.window.benches.tagging.weight_words import LIGHT, tenths
from app.work.moving import call_second
from app.work.put_up_weights import read_humidity, weigh_put_up, weigh_reference

_NO_TAG = "One of the pile, without a tag yet"
_BOUNCE_MS = 1000  # the same weight, or the same to be sold, so soon is one press come twice
_SCAN_IT = Refused("Which skein lies on the balance is not known; nothing was saved.",
                   "Scan its tag, then take the weight.")


class AtBalance(QObject):
    """A weight is of the skein whose tag was scanned before it, else of one of the pile.

    The tag that is scanned after a weight of the pile is the tag of the skein that was weighed.
    `sold_as` gets the row of a weight, its skein and whole grams.
    """

    def __init__(self, bench: Bench, sold_as: Callable[[int, int, int], None]) -> None:
        super().__init__(bench)
        self._bench, self._sold_as = bench, sold_as
        self.card: WeighCard | None = None
        self._pile, self._next, self._mark = 0, 0, ""
        self._left = False
        self._last: Weighed | None = None
        self._of, self._told = 0, ""
        self._now: ToWeigh | None = None
        self._taken: tuple[int, Decimal] | None = None
        self._since = QElapsedTimer()
        wire = bench.around.balance
        if wire is not None:
            wire.heard.connect(self._hear)

    def begin(self, pile: int, skein: int | None, mark: str) -> WeighCard:
        """A card for the next weight: of this skein if its tag was scanned last."""
        card = self.card = WeighCard()
        self._pile, self._next, self._mark = pile, skein or 0, mark if skein else ""
        self._last = None
        card.weighed.connect(self._take)
        card.room.connect(self._keep_room)
        card.sell.clicked.connect(self._sell)
        card.second.clicked.connect(self.second)
        wire = self._bench.around.balance
        if wire is not None:
            wire.listen()
            card.show_wire(wire.now, wired=wire.is_wired)
        self.look()
        return card

    def end(self) -> None:
        """The card goes."""
        self.card = None

    def settled(self) -> None:
        """What was weighed last is sold as what it holds: the next may come."""
        self._last = None
        self.look()

    def left(self, count: int) -> None:
        """So many of the pile wear no tag yet."""
        self._left = count > 0
        self._say_whose()

    def tag(self, skein: int, mark: str) -> None:
        """A tag was scanned: of the skein that was just weighed, or of the one to be weighed."""
        if self._last is not None and self._of == self._pile:
            self._of, self._told = skein, shown(mark)
        else:
            self._last, self._next, self._mark = None, skein, mark
        self._show_weight()
        self.look()

    def look(self) -> None:
        """Look again at the room and the lot."""
        if self.card is not None:
            self._bench.ask(self._show, to_weigh, self._next or self._pile,
                            self._bench.around.session.now())

    def weigh(self, text: str) -> bool:
        """A balance that types sent a weight; False while none is wanted."""
        if self.card is None:
            return False
        line = read_line(text)
        if isinstance(line, NoWeight):
            self._bench.around.trouble(Refused(f"{line.sentence} Nothing was saved.",
                                               "Weigh it again, or type the weight."))
        else:
            self.card.field.line.setText(line.figures)
            self._take()
        return True

    def write_figure(self, figure: str) -> bool:
        """A figure begins the weight."""
        if self.card is None or not self.card.isVisible():
            return False
        self.card.field.line.setFocus()
        self.card.field.line.insert(figure)
        return True

    def _hear(self, heard: Heard) -> None:
        wire = self._bench.around.balance
        if self.card is None or wire is None or not self.card.isVisible():
            return
        self.card.show_wire(heard, wired=wire.is_wired)
        if heard.printed is not None and heard.printed.g > 0:
            self.weigh(f"{heard.printed.figures} g")

    def _take(self) -> None:
        """What is written, else what stands on the wire."""
        card, yarn = self.card, self._yarn()
        if card is None:
            return
        if yarn is None:
            self._bench.around.trouble(_SCAN_IT)
            return
        wire = self._bench.around.balance
        live = wire.now if wire is not None and wire.is_wired else Heard()
        if not card.field.line.text().strip() and live.weight is not None:
            if not live.stands or live.weight.g <= 0:
                self._bench.around.trouble(Refused("The weight still moves; nothing was taken.",
                                                   "Wait until it stands still, or type it."))
                return
            card.field.line.setText(live.weight.figures)
        weight = card.field.value()
        if weight is not None:
            self._save(yarn, weight)

    def _save(self, yarn: int, weight: Decimal) -> None:
        if self._bounced((yarn, weight)):
            return
        told = shown(self._mark) if self._next else ""

        def show(kept: Weighed) -> None:
            self._last, self._of, self._told, self._next = kept, yarn, told, 0
            if self.card is not None:
                self.card.field.clear()
            self.look()

        self._bench.do(weigh_put_up, yarn, milligrams(weight),
                       then=lambda done: self._bench.ask(show, weighed, done.answer))

    def _bounced(self, asked: tuple[int, Decimal]) -> bool:
        """Whether the same was asked for a moment ago."""
        again = self._taken == asked and not self._since.hasExpired(_BOUNCE_MS)
        self._taken = asked
        self._since.start()
        return again

    def _yarn(self) -> int | None:
        return self._next or (self._pile if self._left else None)

    def _keep_room(self) -> None:
        card, now = self.card, self._now
        if card is None or now is None:
            return
        if card.damp.line.text().strip() and not card.reference.line.text().strip():
            damp = card.damp.value()
            if damp is not None:
                self._bench.do(read_humidity, round(damp * 10), then=self._kept)
            return
        reading, dry = card.reference.value(), card.dry.value()
        if reading is None:
            card.reference.setFocus()
        elif dry is None:
            card.dry.setFocus()
        else:
            self._bench.do(weigh_reference, now.fibre, milligrams(reading), milligrams(dry),
                           then=self._kept)

    def _kept(self, _done: object) -> None:
        """A weight that could not be judged stands in the field again, to be taken once more."""
        self._taken = None
        if self.card is not None:
            last = self._last
            if last is not None and last.room.permille is None:
                self.card.field.line.setText(f"{grams(last.mg):f}")
                self._next, self._last = 0 if self._of == self._pile else self._of, None
            self.card.reference.clear()
            self.card.damp.clear()
            self.card.field.setFocus()
        self.look()

    def _sell(self) -> None:
        checked = self._checked()
        if checked is None or self._last is None or self._of == self._pile:
            return
        if not self._bounced((self._last.row, Decimal(checked.sell_as_g))):
            self._sold_as(self._last.row, self._of, checked.sell_as_g)

    def second(self) -> None:
        """The light skein that was weighed last is a second."""
        checked = self._checked()
        if checked is None or checked.verdict not in LIGHT:
            self._bench.around.trouble(Refused("Nothing light was weighed; nothing was saved.",
                                               "Weigh it first."))
        elif self._of == self._pile:
            self._bench.around.trouble(Refused("It wears no tag yet; nothing was saved.",
                                               "Tie its tag on and scan it first."))
        else:
            self._bench.do(call_second, [self._of], f"light: {tenths(checked.standard_g)} g")

    def _show(self, now: ToWeigh) -> None:
        self._now = now
        if self.card is not None:
            self.card.show_room(now)
        self._show_weight()

    def _checked(self) -> CheckedWeight | None:
        """The last weight, by the room as it was when it was taken."""
        if self._now is None or self._last is None:
            return None
        return self._now.checked(self._last.mg, self._last.room)

    def _show_weight(self) -> None:
        now, last = self._now, self._last
        if self.card is not None:
            self.card.show_weight(now if last else None, last.mg if last else 0, self._checked(),
                                  tagged=self._of != self._pile)
        self._say_whose()

    def _say_whose(self) -> None:
        if self.card is None:
            return
        if self._last is not None:
            whose = self._told or _NO_TAG
        elif self._next:
            whose = shown(self._mark)
        else:
            whose = _NO_TAG if self._left else "Scan the tag of what lies on the balance"
        self.card.whose.setText(whose)
