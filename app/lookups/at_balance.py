"""What still goes into the cup: each line of a weigh-out with its target, its jars and the way."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.balances import Balance
from app.calculations.measuring import Glass, Pouring, Weighing, how_to_measure, pour_from
from app.calculations.scaling import DryWeight, from_damp, from_winding, powder_g
from app.calculations.stock import Bottle, dye_in_stock_g, stock_ml
from app.lookups.balances import BalanceNow, balance_used
from app.lookups.jars import JarNow, jar_of, jars_now
from app.lookups.recipe_amounts import amounts
from app.lookups.recipes import RecipeThen, recipe_then
from app.lookups.weigh_sources import StockNow, stock_now
from app.lookups.weighings import LineThen, WeighOut, net, weigh_out
from app.problems import Problem
from app.records import Stock

GLASSES = (Glass(Decimal(10), Decimal("0.1")), Glass(Decimal(100), Decimal("0.5")),
           Glass(Decimal(1000), Decimal(5)))
"""A syringe of 10 mL, cylinders of 100 mL and of a litre; common practice, no source."""

_MG, _FULLY, _PARTS = Decimal(1000), Decimal(1000), Decimal(1_000_000)
_IN_PERCENT = Decimal(10_000)
_CAN_ML = Decimal(5000)  # mL, more than any bath takes
_SOLUTION = re.compile(r"\b(\d{1,2}(?:\.\d)?) ?%", re.ASCII)


@dataclass(frozen=True, slots=True)
class StockBottle:
    """A stock that stands ready, its percent counted in dye as strong as the standard."""

    now: StockNow
    percent: Decimal


@dataclass(frozen=True, slots=True)
class Wanted:
    """One line of the recipe for this yarn: what is asked of it, and what came of it so far."""

    component: int
    substance: str
    form: str
    role: str
    zone: str | None
    standard_g: Decimal | None
    """Of dye as strong as the standard; none where dry weight or bath are not known."""
    given_g: Decimal
    """What its lines put in, counted the same way."""
    is_taken: bool
    jars: tuple[JarNow, ...]
    bottles: tuple[StockBottle, ...]
    way: Weighing | Pouring | None
    no_way: str
    """Why there is none: what balance and glasses cannot measure."""

    @property
    def solution_percent(self) -> Decimal | None:
        """Of an assistant that comes as a solution (acetic acid as vinegar of 5 %)."""
        return _percent_in(self.form) if self.role == "assistant" else None

    @property
    def rest_g(self) -> Decimal | None:
        """What is still asked, none where it is not known."""
        return None if self.standard_g is None else max(Decimal(0), self.standard_g - self.given_g)

    def powder_g(self, strength_permille: int | None = None) -> Decimal | None:
        """The powder of this strength that is still asked; not known is as the standard."""
        rest = self.rest_g
        strength = strength_permille / _FULLY if strength_permille else None
        return None if rest is None else powder_g(rest, strength)

    def volume_ml(self, percent: Decimal) -> Decimal | None:
        """The millilitres of a solution that are still asked."""
        rest = self.rest_g
        return None if rest is None else stock_ml(rest, percent)


@dataclass(frozen=True, slots=True)
class AtBalance:
    """A weigh-out as the bench shows it."""

    out: WeighOut
    recipe: RecipeThen | None
    dry: DryWeight | None
    bath_l: Decimal | None
    balance: Balance
    on: BalanceNow | None
    """The balance it is, where that is known."""
    others: tuple[BalanceNow, ...]
    wanted: tuple[Wanted, ...]

    @property
    def open_line(self) -> LineThen | None:
        """The line whose cup stands on the balance."""
        return next((line for line in self.out.lines if line.is_open), None)

    def of(self, component: int | None) -> Wanted | None:
        """What is asked by this line of the recipe."""
        return next((one for one in self.wanted if one.component == component), None)

    def asks_for(self, dye: str | None) -> Wanted | None:
        """The line that asks this dye, first one that has nothing yet."""
        fitting = [one for one in self.wanted if dye and same(one.substance, dye)]
        return next((one for one in fitting if not one.is_taken), next(iter(fitting), None))


def same(one: str, other: str) -> bool:
    """Whether two names mean the same dye: capitals and spaces say nothing."""
    return one.casefold().split() == other.casefold().split()


def at_balance(
    connection: Connection, weighing: int, at: datetime, number: int = 0
) -> AtBalance | None:
    """A weigh-out with what is still asked, or none; stocks past their life are left out.

    `number` is that of the balance in use, 0 where nobody said it.
    """
    out = weigh_out(connection, weighing)
    if out is None:
        return None
    recipe = None if out.recipe_version is None else recipe_then(connection, out.recipe_version)
    balance, on, others = balance_used(connection, number)
    dry = _dry(out)
    bath_l = _bath_l(out, recipe)
    wanted = () if recipe is None else _wanted(
        connection, out, recipe, (dry.g if dry else None, bath_l), (balance, at))
    return AtBalance(out, recipe, dry, bath_l, balance, on, others, wanted)


def _dry(out: WeighOut) -> DryWeight | None:
    if not out.dry_mg:
        return None
    dry_g = out.dry_mg / _MG
    if out.pick_up_permille is None:
        return from_winding(dry_g)
    pick_up = out.pick_up_permille / _FULLY
    return from_damp(dry_g * (1 + pick_up), pick_up)


def _bath_l(out: WeighOut, recipe: RecipeThen | None) -> Decimal | None:
    if out.bath_ml:
        return out.bath_ml / _MG
    if recipe is None or not recipe.liquor_tenths or not out.dry_mg:
        return None
    return out.dry_mg * Decimal(recipe.liquor_tenths) / 10 / _PARTS


def _wanted(
    connection: Connection, out: WeighOut, recipe: RecipeThen,
    sizes: tuple[Decimal | None, Decimal | None], by: tuple[Balance, datetime],
) -> tuple[Wanted, ...]:
    jars = jars_now(connection, [one.substance for one in recipe.components])
    roles = {one.id: one.role for one in recipe.components}
    found = []
    for one in amounts(connection, recipe.version):
        lines = [line for line in out.lines if line.component == one.component]
        standard = one.standard_g(recipe, *sizes)
        its_jars = tuple(jar for jar in jars if same(jar.dye, one.substance))
        bottles = _bottles(connection, its_jars, by[1])
        role = roles[one.component]
        percent = _percent_in(one.form) if role == "assistant" else None
        way, no_way = _thinned(standard, percent) if percent else _way(
            standard, its_jars, bottles, by[0])
        found.append(Wanted(
            one.component, one.substance, one.form, role, one.zone, standard,
            _given_g(connection, lines, one.form), net(lines, one.component) > 0, its_jars,
            bottles, way, no_way))
    return tuple(found)


def _bottles(
    connection: Connection, jars: Sequence[JarNow], at: datetime
) -> tuple[StockBottle, ...]:
    found = []
    for jar in jars:
        for number in connection.execute(select(Stock.id).where(
                Stock.fill == jar.fill, Stock.struck.is_(None)).order_by(Stock.id)).scalars():
            now = stock_now(connection, number)
            if now is not None and now.left_ul > 0 and not now.too_old(at):
                strength = (jar.strength_permille or 1000) / _FULLY
                found.append(StockBottle(now, now.mg_per_l / _IN_PERCENT * strength))
    return tuple(found)


def _given_g(connection: Connection, lines: Sequence[LineThen], form: str) -> Decimal:
    given = Decimal(0)
    percent = _percent_in(form)
    for line in lines:
        if line.kind == "thrown":
            continue
        bottle = None if line.stock is None else stock_now(connection, line.stock)
        fill = line.fill if bottle is None else bottle.fill
        jar = None if fill is None else jar_of(connection, fill)
        strength = ((jar and jar.strength_permille) or 1000) / _FULLY
        if line.mg is not None:
            given += line.mg / _MG * strength
        elif bottle is not None:
            given += (line.ul or 0) / _PARTS * bottle.mg_per_l / _MG * strength
        elif line.ul and percent:
            given += dye_in_stock_g(line.ul / _MG, percent)
    return given


def _percent_in(form: str) -> Decimal | None:
    """How strong a solution is as its form says; none for what is no solution."""
    said = _SOLUTION.search(form)
    return Decimal(said[1]) if said and Decimal(said[1]) else None


def _thinned(standard_g: Decimal | None, percent: Decimal) -> tuple[Pouring | None, str]:
    """How a solution as bought is thinned, where so little is asked that no glass measures it."""
    way = pour_from(Bottle(percent, _CAN_ML), standard_g, GLASSES) if standard_g else None
    return (way if way and way.dilutions else None), ""


def _way(
    standard_g: Decimal | None, jars: Sequence[JarNow], bottles: Sequence[StockBottle],
    balance: Balance,
) -> tuple[Weighing | Pouring | None, str]:
    """By the first jar's strength: weighed, or poured where that is too little to weigh."""
    if not standard_g:
        return None, ""
    strength = (next((jar.strength_permille for jar in jars), None) or 1000) / _FULLY
    ready = [Bottle(one.percent, one.now.left_ul / _MG) for one in bottles]
    try:
        return how_to_measure(standard_g, strength, balance, GLASSES, ready), ""
    except Problem as why:
        return None, str(why)
