"""A cup on the balance: begun, weighed, tipped back; after a stop somebody says what became of it.
"""

from dataclasses import replace
from decimal import Decimal
from typing import Any

from app.lookups.at_balance import AtBalance, at_balance
from app.lookups.weighings import LineThen
from app.problems import Refused
from app.scanning.balance_ear import Heard
from app.window.bench import Around
from app.window.benches.weighing.cup_card import CupCard
from app.window.benches.weighing.hand import WeighHand
from app.window.benches.weighing.head_card import HeadCard
from app.window.benches.weighing.lines_card import LinesCard
from app.window.benches.weighing.stopped_card import StoppedCard
from app.window.benches.weighing.weigh_words import slip, thousandths
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.cautions_card import in_short
from app.window.parts.sight import to_top
from app.window.parts.words import Words
from app.window.session import Done
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back, what_became

_COMING = "…"  # a line is being begun: a weight that comes meanwhile waits for it


class LineHand(WeighHand):
    """One weigh-out; a line that was begun before a stop or elsewhere is asked about first."""

    def __init__(self, around: Around, weighing: int) -> None:
        super().__init__(around)
        self.weighing = weighing
        self.now: AtBalance | None = None
        self.mine: set[int] = set()
        self.tipping = False
        self._reading, self._left = "", False
        self._meant: Decimal | None = None  # a strange weight that was asked about
        self.live = around.balance.now if around.balance else Heard()
        self.head, self.cup, self.lines = HeadCard(), CupCard(), LinesCard()
        self.stopped = StoppedCard()
        caution = Words(in_short(), Size.SMALL, ink="surround")
        for part in (self.head, self.stopped, self.cup, caution, self.lines):
            self.body.addWidget(part)
        self.body.addStretch(1)
        self.stopped.hide()
        self.cup.take.clicked.connect(self.done)
        self.cup.field.line.textChanged.connect(self._name_take)
        self.cup.change.clicked.connect(self.change_balance)
        self.cup.tip.clicked.connect(self._turn_tipping)
        self.cup.leave.clicked.connect(self._put_away)
        self.stopped.leave.clicked.connect(self._put_away)
        self.stopped.answered.connect(self._became)
        self.look()

    def look(self) -> None:
        """Look again at its lines."""
        used = self.around.balance.plate if self.around.balance else 0
        self.ask(self._show, at_balance, self.weighing, self.around.session.now(), used)

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
            self.stopped.weigh(reading)
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
        elif self._as_asked:
            self.do(take_weight, line.id, ul=line.target_ul, why="poured as asked",
                    then=self._over)
        elif (self._live_is_right() and (amount := self.cup.field.value()) is not None
              and not self._looks_like_a_slip(line, amount)):
            on = None if self.cup.by_volume or not self.now.on else self.now.on.plate
            self.do(take_weight, line.id, division_mg=thousandths(self.now.balance.step_g),
                    balance=on, then=self._over, **self._kept(amount))

    def begin(self, line: LineIn) -> None:
        """A jar, a bottle or a bag stands on the balance."""
        self._reading = _COMING
        on = self.now.on if self.now and line.stock is None and line.target_ul is None else None
        self.do(begin_line, replace(line, balance=on.plate if on else None), then=self._begun)

    def hear(self, heard: Heard) -> None:
        """The balance on the wire says what is in the cup, or its own key takes it."""
        self.live = heard
        wants = self.stopped.isVisible() or self._asks() or self._reading == _COMING
        if heard.printed is not None and wants and heard.printed.g > 0:
            self.weigh(heard.printed.figures)
        else:
            self._show_live()

    def change_balance(self) -> None:
        """The next balance of the studio is used from here on."""
        if self.now is not None and self.around.balance is not None:
            on = self.now.on.number if self.now.on else 0
            numbers = sorted(one.number for one in self.now.others)
            self.around.balance.plate = next(
                (one for one in numbers if one > on), numbers[0] if numbers else on)
            self.look()

    def _looks_like_a_slip(self, line: LineThen, amount: Decimal) -> bool:
        """A weight far from what is asked is taken at the second Enter: a point slips easily."""
        target = line.target_ul if self.cup.by_volume else line.target_mg
        asked = slip(amount, target, "mL" if self.cup.by_volume else "g")
        if asked is None or amount == self._meant:
            return False
        self._meant = amount
        self.around.trouble(asked)
        self.cup.field.line.selectAll()
        return True

    def _live_is_right(self) -> bool:
        """With nothing written the weight on the wire is taken, once it stands."""
        weight = self.cup.live
        if self.cup.field.line.text().strip() or weight is None:
            return True
        if not self.live.stands or weight <= 0:
            self.around.trouble(Refused(
                "The weight still moves; nothing was taken." if not self.live.stands else
                "Nothing stands on the balance; nothing was taken.",
                "Wait until it stands still, or type it."))
            return False
        self.cup.field.line.setText(f"{weight:f}")
        return True

    def _show_live(self) -> None:
        """What the wire says, where the balance in use is the one on it."""
        wire, on = self.around.balance, self.now.on if self.now else None
        number = wire.wiring.balance if wire else 0
        if wire is None or not wire.is_wired or (on and number and on.number != number):
            self.cup.show_live(None, stands=False)
        else:
            weight = self.live.weight.g if self.live.weight else None
            self.cup.show_live(weight, stands=self.live.stands, why=self.live.sentence)

    def last_taken(self) -> LineThen | None:
        """The line that was taken last: of it something may be tipped back."""
        lines = self.now.out.lines if self.now and self.now.open_line is None else ()
        return next((line for line in reversed(lines) if line.kind in ("taken", "instead of")),
                    None)

    def _asks(self) -> bool:
        """Whether a weight is wanted now."""
        return self.tipping or bool(self.now and self.now.open_line)

    @property
    def _as_asked(self) -> bool:
        """A cylinder has no cable: with nothing written, DONE says it is filled to the mark."""
        line = self.now.open_line if self.now else None
        return (line is not None and bool(line.target_ul)
                and not self.cup.field.line.text().strip())

    def _name_take(self) -> None:
        """What Enter takes while a cup stands there."""
        if self.now and self.now.open_line:
            self.cup.take.say("Poured as asked" if self._as_asked else "Take the volume"
                              if self.cup.by_volume else "Take the weight")

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
        if self.now is not None:  # what was saved is looked up already: it may be there before this
            self._show(self.now)

    def _over(self, _done: Done[Any]) -> None:
        """The weight stands, or went back."""
        self.tipping, self._reading = False, ""
        self.cup.field.clear()
        self.setFocus()
        self.look()  # what the deed wrote may have been looked at before this

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
        stopped = (line := now.open_line) is not None and line.id not in self.mine
        self.head.show_weighing(now)
        self.lines.show_lines(now, line.component if line else self.here())
        self.stopped.setVisible(stopped)
        self.cup.setVisible(not stopped)
        self.cup.step = now.balance.step_g
        self.cup.show_balance(now.on, now.others)
        self._show_live()
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
        self._name_take()
        reading, self._reading = self._reading, ""
        if reading not in ("", _COMING):
            self.weigh(reading)

    def _show_tipping(self, last: LineThen) -> None:
        self.cup.only("It is back")
        self.cup.show_line(last.asked, last.source, "goes back to", None,
                           by_volume=last.mg is None)
        self.cup.ask_weight(True)
