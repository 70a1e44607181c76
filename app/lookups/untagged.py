"""Skeins that wear no tag: which of them are of a lot, and what else they may be of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, bindparam, select

from app.lookups.certainty import nearest
from app.lookups.present import HERE, Leaf, leaves
from app.lookups.things import Found, lot_found
from app.lookups.thread import thread
from app.lookups.walks import below
from app.records import Base, DeedRow, DyeLot, Part, Tag, TagOn, Whereabouts, Yarn
from app.records.yarn import IN_WORK
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Untagged:
    """One skein without a tag; `since` it was found or tagged."""

    yarn: int
    base: str
    put_up: str
    mg: int
    since: datetime


@dataclass(frozen=True, slots=True)
class Gap:
    """Room in a lot for a find of one put-up."""

    missing: int | None
    """The row that was counted short, the first of them."""
    short: int
    """How many were missing at the counts of this lot."""
    waiting: int | None
    """The first of its piles where skeins wait for tags by the book."""
    tagged: tuple[int, ...]
    """Its single skeins, wherever they are: a find may be one of them without its tag."""


@dataclass(frozen=True, slots=True)
class OfLot:
    """Of one lot: what is of it and wants a tag, and finds of its base that may be of it."""

    wanting: tuple[Untagged, ...]
    may_be: tuple[tuple[Untagged, Gap], ...]


@dataclass(frozen=True, slots=True)
class LotMeant:
    """A lot, and the pile that a skein of it comes out of; none where it was not counted yet."""

    found: Found
    pile: int | None


_ROWS = (
    select(Yarn.id, Base.name, Yarn.put_up, Yarn.mg, DeedRow.happened)
    .join(Base, Base.id == Yarn.base).join(DeedRow, DeedRow.seq == Yarn.deed)
    .order_by(Yarn.id)
)
_FINDS = (
    _ROWS.outerjoin(Part, (Part.child == Yarn.id) & Part.struck.is_(None))
    .where(IN_WORK, Yarn.kind == "find", Part.id.is_(None))
)
_PILES = select(Yarn.id, Yarn.closed).where(
    among(Yarn.id, "ids"), Yarn.kind == "pile", Yarn.struck.is_(None)).order_by(Yarn.id)
_WORN = select(TagOn.yarn).where(
    among(TagOn.yarn, "ids"), TagOn.until.is_(None), TagOn.struck.is_(None))

_LOST = (
    select(Yarn.base, Yarn.put_up)
    .join(Whereabouts, (Whereabouts.yarn == Yarn.id) & Whereabouts.until.is_(None)
          & Whereabouts.struck.is_(None) & (Whereabouts.state == "lost"))
    .where(Yarn.id == bindparam("skein"), Yarn.kind == "skein")
)


def finds_waiting(connection: Connection) -> tuple[Untagged, ...]:
    """Finds that nothing was said of yet, the oldest first."""
    return tuple(Untagged(*row) for row in connection.execute(_FINDS))


def untagged_of(connection: Connection, lot: int) -> OfLot:
    """What wears no tag and is of this lot, or may be."""
    left = leaves(connection, below(connection, "lot", lot))
    finds = connection.execute(
        _FINDS.join(DyeLot, DyeLot.base == Yarn.base).where(DyeLot.id == lot))
    may_be = tuple((find, _gap(left, find.put_up)) for find in (Untagged(*row) for row in finds))
    return OfLot(_wanting(connection, lot, left),
                 tuple((find, gap) for find, gap in may_be
                       if gap.short or gap.waiting or gap.tagged))


def untagged_like(connection: Connection, skein: int) -> OfLot | None:
    """Finds that may be this skein, whose tag is lost; none of one that is not lost itself."""
    lost = connection.execute(_LOST, {"skein": skein}).first()
    if lost is None:
        return None
    finds = (Untagged(*row) for row in connection.execute(
        _FINDS.where(Yarn.base == lost.base, Yarn.put_up == lost.put_up)))
    return OfLot((), tuple((find, Gap(None, 0, None, (skein,))) for find in finds))


def wearing(connection: Connection, rows: Iterable[int]) -> frozenset[int]:
    """Those of these rows that wear a tag now."""
    return frozenset(connection.execute(_WORN, {"ids": listed(rows)}).scalars())


def bare_for(connection: Connection, tag: int) -> tuple[Untagged, ...]:
    """Skeins that want a tag, of the lot that this free tag was printed for.

    None while skeins of its own pile wait for tags: they come first.
    """
    row = connection.execute(
        select(Tag.lot, Tag.pile).where(
            Tag.id == tag, Tag.void.is_(None), Tag.struck.is_(None))).first()
    if row is None:
        return ()
    left = leaves(connection, below(connection, "lot", row.lot))
    waits = any(leaf.kind == "pile" and leaf.state == "piled" for leaf in left)
    return () if waits else _wanting(connection, row.lot, left)


def lot_meant(connection: Connection, found: Found) -> LotMeant | None:
    """The lot that a code is, or that its tag names; none of anything else."""
    lot = found.id if found.kind == "lot" else connection.execute(
        select(Tag.lot).where(Tag.mark == found.code, Tag.struck.is_(None))).scalar()
    if lot is None:
        return None
    return LotMeant(lot_found(connection, lot), _pile(connection, below(connection, "lot", lot)))


def _gap(left: Sequence[Leaf], put_up: str) -> Gap:
    own = [leaf for leaf in left if leaf.put_up == put_up]
    short = [leaf for leaf in own if leaf.state == "missing at a count"]
    waits = next((leaf.yarn for leaf in own if leaf.state == "piled"), None)
    return Gap(short[0].yarn if short else None, sum(leaf.count for leaf in short), waits,
               tuple(leaf.yarn for leaf in own if leaf.kind == "skein"))


def _wanting(connection: Connection, lot: int, left: Sequence[Leaf]) -> tuple[Untagged, ...]:
    """Skeins in the house that are of this lot alone, and wear nothing."""
    here = [leaf.yarn for leaf in left
            if leaf.kind in ("skein", "find") and leaf.count == 1 and leaf.state in HERE]
    worn = wearing(connection, here)
    bare = [row for row in here if row not in worn]
    above = thread(connection, bare)
    sure = [row for row in bare if nearest(above, row, "lot") == {lot}]
    rows = connection.execute(_ROWS.where(among(Yarn.id, "ids")), {"ids": listed(sure)})
    return tuple(Untagged(*row) for row in rows)


def _pile(connection: Connection, rows: Sequence[int]) -> int | None:
    """Where skeins wait for tags, else the pile that was counted last."""
    piles = connection.execute(_PILES, {"ids": listed(rows)}).all()
    waiting = [pile for pile, closed in piles if closed is None]
    return next(iter(waiting or [pile for pile, _ in reversed(piles)]), None)
