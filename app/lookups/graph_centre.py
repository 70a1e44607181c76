"""What stands in the middle of the branching trail of a thing in hand."""

from datetime import datetime

from sqlalchemy import Connection

from app.lookups.fills import fill_at
from app.lookups.graph_web import Centre
from app.lookups.kits import kit_now
from app.lookups.origins import members_of
from app.lookups.things import Found


def centre_of(connection: Connection, found: Found, at: datetime) -> Centre | None:
    """The yarn, cone, lot or fill that a thing stands for; none where it stands for no yarn.

    A jar stands for the fill that was in it then, a disc for what hung on it, a tag without a
    skein for the pile it was printed for.
    """
    if found.kind in ("cone", "lot"):
        return Centre(found.kind, (found.id,))
    if found.kind == "jar":
        fill = fill_at(connection, found.id, at)
        return None if fill is None else Centre("fill", (fill,))
    rows = ([one.yarn for one in kit_now(connection, found.id).skeins]
            if found.kind == "kit" else list(members_of(connection, found, at)))
    return Centre("yarn", tuple(rows)) if rows else None
