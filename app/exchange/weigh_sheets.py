"""The weigh-out sheet of a weigh-out, or of a recipe for so much yarn: amounts, jars, cautions."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from sqlalchemy import Connection

from app.calculations.balances import Balance, allowed_g, to_step
from app.calculations.cautions import Step, first_of_all
from app.calculations.codes import Kind, numbered
from app.calculations.moments import clock_words, day_words
from app.calculations.scaling import powder_g
from app.documents.sheet import SheetFoot, SheetHead
from app.documents.weigh_sheet import WeighRow, WeighSheet, weigh_sheet_pdf
from app.exchange.dye_cautions import cautions_of
from app.lookups.jars import JarNow, jars_now
from app.lookups.recent import head
from app.lookups.recipe_amounts import Amount, amounts
from app.lookups.recipes import RecipeThen, recipe_then
from app.lookups.studio import setting
from app.lookups.weighings import LineThen, WeighOut, weigh_out
from app.problems import NotFound

FINE = Balance(Decimal("0.01"))
_HOW = {"wound": "as wound", "weighed dry": "weighed dry", "weighed damp": "from damp weight"}


@dataclass(frozen=True, slots=True)
class ToWeigh:
    """What the sheet is made from: a recipe for so much yarn, and a weigh-out where it is begun."""

    recipe: RecipeThen
    amounts: tuple[Amount, ...]
    jars: tuple[JarNow, ...]
    dry_mg: int | None
    how: str
    bath_ml: int | None
    out: WeighOut | None
    studio: str
    at: datetime
    entry: int
    journal_head: str


def to_weigh(
    connection: Connection, at: datetime, *, weighing: int | None = None,
    version: int | None = None, dry_mg: int | None = None,
) -> ToWeigh:
    """For a weigh-out that was begun, else for a recipe version and a dry mass in milligrams."""
    out = None if weighing is None else weigh_out(connection, weighing)
    asked = out.recipe_version if out else version
    recipe = None if asked is None else recipe_then(connection, asked)
    if recipe is None:
        raise NotFound("There is no recipe to weigh out by.", "Choose a recipe, or a weigh-out.")
    dry, how = (out.dry_mg, _HOW[out.dry_basis]) if out else (dry_mg, "as said, not weighed")
    if out and out.pick_up_permille is not None:
        how += f", {out.pick_up_permille / 10:g} % pick-up"
    bath = out.bath_ml if out else None
    if bath is None and dry and recipe.liquor_tenths:
        bath = round(dry * recipe.liquor_tenths / 10_000)
    entry, journal_head = head(connection)
    return ToWeigh(recipe, amounts(connection, recipe.version), jars_now(connection), dry, how,
                   bath, out, setting(connection, "name"), at, entry, journal_head)


def weigh_pdf(asked: ToWeigh, person: str, balance: Balance = FINE) -> bytes:
    """The weigh-out sheet, proven; `person` prints it."""
    return weigh_sheet_pdf(weigh_sheet(asked, person, balance))


def weigh_sheet(asked: ToWeigh, person: str, balance: Balance = FINE) -> WeighSheet:
    """The sheet, ready to be set, for a balance of this reading step."""
    recipe, out = asked.recipe, asked.out
    when = f"{day_words(asked.at)}, {clock_words(asked.at)}"
    dry = "not known" if asked.dry_mg is None else f"{asked.dry_mg / 1000:,.1f} g"
    bath = "not known" if asked.bath_ml is None else f"{asked.bath_ml / 1000:.1f} L"
    return WeighSheet(
        head=SheetHead(
            "Weigh out", recipe.name,
            f"version {recipe.number}, for {recipe.base_class or 'a base not written'}",
            f"weigh-out {out.id}, begun {day_words(out.begun)} by {out.person}" if out else
            "for planning: no weigh-out is begun yet",
            numbered(Kind.SHEET, out.id).text if out else ""),
        foot=SheetFoot(f"{asked.studio or 'studio not named'} · printed {when}, by {person}",
                       asked.journal_head, asked.entry),
        facts=((f"dry, {asked.how}", dry), ("bath, with the water in the yarn", bath)),
        balance_rule=(f"Balance of {balance.step_g} g: not under {balance.minimum_g:f} g a line "
                      f"(by {balance.rule}); right is within 2 %, or two reading steps."),
        rows=tuple(_row(asked, one, balance) for one in asked.amounts),
        steps=tuple(step_words(recipe)) or ("No step is written in this recipe.",),
        first_caution=first_of_all(),
        cautions=cautions_of(recipe, (Step.WEIGH,)),
    )


def step_words(recipe: RecipeThen) -> Sequence[str]:
    """'heat up, 85 °C, 46 min': the steps of a recipe as they are done."""
    return [", ".join(filter(None, (
        step.words, "" if step.decidegrees is None else f"{step.decidegrees / 10:g} °C",
        "" if step.minutes is None else f"{step.minutes} min"))) for step in recipe.steps]


def _row(asked: ToWeigh, one: Amount, balance: Balance) -> WeighRow:
    lines = [line for line in asked.out.lines if line.component == one.component
             ] if asked.out else []
    jars = [jar for jar in asked.jars if jar.dye.casefold() == one.substance.casefold()]
    said_strength = jars[0].strength_permille if jars else None
    standard = _standard_g(asked, one)
    target = None if standard is None else powder_g(
        standard, Decimal(said_strength) / 1000 if said_strength else None)
    said = next((line.target_mg for line in lines if line.target_mg), None)
    target = Decimal(said) / 1000 if said else target
    wanted = "" if target is None else _shown(target, balance)
    what = one.named if one.zone is None else f"{one.named}, bottle {one.zone}"
    if target is None or target <= 0:
        return WeighRow(what, _where(jars), "", "", taken=_taken(lines),
                        note=f"{one.words}: how much yarn or bath is not known")
    return WeighRow(what, _where(jars), wanted, "g", _may_show(target, balance),
                    _taken(lines), _too_little(target, balance))


def _standard_g(asked: ToWeigh, one: Amount) -> Decimal | None:
    """Grams at the strength of the standard; none where dry mass or bath is not known."""
    dry_g = None if asked.dry_mg is None else Decimal(asked.dry_mg) / 1000
    bath_l = None if asked.bath_ml is None else Decimal(asked.bath_ml) / 1000
    return one.standard_g(asked.recipe, dry_g, bath_l)


def _where(jars: Sequence[JarNow]) -> str:
    """The jar with its plate and fill, and how strong it is."""
    if not jars:
        return "no jar in the book"
    jar = jars[0]
    strength = ("strength not known: as it is" if jar.strength_permille is None
                else f"{jar.strength_permille / 10:g} %")
    plate = f"{jar.code[0]}·{jar.code[1:-1]}·{jar.code[-1]}"
    more = f"; also jar {', '.join(one.shown for one in jars[1:])}" if len(jars) > 1 else ""
    return f"jar {jar.shown}, fill {jar.number}, {strength} · {plate}{more}"


def _may_show(target: Decimal, balance: Balance) -> str:
    """What the balance may show, rounded inwards."""
    off, step = allowed_g(target, balance.step_g), balance.step_g
    least = ((target - off) / step).to_integral_value(ROUND_CEILING) * step
    most = ((target + off) / step).to_integral_value(ROUND_FLOOR) * step
    return f"{_shown(max(least, step), balance)} to {_shown(most, balance)}"


def _shown(g: Decimal, balance: Balance) -> str:
    """With all the digits that the balance shows, so that points stand under each other."""
    return f"{to_step(g, balance.step_g).quantize(balance.step_g):f}"


def _too_little(target: Decimal, balance: Balance) -> str:
    if balance.can_weigh(target):
        return ""
    return f"too little for this balance: {target * 100:.1f} mL of a 1 % stock, or a finer balance"


def _taken(lines: Sequence[LineThen]) -> str:
    """What went in so far, tipped back taken off."""
    done = [line for line in lines if line.taken is not None and line.kind != "thrown"]
    if not done:
        return ""
    if any(line.ul is not None for line in done):
        return f"{sum(line.ul or 0 for line in done) / 1000:,.1f} mL  {done[0].person}"
    return f"{sum(line.mg or 0 for line in done) / 1000:,.2f} g  {done[0].person}"
