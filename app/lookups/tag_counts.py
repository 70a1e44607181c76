"""Counts of tags that add up, for a lot, a day and a stock: every printed tag is one of four."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import (
    ColumnElement,
    Connection,
    Executable,
    and_,
    bindparam,
    case,
    exists,
    func,
    or_,
    select,
)

from app.lookups.tagging import piles_waiting
from app.records import Colourway, DeedRow, DyeLot, PrintSheet, Tag, TagOn, TagsInHand
from app.store.dialect import among, listed

_AT_ONCE = 200


@dataclass(frozen=True, slots=True)
class TagCounts:
    """Where the printed tags are, by the book.

    `spoiled` never hung; `void` hung once: another took its place, or its skein became something
    else; `in_hand` waits for its skein. They add up to `printed`.
    """

    printed: int = 0
    applied: int = 0
    spoiled: int = 0
    void: int = 0
    in_hand: int = 0

    def __add__(self, other: "TagCounts") -> "TagCounts":
        return TagCounts(self.printed + other.printed, self.applied + other.applied,
                         self.spoiled + other.spoiled, self.void + other.void,
                         self.in_hand + other.in_hand)


@dataclass(frozen=True, slots=True)
class CountedInHand:
    """What was counted in hand of a lot, what the book had in hand then, and why they differ."""

    count: int
    by_the_book: int
    why: str
    counted: datetime
    person: str

    @property
    def unexplained(self) -> int:
        """How many the count lacks; less than nothing where it has more than the book."""
        return self.by_the_book - self.count


@dataclass(frozen=True, slots=True)
class LotTagCounts:
    """All tags of a lot, and how they were counted last."""

    lot: int
    code: str
    colourway: str
    swatch: str | None
    expected: int
    """Skeins of this lot that wear a tag or lie on a pile without one."""
    counts: TagCounts
    waiting: Mapping[str, int]
    """{mark: tag} of those that are in hand by the book."""
    last: CountedInHand | None


@dataclass(frozen=True, slots=True)
class TagDay:
    """The tags that were printed on a day by their stock, and every lot they are of."""

    lots: tuple[LotTagCounts, ...]
    stocks: Mapping[str, TagCounts]

    @property
    def counts(self) -> TagCounts:
        """All tags that were printed on this day."""
        return sum(self.stocks.values(), TagCounts())


_STANDS = Tag.struck.is_(None)
_HANGS = exists().where(TagOn.tag == Tag.id, TagOn.until.is_(None), TagOn.struck.is_(None))
_HUNG = exists().where(TagOn.tag == Tag.id, TagOn.struck.is_(None))


def _so_many(of: ColumnElement[bool]) -> ColumnElement[int]:
    return func.coalesce(func.sum(case((of, 1), else_=0)), 0)


_COUNTS = (
    func.count(Tag.id).label("printed"),
    _so_many(and_(Tag.void.is_(None), _HANGS)).label("applied"),
    _so_many(and_(Tag.void.is_not(None), ~_HUNG)).label("spoiled"),
    _so_many(and_(Tag.void.is_not(None), _HUNG)).label("void"),
    _so_many(and_(Tag.void.is_(None), ~_HANGS)).label("in_hand"),
)
_OF_LOT = select(*_COUNTS).where(_STANDS, Tag.lot == bindparam("lot"))
_OF_STOCKS = (
    select(PrintSheet.stock, *_COUNTS).join(PrintSheet, PrintSheet.id == Tag.sheet)
    .where(_STANDS).group_by(PrintSheet.stock).order_by(PrintSheet.stock)
)
_ON_SHEETS = _OF_STOCKS.where(among(Tag.sheet, "sheets"))
_LOTS_ON = select(Tag.lot).where(_STANDS, among(Tag.sheet, "sheets")).distinct().order_by(Tag.lot)
_NAMED = (
    select(DyeLot.code, Colourway.name, Colourway.swatch)
    .join(Colourway, Colourway.id == DyeLot.colourway).where(DyeLot.id == bindparam("lot"))
)
_WAITING = select(Tag.mark, Tag.id).where(
    _STANDS, Tag.lot == bindparam("lot"), Tag.void.is_(None), ~_HANGS).order_by(Tag.id)
_COUNTED = (
    select(TagsInHand.count.label("met"), TagsInHand.why, TagsInHand.deed, DeedRow.happened,
           DeedRow.person)
    .join(DeedRow, DeedRow.seq == TagsInHand.deed)
    .where(TagsInHand.lot == bindparam("lot"), TagsInHand.struck.is_(None))
    .order_by(TagsInHand.id)
)
_AT = bindparam("at", type_=Tag.deed.type)
_HUNG_THEN = exists().where(
    TagOn.tag == Tag.id, TagOn.struck.is_(None), TagOn.deed <= _AT,
    or_(TagOn.ended_by.is_(None), TagOn.ended_by > _AT))
_IN_HAND_THEN = select(func.count(Tag.id)).where(
    _STANDS, Tag.lot == bindparam("lot"), Tag.deed <= _AT,
    or_(Tag.void.is_(None), Tag.void > _AT), ~_HUNG_THEN)
_SHEETS = (
    select(PrintSheet.id, DeedRow.written).join(DeedRow, DeedRow.seq == PrintSheet.deed)
    .where(PrintSheet.struck.is_(None), PrintSheet.id < bindparam("before"))
    .order_by(PrintSheet.id.desc()).limit(_AT_ONCE)
)


def lot_tag_counts(connection: Connection, lot: int) -> LotTagCounts:
    """The tags of one lot, every one accounted for."""
    return _lots(connection, [lot])[0]


def tags_of_day(
    connection: Connection, since: datetime, until: datetime, also: Sequence[int] = ()
) -> TagDay:
    """What was printed from this moment on and before that one; `also` are lots to look at too."""
    sheets = listed(_sheets(connection, since, until))
    lots = connection.execute(_LOTS_ON, {"sheets": sheets}).scalars().all()
    return TagDay(_lots(connection, tuple(dict.fromkeys((*lots, *also)))),
                  _by_stock(connection, _ON_SHEETS, {"sheets": sheets}))


def tags_by_stock(connection: Connection) -> Mapping[str, TagCounts]:
    """{stock: all tags that were ever printed on it}: reads through all of them."""
    return _by_stock(connection, _OF_STOCKS, {})


def in_hand_with(connection: Connection, mark: str) -> LotTagCounts | None:
    """The counts of the lot that this tag is of, or none where no such tag was printed."""
    lot = connection.execute(select(Tag.lot).where(Tag.mark == mark, _STANDS)).scalar()
    return None if lot is None else lot_tag_counts(connection, lot)


def counted_in_hand(connection: Connection, lot: int) -> tuple[CountedInHand, ...]:
    """Each count of a lot's tags in hand with what the book had then, the oldest first."""
    return tuple(
        CountedInHand(row.met, connection.execute(
            _IN_HAND_THEN, {"lot": lot, "at": row.deed}).scalar_one(),
            row.why, row.happened, row.person)
        for row in connection.execute(_COUNTED, {"lot": lot}).all())


