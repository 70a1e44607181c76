"""What can be said of a lot that lay here before the book began."""

from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.lookups.door import bases_now
from app.records import Base, BaseVersion, Colourway, DyeLot, InBath, PutUp, Yarn


@dataclass(frozen=True, slots=True)
class CanBeOld:
    """The bases with the put-ups that are described, the colourways, and the codes in the book."""

    put_ups: Mapping[str, tuple[str, ...]]
    colourways: tuple[str, ...]
    codes: frozenset[str]


def can_be_old(connection: Connection) -> CanBeOld:
    """By their names; a base's put-ups are those of its newest version, the heaviest first."""
    names = [base.name for base in bases_now(connection)]
    colourways = connection.execute(
        select(Colourway.name).where(Colourway.struck.is_(None)).order_by(Colourway.name))
    codes = connection.execute(select(DyeLot.code).where(DyeLot.code.is_not(None)))
    return CanBeOld(
        {name: _put_ups(connection, name) for name in names},
        tuple(colourways.scalars()), frozenset(code for (code,) in codes if code))


def _put_ups(connection: Connection, base: str) -> tuple[str, ...]:
    version = (
        select(BaseVersion.id).join(Base, Base.id == BaseVersion.base)
        .where(Base.name == base, Base.struck.is_(None), BaseVersion.struck.is_(None))
        .order_by(BaseVersion.number.desc()).limit(1).scalar_subquery()
    )
    return tuple(connection.execute(
        select(PutUp.name).where(PutUp.base_version == version, PutUp.struck.is_(None))
        .order_by(PutUp.nominal_mg.desc(), PutUp.id)
    ).scalars())


@dataclass(frozen=True, slots=True)
class LiesHere:
    """A lot from before the book, as it was counted when it was opened."""

    code: str
    colourway: str
    base: str
    put_up: str
    count: int
    swatch: str | None


def opened_last(connection: Connection, limit: int = 8) -> tuple[LiesHere, ...]:
    """The old lots opened last, the newest first."""
    first = select(func.min(InBath.yarn)).where(
        InBath.lot == DyeLot.id, InBath.struck.is_(None)).scalar_subquery()
    rows = connection.execute(
        select(DyeLot.code, Colourway.name.label("colourway"), Base.name.label("base"),
               Yarn.put_up, Yarn.count.label("members"), Colourway.swatch)
        .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
        .join(Yarn, Yarn.id == first)
        .where(DyeLot.bath.is_(None), DyeLot.struck.is_(None))
        .order_by(DyeLot.id.desc()).limit(limit)
    )
    return tuple(LiesHere(row.code, row.colourway, row.base, row.put_up, row.members, row.swatch)
                 for row in rows)
