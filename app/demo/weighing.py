"""The balance: the studio's jars, and what is weighed out of them for each bath."""

from collections.abc import Iterable
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.balances import Balance
from app.calculations.codes import Kind
from app.calculations.units import milligrams
from app.calculations.zones import DEAD_VOLUME
from app.demo.hands import Bottle, Hands
from app.demo.sources import Line, toml
from app.exchange.recipes_in import look_at_notebook, take_in_notebook
from app.exchange.taking_in import Said
from app.lookups.balances import balances_now
from app.lookups.jars import JarNow, jar_now, jars_now
from app.lookups.pot_filling import bath_asked
from app.lookups.recipe_amounts import Amount, amounts
from app.lookups.recipes import RecipeThen, recipe_then
from app.problems import NotFound
from app.records import Bath, Component, DyeLot, RecipeVersion, WeighLine, Yarn
from app.work.balances import BalanceIn, set_up_balance
from app.work.jars import NewJar, Refill, open_new_jar, refill, say_strength, weigh_jar
from app.work.recipes import RecipeIn, StepIn, correct_recipe
from app.work.stocks import StockIn, make_stock
from app.work.weigh_lines import LineIn, begin_line, take_weight
from app.work.weighing import WeighingIn, begin_weighing, close_weighing

MILLIONTHS = 1_000_000
STANDARD = 1000
STOCK_MG, STOCK_ML, STOCK_DAYS = 5_000, 500, 150
LOW_MG, REFILL_MG = 20_000, 250_000
STEP_MG = 10
BALANCE = BalanceIn(1, "bench balance", Decimal("0.01"), Decimal(600))


def stock_jars(hands: Hands) -> None:
    """The balance, the nine jars and the notebook of recipes, on the first morning."""
    hands.do(set_up_balance, BALANCE)
    for jar in toml(hands.folder / "jars.toml")["jars"]:
        hands.do(open_new_jar, NewJar(jar["number"], jar["dye"], jar["maker"], jar["lot"],
                                      milligrams(Decimal(jar["g"])), STANDARD))
    recipes_from(hands, {"file": "recipes.csv"})


def recipes_from(hands: Hands, line: Line) -> None:
    """A notebook of recipes: new ones, or the next version of what it changes."""
    data, why = (hands.folder / line["file"]).read_bytes(), line.get("why", "from the notebook")
    seen = hands.book.ask(look_at_notebook, data, Said())
    versions = hands.do(take_in_notebook, seen, why=why)
    steps = toml(hands.folder / "steps.toml")
    for version, one in zip(versions, seen.notebook.recipes if seen.notebook else (), strict=True):
        colourway = hands.book.ask(_colourway_of, version)
        hands.do(correct_recipe, version, RecipeIn(
            colourway, one.components, one.look, one.base_class, one.liquor_tenths, one.zones,
            _steps(steps[one.look]), why))


def _steps(lines: Iterable[Line]) -> tuple[StepIn, ...]:
    """Steps of the notebook's last page; no heat or time where none stands there."""
    return tuple(StepIn(one["words"], one["heat"] * 10 if "heat" in one else None,
                        one.get("minutes")) for one in lines)


def refill_jar(hands: Hands, line: Line) -> None:
    """A new lot on what was left, at the strength that its maker says."""
    hands.do(refill, hands.thing(Kind.JAR, line["jar"]),
             Refill(line["lot"], milligrams(Decimal(str(line["g"]))), STANDARD))


def strength(hands: Hands, line: Line) -> None:
    """A dyed sample tells how strong a jar really is."""
    hands.do(say_strength, hands.thing(Kind.JAR, line["jar"]), line["percent"] * 10)


def take_instead(hands: Hands, line: Line) -> None:
    """For the next bath of a colourway another dye is taken, by a second scan of its jar."""
    hands.instead[line["colourway"]] = line["asked"], line["really"]


def weigh_jars(hands: Hands, line: Line) -> None:
    """All jars on the balance. The one poured for another in a lot is lighter by that much."""
    wrong: Line = line.get("poured", {})
    off = hands.book.ask(_weighed_in, hands.lot(wrong["lot"]), wrong["asked"]) if wrong else 0
    gaps = {wrong["asked"]: off, wrong["really"]: -off} if wrong else {}
    for jar in hands.book.ask(jars_now):
        hands.do(weigh_jar, jar.jar, jar.left_mg + gaps.get(jar.dye, 0)
                 + hands.balance.randint(-8, 8) * STEP_MG)


def weigh_out(
    hands: Hands, yarn: list[int], version: int, purpose: str = "bath", pot: int | None = None
) -> int | None:
    """All that the recipe asks for this yarn, jar by jar; none where no amounts are written."""
    asked, recipe = hands.book.ask(amounts, version), hands.book.ask(recipe_then, version)
    if not asked or recipe is None:
        return None
    (scale,) = hands.book.ask(balances_now)
    dry_mg = hands.book.ask(_dry_mg, yarn)
    dye, taken = hands.instead.pop(recipe.name, ("", ""))
    lines = [
        (one, *_ready(hands, taken if one.substance == dye else one.substance,
                      _standard_mg(one, recipe, dry_mg), scale.facts)) for one in asked]
    weighing: int = hands.do(begin_weighing, WeighingIn(
        purpose, version, tuple(yarn), bath_ml=_bath_ml(hands, yarn, version, pot)))
    for one, target, jar in lines:
        if jar is not None and not scale.facts.can_weigh(Decimal(target) / 1000):
            _pour(hands, weighing, one, jar, target)
        else:
            _weigh(hands, LineIn(weighing, one.component, jar.fill if jar else None,
                                 target_mg=target, balance=scale.plate,
                                 instead_of=one.substance == dye))
    hands.do(close_weighing, weighing)
    return weighing


