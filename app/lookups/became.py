"""What a skein became whose tag came off: minis, balls, or yarn on a cord once more."""

from collections.abc import Collection, Mapping

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.lookups.discs import disc_of
from app.lookups.walks import below
from app.records import DyeLot, InBath, Part, TagOn, Yarn
from app.store.dialect import among, listed

_MADE = (
    select(TagOn.tag, Yarn.id, Yarn.kind, Yarn.put_up, Part.gave)
    .join(Part, Part.parent == TagOn.yarn).join(Yarn, Yarn.id == Part.child)
    .where(among(TagOn.tag, "ids"), TagOn.struck.is_(None), Part.struck.is_(None), Part.took > 0)
    .order_by(Yarn.id)
)
_LOTS = (
    select(DyeLot.code).join(InBath, InBath.lot == DyeLot.id)
    .where(among(InBath.yarn, "ids"), InBath.struck.is_(None)).order_by(DyeLot.id)
)


def became(connection: Connection, tags: Collection[int]) -> Mapping[int, str]:
    """{tag: 'became 5 minis'}: what is said of the skeins that wore these tags.

    Tags that never hung, or whose skein is as it was, are left out.
    """
    return {
        row.tag: f"became {_count(row.gave, row.put_up)}" if row.kind == "pile"
        else _on_a_cord(connection, row.id)
        for row in connection.execute(_MADE, {"ids": listed(tags)})
    } if tags else {}


def _on_a_cord(connection: Connection, group: int) -> str:
    ids = below(connection, "yarn", group)
    codes = connection.execute(_LOTS, {"ids": listed(ids)}).scalars()
    lots = [shown(code or "a lot without a code yet") for code in dict.fromkeys(codes)]
    if lots:
        return f"went back on a cord and was dyed again: {listing(lots)}"
    discs = [disc for row in ids if (disc := disc_of(connection, row))]
    return "went back on a cord" + (f", disc {discs[0]}" if discs else "")


def _count(count: int, put_up: str) -> str:
    return f"{count} {put_up}" if count == 1 else f"{count} {put_up}s"
