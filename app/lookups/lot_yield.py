"""What became of the skeins of a lot: how many were there at each step, of how many expected."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.certainty import links_of
from app.lookups.finishing import expected_by_tie
from app.lookups.lot_bath import LotBath
from app.lookups.lot_loads import LotLoad
from app.lookups.thread import Thread, thread
from app.records import DeedRow, InBath, PutUpWeight, Reading, Yarn
from app.store.dialect import among, listed

STEPS = ("wound", "in the bath", "hung", "counted", "tagged")


@dataclass(frozen=True, slots=True)
class YieldAt:
    """Skeins of the lot at a step; `most` is more where other lots lay among them."""

    step: str
    least: int
    most: int
    expected: int
    mg: int | None
    """As wound; none where the row holds other lots too."""
    expected_mg: int | None
    at: datetime | None
    """Of the last entry of the step; none: it is not written."""
    people: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Counted:
    """One pile of the finishing count: how many, and the ties they wore."""

    ties: str
    count: int
    at: datetime
    person: str


@dataclass(frozen=True, slots=True)
class Weighed:
    """A weight that was read of some yarn of the lot."""

    mg: int
    at: datetime
    person: str


_ROWS = (
    select(Yarn.id, Yarn.kind, Yarn.count.label("members"), Yarn.mg, DeedRow.happened,
           DeedRow.person)
    .join(DeedRow, DeedRow.seq == Yarn.deed)
    .where(among(Yarn.id, "ids"), Yarn.struck.is_(None)).order_by(Yarn.id)
)

_READ = (
    select(Reading.value, DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == Reading.deed)
    .where(among(Reading.yarn, "ids"), Reading.kind == "weight mg", Reading.struck.is_(None))
    .order_by(Reading.id)
)
_AT_TAG_TABLE = (
    select(PutUpWeight.mg, DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == PutUpWeight.deed)
    .where(among(PutUpWeight.yarn, "ids"), PutUpWeight.struck.is_(None)).order_by(PutUpWeight.id)
)


def lot_yield(
    connection: Connection, lot: int, scope: Collection[int], loads: Iterable[LotLoad],
    bath: LotBath | None,
) -> tuple[YieldAt, ...]:
    """The lot at each step; expected is what was wound, by weight what was weighed out for."""
    found = thread(connection, scope)
    rows = {row.id: row for row in connection.execute(_ROWS, {"ids": listed(scope)})}
    dyed = list(connection.execute(
        select(InBath.yarn).where(InBath.lot == lot, InBath.struck.is_(None))).scalars())
    whole = sum(rows[row].members for row in dyed if row in rows)
    one_lot = bath is not None and len({cord.lot for cord in bath.cords}) == 1
    due = (bath.dry_mg if bath and one_lot else None) or sum(
        rows[row].mg for row in dyed if row in rows)
    hung = [load for load in loads if load.step == "rail"]
    met = {
        "wound": dyed, "in the bath": dyed,
        "hung": [row for load in hung for row in load.rows],
        "counted": [row for row in rows if rows[row].kind == "pile"],
        "tagged": [row for row in rows if rows[row].kind == "skein"],
    }
    when = {"in the bath": [(bath.begun, bath.person)] if bath else [],
            "hung": [(load.at, load.person) for load in hung]}
    steps = []
    for step in STEPS:
        here = _outermost(found, met[step])
        entries = when.get(step, [(rows[row].happened, rows[row].person) for row in here])
        link = next((one for one in links_of(found, {row: found.count[row] for row in here}, "lot")
                     if one.thing == lot), None) if here else None
        pure = link is not None and link.least == link.of
        steps.append(YieldAt(
            step, link.least if link else 0, link.most if link else 0, whole,
            sum(rows[row].mg for row in here) if pure else None, due or None,
            max((at for at, _ in entries), default=None),
            tuple(dict.fromkeys(person for _, person in entries))))
    return tuple(steps)


def lot_counts(connection: Connection, scope: Collection[int]) -> tuple[Counted, ...]:
    """The finishing count of a lot, pile by pile, by tie colour."""
    found = thread(connection, scope)
    rows = {row.id: row for row in connection.execute(_ROWS, {"ids": listed(scope)})
            if row.kind == "pile"}
    return tuple(
        Counted(" and ".join(one.tie for one in expected_by_tie(connection, [pile]) if one.most)
                or _ties_at_birth(connection, pile),
                rows[pile].members, rows[pile].happened, rows[pile].person)
        for pile in _outermost(found, rows))


def lot_weights(connection: Connection, scope: Collection[int]) -> tuple[Weighed, ...]:
    """Weights that were read of yarn of the lot, those of its put-ups at the tag table too."""
    rows = (row for question in (_READ, _AT_TAG_TABLE)
            for row in connection.execute(question, {"ids": listed(scope)}))
    return tuple(sorted((Weighed(*row) for row in rows), key=lambda one: one.at))


def _outermost(found: Thread, rows: Collection[int]) -> list[int]:
    """The rows that came out of none of the others: each skein once."""
    chosen, kept = set(rows), []
    for row in dict.fromkeys(rows):
        waiting = [source.parent for source in found.sources.get(row, ())]
        met: set[int] = set()
        while waiting:
            parent = waiting.pop()
            if parent not in met:
                met.add(parent)
                waiting += [source.parent for source in found.sources.get(parent, ())]
        if not met & chosen:
            kept.append(row)
    return kept


def _ties_at_birth(connection: Connection, pile: int) -> str:
    """The ties of a pile all of whose skeins were tagged since."""
    rows = thread(connection, [pile]).count
    ties = connection.execute(
        select(Yarn.tie).where(among(Yarn.id, "ids"), Yarn.tie.is_not(None)).distinct()
        .order_by(Yarn.tie), {"ids": listed(rows)}).scalars()
    return " and ".join(tie for tie in ties if tie) or "no tie"
