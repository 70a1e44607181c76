"""A recipe as it is being written: its rows in their order of pouring, and how they are read."""

import re
from collections.abc import Collection, Sequence
from decimal import Decimal

from app.exchange.recipe_notebook import role_of
from app.lookups.recipe_amounts import Amount
from app.lookups.recipes import RecipeThen
from app.problems import BadInput
from app.window.parts.amounts import read_grams
from app.work.recipes import ComponentIn, StepIn, ZoneIn

_UNITS = {"%": "owf", "% owf": "owf", "owf": "owf", "g/l": "bath"}
_IN_ZONE = re.compile(r"% in ([A-Z])", re.IGNORECASE)
_WITH_FORM = re.compile(r"(.+?)\s*\(([^()]+)\)\s*")
_WORTH = {"owf": 10_000, "bath": 1000, "bottle": 10_000}
_RATIO = re.compile(r"(\d{1,3}(?:[.,]\d)?)\s*(?::\s*1)?", re.ASCII)


def read_component(
    substance: str, amount: str, unit: str, dyes: Collection[str], zones: Collection[str]
) -> ComponentIn:
    """'sodium sulphate (crystals)', '5', '%' as a row; raises BadInput with what is wrong."""
    name = " ".join(substance.split())
    if not name:
        raise BadInput("Nobody said what it is.", "Write the dye or assistant.")
    parts = _WITH_FORM.fullmatch(name)
    bare, form = (parts[1], parts[2]) if parts else (name, "")
    kind, zone = _unit(unit, zones)
    try:
        size = round(read_grams(amount.replace("%", "")) * _WORTH[kind])
    except BadInput as why:
        raise BadInput(f"“{amount.strip()}” is no amount.", "Write it like 0.85.") from why
    if size <= 0:
        raise BadInput("An amount is more than nothing.", "Write it like 0.85.")
    return ComponentIn(bare, kind, size, role_of(bare, dyes), form, zone)


def _unit(unit: str, zones: Collection[str]) -> tuple[str, str | None]:
    said = " ".join(unit.casefold().split())
    in_zone = _IN_ZONE.fullmatch(said)
    if in_zone and in_zone[1].upper() in zones:
        return "bottle", in_zone[1].upper()
    if said not in _UNITS:
        raise BadInput(f"“{unit.strip()}” is no unit of a recipe.",
                       "Write % (of the dry fibre) or g/L (of the bath).")
    return _UNITS[said], None


def unit_words(one: ComponentIn) -> str:
    """'%', 'g/L', '% in A'."""
    return "g/L" if one.unit == "bath" else "%" if one.zone is None else f"% in {one.zone}"


def amount_words(one: ComponentIn) -> str:
    """'0.85'."""
    return f"{(Decimal(one.amount) / _WORTH[one.unit]).normalize():f}"


def named(one: ComponentIn) -> str:
    """'sodium sulphate (crystals)'."""
    return f"{one.substance} ({one.form})" if one.form else one.substance


def with_row(rows: Sequence[ComponentIn], new: ComponentIn) -> list[ComponentIn]:
    """The rows with this one: in the place of the same substance, else poured last."""
    same = [n for n, one in enumerate(rows)
            if (one.substance.casefold(), one.zone) == (new.substance.casefold(), new.zone)]
    found = list(rows)
    if same:
        found[same[0]] = new
    else:
        found.append(new)
    return found


def rows_of(then: RecipeThen, amounts: Sequence[Amount]) -> list[ComponentIn]:
    """A version that is written, as rows to write the next one from."""
    roles = {one.id: one.role for one in then.components}
    return [ComponentIn(one.substance, one.unit, one.amount, roles[one.component], one.form,
                        one.zone) for one in amounts]


def read_ratio(text: str) -> int | None:
    """Tenths of a liquor ratio from `20` or `20 : 1`; none where nothing stands there."""
    if not text.strip():
        return None
    said = _RATIO.fullmatch(text.strip())
    if said is None:
        raise BadInput(f"“{text.strip()}” is no liquor ratio.", "Write it like 20 : 1.")
    return round(Decimal(said[1].replace(",", ".")) * 10)


def steps_of(then: RecipeThen) -> tuple[StepIn, ...]:
    """The steps of a version as they go on into the next."""
    return tuple(StepIn(one.words, one.decidegrees, one.minutes) for one in then.steps)


def earlier(rows: Sequence[ComponentIn], name: str) -> list[ComponentIn]:
    """The rows with the one of this name poured one place earlier."""
    found = list(rows)
    for n, one in enumerate(found):
        if n and named(one).casefold() == name.strip().casefold():
            found[n - 1], found[n] = one, found[n - 1]
            break
    return found


def zones_of(then: RecipeThen) -> tuple[ZoneIn, ...]:
    """The zones of a version as they go on into the next."""
    return tuple(ZoneIn(one.letter, one.share_permille, one.ml_per_100_g, one.name, one.swatch)
                 for one in then.zones)
