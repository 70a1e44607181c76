"""What the book knows of one kind of fault: every skein in question, and what it went through."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import tzinfo
from fractions import Fraction

from sqlalchemy import Connection, select

from app.calculations.evidence import Evidence, Pool, Seen, Skein, Suspect
from app.lookups.certainty import parting, tally
from app.lookups.fault_cases import other_cases
from app.lookups.present import NOT_MATCHED, Leaf, leaves
from app.lookups.suspect_names import named
from app.lookups.thread import Thing, Thread, thread
from app.lookups.urns import Urn, urn
from app.lookups.walks import below
from app.lookups.winder_days import WINDER_DAY, WinderDays
from app.records import Report, Sighting
from app.store.dialect import among, listed

SOLD = ("sent, buyer known", "sent, buyer not known", "given")
KINDS = ("cone", "lot", "fill", "load", WINDER_DAY)


@dataclass(frozen=True, slots=True)
class InQuestion:
    """The evidence on one fault; `row` gives the yarn of a skein's name, `thing` of a suspect."""

    fault: str
    evidence: Evidence
    row: Mapping[str, int]
    thing: Mapping[Suspect, Thing]
    stated: int
    """Skeins told of without a tag: they are not reckoned with."""
    other_cases: int = 0
    """Faulty skeins of reports that are another case than the one asked for: left out too."""


_FAULTY = (
    select(Sighting.yarn).join(Report, Report.id == Sighting.report)
    .where(Sighting.faulty == 1, Sighting.struck.is_(None), Report.struck.is_(None)).distinct()
)
_SEEN = (
    select(Sighting.yarn, Sighting.faulty, Report.fault)
    .outerjoin(Report, Report.id == Sighting.report)
    .where(among(Sighting.yarn, "ids"), Sighting.struck.is_(None)).order_by(Sighting.id)
)
_STATED = select(Report.count).where(
    Report.lot.is_not(None), Report.struck.is_(None),
    ~select(Sighting.id).where(Sighting.report == Report.id, Sighting.struck.is_(None)).exists())


def in_question(
    connection: Connection, fault: str, zone: tzinfo | None = None, report: int | None = None
) -> InQuestion | None:
    """All skeins that share something with one that has this fault; none where none was found.

    Suspects are all things that any of these skeins went through: what touched none of the faulty
    ones has its part of the prior too, and is cleared by its silence and its good ones.
    """
    apart = other_cases(connection, fault, report)
    faulty = [yarn for yarn in connection.execute(_FAULTY.where(Report.fault == fault)).scalars()
              if yarn is not None and yarn not in apart]
    if not faulty:
        return None
    days = WinderDays(zone)
    rows = set(faulty)
    for kind, number in _things(days.added(connection, thread(connection, faulty))):
        rows.update(days.below(connection, number or 0) if kind == WINDER_DAY
                    else below(connection, kind, number or 0))
    found = [leaf for leaf in leaves(connection, rows) if leaf.state != NOT_MATCHED]
    whole = days.added(connection, thread(connection, [leaf.yarn for leaf in found]))
    suspects = named(connection, _things(whole), days.words)
    evidence, row = _Sorting(whole, suspects).sorted(found, _seen(connection, fault, found, apart))
    stated = connection.execute(_STATED.where(Report.fault == fault)).scalars()
    return InQuestion(fault, evidence, row, {one: thing for thing, one in suspects.items()},
                      sum(count or 1 for count in stated), len(apart))


def _seen(
    connection: Connection, fault: str, found: Iterable[Leaf], apart: Collection[int]
) -> Mapping[int, Seen]:
    """What was seen of each row: the fault itself before a good look, and silence once it is sold.

    Who found another fault on a skein may not have looked for this one: that says nothing, and
    nor does this fault where it is settled that it is another case.
    """
    state = {leaf.yarn: Seen.SILENT if leaf.state in SOLD else Seen.UNSEEN for leaf in found}
    looked: dict[int, Seen] = {}
    other: set[int] = set()
    for yarn, is_faulty, of in connection.execute(_SEEN, {"ids": listed(state)}):
        if is_faulty and of == fault and yarn not in apart:
            looked[yarn] = Seen.FAULTY
        elif is_faulty:
            other.add(yarn)
        elif of in (None, fault) and looked.get(yarn) is not Seen.FAULTY:
            looked[yarn] = Seen.GOOD
    return state | dict.fromkeys(other, Seen.UNSEEN) | looked


