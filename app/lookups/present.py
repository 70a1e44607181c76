"""Where all yarn below something is now: every row that is left, in exactly one state."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from sqlalchemy import Connection, Select, func, select

from app.records import CustomerOrder, OrderLine, Part, Waste, Whereabouts, Yarn
from app.store.dialect import among, listed

NOT_MATCHED = "found, not matched"
HERE = ("table", "shelf", "put by", "kit", "taken")
"""Where a skein lies in the house: a find is rather one of those that are gone."""


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
    """A find that is one of these rows: it takes the place of one of them in a sum of them all."""
    seen: frozenset[int] = frozenset()
    """Those of them that were in somebody's hands with their own tag after it was matched."""


@dataclass(frozen=True, slots=True)
class Amount:
    """Skeins (or minis, balls) and milligrams of wound dry mass."""

    count: int
    mg: int


TOOK = (
    select(func.coalesce(func.sum(Part.took), 0))
    .where(Part.parent == Yarn.id, Part.struck.is_(None)).correlate(Yarn).scalar_subquery()
)
"""Members of a row that came out of it."""
GONE = (
    select(func.coalesce(func.sum(Part.mg), 0))
    .where(Part.parent == Yarn.id, Part.struck.is_(None)).scalar_subquery()
)
"""Milligrams of a row that came out of it."""
WASTED = (
    select(func.coalesce(func.sum(Waste.mg), 0))
    .where(Waste.yarn == Yarn.id, Waste.struck.is_(None)).scalar_subquery()
)
"""Milligrams of a row that were lost."""
_LEAVES = (
    select(Yarn.id, Yarn.kind, Yarn.put_up, Yarn.count.label("members"), Yarn.mg, Yarn.closed,
           Whereabouts.state, CustomerOrder.customer, TOOK.label("took"), GONE.label("gone"),
           WASTED.label("wasted"))
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
_STILL_THERE = _CANDIDATES.join(Yarn, Yarn.id == Part.parent).where(
    Part.took == 0, Yarn.count > TOOK)

_SEEN_SINCE = (
    select(Part.child, Part.parent)
    .join(Whereabouts, (Whereabouts.yarn == Part.parent) & (Whereabouts.deed > Part.deed)
          & (Whereabouts.state != "lost") & Whereabouts.struck.is_(None))
    .where(among(Part.child, "ids"), Part.took == 0, Part.struck.is_(None))
)
"""Candidates that came, went or were sold after a find was said to be one of them."""


_PARENTS = select(Part.parent).where(among(Part.child, "ids"), Part.struck.is_(None))
_CHILDREN = select(Part.child).where(among(Part.parent, "ids"), Part.struck.is_(None))
_MAYBE = _CHILDREN.where(Part.took == 0)
"""Candidates that these rows are among."""


def leaves(connection: Connection, ids: Iterable[int]) -> tuple[Leaf, ...]:
    """What is left of these rows, each in its state."""
    rows = [row for row in connection.execute(_LEAVES, {"ids": listed(ids)}).all()
            if row.kind != "candidates" and row.members > row.took]
    matched = _matched(connection, [row.id for row in rows if row.kind == "find"])
    unmatched = _Matched()
    return tuple(
        Leaf(row.id, row.kind, _state(row.state, row.customer, row.kind, row.closed)
             if row.kind != "find" or row.id in matched else NOT_MATCHED, row.put_up,
             row.members - row.took, row.mg - row.gone - row.wasted,
             *matched.get(row.id, unmatched))
        for row in rows
    )


class _Matched(NamedTuple):
    one_of: tuple[int, ...] = ()
    seen: frozenset[int] = frozenset()


def _matched(connection: Connection, finds: list[int]) -> dict[int, _Matched]:
    """Finds that were matched, each with the rows it is one of; none where it is one for sure."""
    if not finds:
        return {}
    parents = {child: parent for child, parent, _ in
               connection.execute(_CANDIDATES, {"ids": listed(finds)})}
    pools: dict[int, list[int]] = defaultdict(list)
    for pool, row, _ in connection.execute(_STILL_THERE, {"ids": listed(parents.values())}):
        pools[pool].append(row)
    seen: dict[int, set[int]] = defaultdict(set)
    for pool, row in connection.execute(_SEEN_SINCE, {"ids": listed(pools)}):
        seen[pool].add(row)
    return {find: _Matched(tuple(pools[parent]), frozenset(seen[parent]))
            for find, parent in parents.items()}


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
    sums: dict[tuple[str, str], list[int]] = defaultdict(lambda: [0, 0])
    for leaf in each_once(found):
        here = sums[leaf.state, leaf.put_up]
        here[0] += leaf.count
        here[1] += leaf.mg
    return {key: Amount(count, mg) for key, (count, mg) in sums.items()}


def each_once(found: Iterable[Leaf]) -> tuple[Leaf, ...]:
    """Every skein once: a find that is one of the others has the place and the mass of one.

    One that may be another's, which is not among these, has none: they are where their tags say.
    """
    rows = {leaf.yarn: leaf for leaf in found}
    stood_for = _stood_for(rows)
    gone = {*stood_for.values(), *(_finds_among(rows) - stood_for.keys())}
    return tuple(replace(leaf, mg=rows[stood_for[leaf.yarn]].mg) if leaf.yarn in stood_for else leaf
                 for leaf in rows.values() if leaf.yarn not in gone)


def without_finds(found: Iterable[Leaf]) -> tuple[Leaf, ...]:
    """The same without finds that are one of the others: as many, where their tags say they are."""
    rows = {leaf.yarn: leaf for leaf in found}
    finds = _finds_among(rows)
    return tuple(leaf for leaf in rows.values() if leaf.yarn not in finds)


def _finds_among(rows: Mapping[int, Leaf]) -> set[int]:
    return {leaf.yarn for leaf in rows.values() if not rows.keys().isdisjoint(leaf.one_of)}


def has_a_place(connection: Connection, find: int) -> bool:
    """Whether a matched find can stand for one of its rows, and all other finds for others."""
    finds, fresh = set[int](), {find}
    rows = set[int]()
    while fresh - finds:
        finds |= fresh
        pools = _linked(connection, _PARENTS, finds)
        rows = _linked(connection, _PARENTS, pools)
        fresh = _linked(connection, _CHILDREN, _linked(connection, _MAYBE, rows))
    return find in _stood_for({leaf.yarn: leaf for leaf in leaves(connection, finds | rows)})


def _linked(connection: Connection, links: Select[int], ids: Iterable[int]) -> set[int]:
    return set(connection.execute(links, {"ids": listed(ids)}).scalars())


def _stood_for(rows: Mapping[int, Leaf]) -> dict[int, int]:
    """{find: the row whose place it takes}; one that is, or was since, here with its tag last."""
    finds: dict[int, int] = {}

    def placed(find: int, tried: set[int]) -> bool:
        known = [row for row in rows[find].one_of if row in rows]
        seen = rows[find].seen
        for row in sorted(known, key=lambda row: (row in seen, rows[row].state in HERE)):
            if row not in tried:
                tried.add(row)
                if row not in finds or placed(finds[row], tried):
                    finds[row] = find
                    return True
        return False
    for leaf in rows.values():
        if leaf.one_of and rows.keys() >= set(leaf.one_of):
            placed(leaf.yarn, set())
    return {find: row for row, find in finds.items()}
