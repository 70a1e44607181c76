"""Kits by their patterns: how many the shelves allow, what is short, and what may stand in."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.kit_making import (
    Candidate,
    Short,
    Substitute,
    kits,
    short_for,
    substitutes,
)
from app.calculations.shade import Colour, Viewing
from app.lookups.left_to_sell import left_of
from app.lookups.shades import newest, read_of_lots, read_of_standard
from app.records import Base, Colourway, DyeLot, KitPattern, KitPlace, KitSubstitute
from app.store.dialect import among, listed

Yarn = tuple[int, int, str]
"""Colourway, base and put-up."""


@dataclass(frozen=True, slots=True)
class StandInNow:
    """A colourway that may stand in a place."""

    colourway: int
    name: str


@dataclass(frozen=True, slots=True)
class PlaceNow:
    """One place of a pattern: so many of a colourway on a base, and what may stand in."""

    letter: str
    wanted: int
    colourway: int
    name: str
    base: int
    base_name: str
    put_up: str
    swatch: str | None
    stand_ins: tuple[StandInNow, ...]

    @property
    def yarn(self) -> Yarn:
        """What it is filled with."""
        return self.colourway, self.base, self.put_up


@dataclass(frozen=True, slots=True)
class PatternNow:
    """A kit as it is offered."""

    id: int
    name: str
    price: int | None
    places: tuple[PlaceNow, ...]


@dataclass(frozen=True, slots=True)
class LotLeft:
    """How many of a lot may go into kits now."""

    code: str
    count: int

    @property
    def words(self) -> str:
        """'17 of 26·14·K14'."""
        return f"{self.count} of {shown(self.code) if self.code else 'a lot without a code'}"


@dataclass(frozen=True, slots=True)
class KitsNow:
    """What the shelves allow, by letter, and what is short for so many kits.

    `stand_ins` are those for the places that are short: the ones that keep the contrast first.
    `lots` are those of each place's own colour, by letter, those with the most left first.
    """

    pattern: PatternNow
    asked: int
    by_letter: Mapping[str, int]
    possible: int
    shortest: tuple[str, ...]
    short: tuple[Short, ...]
    stand_ins: Mapping[str, tuple[Substitute, ...]]
    contrast_unknown: tuple[str, ...]
    """Colours without a card that was read as the others: of them no contrast can be told."""
    lots: Mapping[str, tuple[LotLeft, ...]]

    def left(self, letter: str) -> int:
        """How many skeins of a place's own colour are left, in all its lots."""
        return sum(lot.count for lot in self.lots[letter])


_PLACES = (
    select(KitPlace.id, KitPlace.pattern, KitPlace.letter, KitPlace.wanted, KitPlace.colourway,
           Colourway.name, KitPlace.base, Base.name.label("base_name"), KitPlace.put_up,
           Colourway.swatch)
    .join(Colourway, Colourway.id == KitPlace.colourway).join(Base, Base.id == KitPlace.base)
    .where(among(KitPlace.pattern, "ids"), KitPlace.struck.is_(None)).order_by(KitPlace.letter)
)
_STAND_INS = (
    select(KitSubstitute.place, KitSubstitute.colourway, Colourway.name)
    .join(Colourway, Colourway.id == KitSubstitute.colourway)
    .where(among(KitSubstitute.place, "ids"), KitSubstitute.struck.is_(None))
    .order_by(KitSubstitute.id)
)


def patterns_now(connection: Connection) -> tuple[PatternNow, ...]:
    """Every pattern that is offered, by name."""
    rows = connection.execute(
        select(KitPattern.id, KitPattern.name, KitPattern.price)
        .where(KitPattern.struck.is_(None)).order_by(KitPattern.name)).all()
    places = _places(connection, [row.id for row in rows])
    return tuple(PatternNow(row.id, row.name, row.price, tuple(places[row.id])) for row in rows)


def pattern_now(connection: Connection, pattern: int) -> PatternNow | None:
    """One pattern; none where it is not offered any more."""
    row = connection.execute(
        select(KitPattern.name, KitPattern.price)
        .where(KitPattern.id == pattern, KitPattern.struck.is_(None))).first()
    if row is None:
        return None
    return PatternNow(pattern, row.name, row.price,
                      tuple(_places(connection, [pattern])[pattern]))


def all_kits_now(connection: Connection) -> tuple[KitsNow, ...]:
    """What the shelves allow of every pattern that is offered, by name."""
    return tuple(kits_now(connection, pattern) for pattern in patterns_now(connection))


def kits_of(connection: Connection, pattern: int, asked: int = 0) -> KitsNow | None:
    """The same of one pattern; none where it is not offered any more."""
    found = pattern_now(connection, pattern)
    return None if found is None else kits_now(connection, found, asked)


