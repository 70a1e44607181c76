"""Kits by a pattern: its places, what may stand in, and bags made by it from scanned skeins."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import select

from app.calculations.kit_making import Contrast
from app.lookups.kit_patterns import PatternNow, PlaceNow, colours_of, pattern_now
from app.lookups.skeins import NamedByTag, named_by_tag
from app.problems import NotFound, Refused
from app.records import (
    Base,
    BaseVersion,
    Colourway,
    DyeLot,
    KitPattern,
    KitPlace,
    KitSubstitute,
    PutUp,
)
from app.store.deed import Deed
from app.work.kits import fill_bag

MOST = 100
"""Skeins of one colour in a kit."""


@dataclass(frozen=True, slots=True)
class PlaceIn:
    """A place of a pattern: so many of a colourway on a base, and which others may stand in."""

    letter: str
    wanted: int
    colourway: int
    base: int
    put_up: str = "skein"
    stand_ins: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class PatternIn:
    """A kit as it is to be offered; the price is for a whole kit."""

    name: str
    places: tuple[PlaceIn, ...]
    price: int | None = None


def write_pattern(deed: Deed, pattern: PatternIn) -> int:
    """A pattern; one of the same name goes, and kits that were made by it stay. The pattern."""
    name = " ".join(pattern.name.split())
    _must_make_sense(name, pattern)
    for place in pattern.places:
        _must_be_sold_so(deed, place)
    before = deed.value(select(KitPattern.id).where(
        KitPattern.name == name, KitPattern.struck.is_(None)))
    if before is not None:
        _strike(deed, before)
    row = deed.add(KitPattern(name=name, price=pattern.price))
    for place in pattern.places:
        at = deed.add(KitPlace(pattern=row, letter=place.letter, wanted=place.wanted,
                               colourway=place.colourway, base=place.base, put_up=place.put_up))
        deed.add_all([KitSubstitute(place=at, colourway=one)
                      for one in dict.fromkeys(place.stand_ins) if one != place.colourway])
    said = ", ".join(f"{place.letter} {place.wanted}" for place in pattern.places)
    deed.say(f"wrote {'the' if before is None else 'anew the'} kit pattern {name}: {said}")
    return row


def make_by_pattern(deed: Deed, pattern: int, tagged: Sequence[int]) -> int:
    """One kit of scanned skeins: each goes into the place that wants its colour. The kit.

    Refused: too few or too many for a place, a skein that no place wants, one place from two lots.
    A substitute that leaves too little contrast is said.
    """
    found = pattern_now(deed.connection, pattern)
    if found is None:
        raise NotFound("This kit pattern is not in the book; nothing was saved.",
                       "Choose one that is.")
    rows = list(dict.fromkeys(tagged))
    placed = _placed(deed, found, rows)
    for place in found.places:
        if len({lot for _, lot, _ in placed[place.letter]}) > 1:
            deed.refuse(f"Colour {place.letter} of this kit is from two lots; nothing was saved.",
                        "Take all of a colour from one lot.")
    _note_contrast(deed, found, {letter: one[0][2] for letter, one in placed.items() if one})
    return fill_bag(deed, found.name, rows, found.id)


def _placed(
    deed: Deed, pattern: PatternNow, rows: Sequence[int]
) -> Mapping[str, list[tuple[int, int, int]]]:
    """{letter: (skein, lot, colourway)}; each colour's own place first, then as a substitute."""
    tags = named_by_tag(deed.connection, rows)
    lots = {row.id: (row.colourway, row.base) for row in deed.all(
        select(DyeLot.id, DyeLot.colourway, DyeLot.base)
        .where(DyeLot.id.in_({tag.lot for tag in tags.values()})))}
    placed: dict[str, list[tuple[int, int, int]]] = defaultdict(list)
    left = list(rows)
    for as_substitute in (False, True):
        for place in pattern.places:
            allowed = ({one.colourway for one in place.stand_ins} if as_substitute
                       else {place.colourway})
            for row in list(left):
                if len(placed[place.letter]) == place.wanted:
                    break
                if row in tags and _fits(place, tags[row], lots, allowed):
                    left.remove(row)
                    lot = tags[row].lot
                    placed[place.letter].append((row, lot, lots[lot][0]))
    _must_be_full(deed, pattern, placed, left)
    return placed


