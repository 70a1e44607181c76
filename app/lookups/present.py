"""Where all yarn below something is now: every row that is left, in exactly one state."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.records import CustomerOrder, OrderLine, Part, Waste, Whereabouts, Yarn
from app.store.dialect import among, listed

NOT_MATCHED = "found, not matched"


@dataclass(frozen=True, slots=True)
class Leaf:
    """Members of a row that did not become anything else yet."""

    yarn: int
    kind: str
    state: str
    put_up: str
    count: int
    mg: int
    one_of: tuple[int, ...] = ()
    """A find that is one of these rows: it takes the place of one of them in every sum."""


@dataclass(frozen=True, slots=True)
class Amount:
    """Skeins (or minis, balls) and milligrams of wound dry mass."""

    count: int
    mg: int


_TOOK = (
    select(func.coalesce(func.sum(Part.took), 0))
    .where(Part.parent == Yarn.id, Part.struck.is_(None)).scalar_subquery()
)
_GONE = (
    select(func.coalesce(func.sum(Part.mg), 0))
    .where(Part.parent == Yarn.id, Part.struck.is_(None)).scalar_subquery()
)
_WASTED = (
    select(func.coalesce(func.sum(Waste.mg), 0))
    .where(Waste.yarn == Yarn.id, Waste.struck.is_(None)).scalar_subquery()
)
_LEAVES = (
    select(Yarn.id, Yarn.kind, Yarn.put_up, Yarn.count.label("members"), Yarn.mg, Yarn.closed,
           Whereabouts.state, CustomerOrder.customer, _TOOK.label("took"), _GONE.label("gone"),
           _WASTED.label("wasted"))
    .outerjoin(Whereabouts, (Whereabouts.yarn == Yarn.id) & Whereabouts.until.is_(None)
               & Whereabouts.struck.is_(None))
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(Yarn.id, "ids"), Yarn.struck.is_(None))
    .order_by(Yarn.id)
)


_CANDIDATES = (
    select(Part.child, Part.parent, Part.took)
    .where(among(Part.child, "ids"), Part.struck.is_(None)).order_by(Part.id)
)


def leaves(connection: Connection, ids: Iterable[int]) -> tuple[Leaf, ...]:
    """What is left of these rows, each in its state."""
    rows = [row for row in connection.execute(_LEAVES, {"ids": listed(ids)})
            if row.kind != "candidates" and row.members > row.took]
    matched = _matched(connection, [row.id for row in rows if row.kind == "find"])
    return tuple(
        Leaf(row.id, row.kind, _state(row.state, row.customer, row.kind, row.closed)
             if row.kind != "find" or row.id in matched else NOT_MATCHED, row.put_up,
             row.members - row.took, row.mg - row.gone - row.wasted, matched.get(row.id, ()))
        for row in rows
    )


def _matched(connection: Connection, finds: list[int]) -> dict[int, tuple[int, ...]]:
    """Finds that were matched, each with the rows it is one of; none where it is one for sure."""
    if not finds:
        return {}
    parents = {child: parent for child, parent, _ in
               connection.execute(_CANDIDATES, {"ids": listed(finds)})}
    pools: dict[int, list[int]] = defaultdict(list)
    for pool, row, took in connection.execute(_CANDIDATES, {"ids": listed(parents.values())}):
        if took == 0:
            pools[pool].append(row)
    return {find: tuple(pools[parent]) for find, parent in parents.items()}


def _state(state: str | None, customer: int | None, kind: str, closed: int | None) -> str:
    if state == "sent":
        return "sent, buyer known" if customer else "sent, buyer not known"
    if state is not None:
        return state
    if closed is not None:
        return "missing at a count"
    return "piled" if kind == "pile" else "in work"


def totals(found: Iterable[Leaf]) -> Mapping[tuple[str, str], Amount]:
    """{(state, put-up): amount}; states are disjoint and complete, so they add up."""
    rows = {leaf.yarn: leaf for leaf in found}
    sums: dict[tuple[str, str], list[int]] = defaultdict(lambda: [0, 0])
    taken: set[int] = set()
    for leaf in rows.values():
        mg = leaf.mg
        for row in leaf.one_of:
            if row in rows and row not in taken:
                taken.add(row)
                stood = sums[rows[row].state, rows[row].put_up]
                stood[0] -= 1
                stood[1] -= (mg := rows[row].mg)
                break
        here = sums[leaf.state, leaf.put_up]
        here[0] += leaf.count
        here[1] += mg
    return {key: Amount(count, mg) for key, (count, mg) in sums.items() if count}
