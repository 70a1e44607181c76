"""The trail of a thing: the thread as one line from delivery to customer, with counts."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, POOL, held_by, links_of, told_apart
from app.lookups.origins import members_of
from app.lookups.present import leaves
from app.lookups.things import Found
from app.lookups.thread import thread
from app.lookups.trail_stages import Line, Stage, bare_cone, split_words, stages
from app.lookups.walks import below
from app.records import Cone, DyeLot, Load


@dataclass(frozen=True, slots=True)
class Stop:
    """A station of the trail; `certainty` and `note` are of the yarn that leads to it."""

    kind: str
    code: str
    count: str
    certainty: str = KNOWN
    note: str = ""
    held: str = ""
    """'here' where the hold was placed, 'below' on what it reaches."""
    here: bool = False
    link: str = ""
    """The code to scan to go there; nothing where it has none."""


def trail(connection: Connection, thing: Found, at: datetime) -> tuple[Stop, ...]:
    """The stations of a thing in the order of the work; those it never met are left out.

    The yarn that leads to a station tells how sure the cones of what is there are.
    """
    members = members_of(connection, thing, at)
    if not members:
        return tuple(_hung(stage, thing) for stage in bare_cone(connection, thing))
    ids = {row for yarn in members for row in below(connection, "yarn", yarn)}
    line = Line(thing, members, frozenset(ids), thread(connection, ids), leaves(connection, ids))
    found = stages(connection, line)
    return tuple(_marked(connection, line, found, list(_joined(line, found))))


def _hung(stage: Stage, thing: Found) -> Stop:
    here = bool(stage.link) and stage.link == thing.code
    return Stop(stage.kind, stage.code, stage.count, here=here, link=stage.link)


def _joined(line: Line, found: Sequence[Stage]) -> Iterator[Stop]:
    """Every station with the yarn that leads to it; what is said of it is said once."""
    said = ""
    for stage in found:
        certainty, note = _reading(line, stage)
        stop = _hung(stage, line.thing)
        yield replace(stop, certainty=certainty, note="" if note == said else note)
        said = note


def _reading(line: Line, stage: Stage) -> tuple[str, str]:
    """How sure the cones of these rows are now: as the least sure of those not told apart."""
    if stage.kind == "cone" and stage.code == "?":
        return NOT_KNOWN, ""
    apart = told_apart(line.found, {row: line.found.count[row] for row in stage.rows})
    each = {row: links_of(line.found, {row: count}, "cone") for row, count in apart.items()}
    words = {link.word for links in each.values() for link in links}
    if POOL in words:
        pooled = {row: apart[row] for row, links in each.items()
                  if any(link.word == POOL for link in links)}
        links = links_of(line.found, pooled, "cone")
        return POOL, f"one of {len(links)} cones, {split_words(links)}"
    if PARTLY in words:
        partly = [link for links in each.values() for link in links if link.word == PARTLY]
        shares = " / ".join(f"{round(link.share * 100)} %" for link in partly)
        return PARTLY, shares if len(partly) == 2 else "some over a join"
    return (NOT_KNOWN, "") if words == {NOT_KNOWN} else (KNOWN, "")


_KINDS_HELD = {"cone": "cones", "yarn": "now"}
"""Stations where a hold hangs that have no code of their own; a load's is that of its step."""


def _marked(
    connection: Connection, line: Line, found: Sequence[Stage], stops: Sequence[Stop]
) -> Iterator[Stop]:
    """HOLD: where it was placed, and on all below it that it reaches."""
    reached = {row: held_by(line.found, row) for row in line.found.count}
    ids = {hold for row in line.ends for hold in reached.get(row, ())}
    sources = [hold.source for hold in line.found.holds if hold.id in ids]
    codes = {_code_of(connection, *source) for source in sources} - {None}
    kinds = {_step_of(connection, thing) if kind == "load" else _KINDS_HELD.get(kind)
             for kind, thing in sources}
    for stage, stop in zip(found, stops, strict=True):
        placed = stop.link in codes or stop.kind in kinds
        below_it = any(reached.get(row) for row in stage.rows)
        yield replace(stop, held="here" if placed else "below" if below_it else "")


def _step_of(connection: Connection, load: int | None) -> str | None:
    return connection.execute(select(Load.step).where(Load.id == load)).scalar()


def _code_of(connection: Connection, kind: str, thing: int | None) -> str | None:
    if kind == "cone":
        return connection.execute(select(Cone.code).where(Cone.id == thing)).scalar()
    if kind == "lot":
        return connection.execute(select(DyeLot.code).where(DyeLot.id == thing)).scalar()
    return None
