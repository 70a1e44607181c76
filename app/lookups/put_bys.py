"""Put-bys whose day is over: the skeins are offered again once they are back on a shelf."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.counter import place_words
from app.records import Personal, Plate, Tag, TagOn, Whereabouts


@dataclass(frozen=True, slots=True)
class Over:
    """One skein that is kept for somebody whose day is over."""

    yarn: int
    mark: str | None
    ends: datetime
    name: str | None
    place: int | None
    place_words: str


_OVER = (
    select(Whereabouts.yarn, Tag.mark, Whereabouts.ends, Personal.value, Whereabouts.place,
           Plate.kind, Plate.code, Plate.words)
    .outerjoin(TagOn, (TagOn.yarn == Whereabouts.yarn) & TagOn.until.is_(None)
               & TagOn.struck.is_(None))
    .outerjoin(Tag, Tag.id == TagOn.tag)
    .outerjoin(Personal, (Personal.customer == Whereabouts.customer)
               & (Personal.field == "name") & Personal.struck.is_(None))
    .outerjoin(Plate, Plate.id == Whereabouts.place)
    .where(Whereabouts.state == "put by", Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None))
    .order_by(Whereabouts.ends, Tag.mark)
)


def put_bys_over(connection: Connection, at: datetime) -> tuple[Over, ...]:
    """Those that are over at this moment, the longest first."""
    return tuple(
        Over(row.yarn, row.mark, row.ends, row.value, row.place,
             place_words(row.kind, row.code, row.words))
        for row in connection.execute(_OVER.where(Whereabouts.ends <= at)))
