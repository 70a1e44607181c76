"""Tagged skeins on the table once more, to be made into something else or called seconds."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.calculations.codes import shown
from app.lookups.certainty import held_by, links
from app.lookups.reel import AsWound, put_ups
from app.lookups.skeins import now_of
from app.lookups.things import Found, by_code
from app.lookups.thread import thread
from app.records import Base, Second, Yarn


@dataclass(frozen=True, slots=True)
class FinishedSkein:
    """A skein by the tag it wears; `forms` are the put-ups its base is described in."""

    yarn: int
    mark: str
    lot: str
    colourway: str
    swatch: str | None
    base: str
    put_up: str
    mg: int
    forms: tuple[AsWound, ...]
    state: str
    second: str | None
    held: bool


@dataclass(frozen=True, slots=True)
class ScannedTag:
    """A tag that was scanned: what it is in the book, and the skein that wears it if one does."""

    found: Found | None
    skein: FinishedSkein | None


def scanned_tag(connection: Connection, mark: str) -> ScannedTag:
    """What a mark stands for."""
    found = by_code(connection, mark)
    if found is None or found.kind != "skein":
        return ScannedTag(found, None)
    return ScannedTag(found, _skein(connection, found))


def finished_skeins(connection: Connection, marks: Sequence[str]) -> tuple[FinishedSkein, ...]:
    """The skeins that wear these tags still."""
    found = (scanned_tag(connection, mark).skein for mark in marks)
    return tuple(skein for skein in found if skein is not None)


def reasons(connection: Connection, limit: int = 5) -> tuple[str, ...]:
    """What was seen in seconds, what was said last first."""
    return tuple(connection.execute(
        select(Second.why).where(Second.struck.is_(None)).group_by(Second.why)
        .order_by(func.max(Second.id).desc()).limit(limit)).scalars())


def is_believed(connection: Connection, yarn: int) -> bool:
    """Whether this row stands, and was not taken back."""
    return connection.execute(
        select(Yarn.id).where(Yarn.id == yarn, Yarn.struck.is_(None))).first() is not None


def _skein(connection: Connection, found: Found) -> FinishedSkein:
    row = connection.execute(
        select(Yarn.put_up, Yarn.mg, Base.name).join(Base, Base.id == Yarn.base)
        .where(Yarn.id == found.id)).one()
    now = now_of(connection, found.id)
    above = thread(connection, [found.id])
    versions = [link.thing for link in links(above, found.id, "version") if link.thing]
    second = connection.execute(
        select(Second.why).where(Second.yarn == found.id, Second.struck.is_(None))).scalar()
    return FinishedSkein(
        found.id, found.code, shown(now.lot_code or "no code yet") if now else "",
        (now.colourway if now else "") or "", found.swatch, row.name, row.put_up, row.mg,
        put_ups(connection, versions[0]) if versions else (), (now.state if now else "") or "",
        second, bool(held_by(above, found.id)),
    )
