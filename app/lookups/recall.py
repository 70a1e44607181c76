"""Who has something of one source: every skein in one place or with one buyer, and it adds up."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from math import ceil, floor

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.certainty import Link, links_of
from app.lookups.customers import names_of
from app.lookups.present import NOT_MATCHED, Amount, Leaf, leaves, totals
from app.lookups.thread import Thread, thread
from app.lookups.walks import below
from app.records import CustomerOrder, OrderLine, Plate, Tag, TagOn, Whereabouts
from app.store.dialect import among, listed

NOBODY_KNOWS = ("sent, buyer not known", "missing at a count", "lost", NOT_MATCHED)
"""States in which nobody can say where a skein is."""


@dataclass(frozen=True, slots=True)
class WithOne:
    """Skeins that one buyer got with one order, or that lie in one place, and how many are hit."""

    state: str
    put_up: str
    customer: int | None
    name: str | None
    order: str | None
    place: str | None
    since: datetime | None
    marks: tuple[str, ...]
    count: int
    mg: int
    hit: Link

    @property
    def hit_words(self) -> str:
        """'all 4', '2 of the 4', 'likely 1 to 2 of the 4'."""
        return hit_words(self.hit)


@dataclass(frozen=True, slots=True)
class RecallList:
    """All that may come from one thing, as it is now; `totals` by state and put-up add up to it."""

    kind: str
    thing: int
    rows: tuple[WithOne, ...]
    totals: Mapping[tuple[str, str], Amount]
    together: Link | None

    @property
    def count(self) -> int:
        """Skeins, minis and balls in all."""
        return sum(amount.count for amount in self.totals.values())

    @property
    def mg(self) -> int:
        """Milligrams of wound dry mass in all."""
        return sum(amount.mg for amount in self.totals.values())

    @property
    def accounted(self) -> int:
        """Those whose place or buyer is known."""
        return sum(amount.count for (state, _), amount in self.totals.items()
                   if state not in NOBODY_KNOWS)


def hit_words(link: Link) -> str:
    """How many of some are hit: what is sure, else what is likely from what is expected."""
    if link.least == link.most:
        if link.least == link.of:
            return f"all {link.of}" if link.of > 1 else "this one"
        return f"{link.least} of the {link.of}"
    low, high = max(link.least, floor(link.expected)), min(link.most, ceil(link.expected))
    likely = f"{low} to {high}" if low < high else f"{high}"
    return f"likely {likely} of the {link.of}"


_WHERE = (
    select(Whereabouts.yarn, Whereabouts.since, Whereabouts.customer, Plate.words, Plate.code,
           CustomerOrder.number, CustomerOrder.customer.label("buyer"))
    .outerjoin(Plate, Plate.id == Whereabouts.place)
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(among(Whereabouts.yarn, "ids"), Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None))
)
_MARKS = (
    select(TagOn.yarn, Tag.mark).join(Tag, Tag.id == TagOn.tag)
    .where(among(TagOn.yarn, "ids"), TagOn.struck.is_(None)).order_by(TagOn.since)
)


def recall_list(connection: Connection, kind: str, thing: int) -> RecallList:
    """Everything below a cone, batch, lot, bath, fill, load or yarn, by buyer and place."""
    found = leaves(connection, below(connection, kind, thing))
    above = thread(connection, [leaf.yarn for leaf in found],
                   fill=thing if kind == "fill" else None)
    found = tuple(leaf for leaf in found if _hit(above, [leaf], kind, thing))
    ids = {"ids": listed(leaf.yarn for leaf in found)}
    where = {row.yarn: row for row in connection.execute(_WHERE, ids)}
    marks = {row: shown(mark) for row, mark in connection.execute(_MARKS, ids)}
    groups: dict[tuple[object, ...], list[Leaf]] = defaultdict(list)
    for leaf in found:
        here = where.get(leaf.yarn)
        stays = (here.number, here.buyer or here.customer, here.words or here.code) if here else ()
        groups[leaf.state, leaf.put_up, *stays].append(leaf)
    names = names_of(connection, (row.buyer or row.customer for row in where.values()))
    rows = []
    for some in groups.values():
        first, here = some[0], where.get(some[0].yarn)
        hit = _hit(above, some, kind, thing)
        customer = (here.buyer or here.customer) if here else None
        if hit is not None:
            rows.append(WithOne(
                first.state, first.put_up, customer, names.get(customer) if customer else None,
                here.number if here else None, (here.words or here.code) if here else None,
                here.since if here else None,
                tuple(marks[leaf.yarn] for leaf in some if leaf.yarn in marks),
                sum(leaf.count for leaf in some), sum(leaf.mg for leaf in some), hit))
    there = {leaf.yarn for leaf in found}
    once = [leaf for leaf in found if there.isdisjoint(leaf.one_of)]
    return RecallList(kind, thing, tuple(sorted(rows, key=_order)), totals(found),
                      _hit(above, once, kind, thing))


def _hit(above: Thread, some: Iterable[Leaf], kind: str, thing: int) -> Link | None:
    members = {leaf.yarn: leaf.count for leaf in some}
    return next((link for link in links_of(above, members, kind) if link.thing == thing), None)


def _order(row: WithOne) -> tuple[bool, str, str, str]:
    """Known buyers first, by name; then the states in their order."""
    return row.name is None, row.name or "", row.state, row.order or ""