def _bath_ml(hands: Hands, yarn: list[int], version: int, pot: int | None) -> int | None:
    """The bath that the recipe asks, less where the pot would be too full; in tenths of a litre."""
    asked = hands.book.ask(bath_asked, yarn, pot, version, None, hands.now())
    if asked is None:
        return None
    over = max(Decimal(0), asked.level_l - asked.usable_l) if asked.usable_l else Decimal(0)
    return int((asked.bath_l - over) * 10) * 100


def _standard_mg(one: Amount, recipe: RecipeThen, dry_mg: int) -> float:
    """Dye as strong as the standard: of the fibre, or of its bottle with what stays in it."""
    if one.zone is None:
        return dry_mg * one.amount / MILLIONTHS
    per_100_g = next(zone.ml_per_100_g for zone in recipe.zones if zone.letter == one.zone)
    litres = dry_mg / MILLIONTHS * per_100_g / 100 * float(1 + DEAD_VOLUME)
    return litres * one.amount


def _ready(
    hands: Hands, substance: str, standard_mg: float, scale: Balance
) -> tuple[int, JarNow | None]:
    """How much is asked at the jar's strength, and the jar, refilled where it runs low."""
    jar = _jar(hands, substance)
    if jar is None:
        return _stepped(standard_mg), None
    target = _stepped(standard_mg * STANDARD / (jar.strength_permille or STANDARD))
    if jar.left_mg < target + LOW_MG:
        label = f"{jar.dye.split()[-1]}-26-{hands.balance.randint(100, 299)}"
        hands.do(refill, jar.jar, Refill(label, REFILL_MG, STANDARD))
        jar = _jar(hands, substance)
    if jar is not None and not scale.can_weigh(Decimal(target) / 1000):
        _stock_ready(hands, jar, target * 100)
    return target, jar


def _stock_ready(hands: Hands, jar: JarNow, ul: int) -> None:
    today = hands.now().toordinal()
    bottle = hands.bottles.get(jar.dye)
    if (bottle and bottle.fill == jar.fill and bottle.left_ul > ul
            and today - bottle.made < STOCK_DAYS):
        return
    weighing = hands.do(begin_weighing, WeighingIn("stock"))
    (scale,) = hands.book.ask(balances_now)
    line = hands.do(begin_line, LineIn(weighing, fill=jar.fill, target_mg=STOCK_MG,
                                       balance=scale.plate))
    hands.do(take_weight, line, STOCK_MG)
    stock = hands.do(make_stock, StockIn(weighing, STOCK_ML))
    hands.bottles[jar.dye] = Bottle(stock, jar.fill, today, STOCK_ML * 1000)


def _pour(hands: Hands, weighing: int, one: Amount, jar: JarNow, target_mg: int) -> None:
    bottle = hands.bottles[jar.dye]
    ul = target_mg * 100
    line = hands.do(begin_line, LineIn(weighing, one.component, stock=bottle.stock, target_ul=ul))
    hands.do(take_weight, line, ul=ul)
    hands.bottles[jar.dye] = Bottle(bottle.stock, bottle.fill, bottle.made, bottle.left_ul - ul)


def _weigh(hands: Hands, asked: LineIn) -> None:
    """A spoon is never quite right: within a step or half a percent."""
    target = asked.target_mg or 0
    off = round(max(-1, min(1, hands.balance.gauss(0, 0.4))) * max(STEP_MG, target * 0.005))
    hands.do(take_weight, hands.do(begin_line, asked), _stepped(target + off))


def _stepped(mg: float) -> int:
    return max(STEP_MG, round(mg / STEP_MG) * STEP_MG)


def _jar(hands: Hands, dye: str) -> JarNow | None:
    if not hands.jars:
        hands.jars.update((jar.dye, jar.jar) for jar in hands.book.ask(jars_now))
    return hands.book.ask(jar_now, hands.jars[dye]) if dye in hands.jars else None


def _dry_mg(connection: Connection, yarn: list[int]) -> int:
    return sum(connection.execute(select(Yarn.mg).where(Yarn.id.in_(yarn))).scalars())


def _colourway_of(connection: Connection, version: int) -> int:
    return connection.execute(
        select(RecipeVersion.colourway).where(RecipeVersion.id == version)).scalar_one()


def _weighed_in(connection: Connection, lot: int, dye: str) -> int:
    """Milligrams of a dye in a lot's bath by the book; raises NotFound."""
    mg: int | None = connection.execute(
        select(WeighLine.mg).join(Component, Component.id == WeighLine.component)
        .join(Bath, Bath.weighing == WeighLine.weighing).join(DyeLot, DyeLot.bath == Bath.id)
        .where(DyeLot.id == lot, Component.substance == dye)).scalar()
    if mg is None:
        raise NotFound(f"No {dye} was weighed for this lot.")
    return mg
