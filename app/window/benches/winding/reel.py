"""The reel as it stands: what was counted, and hangs on no disc yet."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from app.calculations.units import metres
from app.calculations.winding import shares
from app.lookups.reel import AsWound, OnReel
from app.work.winding import Drawn, Wound

SKEIN = "skein"  # the form that is wound unless another is chosen


@dataclass(frozen=True, slots=True)
class Skeins:
    """Skeins of one cone in one form; 0 of them were counted yet when the cone came on."""

    cone: OnReel
    tie: str
    put_up: str = SKEIN
    count: int = 0

    @property
    def form(self) -> AsWound | None:
        """The form as it is wound; none where the base is not described in it."""
        return self.cone.form(self.put_up)

    @property
    def other_form(self) -> str:
        """The form that comes after this one; '' where the base has no other."""
        names = [one.name for one in self.cone.put_ups]
        after = names[names.index(self.put_up) + 1 :] if self.put_up in names else []
        return next((name for name in [*after, *names] if name != self.put_up), "")

    def booked_mm(self, cone: int) -> int:
        """Length of this cone in them."""
        form = self.form if self.cone.facts.id == cone else None
        return self.count * form.mm if form else 0

    def wound(self) -> Wound | None:
        """What the book keeps of them; nothing as long as they are not counted."""
        length_mm = self.booked_mm(self.cone.facts.id)
        if not length_mm:
            return None
        return Wound((Drawn(self.cone.facts.id, length_mm),), self.count, self.put_up, self.tie)


@dataclass(frozen=True, slots=True)
class Join:
    """One skein that begins on the cone that ran out and ends on the next."""

    first: OnReel
    first_mm: int
    second: OnReel
    second_mm: int
    tie: str
    put_up: str = SKEIN
    count: int = 1

    @property
    def shares(self) -> tuple[Decimal, ...]:
        """The share of each cone in it."""
        return shares((metres(self.first_mm), metres(self.second_mm)))

    def booked_mm(self, cone: int) -> int:
        """Length of this cone in it."""
        parts = ((self.first, self.first_mm), (self.second, self.second_mm))
        return sum(length for one, length in parts if one.facts.id == cone)

    def wound(self) -> Wound:
        """What the book keeps of it."""
        draws = (
            Drawn(self.first.facts.id, self.first_mm),
            Drawn(self.second.facts.id, self.second_mm),
        )
        return Wound(draws, 1, self.put_up, self.tie)


Group = Skeins | Join


class Reel:
    """Groups that will be tied on one disc; one of them is in hand."""

    def __init__(self) -> None:
        self.groups: list[Group] = []
        self._place = 0

    @property
    def in_hand(self) -> Group | None:
        """What is counted now."""
        return self.groups[self._place] if self.groups else None

    @property
    def total(self) -> int:
        """How many skeins were counted."""
        return sum(group.count for group in self.groups)

    def wound(self) -> list[Wound]:
        """What the book will keep of it."""
        return [wound for group in self.groups if (wound := group.wound()) is not None]

    def ties(self) -> tuple[str, ...]:
        """The tie colours on the reel."""
        return tuple(dict.fromkeys(one.tie for one in self.groups if isinstance(one, Skeins)))

    def of_cone(self, cone: int) -> list[Skeins]:
        """The skeins of this cone, the form in hand before others; none where it is not on."""
        mine = [one for one in self.groups if isinstance(one, Skeins) and one.cone.facts.id == cone]
        return sorted(mine, key=lambda one: one is not self.in_hand)

    def put_on(self, cone: OnReel) -> None:
        """A cone comes on the reel: beside the others while a count is open, else instead.

        Where it is on already, it is the one in hand.
        """
        known = next(iter(self.of_cone(cone.facts.id)), None)
        if known is not None:
            self.take_up(known)
            return
        if not self.total:
            self.groups = []
        forms = [one.name for one in cone.put_ups]
        self._add(Skeins(cone, cone.tie, forms[0] if forms and SKEIN not in forms else SKEIN))

    def take_up(self, group: Group) -> None:
        """This one is in hand."""
        self._place = self.groups.index(group)

    def count(self, number: int) -> None:
        """So many skeins of the cone in hand; after a join, of the cone that went on."""
        self.go_on()
        if isinstance(self.in_hand, Skeins):
            self._change(self._place, count=number)

    def wind_as(self, put_up: str) -> None:
        """The cone in hand in another form; what was counted of it in the first stays."""
        before = self.in_hand
        if not isinstance(before, Skeins) or before.put_up == put_up:
            return
        other = next(
            (
                one
                for one in self.groups
                if isinstance(one, Skeins) and (one.cone, one.put_up) == (before.cone, put_up)
            ),
            None,
        )
        if other is not None:
            self.take_up(other)
        elif before.count:
            self._add(Skeins(before.cone, before.tie, put_up))
        else:
            self._change(self._place, put_up=put_up)

    def tie_with(self, tie: str) -> None:
        """Another thread for what is in hand: for all of its cone, or for the join alone."""
        before = self.in_hand
        for place, one in enumerate(self.groups):
            if one is before or (
                isinstance(one, Skeins) and isinstance(before, Skeins) and one.cone is before.cone
            ):
                self._change(place, tie=tie)

    def join(self, first: Skeins, first_mm: int, second: OnReel) -> None:
        """The cone ran out inside a skein, and this one went on with a thread of its own."""
        form = first.form
        assert form is not None, "only what is described is wound"
        went_on = next(
            iter(self.of_cone(second.facts.id)), Skeins(second, second.tie, first.put_up)
        )
        threads = dict.fromkeys((first.tie, went_on.tie))
        if not first.count:
            self.groups.remove(first)
        second_mm = form.mm - first_mm
        self._add(
            Join(first.cone, first_mm, second, second_mm, " and ".join(threads), first.put_up)
        )
        if went_on not in self.groups:
            self.groups.append(went_on)

    def go_on(self) -> None:
        """After a join the cone that went on is in hand."""
        joined = self.in_hand
        for went_on in self.of_cone(joined.second.facts.id) if isinstance(joined, Join) else ():
            self.take_up(went_on)
            return

    def take_off(self, group: Group) -> None:
        """This is not on the reel any more, or never was."""
        in_hand = self.in_hand
        self.groups.remove(group)
        kept = in_hand is not None and in_hand in self.groups
        self._place = self.groups.index(in_hand) if kept and in_hand else 0

    def tied_on(self, saved: Collection[Wound]) -> None:
        """These hang on a disc now; their cones stay, with nothing counted of them."""
        for place, group in enumerate(self.groups):
            if isinstance(group, Skeins) and group.wound() in saved:
                self._change(place, count=0)
        for group in [one for one in self.groups if one.wound() in saved or self._again(one)]:
            self.take_off(group)

    def renew(self, cone: OnReel) -> None:
        """The book knows more of a cone than when it came on; its ties stay."""
        for place, one in enumerate(self.groups):
            if isinstance(one, Skeins) and one.cone.facts.id == cone.facts.id:
                self._change(place, cone=cone)

    def _again(self, group: Group) -> bool:
        """A second form of a cone of which nothing is counted."""
        return (
            isinstance(group, Skeins)
            and not group.count
            and self.of_cone(group.cone.facts.id)[0] is not group
        )

    def _add(self, group: Group) -> None:
        self.groups.append(group)
        self._place = len(self.groups) - 1

    def _change(self, place: int, **facts: Any) -> None:
        self.groups[place] = replace(self.groups[place], **facts)


def left_on(reel: Reel, cone: OnReel) -> int:
    """Millimetres that the book leaves on a cone, less what was counted on the reel since."""
    return cone.facts.left_mm - sum(one.booked_mm(cone.facts.id) for one in reel.groups)
