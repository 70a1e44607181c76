"""Recipes as they stood: what was poured in which order. How much is asked in `recipe_amounts`."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, bindparam, select

from app.calculations.codes import shown
from app.records import (
    Bath,
    BottleSet,
    Colourway,
    Component,
    DeedRow,
    DyeLot,
    RecipeVersion,
    Step,
    Weighing,
    Zone,
)


@dataclass(frozen=True, slots=True)
class ZoneThen:
    """A zone of a painted skein: its share, and what is poured on 100 g."""

    letter: str
    name: str
    share_permille: int
    ml_per_100_g: int
    swatch: str | None


@dataclass(frozen=True, slots=True)
class ComponentThen:
    """A dye or assistant at its place in the order of pouring, without its amount."""

    id: int
    role: str
    substance: str
    form: str
    unit: str
    zone: str | None
    """The letter of its zone, where it is poured from a bottle."""


@dataclass(frozen=True, slots=True)
class StepThen:
    """A step at the pot: heat in tenths of a degree."""

    id: int
    words: str
    decidegrees: int | None
    minutes: int | None


@dataclass(frozen=True, slots=True)
class RecipeThen:
    """One version of a recipe."""

    version: int
    number: int
    colourway: int
    name: str
    swatch: str | None
    reason: str
    look: str | None
    base_class: str | None
    liquor_tenths: int | None
    zones: tuple[ZoneThen, ...]
    components: tuple[ComponentThen, ...]
    steps: tuple[StepThen, ...]
    person: str
    written: datetime

    @property
    def is_written(self) -> bool:
        """Whether more than its name is known."""
        return bool(self.components)


@dataclass(frozen=True, slots=True)
class VersionUse:
    """A version of a colourway and the lots that were dyed by it."""

    version: int
    number: int
    reason: str
    written: datetime
    lots: tuple[str, ...]
    frozen: bool
    """Dyed, weighed or bottled by: it stays as it is."""


_VERSIONS = (
    select(RecipeVersion.id, RecipeVersion.number, RecipeVersion.colourway, RecipeVersion.note,
           RecipeVersion.look, RecipeVersion.base_class, RecipeVersion.liquor_tenths,
           Colourway.name, Colourway.swatch, DeedRow.person, DeedRow.happened)
    .join(Colourway, Colourway.id == RecipeVersion.colourway)
    .join(DeedRow, DeedRow.seq == RecipeVersion.deed)
    .where(RecipeVersion.struck.is_(None)).order_by(RecipeVersion.number)
)


_THEN = _VERSIONS.where(RecipeVersion.id == bindparam("version"))
_ZONES = select(Zone).where(
    Zone.recipe_version == bindparam("version"), Zone.struck.is_(None)).order_by(Zone.letter)
_COMPONENTS = select(Component).where(
    Component.recipe_version == bindparam("version"),
    Component.struck.is_(None)).order_by(Component.place)
_STEPS = select(Step).where(
    Step.recipe_version == bindparam("version"), Step.struck.is_(None)).order_by(Step.place)


def recipe_then(connection: Connection, version: int) -> RecipeThen | None:
    """A recipe as it was written, or none."""
    asked = {"version": version}
    row = connection.execute(_THEN, asked).first()
    if row is None:
        return None
    zones = connection.execute(_ZONES, asked).all()
    letters = {zone.id: zone.letter for zone in zones}
    components = connection.execute(_COMPONENTS, asked).all()
    steps = connection.execute(_STEPS, asked).all()
    return RecipeThen(
        row.id, row.number, row.colourway, row.name, row.swatch, row.note, row.look,
        row.base_class, row.liquor_tenths,
        tuple(ZoneThen(z.letter, z.name, z.share_permille, z.ml_per_100_g, z.swatch)
              for z in zones),
        tuple(ComponentThen(c.id, c.role, c.substance, c.form, c.unit,
                            letters[c.zone] if c.zone else None) for c in components),
        tuple(StepThen(s.id, s.words, s.decidegrees, s.minutes) for s in steps),
        row.person, row.happened)


def versions(connection: Connection, colourway: int) -> tuple[VersionUse, ...]:
    """All versions of a colourway, the newest first, each with its lots."""
    rows = connection.execute(_VERSIONS.where(RecipeVersion.colourway == colourway)).all()
    ids = [row.id for row in rows]
    lots: dict[int, list[str]] = defaultdict(list)
    for version, code in connection.execute(
            select(Bath.recipe_version, DyeLot.code).join(DyeLot, DyeLot.bath == Bath.id)
            .where(Bath.recipe_version.in_(ids), Bath.struck.is_(None), DyeLot.struck.is_(None))
            .order_by(DyeLot.id)):
        lots[version].append(shown(code or "no code yet"))
    used = {
        version for kind in (Bath, Weighing, BottleSet)
        for version in connection.execute(select(kind.recipe_version).where(
            kind.recipe_version.in_(ids), kind.struck.is_(None))).scalars()
    }
    return tuple(VersionUse(row.id, row.number, row.note, row.happened, tuple(lots[row.id]),
                            row.id in used) for row in reversed(rows))
