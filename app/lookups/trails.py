"""The trail of a thing by its code."""

from datetime import datetime

from sqlalchemy import Connection

from app.lookups.now import NOW
from app.lookups.things import by_code
from app.lookups.trail import Stop, trail


def trail_of(connection: Connection, code: str, at: datetime = NOW) -> tuple[Stop, ...]:
    """The stations of what has this code, of a disc what hung on it then; none of nothing."""
    found = by_code(connection, code)
    return () if found is None else trail(connection, found, at)
