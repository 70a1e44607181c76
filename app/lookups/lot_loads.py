"""The loads of a lot: soak, wash, spin, rail, steamer, what was read, and who else was in them."""

from collections import defaultdict
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.walks import above, below
from app.records import DeedRow, DyeLot, InBath, InLoad, Load, LoadReading, Plate, Yarn
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class LoadRead:
    """A number read of a load: rinse, bleed (0 none, 1 slight, 2 strong), the room."""

    kind: str
    value: int
    at: datetime
    person: str


@dataclass(frozen=True, slots=True)
class LotLoad:
    """One load that yarn of the lot was in."""

    load: int
    step: str
    where: str | None
    at: datetime
    person: str
    rows: tuple[int, ...]
    """Of this lot."""
    count: int
    others: tuple[str, ...]
    """Codes of the other lots in it; 'undyed yarn' where some had none."""
    readings: tuple[LoadRead, ...]

    def read(self, kind: str) -> tuple[LoadRead, ...]:
        """What was read of one kind, in its order."""
        return tuple(one for one in self.readings if one.kind == kind)


_LOADS = (
    select(Load.id, Load.step, Plate.code, Plate.words, DeedRow.happened, DeedRow.person,
           InLoad.yarn, Yarn.count.label("members"))
    .join(InLoad, InLoad.load == Load.id).join(Yarn, Yarn.id == InLoad.yarn)
    .join(DeedRow, DeedRow.seq == Load.deed).outerjoin(Plate, Plate.id == Load.plate)
    .where(InLoad.struck.is_(None), Load.struck.is_(None)).order_by(DeedRow.happened, Load.id)
)
_IN_THEM = select(InLoad.load, InLoad.yarn).where(
    among(InLoad.load, "ids"), InLoad.struck.is_(None)).order_by(InLoad.id)
_LOTS = (
    select(DyeLot.code).join(InBath, InBath.lot == DyeLot.id)
    .where(among(InBath.yarn, "ids"), InBath.struck.is_(None)).order_by(DyeLot.id)
)


def lot_loads(connection: Connection, scope: Collection[int]) -> tuple[LotLoad, ...]:
    """The loads that any of these rows was in, in the order in which they happened."""
    rows = connection.execute(_LOADS.where(among(InLoad.yarn, "ids")),
                              {"ids": listed(scope)}).all()
    met = {row.id: row for row in rows}
    mine, inside = defaultdict(list), defaultdict(list)
    for row in rows:
        mine[row.id].append(row)
    for load, yarn in connection.execute(_IN_THEM, {"ids": listed(met)}):
        inside[load].append(yarn)
    return tuple(
        LotLoad(row.id, row.step, row.words or (row.code and str(int(row.code[1:-1]))),
                row.happened, row.person, tuple(one.yarn for one in mine[row.id]),
                sum(one.members for one in mine[row.id]),
                _others(connection, [yarn for yarn in inside[row.id] if yarn not in scope]),
                _readings(connection, row.id, scope))
        for row in met.values())


def _others(connection: Connection, rows: Iterable[int]) -> tuple[str, ...]:
    """The lots that these rows were of, or became."""
    codes: dict[str, None] = {}
    for row in rows:
        near = {*above(connection, [row]), *below(connection, "yarn", row)}
        found = connection.execute(_LOTS, {"ids": listed(near)}).scalars().all()
        codes |= dict.fromkeys([shown(code or "no code yet") for code in found]
                               or ["undyed yarn"])
    return tuple(codes)


def _readings(
    connection: Connection, load: int, scope: Collection[int]
) -> tuple[LoadRead, ...]:
    rows = connection.execute(
        select(LoadReading.kind, LoadReading.value, LoadReading.yarn, DeedRow.happened,
               DeedRow.person)
        .join(DeedRow, DeedRow.seq == LoadReading.deed)
        .where(LoadReading.load == load, LoadReading.struck.is_(None))
        .order_by(DeedRow.happened, LoadReading.id))
    return tuple(LoadRead(row.kind, row.value, row.happened, row.person) for row in rows
                 if row.yarn is None or row.yarn in scope)
