"""Recipes: written once, frozen at first use; a change is the next version, with its reason."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any

from sqlalchemy import func, select

from app.calculations.recipe_doubts import doubts_about, forms_not_said
from app.calculations.scaling import Component as Dye
from app.problems import NotFound, Refused
from app.records import (
    Bath,
    BottleSet,
    Colourway,
    Component,
    RecipeVersion,
    Step,
    Weighing,
    Zone,
)
from app.records.recipes import LOOKS, UNITS
from app.store.deed import Deed

IN_PERCENT = Decimal(10_000)  # millionths of the fibre
FULLY = 1000  # per mille of a skein


@dataclass(frozen=True, slots=True)
class ZoneIn:
    """A zone of a painted skein: its share, and what is poured on 100 g of skein."""

    letter: str
    share_permille: int
    ml_per_100_g: int
    name: str = ""
    swatch: str | None = None


@dataclass(frozen=True, slots=True)
class ComponentIn:
    """A dye or assistant. `amount`: millionths of the fibre (owf), milligrams a litre of bath or
    of the zone's bottle; `form` is what is weighed: anhydrous, crystals, 5 % vinegar."""

    substance: str
    unit: str
    amount: int
    role: str = "dye"
    form: str = ""
    zone: str | None = None


@dataclass(frozen=True, slots=True)
class StepIn:
    """One step at the pot: what to do, how hot in tenths of a degree, how long."""

    words: str
    decidegrees: int | None = None
    minutes: int | None = None


@dataclass(frozen=True, slots=True)
class RecipeIn:
    """A recipe as it is written at the dry desk; components in their order of pouring."""

    colourway: int
    components: tuple[ComponentIn, ...]
    look: str = "solid"
    base_class: str | None = None
    liquor_tenths: int | None = None
    zones: tuple[ZoneIn, ...] = ()
    steps: tuple[StepIn, ...] = field(default=())
    reason: str = ""


def write_recipe(deed: Deed, recipe: RecipeIn) -> int:
    """The recipe of a colourway: its first version, or the next one with the reason. The version.

    A version that was only named is filled in while nothing was dyed by it.
    """
    newest = _newest(deed, recipe.colourway)
    _must_make_sense(recipe)
    if _is_blank(deed, newest.id) and not uses(deed, newest.id):
        version, number = int(newest.id), newest.number
        deed.change(RecipeVersion, version, note=recipe.reason or newest.note, **_head(recipe))
    elif recipe.reason.strip():
        number = deed.value(select(func.max(RecipeVersion.number)).where(
            RecipeVersion.colourway == recipe.colourway)) + 1
        version = deed.add(RecipeVersion(colourway=recipe.colourway, number=number,
                                         note=recipe.reason, **_head(recipe)))
    else:
        raise Refused(
            f"Version {newest.number} of {newest.name} is written already; nothing was saved.",
            f"Say what changes and why: it becomes version {newest.number + 1}.")
    _fill_in(deed, version, recipe)
    deed.say(f"wrote version {number} of {newest.name}")
    return version


def correct_recipe(deed: Deed, version: int, recipe: RecipeIn) -> None:
    """Put a version right that nothing was dyed, weighed or bottled by.

    Refused once it was used: what was dyed by it keeps it as it was.
    """
    row = deed.one(
        select(RecipeVersion.number, Colourway.name)
        .join(Colourway, Colourway.id == RecipeVersion.colourway)
        .where(RecipeVersion.id == version, RecipeVersion.colourway == recipe.colourway,
               RecipeVersion.struck.is_(None)))
    if row is None:
        raise NotFound("This recipe is not in the book; nothing was saved.", "Choose a recipe.")
    if uses(deed, version):
        raise Refused(
            f"Version {row.number} of {row.name} was used and stays as it is; nothing was saved.",
            "Write the next version, and say what changes.")
    _must_make_sense(recipe)
    for kind in (Component, Zone, Step):
        for (number,) in deed.all(select(kind.id).where(
                kind.recipe_version == version, kind.struck.is_(None))):
            deed.change(kind, number, struck=deed.seq)
    deed.change(RecipeVersion, version, **_head(recipe))
    _fill_in(deed, version, recipe)
    deed.say(f"put version {row.number} of {row.name} right")


