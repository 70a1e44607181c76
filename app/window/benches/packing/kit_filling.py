"""The bag that is being filled: which place a scanned skein is for, and why for none."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from uuid import uuid4

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.lookups.kit_patterns import PatternNow, PlaceNow
from app.lookups.packing import TagScanned
from app.problems import Refused
from app.window.benches.packing.fitting import lot_words, no_skein

_FROM = ("table", "shelf")
_PUT_IT_BACK = "Put it back, and take another."
_IS = {"put by": "put by", "kit": "in a kit already", "taken": "taken for an order",
       "fair": "at a fair by what the book says", "sent": "sold by what the book says",
       "lost": "lost by what the book says", "given": "given away by what the book says",
       "discarded": "thrown away by what the book says"}


@dataclass(frozen=True, slots=True)
class InPlace:
    """A scanned skein and the place it lies in."""

    letter: str
    tag: TagScanned
    stands_in: bool

    @property
    def yarn(self) -> int:
        """The skein; only such as wear their tag get here."""
        return self.tag.yarn or 0


@dataclass(slots=True)
class Bag:
    """A bag as far as it is filled, by a pattern."""

    pattern: PatternNow
    skeins: list[InPlace] = field(default_factory=list)
    token: str = field(default_factory=lambda: uuid4().hex)
    """A bag that is closed twice is one kit."""

    def of(self, letter: str) -> list[InPlace]:
        """What lies in a place."""
        return [one for one in self.skeins if one.letter == letter]

    def lacks(self, place: PlaceNow) -> int:
        """How many a place still wants."""
        return place.wanted - len(self.of(place.letter))

    @property
    def lacking(self) -> tuple[PlaceNow, ...]:
        """Places that are not full."""
        return tuple(place for place in self.pattern.places if self.lacks(place))

    @property
    def yarn(self) -> tuple[int, ...]:
        """The skeins in it."""
        return tuple(one.yarn for one in self.skeins)

    def put(self, tag: TagScanned, now: datetime) -> InPlace:
        """The skein goes into the place that wants it, its own colour's first.

        Raises Refused where it may not go, where no place wants it, or where its place was begun
        with another lot.
        """
        if any(one.tag.mark == tag.mark for one in self.skeins):
            raise Refused(f"{shown(tag.mark)} is in this bag already; it counts once.",
                          "F6 takes the last one out again.")
        _may_go(tag, now)
        place, stands_in = self._place_of(tag)
        begun = next((one.tag for one in self.of(place.letter)), None)
        if begun is not None and begun.lot != tag.lot:
            raise Refused(
                f"Colour {place.letter} was begun with {lot_words(begun.lot_code)}, and this is "
                f"{lot_words(tag.lot_code)}: one colour of a kit is of one lot. Nothing was taken.",
                f"Take {self.lacks(place)} more of {lot_words(begun.lot_code)}, or empty the "
                "bag with F7.")
        found = InPlace(place.letter, tag, stands_in)
        self.skeins.append(found)
        return found

    def _place_of(self, tag: TagScanned) -> tuple[PlaceNow, bool]:
        own = [place for place in self.pattern.places if _is_own(place, tag)]
        others = [place for place in self.pattern.places if _may_stand_in(place, tag)]
        for place in (*own, *others):
            if self.lacks(place):
                return place, place in others
        if own or others:
            raise Refused(f"{tag.colourway_name} is full in this bag; nothing was taken.",
                          "Put it back." if self.lacking else "Close the bag with Enter.")
        raise Refused(f"No place of {self.pattern.name} wants {_what(tag)}; nothing was taken.",
                      _wants(self.lacking))


def _is_own(place: PlaceNow, tag: TagScanned) -> bool:
    return _fits(place, tag) and place.colourway == tag.colourway


def _may_stand_in(place: PlaceNow, tag: TagScanned) -> bool:
    return _fits(place, tag) and tag.colourway in {one.colourway for one in place.stand_ins}


def _fits(place: PlaceNow, tag: TagScanned) -> bool:
    return place.base == tag.base and place.put_up == tag.put_up


def _may_go(tag: TagScanned, now: datetime) -> None:
    none = no_skein(tag)
    if none is not None:
        raise none
    if tag.state not in _FROM:
        until = (f" until {day_words(tag.ends)}"
                 if tag.state == "put by" and tag.ends and tag.ends > now else "")
        where = _IS.get(tag.state or "", "not on a shelf")
        raise Refused(f"{shown(tag.mark)} is {where}{until}; nothing was taken.", _PUT_IT_BACK)


def _what(tag: TagScanned) -> str:
    form = "" if tag.put_up == "skein" else f", {tag.put_up}"
    return f"{tag.colourway_name} on {tag.base_name}{form}"


def _wants(lacking: Sequence[PlaceNow]) -> str:
    if not lacking:
        return "The bag is whole: close it with Enter."
    return f"Take {lacking[0].name} on {lacking[0].base_name} for {lacking[0].letter}."
