"""Who has something of one source: every skein in one place or with one buyer, and it adds up."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from math import ceil, floor

from sqlalchemy import Connection

from app.calculations.chances import at_least_one
from app.calculations.suspect_words import percent
from app.lookups.certainty import KNOWN, PARTLY, POOL, Link, link_of, parting
from app.lookups.customers import names_of
from app.lookups.present import NOT_MATCHED, Amount, Leaf, leaves, totals, without_finds
from app.lookups.skeins import last_marks
from app.lookups.stays import NOWHERE, stays_of
from app.lookups.thread import Thing, Thread, thread
from app.lookups.urns import urn
from app.lookups.walks import below

NOBODY_KNOWS = ("sent, buyer not known", "missing at a count", "lost", NOT_MATCHED)
"""States in which nobody can say where a skein is."""
_SURE_FIRST = (KNOWN, PARTLY, POOL)


@dataclass(frozen=True, slots=True)
class WithOne:
    """Skeins that one buyer got with one order, or that lie in one place, and how many are hit.

    All of a row are equally sure: that they come from it, partly do, or may.
    """

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
    chance: Fraction | None = None
    """That at least one is hit, where all came blindly out of one pool with exact counts."""

    @property
    def hit_words(self) -> str:
        """'all 4', '2 of the 4', 'likely 1 to 2 of the 4'."""
        return hit_words(self.hit)

    @property
    def of_it(self) -> str:
        """'likely 1 to 2 of the 4 (at least one: 93 %, expected 1.67)': words before numbers."""
        if self.hit.share < 1 and self.chance is None:
            whose = "its" if self.hit.of == 1 else "their"
            return f"{self.hit_words}, {percent(float(self.hit.share))} of {whose} metres"
        if self.chance is None:
            return self.hit_words
        return (f"{self.hit_words} (at least one: {percent(float(self.chance))}, expected "
                f"{float(self.hit.expected):.2f})")


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
    """How many of some are hit: what is sure, else what is likely from what is expected.

    Of one alone, how likely it is stands beside it: "perhaps".
    """
    if link.least == link.most:
        if link.least == link.of:
            return f"all {link.of}" if link.of > 1 else "this one"
        return f"{link.least} of the {link.of}"
    if link.of == 1:
        return "perhaps this one"
    low, high = max(link.least, floor(link.expected)), min(link.most, ceil(link.expected))
    likely = f"{low} to {high}" if low < high else f"{high}"
    return f"likely {likely} of the {link.of}"


def recall_list(connection: Connection, kind: str, thing: int) -> RecallList:
    """Everything below a cone, batch, lot, bath, fill, load or yarn, by buyer and place.

    What surely comes from it stands in a row of its own, what partly does, and what may.
    """
    found = leaves(connection, below(connection, kind, thing))
    above = thread(connection, [leaf.yarn for leaf in found], (kind, thing))
    sure = {leaf: link.word for leaf in found if (link := _hit(above, [leaf], (kind, thing)))}
    found = tuple(sure)
    rows_found = [leaf.yarn for leaf in found]
    stays, marks = stays_of(connection, rows_found), last_marks(connection, rows_found)
    groups: dict[tuple[object, ...], list[Leaf]] = defaultdict(list)
    for leaf, word in sure.items():
        stay = stays.get(leaf.yarn, NOWHERE)
        groups[leaf.state, leaf.put_up, stay.order, stay.customer, stay.place, word].append(leaf)
    names = names_of(connection, (stay.customer for stay in stays.values()))
    rows = []
    for some in groups.values():
        first, stay = some[0], stays.get(some[0].yarn, NOWHERE)
        hit = _hit(above, some, (kind, thing))
        if hit is not None:
            rows.append(WithOne(
                first.state, first.put_up, stay.customer,
                names.get(stay.customer) if stay.customer else None, stay.order, stay.place,
                stay.since, tuple(marks[leaf.yarn] for leaf in some if leaf.yarn in marks),
                sum(leaf.count for leaf in some), sum(leaf.mg for leaf in some), hit,
                _chance(above, some, (kind, thing), hit)))
    return RecallList(kind, thing, tuple(sorted(rows, key=_order)), totals(found),
                      _hit(above, without_finds(found), (kind, thing)))


def _hit(above: Thread, some: Iterable[Leaf], thing: Thing) -> Link | None:
    return link_of(above, {leaf.yarn: leaf.count for leaf in some}, thing)


def _chance(above: Thread, some: Iterable[Leaf], thing: Thing, hit: Link) -> Fraction | None:
    """That at least one of them is hit: drawn without looking out of one pool (hypergeometric)."""
    pools = {0 if leaf.one_of else parting(above, leaf.yarn) for leaf in some}
    pool = pools.pop() if len(pools) == 1 else 0
    if hit.least or not above.sources.get(pool):
        return None
    left = urn(above, pool, [thing])
    if thing not in left.given or left.size < hit.of:
        return None
    return at_least_one(left.size, left.given[thing], hit.of)


def _order(row: WithOne) -> tuple[bool, str, str, str, str, int]:
    """Known buyers first, by name; then the states in their order; what is sure before the rest."""
    return (row.name is None, row.name or "", row.state, row.order or "", row.place or "",
            _SURE_FIRST.index(row.hit.word))