def uses(deed: Deed, version: int) -> int:
    """How many baths, weigh-outs and bottle sets went by this version; from the first it stands."""
    counts: list[int] = [
        deed.value(select(func.count()).select_from(kind).where(
            kind.recipe_version == version, kind.struck.is_(None)))
        for kind in (Bath, Weighing, BottleSet)
    ]
    return sum(counts)


def _newest(deed: Deed, colourway: int) -> Any:
    newest = deed.one(
        select(RecipeVersion.id, RecipeVersion.number, RecipeVersion.note, Colourway.name)
        .join(Colourway, Colourway.id == RecipeVersion.colourway)
        .where(RecipeVersion.colourway == colourway, RecipeVersion.struck.is_(None),
               Colourway.struck.is_(None))
        .order_by(RecipeVersion.number.desc()))
    if newest is None:
        raise NotFound("This colourway is not in the book; nothing was saved.", "Name it first.")
    return newest


def _is_blank(deed: Deed, version: int) -> bool:
    return deed.value(select(Component.id).where(
        Component.recipe_version == version, Component.struck.is_(None))) is None


def _head(recipe: RecipeIn) -> dict[str, Any]:
    return {"look": recipe.look, "base_class": recipe.base_class,
            "liquor_tenths": recipe.liquor_tenths}


def _fill_in(deed: Deed, version: int, recipe: RecipeIn) -> None:
    zones = dict(zip((zone.letter for zone in recipe.zones), deed.add_all([
        Zone(recipe_version=version, letter=zone.letter, name=zone.name,
             share_permille=zone.share_permille, ml_per_100_g=zone.ml_per_100_g,
             swatch=zone.swatch)
        for zone in recipe.zones
    ]), strict=True))
    deed.add_all([
        Component(recipe_version=version, zone=zones[one.zone] if one.zone else None, place=place,
                  role=one.role, substance=one.substance.strip(), unit=one.unit,
                  amount=one.amount, form=one.form)
        for place, one in enumerate(recipe.components, 1)
    ])
    deed.add_all([
        Step(recipe_version=version, place=place, words=step.words, decidegrees=step.decidegrees,
             minutes=step.minutes)
        for place, step in enumerate(recipe.steps, 1)
    ])
    for sentence in doubts(recipe.components, recipe.zones, recipe.liquor_tenths):
        deed.note(sentence)


def doubts(
    components: Sequence[ComponentIn], zones: Sequence[ZoneIn], liquor_tenths: int | None
) -> tuple[str, ...]:
    """What a dyer would look at twice: said, never refused."""
    dyes = [Dye(one.substance, millionths / IN_PERCENT) for one in components
            if one.role == "dye" and (millionths := depth(one, zones))]
    ratio = None if liquor_tenths is None else Decimal(liquor_tenths) / 10
    return doubts_about(dyes, ratio) + forms_not_said(
        (one.substance, one.form) for one in components if one.role == "assistant")


def depth(one: ComponentIn, zones: Sequence[ZoneIn]) -> int | None:
    """Millionths of the fibre that a dye comes to; none where it goes by the litre of bath."""
    if one.unit == "owf":
        return one.amount
    poured = [zone.ml_per_100_g for zone in zones if zone.letter == one.zone]
    return one.amount * poured[0] // 100 if poured and one.unit == "bottle" else None


def _must_make_sense(recipe: RecipeIn) -> None:
    letters = [zone.letter for zone in recipe.zones]
    wrong = {
        "A recipe has at least one dye or assistant": not recipe.components,
        f"A colourway looks {', '.join(LOOKS)}": recipe.look not in LOOKS,
        "Every dye and assistant needs its name": any(
            not one.substance.strip() for one in recipe.components),
        "An amount is more than nothing, by fibre, bath or bottle": any(
            one.amount <= 0 or one.unit not in UNITS for one in recipe.components),
        "What is poured from a bottle belongs to a zone that is there, and only that": any(
            (one.unit == "bottle") != (one.zone is not None)
            or (one.zone is not None and one.zone not in letters) for one in recipe.components),
        "Every zone has a letter of its own": len(set(letters)) < len(letters),
        "The zones are more than the whole skein": sum(
            zone.share_permille for zone in recipe.zones) > FULLY,
        "A liquor ratio is more than nothing": (recipe.liquor_tenths or 1) <= 0,
    }
    for what, is_so in wrong.items():
        if is_so:
            raise Refused(f"{what}; nothing was saved.", "Put it right and save again.")
