"""Where from: the cones, lots, loads and base versions of some yarn, each with its certainty."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, Link, links_of
from app.lookups.discs import yarn_on_disc
from app.lookups.things import Found
from app.lookups.thread import thread
from app.records import Base, BaseVersion, Colourway, Cone, Draw, DyeLot, InBath, Load, Tag, Yarn
from app.store.dialect import among, listed

KINDS = ("cone", "lot", "load", "version")


@dataclass(frozen=True, slots=True)
class Origin:
    """One thing that some yarn comes from, in a word and in counts."""

    kind: str
    id: int | None
    code: str
    words: str
    link: Link

    @property
    def sure(self) -> str:
        """How sure, as a person says it: 'known', '62 % of the metres', '6 to 7 of 12 ...'."""
        return certainty_words(self.link)


def certainty_words(link: Link) -> str:
    """A link in words: the range leads, what is expected comes second."""
    if link.word in (KNOWN, NOT_KNOWN):
        return link.word
    share = "" if link.share == 1 else f"{_percent(link.share)} of the metres"
    if link.word == PARTLY:
        return f"partly: {share}"
    if link.least == link.most:
        counted = f"{link.least} of {link.of}, not known which"
    elif not link.fits:
        counted = f"{link.least} to {link.most} of {link.of}: these counts do not fit"
    else:
        counted = f"{link.least} to {link.most} of {link.of}, {_round(link.expected)} expected"
    return f"one of a pool: {counted}" + (f", {share}" if share else "")


def members_of(connection: Connection, found: Found, at: datetime) -> Mapping[int, int]:
    """The yarn that a found thing stands for, as it was born there: {row: members}."""
    if found.kind == "skein":
        rows = [found.id]
    elif found.kind == "lot":
        rows = list(connection.execute(
            select(InBath.yarn).where(InBath.lot == found.id, InBath.struck.is_(None))
        ).scalars())
    elif found.kind == "tag":
        rows = [row for row in connection.execute(
            select(Tag.pile).where(Tag.id == found.id)).scalars() if row]
    elif found.kind == "disc":
        rows = yarn_on_disc(connection, found.id, at)
    elif found.kind == "cone":
        rows = list(connection.execute(
            select(Draw.yarn).where(Draw.cone == found.id, Draw.struck.is_(None))
        ).scalars())
    else:
        rows = []
    counts = connection.execute(
        select(Yarn.id, Yarn.count).where(among(Yarn.id, "ids")), {"ids": listed(rows)}
    )
    return dict(counts.all())


def origins(connection: Connection, members: Mapping[int, int]) -> tuple[Origin, ...]:
    """All that lies above these rows, surest first within each kind."""
    found = thread(connection, members)
    links = [(kind, link) for kind in KINDS for link in links_of(found, members, kind)]
    names = {kind: _names(connection, kind, [link.thing for k, link in links if k == kind])
             for kind in KINDS}
    return tuple(
        Origin(kind, link.thing, *names[kind].get(link.thing, ("", "not known")), link)
        for kind, link in links
    )


def _names(
    connection: Connection, kind: str, things: list[int | None]
) -> dict[int | None, tuple[str, str]]:
    wanted = {"ids": listed(thing for thing in things if thing is not None)}
    if kind == "cone":
        rows = connection.execute(
            select(Cone.id, Cone.code, Base.name)
            .join(BaseVersion, BaseVersion.id == Cone.base_version)
            .join(Base, Base.id == BaseVersion.base).where(among(Cone.id, "ids")), wanted)
        return {row.id: (shown(row.code), row.name) for row in rows}
    if kind == "lot":
        lots = connection.execute(
            select(DyeLot.id, DyeLot.code, Colourway.name)
            .join(Colourway, Colourway.id == DyeLot.colourway).where(among(DyeLot.id, "ids")),
            wanted)
        return {row.id: (shown(row.code or "without a code yet"), row.name) for row in lots}
    if kind == "load":
        loads = connection.execute(
            select(Load.id, Load.step).where(among(Load.id, "ids")), wanted)
        return {row.id: (f"{row.step} {row.id}", row.step) for row in loads}
    versions = connection.execute(
        select(BaseVersion.id, BaseVersion.number, BaseVersion.fibre, Base.name)
        .join(Base, Base.id == BaseVersion.base).where(among(BaseVersion.id, "ids")), wanted)
    return {row.id: (f"{row.name}, version {row.number}", row.fibre) for row in versions}


def _percent(share: Fraction) -> str:
    return f"{round(share * 100)} %"


def _round(number: Fraction) -> str:
    return f"{float(number):.2f}".rstrip("0").rstrip(".")
