"""One tagged skein: its mark, its lot by its tag, and where it is."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, or_, select

from app.records import (
    Colourway,
    CustomerOrder,
    DyeLot,
    OrderLine,
    Plate,
    Tag,
    TagOn,
    Whereabouts,
)


@dataclass(frozen=True, slots=True)
class SkeinNow:
    """A skein as it is now; no mark where it wears no tag."""

    yarn: int
    mark: str | None
    lot: int | None
    lot_code: str | None
    colourway: str | None
    state: str | None
    place: str | None
    since: datetime | None
    ends: datetime | None
    order: str | None
    customer: int | None


_NOW = (
    select(Whereabouts.state, Whereabouts.since, Whereabouts.ends, Whereabouts.customer,
           Plate.code.label("place"), Plate.words.label("place_words"),
           CustomerOrder.number, CustomerOrder.customer.label("buyer"))
    .outerjoin(Plate, Plate.id == Whereabouts.place)
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(Whereabouts.until.is_(None), Whereabouts.struck.is_(None))
)
_TAG = (
    select(Tag.mark, Tag.lot, DyeLot.code, Colourway.name)
    .join(TagOn, TagOn.tag == Tag.id).join(DyeLot, DyeLot.id == Tag.lot)
    .join(Colourway, Colourway.id == DyeLot.colourway)
    .where(TagOn.until.is_(None), TagOn.struck.is_(None))
)


def now_of(connection: Connection, yarn: int) -> SkeinNow | None:
    """Where this skein is now and what its tag says; none where it is no skein."""
    tag = connection.execute(_TAG.where(TagOn.yarn == yarn)).first()
    now = connection.execute(_NOW.where(Whereabouts.yarn == yarn)).first()
    if tag is None and now is None:
        return None
    return SkeinNow(
        yarn, tag.mark if tag else None, tag.lot if tag else None, tag.code if tag else None,
        tag.name if tag else None, now.state if now else None,
        _place(now.place, now.place_words) if now else None, now.since if now else None,
        now.ends if now else None, now.number if now else None,
        (now.buyer or now.customer) if now else None,
    )


def then_of(connection: Connection, yarn: int, at: datetime) -> str | None:
    """The state of a skein at a moment."""
    return connection.execute(
        select(Whereabouts.state)
        .where(Whereabouts.yarn == yarn, Whereabouts.struck.is_(None), Whereabouts.since <= at,
               or_(Whereabouts.until.is_(None), Whereabouts.until > at))
        .order_by(Whereabouts.since.desc())
    ).scalar()


def _place(code: str | None, words: str | None) -> str | None:
    return words or (None if code is None else code[1:-1])
