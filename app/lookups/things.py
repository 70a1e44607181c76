"""Anything in the book by its code, mark, or name."""

from collections.abc import Iterable
from dataclasses import dataclass

from sqlalchemy import ColumnElement, Connection, Select, select
from sqlalchemy.orm import InstrumentedAttribute

from app.calculations.codes import shown
from app.lookups.became import became
from app.records import (
    Base,
    BaseVersion,
    Colourway,
    Cone,
    DyeLot,
    Jar,
    Kit,
    Plate,
    Tag,
    TagOn,
)


@dataclass(frozen=True, slots=True)
class Found:
    """Something that a code stands for."""

    kind: str
    """lot, skein, tag (printed, not hung), cone, jar, kit, or the kind of a plate."""
    id: int
    """Of a skein: the yarn; of a tag: the tag."""
    code: str
    words: str
    swatch: str | None = None
    void: bool = False
    successor: str | None = None
    became: str = ""
    """Of a void tag: what its skein became, 'became 5 minis'."""

    @property
    def shown(self) -> str:
        """The code as people read it."""
        return shown(self.code)


_LOTS = (
    select(DyeLot.id, DyeLot.code, Colourway.name, Colourway.swatch, Base.name.label("base"))
    .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
    .where(DyeLot.struck.is_(None))
)
_TAGS = (
    select(Tag.id, Tag.mark, Tag.void, Tag.successor, TagOn.yarn, Colourway.name,
           Colourway.swatch, Base.name.label("base"))
    .join(DyeLot, DyeLot.id == Tag.lot).join(Colourway, Colourway.id == DyeLot.colourway)
    .join(Base, Base.id == DyeLot.base)
    .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.struck.is_(None) & TagOn.until.is_(None))
    .where(Tag.struck.is_(None))
)
_CONES = (
    select(Cone.id, Cone.code, Base.name.label("base"))
    .join(BaseVersion, BaseVersion.id == Cone.base_version)
    .join(Base, Base.id == BaseVersion.base).where(Cone.struck.is_(None))
)
_PLATES = select(Plate.id, Plate.code, Plate.kind, Plate.words).where(Plate.struck.is_(None))
_KITS = select(Kit.id, Kit.code, Kit.name).where(Kit.struck.is_(None))
_JARS = select(Jar.id, Jar.code, Jar.dye).where(Jar.struck.is_(None))


def by_code(connection: Connection, code: str) -> Found | None:
    """The thing with exactly this code, or none."""
    return next(iter(by_codes(connection, [code])), None)


def by_codes(connection: Connection, codes: Iterable[str]) -> tuple[Found, ...]:
    """The things with these codes, as many as there are."""
    wanted = list(dict.fromkeys(codes))[:500]
    return (
        *_lots(connection, _LOTS.where(DyeLot.code.in_(wanted))),
        *_tags(connection, _TAGS.where(Tag.mark.in_(wanted))),
        *(Found("cone", row.id, row.code, row.base)
          for row in connection.execute(_CONES.where(Cone.code.in_(wanted)))),
        *(Found(row.kind, row.id, row.code, row.words)
          for row in connection.execute(_PLATES.where(Plate.code.in_(wanted)))),
        *(Found("jar", row.id, row.code, row.dye)
          for row in connection.execute(_JARS.where(Jar.code.in_(wanted)))),
        *(Found("kit", row.id, row.code, row.name)
          for row in connection.execute(_KITS.where(Kit.code.in_(wanted)))),
    )


def by_beginning(connection: Connection, start: str, limit: int = 20) -> tuple[Found, ...]:
    """Lots, tags and cones whose code begins so."""
    return (
        *_lots(connection, _LOTS.where(_begins(DyeLot.code, start)).limit(limit)),
        *(() if len(start) < 7 else
          _tags(connection, _TAGS.where(_begins(Tag.mark, start)).limit(limit))),
        *(Found("cone", row.id, row.code, row.base)
          for row in connection.execute(_CONES.where(_begins(Cone.code, start)).limit(limit))),
    )


def by_name(connection: Connection, words: str, limit: int = 20) -> tuple[Found, ...]:
    """Lots whose colourway or base has these words in its name, the newest first."""
    wanted = words.casefold()
    colourways = [row.id for row in connection.execute(select(Colourway.id, Colourway.name))
                  if wanted in row.name.casefold()]
    bases = [row.id for row in connection.execute(select(Base.id, Base.name))
             if wanted in row.name.casefold()]
    named = DyeLot.colourway.in_(colourways) | DyeLot.base.in_(bases)
    return _lots(connection, _LOTS.where(named).order_by(DyeLot.id.desc()).limit(limit))


def of_lot(connection: Connection, lot: int) -> tuple[Found, ...]:
    """All tags ever printed for a lot."""
    return _tags(connection, _TAGS.where(Tag.lot == lot).order_by(Tag.mark))


def lot_found(connection: Connection, lot: int) -> Found:
    """One lot by its number."""
    return _lots(connection, _LOTS.where(DyeLot.id == lot))[0]


def _begins(
    column: InstrumentedAttribute[str] | InstrumentedAttribute[str | None], start: str
) -> ColumnElement[bool]:
    return (column >= start) & (column < f"{start}~")


def _lots(connection: Connection, question: Select[*tuple[object, ...]]) -> tuple[Found, ...]:
    return tuple(
        Found("lot", row.id, row.code or "without a code yet", f"{row.name}, {row.base}",
              row.swatch)
        for row in connection.execute(question)
    )


def _tags(connection: Connection, question: Select[*tuple[object, ...]]) -> tuple[Found, ...]:
    rows = connection.execute(question).all()
    after = {row.successor for row in rows if row.successor}
    marks = dict(connection.execute(
        select(Tag.id, Tag.mark).where(Tag.id.in_(after))).all()) if after else {}
    made = became(connection, [row.id for row in rows if row.void and not row.successor])
    return tuple(
        Found("tag" if row.yarn is None else "skein", row.yarn or row.id, row.mark,
              f"{row.name}, {row.base}", row.swatch, row.void is not None,
              marks.get(row.successor) if row.successor else None, made.get(row.id, ""))
        for row in rows
    )
