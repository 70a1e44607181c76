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


def leaves(connection: Connection, ids: Iterable[int]) -> tuple[Leaf, ...]:
    """What is left of these rows, each in its state."""
    return tuple(
        Leaf(row.id, row.kind, _state(row.state, row.customer, row.kind, row.closed), row.put_up,
             row.members - row.took, row.mg - row.gone - row.wasted)
        for row in connection.execute(_LEAVES, {"ids": listed(ids)})
        if row.kind != "candidates" and row.members > row.took
    )


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
    sums: dict[tuple[str, str], Amount] = defaultdict(lambda: Amount(0, 0))
    for leaf in found:
        state = NOT_MATCHED if leaf.kind == "find" else leaf.state
        before = sums[state, leaf.put_up]
        sums[state, leaf.put_up] = Amount(before.count + leaf.count, before.mg + leaf.mg)
    return dict(sums)