def _things(above: Thread) -> set[Thing]:
    return {thing for own in above.own.values() for thing in own
            if thing[0] in KINDS and thing[1] is not None}


class _Sorting:
    """Skeins by what they surely went through, by their shares, and in pools nobody can tell."""

    def __init__(self, above: Thread, suspects: Mapping[Thing, Suspect]) -> None:
        self._above = above
        self._suspects = suspects
        self._urns: dict[int, Urn] = {}
        self._above_it: dict[int, frozenset[Thing]] = {}
        self._alike: dict[object, tuple[frozenset[Suspect], dict[Suspect, Fraction], int]] = {}

    def sorted(
        self, found: Sequence[Leaf], seen: Mapping[int, Seen]
    ) -> tuple[Evidence, Mapping[str, int]]:
        """The evidence, and the row of each skein's name: a row of many has a name for each."""
        skeins, row = [], {}
        pools: dict[int, set[str]] = defaultdict(set)
        for leaf in found:
            through, shares, pool = self._went(leaf.yarn)
            for number in range(leaf.count):
                name = str(leaf.yarn) if leaf.count == 1 else f"{leaf.yarn}/{number + 1}"
                row[name] = leaf.yarn
                skeins.append(Skein(name, seen[leaf.yarn], through, shares))
                if pool:
                    pools[pool].add(name)
        return Evidence(skeins, [self._pool(pool, names) for pool, names in pools.items()]), row

    def _pool(self, pool: int, names: set[str]) -> Pool:
        urn = self._urns[pool]
        given = {self._suspects[thing]: count for thing, count in urn.given.items()}
        return Pool(frozenset(names), given, max(urn.size, len(names)))

    def _went(self, yarn: int) -> tuple[frozenset[Suspect], dict[Suspect, Fraction], int]:
        """What one member of a row went through, in part or wholly; the pool it is one of, or 0."""
        own = tuple((thing, link.share) for thing, link in self._above.own[yarn].items()
                    if thing in self._suspects)
        told = tuple(sorted(self._above.told.get(yarn, {}).items()))
        sources = self._above.sources.get(yarn, ())
        alike: object = (own, sources, told) if sources else yarn
        if alike not in self._alike:
            self._alike[alike] = self._found(yarn)
        return self._alike[alike]

    def _found(self, yarn: int) -> tuple[frozenset[Suspect], dict[Suspect, Fraction], int]:
        pool = parting(self._above, yarn)
        exact = self._urn(pool).given if self._above.sources.get(pool) else {}
        through, shares, of_pool = set[Suspect](), dict[Suspect, Fraction](), 0
        met = self._met(yarn)
        for thing, suspect in self._suspects.items():
            if thing not in met:
                continue
            got = tally(self._above, {yarn: 1}, thing)
            if not got.most:
                continue
            if got.least == got.metres == 1:
                through.add(suspect)
            elif thing in exact:
                of_pool = pool
            else:
                shares[suspect] = got.metres
        return frozenset(through), shares, of_pool

    def _met(self, yarn: int) -> frozenset[Thing]:
        """All that any of its ways up goes through: nothing else can have touched it."""
        if yarn not in self._above_it:
            parents = (source.parent for source in self._above.sources.get(yarn, ()))
            self._above_it[yarn] = frozenset(self._above.own[yarn]).union(
                *(self._met(parent) for parent in parents))
        return self._above_it[yarn]

    def _urn(self, pool: int) -> Urn:
        if pool not in self._urns:
            self._urns[pool] = urn(self._above, pool, self._suspects)
        return self._urns[pool]
