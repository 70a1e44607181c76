"""The wet work: which cord is in which tub, machine or steamer or on which rail, since when."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, Select, select

from app.calculations.codes import Kind
from app.lookups.bundles import PILED, WOUND, BundleFacts, bundle_facts, bundles_now
from app.lookups.things import by_code
from app.lookups.walks import above
from app.records import Bath, DeedRow, DyeLot, InBath, InLoad, Load, Part, Plate, Yarn
from app.store.dialect import among, listed

PLACES = (Kind.VESSEL, Kind.RAIL, Kind.STEAMER)
"""The kinds of plates that a load may be in."""
IN_BATH, LIFTED, GATHERED = "in the bath", "lifted", "gathered"
"""Where a cord is that is in no load: its pot, out of it, or tied on a cord once more."""
_REMEMBERED = 500  # loads back to where it is looked up what was done in a place
_OF_KIND = {Kind.RAIL: "rail", Kind.STEAMER: "steamer"}
_OF_WORDS = {"soak": "soak", "spin": "spin", "wash": "wash", "rinse": "wash", "basin": "wash"}


@dataclass(frozen=True, slots=True)
class WetPlace:
    """A tub, machine, rail or steamer by its plate; `step` is what is done in it, if it is known.

    Known by its kind, else by the words on the plate, else by the last load that was in it.
    """

    id: int
    kind: Kind
    number: int
    words: str
    step: str | None

    @property
    def what(self) -> str:
        """'soak tub', 'rail, heater side': what wears the plate, without its number."""
        if self.kind is Kind.VESSEL:
            return self.words or "tub or machine"
        return f"{self.kind.value}, {self.words}" if self.words else self.kind.value

    @property
    def where(self) -> str:
        """'in soak tub 3', 'on rail 2'."""
        what = self.what if self.kind is Kind.VESSEL else self.kind.value
        return f"{'on' if self.kind is Kind.RAIL else 'in'} {what} {self.number}"


@dataclass(frozen=True, slots=True)
class WetCord:
    """A cord and the last thing that was done with it: a step, or IN_BATH, LIFTED, GATHERED."""

    cord: BundleFacts
    step: str
    since: datetime
    load: int | None = None
    place: int | None = None


@dataclass(frozen=True, slots=True)
class InPlace:
    """A place and the cords in it; no place where none was written with the load."""

    place: WetPlace | None
    cords: tuple[WetCord, ...]

    @property
    def since(self) -> datetime:
        """When the first of them came; raises ValueError where none is in it."""
        return min(wet.since for wet in self.cords)

    @property
    def where(self) -> str:
        """'in soak tub 3', 'on rail 2'; 'in no place' where none was written with the load."""
        return self.place.where if self.place else "in no place"


@dataclass(frozen=True, slots=True)
class WetWork:
    """The places in use, the one that was filled first first, and the cords that wait."""

    places: tuple[InPlace, ...]
    waiting: tuple[WetCord, ...]


def wet_work(connection: Connection, at: datetime) -> WetWork:
    """Where every cord was that was not counted yet; what was never wetted is left out."""
    cords = [cord for cord in bundles_now(connection, at) if cord.stage != PILED]
    met = last_of(connection, [row for cord in cords for row in cord.rows], at)
    wet = [_wet(cord, met) for cord in cords]
    within: dict[int | None, list[WetCord]] = defaultdict(list)
    for one in wet:
        if one is not None and one.load is not None:
            within[one.place].append(one)
    places = places_at(connection, [place for place in within if place is not None])
    found = [InPlace(places.get(place or 0), tuple(sorted(there, key=lambda one: one.since)))
             for place, there in within.items()]
    waiting = [one for one in wet if one is not None and one.step in (LIFTED, GATHERED)]
    return WetWork(tuple(sorted(found, key=lambda one: one.since)),
                   tuple(sorted(waiting, key=lambda one: one.since)))


def cords_on(
    connection: Connection, discs: Sequence[int], at: datetime
) -> tuple[BundleFacts, ...]:
    """The cords that these discs hung on then; a disc that hung on nothing is left out."""
    found = (bundle_facts(connection, disc, at) for disc in discs)
    return tuple(cord for cord in found if cord is not None)


def place_with(connection: Connection, code: str, at: datetime) -> InPlace | None:
    """The tub, machine, rail or steamer whose plate has this code, with what was in it; or none."""
    found = by_code(connection, code)
    if found is None or found.kind not in PLACES:
        return None
    place = places_at(connection, [found.id])[found.id]
    used = (one for one in wet_work(connection, at).places if one.place == place)
    return next(used, None) or InPlace(place, ())


@dataclass(frozen=True, slots=True)
class Met:
    """Something that was done with a row by water or steam, or to get it there."""

    happened: datetime
    deed: int
    step: str
    load: int | None = None
    place: int | None = None

    def order(self) -> tuple[datetime, int]:
        """When it happened; of two at one moment the one that was written later is the last."""
        return self.happened, self.deed


_LOADS = (
    select(InLoad.yarn, DeedRow.happened, DeedRow.seq, Load.step, Load.id, Load.plate)
    .join(Load, Load.id == InLoad.load).join(DeedRow, DeedRow.seq == InLoad.deed)
    .where(among(InLoad.yarn, "ids"), InLoad.struck.is_(None))
)
_BATHS: Select[int, datetime, int] = (
    select(InBath.yarn, DeedRow.happened, DeedRow.seq)
    .join(DeedRow, DeedRow.seq == InBath.deed)
    .where(among(InBath.yarn, "ids"), InBath.struck.is_(None))
)
_LIFTS: Select[int, datetime, int] = (
    select(InBath.yarn, DeedRow.happened, DeedRow.seq)
    .join(DyeLot, DyeLot.id == InBath.lot).join(Bath, Bath.id == DyeLot.bath)
    .join(DeedRow, DeedRow.seq == Bath.lifted)
    .where(among(InBath.yarn, "ids"), InBath.struck.is_(None))
)
_ABOVE = (
    select(Part.child, Part.parent, Yarn.kind, DeedRow.happened, DeedRow.seq)
    .join(Yarn, Yarn.id == Part.parent).join(DeedRow, DeedRow.seq == Part.deed)
    .where(among(Part.child, "ids"), Part.struck.is_(None))
)


def last_of(connection: Connection, rows: Collection[int], at: datetime) -> Mapping[int, Met]:
    """{row: what was done with it last} by that moment; a row of which nothing was is left out.

    A part inherits what was done with the whole; what was gathered begins anew.
    """
    ids = {"ids": listed(above(connection, rows))}
    met, parents = _met(connection, ids), defaultdict[int, list[int]](list)
    for child, parent, kind, happened, deed in connection.execute(_ABOVE, ids):
        if kind == "group":
            parents[child].append(parent)
        elif kind == "skein":
            met[child].append(Met(happened, deed, GATHERED))
    done = {row: [one for up in _upwards(parents, row) for one in met[up] if one.happened <= at]
            for row in rows}
    return {row: max(of_row, key=Met.order) for row, of_row in done.items() if of_row}


def _met(connection: Connection, ids: Mapping[str, object]) -> defaultdict[int, list[Met]]:
    met: defaultdict[int, list[Met]] = defaultdict(list)
    for row in connection.execute(_LOADS, ids):
        met[row.yarn].append(Met(row.happened, row.seq, row.step, row.id, row.plate))
    for step, question in ((IN_BATH, _BATHS), (LIFTED, _LIFTS)):
        for yarn, happened, deed in connection.execute(question, ids):
            met[yarn].append(Met(happened, deed, step))
    return met


def _upwards(parents: Mapping[int, Sequence[int]], row: int) -> Iterator[int]:
    met, waiting = set(), [row]
    while waiting:
        here = waiting.pop()
        if here not in met:
            met.add(here)
            yield here
            waiting += parents.get(here, ())


def _wet(cord: BundleFacts, met: Mapping[int, Met]) -> WetCord | None:
    """A cord as its row stands that was met last; an old lot that was never lifted waits."""
    done = [met[row] for row in cord.rows if row in met]
    if not done:
        return None if cord.stage == WOUND else WetCord(cord, LIFTED, cord.since)
    last = max(done, key=Met.order)
    return WetCord(cord, last.step, last.happened, last.load, last.place)


def places_at(connection: Connection, ids: Collection[int]) -> dict[int, WetPlace]:
    """{plate: the place}, with what was done last in each."""
    last: dict[int | None, str] = {}
    for plate, step in connection.execute(
        select(Load.plate, Load.step).where(Load.struck.is_(None))
        .order_by(Load.id.desc()).limit(_REMEMBERED)
    ):
        if last.get(plate, "spin") == "spin":  # a spin follows a wash in the same machine
            last[plate] = step
    rows = connection.execute(
        select(Plate.id, Plate.code, Plate.kind, Plate.words).where(Plate.id.in_(ids))).all()
    return {
        row.id: WetPlace(row.id, Kind(row.kind), int(row.code[1:-1]), row.words,
                         _OF_KIND.get(Kind(row.kind)) or _by_words(row.words) or last.get(row.id))
        for row in rows
    }


def _by_words(words: str) -> str | None:
    """What the words on a plate say is done in it; where they say two things, nothing."""
    said = {step for word, step in _OF_WORDS.items() if word in words.casefold()}
    return said.pop() if len(said) == 1 else None
