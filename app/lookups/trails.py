"""The trail of a thing by its code, as the thing stands now."""

from sqlalchemy import Connection

from app.lookups.now import NOW
from app.lookups.things import by_code
from app.lookups.trail import Stop, trail


def trail_of(connection: Connection, code: str) -> tuple[Stop, ...]:
    """The stations of what has this code; none where nothing has it."""
    found = by_code(connection, code)
    return () if found is None else trail(connection, found, NOW)
