"""How much of what: the amounts of a recipe, for those who dye. Nobody else is asked to see them.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.scaling import Component as Asked
from app.calculations.scaling import Per, standard_g
from app.calculations.zones import DEAD_VOLUME
from app.lookups.recipes import RecipeThen, VersionUse, recipe_then, versions
from app.records import Component

IN_PERCENT = Decimal(10_000)  # millionths of the fibre, or milligrams a litre of a bottle
GRAMS = Decimal(1_000)


@dataclass(frozen=True, slots=True)
class Amount:
    """One component with its amount: millionths of the fibre, or milligrams a litre."""

    component: int
    substance: str
    form: str
    unit: str
    amount: int
    zone: str | None

    @property
    def words(self) -> str:
        """'0.22 %', '2.5 g/L', '0.5 % in A'."""
        if self.unit == "bath":
            return f"{_bare(self.amount / GRAMS)} g/L"
        percent = f"{_bare(self.amount / IN_PERCENT)} %"
        return percent if self.zone is None else f"{percent} in {self.zone}"

    @property
    def named(self) -> str:
        """'yellow', 'sodium sulphate (crystals)'."""
        return f"{self.substance} ({self.form})" if self.form else self.substance

    def standard_g(
        self, recipe: RecipeThen, dry_g: Decimal | None, bath_l: Decimal | None
    ) -> Decimal | None:
        """Grams at the strength of the standard; none where dry weight or bath is not known.

        What stays in a bottle of `recipe` is made up with it.
        """
        if self.unit == "owf":
            line = Asked(self.substance, self.amount / IN_PERCENT)
            return standard_g(line, dry_g) if dry_g else None
        line = Asked(self.substance, self.amount / GRAMS, Per.LITRE)
        litres = bath_l if self.unit == "bath" else dry_g and self._bottle_l(recipe, dry_g)
        return standard_g(line, dry_g, litres) if litres else None

    def _bottle_l(self, recipe: RecipeThen, dry_g: Decimal) -> Decimal:
        """The litres its bottle must hold for so much yarn."""
        on_100_g = sum(zone.ml_per_100_g for zone in recipe.zones if zone.letter == self.zone)
        return dry_g / 100 * on_100_g * (1 + DEAD_VOLUME) / 1000


def amounts(connection: Connection, version: int) -> tuple[Amount, ...]:
    """The amounts of a version in their order of pouring; none where it is not written."""
    recipe = recipe_then(connection, version)
    return () if recipe is None else _amounts(connection, recipe)


def to_write_on(
    connection: Connection, version: int
) -> tuple[RecipeThen | None, tuple[Amount, ...], bool]:
    """A version with its amounts, and whether it was dyed, weighed or bottled by and so stands."""
    then = recipe_then(connection, version)
    if then is None:
        return None, (), False
    return then, _amounts(connection, then), any(
        one.frozen for one in versions(connection, then.colourway) if one.version == version)


def difference(connection: Connection, before: int, after: int) -> str:
    """What changed, in one line: 'yellow 0.22 → 0.25 %, citric acid new 2 %'; '' for nothing."""
    old, new = recipe_then(connection, before), recipe_then(connection, after)
    if old is None or new is None:
        return ""
    return ", ".join((*_in_amounts(_amounts(connection, old), _amounts(connection, new)),
                      *_in_making(old, new)))


@dataclass(frozen=True, slots=True)
class VersionSeen:
    """A version with its amounts, what it changed in the one before, and its lots."""

    use: VersionUse
    recipe: RecipeThen
    amounts: tuple[Amount, ...]
    changed: str
    """'' for the first, and where nothing is different."""


def history(connection: Connection, colourway: int) -> tuple[VersionSeen, ...]:
    """All versions of a colourway, the newest first, each against the one before it."""
    found: list[VersionSeen] = []
    for use in reversed(versions(connection, colourway)):
        then = recipe_then(connection, use.version)
        if then is not None:
            before = found[-1].recipe if found else None
            changed = difference(connection, before.version, use.version) if (
                before and before.is_written) else ""
            found.append(VersionSeen(use, then, _amounts(connection, then), changed))
    return tuple(reversed(found))


def _amounts(connection: Connection, recipe: RecipeThen) -> tuple[Amount, ...]:
    size = dict(connection.execute(
        select(Component.id, Component.amount)
        .where(Component.recipe_version == recipe.version, Component.struck.is_(None))).all())
    return tuple(Amount(one.id, one.substance, one.form, one.unit, size[one.id], one.zone)
                 for one in recipe.components)


def _in_amounts(old: tuple[Amount, ...], new: tuple[Amount, ...]) -> Iterator[str]:
    before = _by_name(old)
    after = _by_name(new)
    for key, one in after.items():
        was = before.get(key)
        if was is None:
            yield f"{one.named} new {one.words}"
        elif was.unit != one.unit:
            yield f"{one.named} {was.words} → {one.words}"
        else:
            if was.amount != one.amount:
                worth = GRAMS if one.unit == "bath" else IN_PERCENT
                yield f"{one.substance} {_bare(was.amount / worth)} → {one.words}"
            if was.form != one.form:
                yield f"{one.substance} {was.form or 'as it is'} → {one.form or 'as it is'}"
    yield from (f"{one.named} left out" for key, one in before.items() if key not in after)
    if [key for key in before if key in after] != [key for key in after if key in before]:
        yield "poured in another order"


def _by_name(amounts: tuple[Amount, ...]) -> dict[tuple[str, str | None, int], Amount]:
    """Each by its name and zone; the same dye poured twice is told apart by its turn."""
    found: dict[tuple[str, str | None, int], Amount] = {}
    for one in amounts:
        turn = 1
        while (one.substance, one.zone, turn) in found:
            turn += 1
        found[one.substance, one.zone, turn] = one
    return found


def _in_making(old: RecipeThen, new: RecipeThen) -> Iterator[str]:
    for name, was, now in (
        ("liquor", _ratio(old.liquor_tenths), _ratio(new.liquor_tenths)),
        ("look", old.look, new.look), ("for", old.base_class, new.base_class),
    ):
        if was != now:
            yield f"{name} {was or 'not said'} → {now or 'not said'}"
    if old.zones != new.zones:
        yield "zones changed"
    if [(s.words, s.decidegrees, s.minutes) for s in old.steps] != [
            (s.words, s.decidegrees, s.minutes) for s in new.steps]:
        yield "steps changed"


def _ratio(tenths: int | None) -> str | None:
    return None if tenths is None else f"{_bare(Decimal(tenths) / 10)} : 1"


def _bare(number: Decimal) -> str:
    return f"{number.normalize():f}"
