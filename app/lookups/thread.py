"""What lies above some yarn, read in a few statements; the arithmetic on it reads no further.

A thing is (kind, number): a cone, lot, bath, jar fill, load, maker's lot, base version or yarn;
number none is "not known".
"""

from collections import Counter, defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from sqlalchemy import Connection, select

from app.lookups.fills import dyed_of, fills_after, fills_of
from app.lookups.walks import above
from app.records import Clear, Cone, Draw, Hold, InBath, InLoad, Part, Told, Yarn
from app.records.holds import SOURCES
from app.store.dialect import among, listed

Thing = tuple[str, int | None]


@dataclass(frozen=True, slots=True)
class Source:
    """`gave` members came out of `parent` and used up `took` of its members."""

    parent: int
    took: int
    gave: int
    basis: str

    @property
    def one_of_these(self) -> bool:
        """Nothing moved, or as many came out as went in."""
        return self.took in (0, self.gave)


@dataclass(frozen=True, slots=True)
class Own:
    """A row carries the thing itself: all its metres, or a share of them."""

    share: Fraction
    basis: str


@dataclass(frozen=True, slots=True)
class Thread:
    """The rows above some yarn, as questions are answered from them."""

    count: Mapping[int, int]
    sources: Mapping[int, tuple[Source, ...]]
    own: Mapping[int, Mapping[Thing, Own]]
    told: Mapping[int, Mapping[int, tuple[int, str]]]
    """For a row: at this pool its members came from that parent, on this basis."""
    off: Mapping[tuple[int, int], int]
    """Members of (pool, parent) that were told apart and so left the urn."""
    divided: frozenset[int]
    """Rows that others among these came out of."""
    holds: tuple["LiveHold", ...] = ()


@dataclass(frozen=True, slots=True)
class LiveHold:
    """A hold that stands, and the rows that were cleared of it."""

    id: int
    source: Thing
    reaches: frozenset[Thing]
    """The source itself; of a fill also the fills its rest went on into, of a maker's lot all."""
    cleared: frozenset[int]


@dataclass(slots=True)
class _Gathered:
    own: dict[int, dict[Thing, Own]] = field(default_factory=lambda: defaultdict(dict))
    sources: dict[int, list[Source]] = field(default_factory=lambda: defaultdict(list))
    drawn: dict[int, list[tuple[int, int, str, int, int]]] = field(
        default_factory=lambda: defaultdict(list)
    )


_PARTS = select(Part.child, Part.parent, Part.took, Part.gave, Part.basis).where(
    among(Part.child, "ids"), Part.struck.is_(None)
).order_by(Part.id)
_YARN = select(Yarn.id, Yarn.count, Yarn.base_version).where(among(Yarn.id, "ids"))
_DRAWS = (
    select(Draw.yarn, Draw.cone, Draw.mm, Draw.basis, Cone.base_version, Cone.supplier_lot)
    .join(Cone, Cone.id == Draw.cone)
    .where(among(Draw.yarn, "ids"), Draw.struck.is_(None))
)
_LOTS = select(InBath.yarn, InBath.lot, InBath.basis).where(
    among(InBath.yarn, "ids"), InBath.struck.is_(None)
)
_LOADS = select(InLoad.yarn, InLoad.load, InLoad.basis).where(
    among(InLoad.yarn, "ids"), InLoad.struck.is_(None)
)
_TOLD = select(Told.yarn, Told.pool, Told.parent, Told.count, Told.basis).where(
    among(Told.pool, "ids"), Told.struck.is_(None)
)
_HOLDS = select(
    Hold.id, Hold.cone, Hold.yarn, Hold.lot, Hold.load, Hold.bath, Hold.fill, Hold.supplier_lot
).where(Hold.lifted.is_(None), Hold.struck.is_(None))
_CLEARS = select(Clear.hold, Clear.yarn).where(
    among(Clear.hold, "ids"), Clear.struck.is_(None)
)


