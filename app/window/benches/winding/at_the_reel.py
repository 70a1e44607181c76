"""What can be done at the reel, whichever key, tap or scan asks for it."""

from collections.abc import Sequence
from datetime import datetime, time, timedelta

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QScrollArea

from app.calculations.codes import shown
from app.calculations.moments import short_day
from app.lookups.deliveries import ConeOnHand, on_hand
from app.lookups.now import NOW
from app.lookups.reel import DiscNow, OnReel, cones_on_reel, tied_on_since
from app.lookups.studio import tie_colours
from app.problems import Refused
from app.window.bench import Around, Bench
from app.window.benches.winding.cards import Cards
from app.window.benches.winding.reel import Join, Reel, Skeins
from app.window.parts.card import Card
from app.window.parts.findings import Finding
from app.window.session import Done
from app.work.bundling import take_off
from app.work.holding import hold
from app.work.winding import Wound, end_cone, wind

_CONCERNS = {"yarn", "draw", "cone", "waste", "hold", "plate_stay", "on_bundle", "reading"}
_WEIGH = "Weigh its end"


class AtTheReel(Bench):
    """Counts, forms, threads, joins and ends; the deeds; and what is looked up for them."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.reel, self.cards = Reel(), Cards()
        self.disc: DiscNow | None = None  # at hand before the count was
        self._colours: Sequence[str] = ()
        self._on_hand: Sequence[ConeOnHand] = ()
        self.body.addWidget(self.cards, 1)

    def entered(self) -> None:
        self.ask(self._learn_colours, tie_colours)
        self._look_up()
        self.go_on()

    def look_again(self, kinds: frozenset[str]) -> None:
        if kinds & _CONCERNS:
            self._look_up()

    def go_on(self) -> None:
        """The count is asked again, or the second thread where a join is in hand."""
        joined = isinstance(self.reel.in_hand, Join)
        self.turn_to(self.cards.threads if joined else self.cards.count)

    def turn_to(self, card: Card) -> None:
        """This card asks now."""
        self.cards.turn_to(card)
        self._show_reel()
        self.setFocus()
        QTimer.singleShot(0, self, self._bring_into_sight)

    def _show_reel(self) -> None:
        """Show what is on the reel, and the trail of the cone in hand."""
        group = self.reel.in_hand
        if group is not None:
            self.cards.threads.show_group(group, self._colours)
        self.cards.show_reel(self.reel, self.disc.number if self.disc else "")
        cone = None if group is None else group.second if isinstance(group, Join) else group.cone
        if self.isVisible():
            self.around.show_trail(cone.stops if cone else ())

    def _ties_that_stay(self) -> tuple[str, ...]:
        """Ties that a cone which comes on the reel must not share; the others give way to it."""
        stay = self.reel.total or self.cards.asks is self.cards.join
        return self.reel.ties() if stay else ()

    def put_on(self, cone: OnReel) -> None:
        """A cone comes on the reel; what is off about it is said."""
        self.reel.put_on(cone)
        self.cards.count.forget_digits()
        self.go_on()
        if cone.facts.ended:
            self.around.found([_ended_before(cone)], _nothing)

    def count(self, number: int) -> None:
        """So many skeins of what is in hand."""
        self.reel.count(number)
        self.cards.turn_to(self.cards.count)
        self._show_reel()

    def other_form(self) -> None:
        """Minis instead of skeins, or the other way round."""
        group = self.reel.in_hand
        if isinstance(group, Skeins) and group.other_form:
            self.reel.wind_as(group.other_form)
            self.cards.count.forget_digits()
            self.go_on()

    def ran_out(self) -> None:
        """The cone in hand ran out inside a skein."""
        group = self.reel.in_hand
        if isinstance(group, Skeins) and group.form is not None:
            self.cards.join.begin(self.reel, group, self._on_hand)
            self.turn_to(self.cards.join)
            self.cards.join.length.line.setFocus()

    def went_on(self, cone: OnReel) -> None:
        """This cone went on in the skein in which the other one ran out."""
        first, first_mm = self.reel.in_hand, self.cards.join.first_mm()
        if not isinstance(first, Skeins) or first_mm is None:
            return
        why = _why_not_on(first.cone, cone)
        if why:
            self.around.trouble(Refused(why, "Scan the cone that went on."))
            return
        self.reel.join(first, first_mm, cone)
        self.go_on()

    def finished(self) -> None:
        """The cone in hand is finished: its end is weighed."""
        group = self.reel.in_hand
        if isinstance(group, Skeins) and not self.reel.total:
            self.cards.end.begin(group.cone)
            self.turn_to(self.cards.end)
            self.cards.end.grams.line.setFocus()

    def fault(self) -> None:
        """Something is wrong with the cone in hand."""
        group = self.reel.in_hand
        if isinstance(group, Skeins):
            self.cards.fault.begin(group.cone)
            self.turn_to(self.cards.fault)

    def tie_on(self, disc: DiscNow) -> None:
        """What was counted hangs on this disc: one deed."""
        wound = self.reel.wound()
        self.do(wind, wound, disc.id, then=lambda done: self._tied_on(wound, done))

    def take_off(self, disc: DiscNow) -> None:
        """The disc comes off where it hangs, and is tied on here."""
        self.do(take_off, disc.id, then=lambda _done: self.tie_on(disc))

    def _tied_on(self, wound: Sequence[Wound], done: Done[list[int]]) -> None:
        empty = [
            one.first for one in self.reel.groups if isinstance(one, Join) and one.wound() in wound
        ]
        self.disc = None
        self.reel.tied_on(wound)
        self.cards.count.forget_digits()
        self.go_on()
        if empty:
            self.around.found(
                [*map(Finding, done.findings), *map(_ran_out, empty)],
                lambda finding, answer: self._weigh(empty, finding, answer),
            )

    def _weigh(self, empty: Sequence[OnReel], finding: Finding, answer: str) -> None:
        for cone in empty:
            if answer == _WEIGH and _ran_out(cone) == finding:
                self.cards.end.begin(cone)
                self.turn_to(self.cards.end)
                self.cards.end.grams.line.setFocus()

    def weighed(self, waste_mg: int) -> None:
        """The end of a cone was weighed: the cone is empty."""
        cone = self.cards.end.cone
        if cone is not None:
            self.do(end_cone, cone.facts.id, waste_mg, then=lambda _done: self._ended(cone))

    def _ended(self, cone: OnReel) -> None:
        for group in self.reel.of_cone(cone.facts.id):
            self.reel.take_off(group)
        self.go_on()

    def seen(self, what: str) -> None:
        """A fault on the cone in hand: it goes on hold."""
        group = self.reel.in_hand
        if isinstance(group, Skeins):
            self.do(hold, "cone", group.cone.facts.id, what, then=lambda _done: self.go_on())

    def _bring_into_sight(self) -> None:
        """What is read across the room, or the card that asks for something else."""
        page = self.parentWidget()
        while page is not None and not isinstance(page, QScrollArea):
            page = page.parentWidget()
        if page is not None:
            page.ensureVisible(0, 0, 0, 0)
            if self.cards.asks is not self.cards.count:
                page.ensureWidgetVisible(self.cards.asks, 0, 0)

    def _look_up(self) -> None:
        late = self.around.session.late
        morning = _this_morning(self.around.session.now())
        self.cards.today.of_day("Today" if late is None else short_day(late))
        cones = [one.cone.facts.code for one in self.reel.groups if isinstance(one, Skeins)]
        self.ask(self._renew, cones_on_reel, cones, NOW)
        self.ask(self._show_on_hand, on_hand)
        self.ask(self.cards.today.show_bundles, tied_on_since, morning,
                 NOW if late is None else morning + timedelta(days=1))

    def _renew(self, cones: Sequence[OnReel]) -> None:
        for cone in cones:
            self.reel.renew(cone)
        self._show_reel()

    def _show_on_hand(self, cones: Sequence[ConeOnHand]) -> None:
        self._on_hand = cones
        self.cards.start.show_cones(cones)

    def _learn_colours(self, colours: Sequence[str]) -> None:
        self._colours = colours
        self._show_reel()


def _this_morning(now: datetime) -> datetime:
    """Midnight on the wall clock."""
    return datetime.combine(now.astimezone().date(), time()).astimezone()


def _ended_before(cone: OnReel) -> Finding:
    return Finding(
        f"{shown(cone.facts.code)} was ended before. "
        "If it is wound all the same, the book keeps that."
    )


def _why_not_on(first: OnReel, cone: OnReel) -> str:
    """Why this cone cannot have gone on where the first ran out."""
    code = shown(cone.facts.code)
    if cone.facts.id == first.facts.id:
        return f"{code} is the cone that ran out; nothing was noted."
    if cone.facts.base != first.facts.base:
        return (
            f"{code} is {cone.facts.base_name}, and this skein is {first.facts.base_name}; "
            "nothing was noted."
        )
    return ""


def _ran_out(cone: OnReel) -> Finding:
    return Finding(f"{shown(cone.facts.code)} ran out in this bundle.", (_WEIGH, "Later"))


def _nothing(_finding: Finding, _answer: str) -> None:
    """A finding that was only to be read."""