def _fits(
    place: PlaceNow, tag: NamedByTag, lots: Mapping[int, tuple[int, int]], allowed: set[int]
) -> bool:
    colourway, base = lots[tag.lot]
    return colourway in allowed and base == place.base and tag.put_up == place.put_up


def _must_be_full(
    deed: Deed, pattern: PatternNow, placed: Mapping[str, list[tuple[int, int, int]]],
    left: Sequence[int],
) -> None:
    short = [f"{place.letter} ({place.name}) {place.wanted - len(placed[place.letter])}"
             for place in pattern.places if len(placed[place.letter]) < place.wanted]
    if short:
        deed.refuse(f"This kit still lacks {', '.join(short)}; nothing was saved.",
                    "Scan what is lacking.")
    if left:
        deed.refuse(f"No place of {pattern.name} wants {len(left)} of these; nothing was saved.",
                    "Put them back, or make the kit by hand.")


def _note_contrast(deed: Deed, pattern: PatternNow, filled: Mapping[str, int]) -> None:
    """Substitutes that leave less than the contrast the pattern lives by."""
    own = {place.letter: place for place in pattern.places}
    others = {letter: colourway for letter, colourway in filled.items()
              if colourway != own[letter].colourway}
    if not others:
        return
    before = colours_of(deed.connection, [
        (letter, place.colourway, place.base) for letter, place in own.items()])
    after = colours_of(deed.connection, [
        (letter, filled.get(letter, place.colourway), place.base)
        for letter, place in own.items()])
    for letter in others:
        for other in own:
            if other == letter or not {letter, other} <= before.keys() & after.keys():
                continue
            gap = Contrast(other, before[letter].lightness - before[other].lightness,
                           after[letter].lightness - after[other].lightness)
            if gap.is_lost():
                deed.note(f"The substitute in {letter} leaves too little contrast or turns it "
                          f"round: {abs(gap.after):.0f} L* to {other}, before "
                          f"{abs(gap.before):.0f}.")


def _must_make_sense(name: str, pattern: PatternIn) -> None:
    letters = [place.letter for place in pattern.places]
    if not name:
        raise Refused("A kit pattern needs a name; nothing was saved.", "Say what is knitted.")
    if not letters or sorted(letters) != [chr(ord("A") + n) for n in range(len(letters))]:
        raise Refused("The places of a kit are A, B, C and so on; nothing was saved.",
                      "Begin with A, and leave none out.")
    if any(not 1 <= place.wanted <= MOST for place in pattern.places):
        raise Refused(f"A place wants 1 to {MOST} of a colour; nothing was saved.",
                      "Say how many.")
    if pattern.price is not None and pattern.price < 0:
        raise Refused("A kit cannot cost less than nothing; nothing was saved.",
                      "Say its price, or none.")


def _must_be_sold_so(deed: Deed, place: PlaceIn) -> None:
    named = {place.colourway, *place.stand_ins}
    known = {row for (row,) in deed.all(select(Colourway.id).where(
        Colourway.id.in_(named), Colourway.struck.is_(None)))}
    put_up = deed.value(
        select(PutUp.id).join(BaseVersion, BaseVersion.id == PutUp.base_version)
        .join(Base, Base.id == BaseVersion.base)
        .where(Base.id == place.base, PutUp.name == place.put_up, Base.struck.is_(None),
               PutUp.struck.is_(None)))
    if named - known or put_up is None:
        raise NotFound(f"The colourway, base or put-up of {place.letter} is not in the book; "
                       "nothing was saved.", "Choose them again.")


def _strike(deed: Deed, pattern: int) -> None:
    """The pattern is offered no more as it stood."""
    places = [row for (row,) in deed.all(select(KitPlace.id).where(
        KitPlace.pattern == pattern, KitPlace.struck.is_(None)))]
    for (row,) in deed.all(select(KitSubstitute.id).where(
            KitSubstitute.place.in_(places), KitSubstitute.struck.is_(None))):
        deed.change(KitSubstitute, row, struck=deed.seq)
    for row in places:
        deed.change(KitPlace, row, struck=deed.seq)
    deed.change(KitPattern, pattern, struck=deed.seq)
