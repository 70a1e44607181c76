"""What is left to sell of every lot at once, by the one definition of left to sell."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from sqlalchemy import Connection, case, func, select

from app.lookups.left_to_sell import left_of
from app.lookups.prices import prices_now
from app.lookups.thread import live_holds
from app.lookups.walks import below
from app.records import (
    Base,
    Colourway,
    DyeLot,
    OrderLine,
    PutUp,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class FreeCount:
    """A lot in one put-up that wore tags once, and how many may be promised or sold now."""

    lot: int
    code: str
    colourway: str
    base: str
    put_up: str
    left: int
    each_mm: int | None
    """What its tags promise; none where its put-up is not described."""
    price: int | None


_HERE = Tag.void.is_(None) & TagOn.until.is_(None) & (Whereabouts.state == "shelf")
_COUNTED = (
    select(Tag.lot, Yarn.put_up, func.min(Yarn.base).label("base"),
           func.max(Tag.base_version).label("version"),
           func.sum(case((_HERE, 1), else_=0)).label("free"))
    .select_from(TagOn).join(Tag, Tag.id == TagOn.tag).join(Yarn, Yarn.id == TagOn.yarn)
    .outerjoin(Whereabouts, (Whereabouts.yarn == TagOn.yarn) & Whereabouts.until.is_(None)
               & Whereabouts.struck.is_(None))
    .where(TagOn.struck.is_(None), Tag.struck.is_(None))
    .group_by(Tag.lot, Yarn.put_up).subquery()
)
_ROWS = (
    select(_COUNTED.c.lot, DyeLot.code, Colourway.name.label("colourway"), _COUNTED.c.base,
           Base.name.label("base_name"), _COUNTED.c.put_up, _COUNTED.c.free, PutUp.nominal_mm)
    .join(DyeLot, DyeLot.id == _COUNTED.c.lot)
    .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == _COUNTED.c.base)
    .outerjoin(PutUp, (PutUp.base_version == _COUNTED.c.version)
               & (PutUp.name == _COUNTED.c.put_up))
    .where(DyeLot.code.is_not(None), DyeLot.struck.is_(None))
    .order_by(_COUNTED.c.lot, _COUNTED.c.put_up)
)
_PROMISED = (
    select(OrderLine.lot).distinct()
    .where(OrderLine.lot.is_not(None), OrderLine.over.is_(None), OrderLine.struck.is_(None))
)
_LOTS_OF = (
    select(Tag.lot).distinct().join(TagOn, TagOn.tag == Tag.id)
    .where(among(TagOn.yarn, "ids"), TagOn.until.is_(None), TagOn.struck.is_(None))
)


def free_counts(connection: Connection) -> tuple[FreeCount, ...]:
    """Every lot that ever wore tags, put-up by put-up, 0 where nothing of it is left.

    What lies on the shelves is counted in one go; only lots that an order was promised, or that a
    hold reaches, are asked for one by one.
    """
    prices = prices_now(connection)
    counted = [
        FreeCount(row.lot, row.code, row.colourway, row.base_name, row.put_up, row.free,
                  row.nominal_mm, prices.get((row.base, row.put_up)))
        for row in connection.execute(_ROWS)
    ]
    asked = _left(connection, counted, _in_question(connection))
    return tuple(replace(one, left=asked.get((one.lot, one.put_up), one.left)) for one in counted)


def _in_question(connection: Connection) -> frozenset[int]:
    """Lots of which something is promised, or may be on hold."""
    lots = set(connection.execute(_PROMISED).scalars())
    for kind, thing in {hold.source for hold in live_holds(connection)}:
        if thing is not None:
            ids = listed(below(connection, kind, thing))
            lots |= set(connection.execute(_LOTS_OF, {"ids": ids}).scalars())
    return frozenset(lot for lot in lots if lot is not None)


def _left(
    connection: Connection, counted: Iterable[FreeCount], lots: frozenset[int]
) -> Mapping[tuple[int, str], int]:
    alike: dict[str, list[int]] = defaultdict(list)
    for one in counted:
        if one.lot in lots:
            alike[one.put_up].append(one.lot)
    return {(lot, put_up): left.count for put_up, of in alike.items()
            for lot, left in left_of(connection, of, put_up).items()}