def kits_now(connection: Connection, pattern: PatternNow, asked: int = 0) -> KitsNow:
    """How many kits the shelves allow, none with a colour from two lots; and for so many more."""
    wanted = {place.yarn for place in pattern.places} | {
        (one.colourway, place.base, place.put_up)
        for place in pattern.places for one in place.stand_ins}
    left = _left(connection, wanted)
    card = {place.letter: place.wanted for place in pattern.places}
    lots = {place.letter: left[place.yarn] for place in pattern.places}
    stock = {letter: _counts(of) for letter, of in lots.items()}
    made = kits(card, stock)
    short = short_for(asked, card, stock)
    asking = {one.role for one in short} or set(made.shortest)
    colours = colours_of(connection, [(place.letter, *place.yarn[:2]) for place in pattern.places])
    told = set(colours)
    return KitsNow(
        pattern, asked, made.by_role, made.possible, made.shortest, short,
        {place.letter: _stand_ins(connection, place, card, colours, left)
         for place in pattern.places if place.letter in asking and set(card) == told},
        tuple(place.letter for place in pattern.places if place.letter not in told), lots)


def colours_of(
    connection: Connection, yarns: Sequence[tuple[str, int, int]]
) -> dict[str, Colour]:
    """{name: colour} of (name, colourway, base): the standard, else the lot that was read last.

    All looked at alike, as the most of them were; one that was not read so is left out.
    """
    cards = {name: _cards(connection, colourway, base) for name, colourway, base in yarns}
    seen = [viewing for of in cards.values() for viewing in of]
    usual = max(dict.fromkeys(seen), key=seen.count, default=None)
    return {name: of[usual] for name, of in cards.items() if usual in of}


def _cards(connection: Connection, colourway: int, base: int) -> dict[Viewing, Colour]:
    standard = newest(read_of_standard(connection, colourway, base))
    if not standard:
        lots = connection.execute(
            select(DyeLot.id).where(DyeLot.colourway == colourway, DyeLot.base == base,
                                    DyeLot.struck.is_(None))
            .order_by(DyeLot.id.desc()).limit(20)).scalars().all()
        read = read_of_lots(connection, lots)
        standard = next((newest(read[lot]) for lot in lots if lot in read), {})
    return {viewing: colour for (viewing, zone), colour in standard.items() if not zone}


def _stand_ins(
    connection: Connection, place: PlaceNow, card: Mapping[str, int],
    colours: Mapping[str, Colour], left: Mapping[Yarn, Sequence[LotLeft]],
) -> tuple[Substitute, ...]:
    found = colours_of(connection, [(one.name, one.colourway, place.base)
                                    for one in place.stand_ins])
    lots = {one.name: _counts(left[one.colourway, place.base, place.put_up])
            for one in place.stand_ins}
    viewing = colours[place.letter].viewing
    return substitutes(place.letter, card, colours, [
        Candidate(name, colour, lots[name]) for name, colour in found.items()
        if colour.viewing == viewing])


def _left(
    connection: Connection, wanted: set[Yarn]
) -> dict[Yarn, tuple[LotLeft, ...]]:
    """What is left of each lot of a yarn, by the one definition of left to sell."""
    found: dict[Yarn, list[LotLeft]] = defaultdict(list)
    for put_up in {put_up for _, _, put_up in wanted}:
        of = {(colourway, base) for colourway, base, form in wanted if form == put_up}
        rows = connection.execute(
            select(DyeLot.id, DyeLot.code, DyeLot.colourway, DyeLot.base)
            .where(DyeLot.colourway.in_({one for one, _ in of}), DyeLot.struck.is_(None))).all()
        lots = {row.id: row for row in rows if (row.colourway, row.base) in of}
        for lot, left in left_of(connection, lots, put_up).items():
            row = lots[lot]
            if left.count:
                found[row.colourway, row.base, put_up].append(LotLeft(row.code or "", left.count))
    return {yarn: tuple(sorted(found[yarn], key=lambda lot: (-lot.count, lot.code)))
            for yarn in wanted}


def _counts(lots: Sequence[LotLeft]) -> tuple[int, ...]:
    return tuple(lot.count for lot in lots)


def _places(connection: Connection, patterns: Sequence[int]) -> dict[int, list[PlaceNow]]:
    rows = connection.execute(_PLACES, {"ids": listed(patterns)}).all()
    allowed: dict[int, list[StandInNow]] = defaultdict(list)
    for place, colourway, name in connection.execute(
            _STAND_INS, {"ids": listed(row.id for row in rows)}):
        allowed[place].append(StandInNow(colourway, name))
    found: dict[int, list[PlaceNow]] = defaultdict(list)
    for row in rows:
        found[row.pattern].append(PlaceNow(
            row.letter, row.wanted, row.colourway, row.name, row.base, row.base_name,
            row.put_up, row.swatch, tuple(allowed[row.id])))
    return found