def thread(connection: Connection, yarn: Collection[int], of: Thing | None = None) -> Thread:
    """Read all that lies above these rows, and the way to them of what was told apart of them.

    Lots name the fills that were scanned for them. Where they are asked whether they are `of` one
    fill, or of a maker's lot of powder, every fill that it went on into counts as that.
    """
    met = set(above(connection, yarn))
    ids = {"ids": listed(met)}
    told_rows = connection.execute(_TOLD, ids).all()
    apart = {row.yarn for row in told_rows} - met
    if apart:
        ids = {"ids": listed(met.union(above(connection, apart)))}
        told_rows = connection.execute(_TOLD, ids).all()
    told: dict[int, dict[int, tuple[int, str]]] = defaultdict(dict)
    off: Counter[tuple[int, int]] = Counter()
    for row, pool, parent, members, basis in told_rows:
        told[row][pool] = (parent, basis)
        off[pool, parent] += members
    got = _Gathered()
    for child, parent, took, gave, basis in connection.execute(_PARTS, ids).all():
        got.sources[child].append(Source(parent, took, gave, basis))
    for row, cone, mm, basis, version, spun in connection.execute(_DRAWS, ids).all():
        got.drawn[row].append((cone, mm, basis, version, spun))
    for kind, links in (("lot", _LOTS), ("load", _LOADS)):
        for row, thing, basis in connection.execute(links, ids).all():
            got.own[row][kind, thing] = Own(Fraction(1), basis)
    _dyed(got, connection, of)
    count = {}
    for row, members, begins_with in connection.execute(_YARN, ids).all():
        count[row] = members
        _owns(got, row, begins_with)
    kept = met.union(*(_way_to(set(yarn), row, got.sources, told, {}) for row in apart))
    sources = {row: tuple(found) for row, found in got.sources.items() if row in kept}
    return Thread(
        {row: members for row, members in count.items() if row in kept}, sources,
        {row: own for row, own in got.own.items() if row in kept}, told, off,
        frozenset(source.parent for found in sources.values() for source in found),
        live_holds(connection))


def _way_to(
    asked: Collection[int], row: int, sources: Mapping[int, Sequence[Source]],
    told: Mapping[int, Mapping[int, tuple[int, str]]], said: Mapping[int, tuple[int, str]],
) -> set[int]:
    """The rows from one that was told apart up to one that is asked for; none if it is not."""
    if row in asked:
        return {row}
    said = {**said, **told.get(row, {})}
    way = set[int]().union(*(
        _way_to(asked, source.parent, sources, told, said) for source in sources.get(row, ())
        if row not in said or said[row][0] == source.parent))
    return {row, *way} if way else way


def _dyed(got: _Gathered, connection: Connection, asked: Thing | None) -> None:
    """The bath of each lot, and the fills that it was dyed of; none scanned is not known."""
    lots = {thing for own in got.own.values() for kind, thing in own if kind == "lot" and thing}
    dyed = dyed_of(connection, lots)
    after = _fills_of(connection, asked) if asked and dyed else frozenset()
    for own in got.own.values():
        for (kind, lot), link in list(own.items()):
            if kind != "lot" or lot is None:
                continue
            of = dyed.get(lot)
            if of is not None:
                own["bath", of.bath] = link
                own |= {("fill", one): link for one in of.fills}
                if asked and of.fills & after:
                    own[asked] = link
            if of is None or not of.known:
                own["fill", None] = link


def _fills_of(connection: Connection, thing: Thing) -> frozenset[int]:
    """The fills that a fill, or a maker's lot of powder, went on into; of all else none."""
    kind, number = thing
    if number is None or kind not in ("fill", "supplier_lot"):
        return frozenset()
    return (fills_after if kind == "fill" else fills_of)(connection, number)


def _owns(got: _Gathered, row: int, version: int | None) -> None:
    own, draws = got.own[row], got.drawn[row]
    own["yarn", row] = Own(Fraction(1), "scanned")
    whole = sum(mm for _, mm, *_ in draws)
    for cone, mm, basis, cone_version, spun in draws:
        share = Fraction(mm, whole)
        own["cone", cone] = Own(share, basis)
        for thing in (("version", cone_version), ("supplier_lot", spun)):
            before = own.get(thing)
            own[thing] = Own(share + (before.share if before else 0), basis)
    if not draws and row not in got.sources:  # the thread begins here, and nobody knows where from
        own["cone", None] = own["supplier_lot", None] = Own(Fraction(1), "stated")
        own["version", version] = Own(Fraction(1), "stated")
        if not any(kind == "lot" for kind, _ in own):
            own["lot", None] = Own(Fraction(1), "stated")


def live_holds(connection: Connection) -> tuple[LiveHold, ...]:
    """All holds that stand, each with what was cleared of it."""
    rows = connection.execute(_HOLDS).all()
    cleared: dict[int, set[int]] = defaultdict(set)
    if rows:
        for hold, yarn in connection.execute(_CLEARS, {"ids": listed(row.id for row in rows)}):
            cleared[hold].add(yarn)
    holds = []
    for row in rows:
        source: Thing = next((kind, getattr(row, kind)) for kind in SOURCES if getattr(row, kind))
        reaches: list[Thing] = [source, *(("fill", one) for one in _fills_of(connection, source))]
        holds.append(LiveHold(row.id, source, frozenset(reaches), frozenset(cleared[row.id])))
    return tuple(holds)
