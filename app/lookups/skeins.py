"""One tagged skein: its mark, its lot by its tag, and where it is."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, bindparam, or_, select

from app.calculations.codes import shown
from app.records import (
    Colourway,
    CustomerOrder,
    DyeLot,
    OrderLine,
    Plate,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.dialect import among, listed


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
_THEN = (
    select(Whereabouts.state)
    .where(Whereabouts.yarn == bindparam("yarn"), Whereabouts.struck.is_(None),
           Whereabouts.since <= bindparam("at"),
           or_(Whereabouts.until.is_(None), Whereabouts.until > bindparam("at")))
    .order_by(Whereabouts.since.desc())
)
_TAG = (
    select(Tag.mark, Tag.lot, DyeLot.code, Colourway.name)
    .join(TagOn, TagOn.tag == Tag.id).join(DyeLot, DyeLot.id == Tag.lot)
    .join(Colourway, Colourway.id == DyeLot.colourway)
    .where(TagOn.until.is_(None), TagOn.struck.is_(None))
)


@dataclass(frozen=True, slots=True)
class NamedByTag:
    """What the tag of a skein says."""

    mark: str
    lot: int
    lot_code: str | None
    put_up: str

    @property
    def lot_shown(self) -> str:
        """The lot's code as people read it."""
        return shown(self.lot_code or "a lot without a code")


_TAGS = (
    select(TagOn.yarn, Tag.mark, Tag.lot, DyeLot.code, Yarn.put_up)
    .join(Tag, Tag.id == TagOn.tag).join(DyeLot, DyeLot.id == Tag.lot)
    .join(Yarn, Yarn.id == TagOn.yarn)
    .where(among(TagOn.yarn, "ids"), TagOn.until.is_(None), TagOn.struck.is_(None))
)


def named_by_tag(connection: Connection, yarn: Collection[int]) -> dict[int, NamedByTag]:
    """What these skeins' tags say, {skein: tag}; those without a tag are left out."""
    return {row.yarn: NamedByTag(row.mark, row.lot, row.code, row.put_up)
            for row in connection.execute(_TAGS, {"ids": listed(yarn)})}


_LAST = (
    select(TagOn.yarn, Tag.mark).join(Tag, Tag.id == TagOn.tag)
    .where(among(TagOn.yarn, "ids"), TagOn.struck.is_(None)).order_by(TagOn.since)
)


def last_marks(connection: Connection, yarn: Iterable[int]) -> dict[int, str]:
    """The mark that each of these skeins wears or wore last, as people read it."""
    return {row: shown(mark) for row, mark in connection.execute(_LAST, {"ids": listed(yarn)})}


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
    return connection.execute(_THEN, {"yarn": yarn, "at": at}).scalar()


def _place(code: str | None, words: str | None) -> str | None:
    return words or (None if code is None else code[1:-1])