def _lots(connection: Connection, lots: Sequence[int]) -> tuple[LotTagCounts, ...]:
    bare = Counter[int]()
    for pile in piles_waiting(connection):
        if len(pile.lots) == 1 and pile.lots[0] is not None:
            bare[pile.lots[0]] += pile.left
    return tuple(_lot(connection, lot, bare[lot]) for lot in lots)


def _lot(connection: Connection, lot: int, bare: int) -> LotTagCounts:
    """A lot with so many skeins that lie on piles without a tag."""
    named = connection.execute(_NAMED, {"lot": lot}).one()
    counts = TagCounts(*connection.execute(_OF_LOT, {"lot": lot}).one())
    waiting = {row.mark: row.id for row in connection.execute(_WAITING, {"lot": lot})}
    counted = counted_in_hand(connection, lot)
    return LotTagCounts(lot, named.code or "", named.name, named.swatch, counts.applied + bare,
                        counts, waiting, counted[-1] if counted else None)


def _by_stock(
    connection: Connection, question: Executable, of: Mapping[str, str]
) -> Mapping[str, TagCounts]:
    return {row.stock: TagCounts(*row[1:]) for row in connection.execute(question, of)}


def _sheets(connection: Connection, since: datetime, until: datetime) -> list[int]:
    """The printings of a time, from the newest down: a day is at the end of the book."""
    found: list[int] = []
    before = 2**31 - 1
    while True:
        rows = connection.execute(_SHEETS, {"before": before}).all()
        found += [row.id for row in rows if since <= row.written < until]
        if len(rows) < _AT_ONCE or rows[-1].written < since:
            return found
        before = rows[-1].id
