"""The story of a thing: what was done to it, to the yarn it came from, and to what it became."""

from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.origins import members_of
from app.lookups.recent import EntryRow, entries_that_wrote
from app.lookups.things import Found
from app.lookups.walks import above, below
from app.records import (
    Clear,
    Cone,
    DyeLot,
    Hold,
    Jar,
    Plate,
    PutUpWeight,
    Record,
    Sighting,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)

_TABLES: dict[str, type[Record]] = {
    "lot": DyeLot, "tag": Tag, "skein": Yarn, "cone": Cone, "jar": Jar,
}
_OF_A_SKEIN: tuple[type[TagOn | PutUpWeight | Sighting | Clear | Whereabouts], ...] = (
    TagOn, PutUpWeight, Sighting, Clear, Whereabouts)
"""What was done with a tagged skein, seen on it and let through."""
_HELD = {"lot": Hold.lot, "cone": Hold.cone, "skein": Hold.yarn}


def story(connection: Connection, found: Found, at: datetime) -> tuple[EntryRow, ...]:
    """All entries about a thing, the oldest first."""
    members = members_of(connection, found, at)
    yarn = {row for member in members for row in below(connection, "yarn", member)}
    if found.kind != "cone":
        yarn.update(above(connection, members))
    rows = {
        _TABLES.get(found.kind, Plate).__tablename__: {found.id},
        Hold.__tablename__: _holds_on(connection, found),
    }
    rows[Clear.__tablename__] = set(connection.execute(
        select(Clear.id).where(Clear.hold.in_(rows[Hold.__tablename__]))).scalars())
    rows[Yarn.__tablename__] = rows.get(Yarn.__tablename__, set()) | yarn
    for table in _OF_A_SKEIN if found.kind == "skein" else ():
        rows[table.__tablename__] = rows.get(table.__tablename__, set()) | set(connection.execute(
            select(table.id).where(table.yarn == found.id)).scalars())
    return entries_that_wrote(connection, rows)


def _holds_on(connection: Connection, found: Found) -> set[int]:
    """Holds that were placed on the thing itself, lifted ones too."""
    column = _HELD.get(found.kind)
    if column is None:
        return set()
    return set(connection.execute(select(Hold.id).where(column == found.id)).scalars())
