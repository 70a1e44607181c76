"""What may still be said of some yarn in hand: of which origin it is, and how many are gone."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.certainty import left_in_urn, links_of, parting
from app.lookups.discs import yarn_on_disc
from app.lookups.things import Found
from app.lookups.thread import Thread, thread
from app.records import Cone, Whereabouts, Yarn
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class MayBeOf:
    """One of the things that met: its row, what it is, and how many of it were not told yet."""

    parent: int
    words: str
    """'cone C·0114·F'."""
    count: int


@dataclass(frozen=True, slots=True)
class StillToSay:
    """Yarn in hand: so many, the pool where its way parts, and what went into that."""

    yarn: int
    count: int
    pool: int
    may_be: tuple[MayBeOf, ...]
    """None where it is known already, or nothing met."""


def still_to_say(connection: Connection, found: Found, at: datetime) -> StillToSay | None:
    """Of a skein, or of the one row on a disc; none of anything else, and of what is gone."""
    yarn = _yarn(connection, found, at)
    if yarn is None:
        return None
    above = thread(connection, [yarn])
    pool = parting(above, yarn)
    sources = above.sources.get(pool, ()) if pool != yarn else ()
    may_be = tuple(
        MayBeOf(source.parent, _words(connection, above, source.parent), left)
        for source in sources if (left := left_in_urn(above, pool, source))
    )
    return StillToSay(yarn, above.count[yarn], pool, may_be if len(sources) > 1 else ())


def _yarn(connection: Connection, found: Found, at: datetime) -> int | None:
    rows = ([found.id] if found.kind == "skein"
            else yarn_on_disc(connection, found.id, at) if found.kind == "disc" else [])
    if len(rows) != 1:
        return None
    gone = connection.execute(select(Whereabouts.id).where(
        Whereabouts.yarn == rows[0], Whereabouts.until.is_(None), Whereabouts.struck.is_(None),
        Whereabouts.state.in_(("lost", "sent", "given", "discarded")))).first()
    closed = connection.execute(select(Yarn.closed).where(Yarn.id == rows[0])).scalar()
    return None if gone or closed else rows[0]


def _words(connection: Connection, above: Thread, row: int) -> str:
    cones = [link.thing for link in links_of(above, {row: above.count[row]}, "cone")]
    codes = connection.execute(
        select(Cone.code).where(among(Cone.id, "ids")).order_by(Cone.code),
        {"ids": listed(cone for cone in cones if cone)}).scalars().all()
    tie = connection.execute(select(Yarn.tie).where(Yarn.id == row)).scalar()
    named = " and ".join(shown(code) for code in codes)
    cone = f"cone{'s' if len(codes) > 1 else ''} {named}" if codes else "a cone nobody knows"
    return f"{cone}, {tie} ties" if tie else cone
