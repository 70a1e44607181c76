"""What can be done at the reel, whichever key, tap or scan asks for it."""

from collections.abc import Sequence
from datetime import datetime, time

from app.calculations.codes import shown
from app.lookups.deliveries import ConeOnHand, on_hand
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
        self.show_reel()
        self.setFocus()

    def show_reel(self) -> None:
        """Show what is on the reel, and the trail of the cone in hand."""
        group = self.reel.in_hand
        if group is not None:
            self.cards.threads.show_group(group, self._colours)
        self.cards.show_reel(self.reel, self.disc.number if self.disc else "")
        cone = None if group is None else group.second if isinstance(group, Join) else group.cone
        if self.isVisible():
            self.around.show_trail(cone.stops if cone else ())

    def put_on(self, cone: OnReel) -> None:
        """A cone comes on the reel; what is off about it is said."""
        self.reel.put_on(cone)
        self.cards.count.forget_digits()
        self.go_on()
        if cone.facts.ended:
            self.around.found([Finding(
                f"{shown(cone.facts.code)} was ended before. If it is wound all the same, the "
                "book keeps that.")], _nothing)

    def count(self, number: int) -> None:
        """So many skeins of what is in hand."""
        self.reel.count(number)
        self.cards.turn_to(self.cards.count)
        self.show_reel()

    def other_form(self) -> None:
        """Minis instead of skeins, or the other way round."""
        group = self.reel.in_hand
        if isinstance(group, Skeins):
            self.reel.wind_as("mini" if group.put_up == "skein" else "skein")
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
        first, first_mm = self.cards.join.first, self.cards.join.first_mm()
        if first is None or first_mm is None:
            return
        if cone.facts.id == first.cone.facts.id or cone.facts.base != first.cone.facts.base:
            self.around.trouble(Refused(
                f"{shown(cone.facts.code)} cannot have gone on: it is "
                + ("the cone that ran out." if cone.facts.id == first.cone.facts.id else
                   f"{cone.facts.base_name}, and this skein is {first.cone.facts.base_name}."),
                "Scan the cone that went on."))
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
        empty = [one.first for one in self.reel.groups
                 if isinstance(one, Join) and one.wound() in wound]
        self.disc = None
        self.reel.tied_on(wound)
        self.cards.count.forget_digits()
        self.go_on()
        if empty:
            self.around.found(
                [*map(Finding, done.findings), *map(_ran_out, empty)],
                lambda finding, answer: self._weigh(empty, finding, answer))

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
        gone = self.reel.holding(cone.facts.id)
        if gone is not None:
            self.reel.take_off(gone)
        self.go_on()

    def seen(self, what: str) -> None:
        """A fault on the cone in hand: it goes on hold."""
        group = self.reel.in_hand
        if isinstance(group, Skeins):
            self.do(hold, "cone", group.cone.facts.id, what, then=lambda _done: self.go_on())

    def _look_up(self) -> None:
        now = self.around.session.book.clock()
        cones = [one.cone.facts.code for one in self.reel.groups if isinstance(one, Skeins)]
        self.ask(self._renew, cones_on_reel, cones, now)
        self.ask(self._show_on_hand, on_hand)
        self.ask(self.cards.today.show_bundles, tied_on_since, _this_morning(now), now)

    def _renew(self, cones: Sequence[OnReel]) -> None:
        for cone in cones:
            self.reel.renew(cone)
        self.show_reel()

    def _show_on_hand(self, cones: Sequence[ConeOnHand]) -> None:
        self._on_hand = cones
        self.cards.start.show_cones(cones)

    def _learn_colours(self, colours: Sequence[str]) -> None:
        self._colours = colours
        self.show_reel()


def _this_morning(now: datetime) -> datetime:
    """Midnight on the wall clock."""
    return datetime.combine(now.astimezone().date(), time()).astimezone()


def _ran_out(cone: OnReel) -> Finding:
    return Finding(f"{shown(cone.facts.code)} ran out in this bundle.", (_WEIGH, "Later"))


def _nothing(_finding: Finding, _answer: str) -> None:
    """A finding that was only to be read."""
