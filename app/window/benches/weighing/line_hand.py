"""A cup on the balance: begun, weighed, tipped back; after a stop somebody says what became of it.
"""

from decimal import Decimal
from typing import Any

from app.lookups.at_balance import AtBalance, at_balance
from app.lookups.weighings import LineThen
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.weighing.cautions_card import in_short
from app.window.benches.weighing.cup_card import CupCard
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.head_card import HeadCard
from app.window.benches.weighing.lines_card import LinesCard
from app.window.benches.weighing.stopped_card import StoppedCard
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.sight import to_top
from app.window.parts.words import Words
from app.window.session import Done
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back, what_became

_COMING = "…"  # a line is being begun: a weight that comes meanwhile waits for it


def thousandths(amount: Decimal | None) -> int | None:
    """Milligrams of grams, or microlitres of millilitres."""
    return None if amount is None else round(amount * 1000)


class LineHand(WeighHand):
    """One weigh-out; a line that was begun before a stop or elsewhere is asked about first."""

    def __init__(self, around: Around, weighing: int) -> None:
        super().__init__(around)
        self.weighing = weighing
        self.now: AtBalance | None = None
        self.mine: set[int] = set()
        self.tipping = False
        self._reading, self._left = "", False
        self.head, self.cup, self.lines = HeadCard(), CupCard(), LinesCard()
        self.stopped = StoppedCard()
        caution = Words(in_short(), Size.SMALL, ink="surround")
        for part in (self.head, self.stopped, self.cup, caution, self.lines):
            self.body.addWidget(part)
        self.body.addStretch(1)
        self.stopped.hide()
        self.cup.take.clicked.connect(self.done)
        self.cup.tip.clicked.connect(self._turn_tipping)
        self.cup.leave.clicked.connect(self._put_away)
        self.stopped.leave.clicked.connect(self._put_away)
        self.stopped.answered.connect(self._became)
        self.look()

    def look(self) -> None:
        """Look again at its lines."""
        self.ask(self._show, at_balance, self.weighing, self.around.session.now())

    def leave(self) -> None:
        """It is closed: what comes in its place is said once, however often it is heard of."""
        if not self._left:
            self._left = True
            self.over.emit(self.after())

    def after(self) -> Hand | None:
        """What comes when it is closed."""
        return None

    def go_on(self) -> None:
        """DONE or Enter while no cup stands on the balance."""

    def show_next(self, now: AtBalance) -> None:
        """No cup stands on the balance: show what comes next."""

    def here(self) -> int | None:
        """The line of the recipe that is next."""
        return None

    def weigh(self, reading: str) -> bool:
        """The balance typed its weight, with Enter: it is taken."""
        if self.stopped.isVisible():
            self.stopped.field.line.setText(reading)
        elif self._asks():
            self.cup.field.line.setText(reading)
            self.done()
        elif self._reading == _COMING:
            self._reading = reading
        else:
            return False
        return True

    def write_figure(self, figure: str) -> bool:
        """A figure begins the weight."""
        field = self.stopped.field if self.stopped.isVisible() else self.cup.field
        if not (self._asks() or self.stopped.isVisible()):
            return False
        field.line.setFocus()
        field.line.insert(figure)
        return True

    def count(self, number: int) -> None:
        """COUNT 1 to 3 answers what became of the cup."""
        if self.stopped.isVisible() and number <= len(self.stopped.keys):
            self.stopped.answer(list(self.stopped.keys)[number - 1])

    def done(self) -> None:
        """DONE or Enter: what stands in the cup is taken."""
        line = self.now.open_line if self.now else None
        if self.now is None or self.stopped.isVisible():
            return
        if self.tipping:
            self._tip()
        elif line is None:
            self.go_on()
        elif (amount := self.cup.field.value()) is not None:
            self.do(take_weight, line.id, division_mg=thousandths(self.now.balance.step_g),
                    then=self._over, **self._kept(amount))

    def begin(self, line: LineIn) -> None:
        """A jar, a bottle or a bag stands on the balance."""
        self._reading = _COMING
        self.do(begin_line, line, then=self._begun)

    def last_taken(self) -> LineThen | None:
        """The line that was taken last: of it something may be tipped back."""
        lines = self.now.out.lines if self.now and self.now.open_line is None else ()
        return next((line for line in reversed(lines) if line.kind in ("taken", "instead of")),
                    None)

    def _asks(self) -> bool:
        """Whether a weight is wanted now."""
        return self.tipping or bool(self.now and self.now.open_line)

    def _kept(self, amount: Decimal) -> dict[str, Any]:
        return {"ul" if self.cup.by_volume else "mg": thousandths(amount)}

    def _put_away(self) -> None:
        if self.tipping:
            self._turn_tipping()
        else:
            self.over.emit(None)

    def _begun(self, done: Done[int]) -> None:
        self.mine.add(done.answer)
        self.tipping = False
        self.cup.field.clear()
        self.look()

    def _over(self, _done: Done[Any]) -> None:
        """The weight stands, or went back."""
        self.tipping, self._reading = False, ""
        self.cup.field.clear()
        self.setFocus()
        self.look()

    def _turn_tipping(self) -> None:
        if not self.tipping and self.last_taken() is None:
            self.around.trouble(Refused("Nothing was taken yet; nothing was saved.",
                                        "Scan the jar first."))
            return
        self.tipping = not self.tipping
        self.cup.field.clear()
        self._show(self.now)

    def _tip(self) -> None:
        last, amount = self.last_taken(), self.cup.field.value()
        if last is not None and amount is not None:
            self.do(tip_back, last.id, then=self._over, **self._kept(amount))

    def _became(self, what: str, amount: int | None) -> None:
        line = self.now.open_line if self.now else None
        if line is not None:
            kept = {} if amount is None else {
                "ul" if self.stopped.by_volume else "mg": amount}
            self.do(what_became, line.id, what, then=self._answered, **kept)

    def _answered(self, done: Done[Any]) -> None:
        self.stopped.field.clear()
        self._over(done)

    def _show(self, now: AtBalance | None) -> None:
        self.now = now
        if now is None or now.out.closed:
            self.leave()
            return
        line = now.open_line
        stopped = line is not None and line.id not in self.mine
        self.head.show_weighing(now)
        self.lines.show_lines(now, line.component if line else self.here())
        self.stopped.setVisible(stopped)
        self.cup.setVisible(not stopped)
        self.cup.step = now.balance.step_g
        to_top(self)
        if line is not None and stopped:
            self.stopped.show_line(line)
        elif line is not None:
            self._show_open(line)
        elif self.tipping and (last := self.last_taken()) is not None:
            self._show_tipping(last)
        else:
            self.cup.tip.setVisible(self.last_taken() is not None)
            self.cup.ask_weight(False)
            self.show_next(now)

    def _show_open(self, line: LineThen) -> None:
        by_volume = line.stock is not None or line.target_ul is not None
        target = line.target_ul if by_volume else line.target_mg
        source = "" if line.source == "not scanned" else line.source
        self.cup.only("Take the weight")
        self.cup.show_line(line.asked, source, "instead of it" if line.kind == "instead of" else "",
                           None if not target else Decimal(target) / 1000, by_volume=by_volume)
        self.cup.ask_weight(True)
        reading, self._reading = self._reading, ""
        if reading not in ("", _COMING):
            self.weigh(reading)

    def _show_tipping(self, last: LineThen) -> None:
        self.cup.only("It is back")
        self.cup.show_line(last.asked, last.source, "goes back to", None,
                           by_volume=last.mg is None)
        self.cup.ask_weight(True)
