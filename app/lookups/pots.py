"""Pots and recipes: what is in which pot since when, and what may be dyed."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, func, select

from app.calculations.codes import shown
from app.lookups.fills import DyedOf, dyed_of
from app.records import (
    Base,
    Bath,
    Colourway,
    DeedRow,
    DyeLot,
    InBath,
    Plate,
    RecipeVersion,
    Yarn,
)


@dataclass(frozen=True, slots=True)
class Recipe:
    """The newest version of a colourway's recipe."""

    version: int
    number: int
    colourway: str
    swatch: str | None
    note: str


@dataclass(frozen=True, slots=True)
class LotInPot:
    """A lot that lies in a pot."""

    code: str
    base: str
    count: int


@dataclass(frozen=True, slots=True)
class PotNow:
    """A pot with yarn in it."""

    bath: int
    pot: str | None
    colourway: str
    swatch: str | None
    since: datetime
    lots: tuple[LotInPot, ...]
    deed: int


def recipes(connection: Connection) -> tuple[Recipe, ...]:
    """The newest version of every colourway, by name."""
    newest = (
        select(func.max(RecipeVersion.id)).where(RecipeVersion.struck.is_(None))
        .group_by(RecipeVersion.colourway)
    )
    rows = connection.execute(
        select(RecipeVersion.id, RecipeVersion.number, RecipeVersion.note, Colourway.name,
               Colourway.swatch)
        .join(Colourway, Colourway.id == RecipeVersion.colourway)
        .where(RecipeVersion.id.in_(newest), Colourway.struck.is_(None)).order_by(Colourway.name)
    )
    return tuple(Recipe(row.id, row.number, row.name, row.swatch, row.note) for row in rows)


def recipe_of_lot(connection: Connection, code: str) -> Recipe | None:
    """The newest version of what the lot with this code was dyed as, or none."""
    colourway = connection.execute(
        select(Colourway.name).join(DyeLot, DyeLot.colourway == Colourway.id)
        .where(DyeLot.code == code, DyeLot.struck.is_(None))).scalar()
    return next((one for one in recipes(connection) if one.colourway == colourway), None)


def pots_now(connection: Connection) -> tuple[PotNow, ...]:
    """Baths that were not lifted yet, the oldest first."""
    baths = connection.execute(
        select(Bath.id, Bath.deed, Plate.code, Colourway.name, Colourway.swatch, DeedRow.happened)
        .join(RecipeVersion, RecipeVersion.id == Bath.recipe_version)
        .join(Colourway, Colourway.id == RecipeVersion.colourway)
        .join(DeedRow, DeedRow.seq == Bath.deed)
        .outerjoin(Plate, Plate.id == Bath.plate)
        .where(Bath.lifted.is_(None), Bath.struck.is_(None)).order_by(Bath.id)
    ).all()
    lots = defaultdict(list)
    for bath, code, base, count in connection.execute(
        select(DyeLot.bath, DyeLot.code, Base.name, func.sum(Yarn.count))
        .join(Base, Base.id == DyeLot.base).join(InBath, InBath.lot == DyeLot.id)
        .join(Yarn, Yarn.id == InBath.yarn)
        .where(DyeLot.bath.in_([row.id for row in baths]), InBath.struck.is_(None))
        .group_by(DyeLot.id, DyeLot.bath, DyeLot.code, Base.name).order_by(DyeLot.id)
    ):
        lots[bath].append(LotInPot(shown(code or "no code yet"), base, count))
    return tuple(
        PotNow(row.id, row.code and row.code[1:-1], row.name, row.swatch, row.happened,
               tuple(lots[row.id]), row.deed)
        for row in baths
    )


@dataclass(frozen=True, slots=True)
class Relatives:
    """Lots that are near by their making.

    Companions share the bath. Sisters were dyed on one day by one recipe version and of the same
    fills, all scanned. Where a fill is not known only recipe and day are the same.
    """

    companions: tuple[str, ...]
    sisters: tuple[str, ...]
    fills_not_known: tuple[str, ...] = ()


def relatives(connection: Connection, lot: int) -> Relatives:
    """Companion lots (same bath, other base), sister lots, and those that may be sisters.

    A lot off its recipe is no sister, nor is one of which another fill is known.
    """
    row = connection.execute(
        select(DyeLot.bath, DyeLot.base, Bath.recipe_version, DeedRow.happened)
        .join(Bath, Bath.id == DyeLot.bath).join(DeedRow, DeedRow.seq == Bath.deed)
        .where(DyeLot.id == lot)
    ).first()
    if row is None:
        return Relatives((), ())
    near = connection.execute(
        select(DyeLot.id, DyeLot.code, DyeLot.bath, DeedRow.happened)
        .join(Bath, Bath.id == DyeLot.bath).join(DeedRow, DeedRow.seq == Bath.deed)
        .where(Bath.recipe_version == row.recipe_version, DyeLot.id != lot,
               DyeLot.struck.is_(None)).order_by(DyeLot.id)
    ).all()
    of_the_day = [one for one in near if one.bath != row.bath
                  and one.happened.date() == row.happened.date()]
    dyed = dyed_of(connection, [lot, *(one.id for one in of_the_day)])
    alike = [(one, _alike(dyed[lot], dyed[one.id])) for one in of_the_day]
    return Relatives(
        _codes(one for one in near if one.bath == row.bath),
        _codes(one for one, known in alike if known),
        _codes(one for one, known in alike if known is None))


def _alike(one: DyedOf, other: DyedOf) -> bool | None:
    """Whether two lots were dyed of the same; none where nobody can tell."""
    if one.off_recipe or other.off_recipe:
        return False
    if one.known and other.known:
        return one.fills == other.fills
    return None


def _codes(lots: Iterable[Row[*tuple[Any, ...]]]) -> tuple[str, ...]:
    return tuple(shown(lot.code or "no code yet") for lot in lots)
