"""Stock solutions, and the bottles of a painted recipe; a refilled bottle is a new set."""

from dataclasses import dataclass

from sqlalchemy import func, select

from app.lookups.weigh_sources import stock_now
from app.lookups.weighings import LineThen, WeighOut, weigh_out
from app.problems import NotFound, Refused
from app.records import BottleSet, Colourway, RecipeVersion, Stock, Weighing, Zone
from app.store.deed import Deed

LIFE_OF_ACID_STOCK = 180  # days: 6 months; common practice, no source
STRONGEST_MG_PER_L = 300_000  # beyond 30 % a litre slipped


@dataclass(frozen=True, slots=True)
class StockIn:
    """What was weighed or measured, made up with water to so many millilitres."""

    weighing: int
    ml: int
    plate: int | None = None
    life_days: int | None = LIFE_OF_ACID_STOCK


def make_stock(deed: Deed, stock: StockIn) -> int:
    """Make up the powder, or the part of another stock, that was weighed out for it. The stock."""
    out = weigh_out(deed.connection, stock.weighing)
    if out is None or out.purpose != "stock":
        raise NotFound("Nothing was weighed out for a stock; nothing was saved.",
                       "Begin a weigh-out for a stock.")
    if deed.value(select(Stock.id).where(Stock.weighing == out.id, Stock.struck.is_(None))):
        raise Refused("This powder was made up already; nothing was saved.",
                      "Weigh out again for another stock.")
    line, size = _one_source(out)
    of = None if line.stock is None else stock_now(deed.connection, line.stock)
    fill = line.fill if of is None else of.fill
    mg_per_l = 0
    if stock.ml > 0:
        mg_per_l = round(size * 1000 / stock.ml) if of is None else round(
            of.mg_per_l * size / (stock.ml * 1000))
    if not 0 < mg_per_l <= STRONGEST_MG_PER_L:
        raise Refused(f"{stock.ml} mL cannot be made of that; nothing was saved.",
                      "Look at the millilitres again.")
    if not out.closed:
        deed.change(Weighing, out.id, closed=deed.seq)
    deed.say(f"made {stock.ml / 1000:g} L of {mg_per_l / 10_000:g} % stock from {line.source}")
    return deed.add(Stock(
        fill=fill, weighing=out.id, from_stock=line.stock, plate=stock.plate, mg_per_l=mg_per_l,
        ml=stock.ml, life_days=stock.life_days))


def _one_source(out: WeighOut) -> tuple[LineThen, int]:
    """The one fill or stock that was taken, and how much of it stayed in the cup."""
    if any(line.is_open for line in out.lines):
        raise Refused("A cup stands on the balance still; nothing was saved.",
                      "Take its weight first.")
    got: dict[tuple[int | None, int | None], int] = {}
    for line in out.lines:
        if line.kind != "thrown":
            key = line.fill, line.stock
            got[key] = got.get(key, 0) + (line.mg if line.mg is not None else line.ul or 0)
    left = {key: size for key, size in got.items() if size > 0}
    if len(left) != 1:
        raise Refused("A stock is made of one jar, or of one other stock; nothing was saved.",
                      "Weigh out for each of them by itself.")
    ((key, size),) = left.items()
    return next(line for line in out.lines if (line.fill, line.stock) == key), size


def fill_bottles(deed: Deed, recipe_version: int, weighing: int | None = None) -> int:
    """The bottles of a painted recipe are full: a set, and each lot is painted from one. The set.
    """
    name = _zoned(deed, recipe_version)
    number = _next_number(deed, recipe_version)
    _look_at_weighing(deed, weighing, recipe_version)
    deed.say(f"filled bottle set {number} of {name}")
    return deed.add(BottleSet(recipe_version=recipe_version, number=number, weighing=weighing))


def refill_bottle(
    deed: Deed, bottle_set: int, letter: str, weighing: int | None = None
) -> int:
    """One bottle was filled again: a new set after the old one, and what it paints a new lot."""
    old = deed.one(select(BottleSet.recipe_version, BottleSet.number).where(
        BottleSet.id == bottle_set, BottleSet.struck.is_(None)))
    if old is None:
        raise NotFound("This bottle set is not in the book; nothing was saved.", "Fill one first.")
    zone = deed.value(select(Zone.id).where(
        Zone.recipe_version == old.recipe_version, Zone.letter == letter, Zone.struck.is_(None)))
    if zone is None:
        raise Refused(f"This recipe has no zone {letter}; nothing was saved.",
                      "Say which bottle was filled again.")
    number = _next_number(deed, old.recipe_version)
    _look_at_weighing(deed, weighing, old.recipe_version)
    deed.say(f"filled bottle {letter} again: set {number} of {_zoned(deed, old.recipe_version)}")
    return deed.add(BottleSet(recipe_version=old.recipe_version, number=number, after=bottle_set,
                              refilled=zone, weighing=weighing))


def _zoned(deed: Deed, version: int) -> str:
    name: str | None = deed.value(
        select(Colourway.name).join(RecipeVersion, RecipeVersion.colourway == Colourway.id)
        .where(RecipeVersion.id == version, RecipeVersion.struck.is_(None)))
    if name is None:
        raise NotFound("This recipe is not in the book; nothing was saved.", "Choose a recipe.")
    return name


def _next_number(deed: Deed, version: int) -> int:
    last: int | None = deed.value(select(func.max(BottleSet.number)).where(
        BottleSet.recipe_version == version))
    return (last or 0) + 1


def _look_at_weighing(deed: Deed, weighing: int | None, version: int) -> None:
    if weighing is None:
        deed.note("Nothing was weighed for these bottles: what is in them is not known.")
        return
    out = weigh_out(deed.connection, weighing)
    if out is None or out.purpose != "bottles" or out.recipe_version != version:
        raise Refused("This weigh-out is not for bottles of this recipe; nothing was saved.",
                      "Choose the weigh-out that was made for them.")
    if not out.closed:
        deed.note("The weigh-out of these bottles is still open: close it when all is in.")
