"""The pot: a lot code is born when a bundle meets the bath, one for each base in it."""

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random
from typing import TypedDict

from sqlalchemy import func, select

from app.calculations.code_drawing import draw_lot_code
from app.calculations.codes import shown
from app.lookups.certainty import held_by, links
from app.lookups.pot_filling import bath_asked
from app.lookups.thread import Thread, thread
from app.lookups.weighings import weigh_out
from app.problems import NotFound, Refused
from app.records import (
    Base,
    Bath,
    Colourway,
    DeedRow,
    DyeLot,
    InBath,
    Load,
    Plate,
    RecipeVersion,
    Yarn,
)
from app.store.deed import Deed
from app.work.bundling import number_of
from app.work.dividing import must_be_whole, skeins

LEAST_STEAM = 25  # minutes; common practice, no source
OFF_WEIGHT = 0.05  # of what was weighed for: half a Delta E00 in the shade


class Bathed(TypedDict):
    """A bath and its lots: {"bath": 1, "lots": [7], "codes": ["2615R6F"]}."""

    bath: int
    lots: list[int]
    codes: list[str | None]


@dataclass(frozen=True, slots=True)
class BathIn:
    """What goes into a bath: rows of yarn, by which recipe version, in which pot, with what.

    Without a weigh-out nobody knows what the lot was dyed of.
    """

    yarn: tuple[int, ...]
    recipe_version: int
    pot: int | None = None
    weighing: int | None = None


def name_colourway(deed: Deed, name: str, swatch: str | None = None, note: str = "") -> int:
    """A colourway with its first recipe version; the version's number.

    `swatch` is a colour chosen by eye, like '#1B856E'; none means not measured.
    """
    if not name.strip():
        raise Refused("A colourway needs a name; nothing was saved.", "Say what it is called.")
    if deed.value(select(Colourway.id).where(Colourway.name == name, Colourway.struck.is_(None))):
        raise Refused(f"{name} is there already; nothing was saved.", "Make its next version.")
    colourway = deed.add(Colourway(name=name, swatch=swatch))
    deed.say(f"named {name}")
    return deed.add(RecipeVersion(colourway=colourway, number=1, note=note))


def into_bath(deed: Deed, bath_in: BathIn, random: Random) -> Bathed:
    """Bundles meet the bath: one lot for each base, each with a code of its own.

    Sister lots (same recipe version and day) and companion lots (same bath) are computed. While
    the clock is in doubt the code stays pending. Warned and kept: two cones with one tie colour,
    yarn on hold, a base mixture, a pot that is still full.
    """
    rows = list(dict.fromkeys(bath_in.yarn))
    if not rows:
        raise Refused("Nothing is in the pot yet; nothing was saved.", "Scan a disc.")
    recipe = deed.one(
        select(Colourway.id, Colourway.name).join(
            RecipeVersion, RecipeVersion.colourway == Colourway.id)
        .where(RecipeVersion.id == bath_in.recipe_version, RecipeVersion.struck.is_(None))
    )
    if recipe is None:
        raise NotFound("This recipe is not in the book; nothing was saved.", "Choose a recipe.")
    _look_at_pot(deed, rows, bath_in.pot)
    _look_at_weighing(deed, rows, bath_in)
    _look_at_size(deed, rows, bath_in)
    bath = deed.add(Bath(plate=bath_in.pot, recipe_version=bath_in.recipe_version,
                         weighing=bath_in.weighing))
    lots = into_lots(deed, bath, rows, random)
    names = [shown(code) if code else "a lot still without a code"
             for _, code in lots]
    count = deed.value(select(func.sum(Yarn.count)).where(Yarn.id.in_(rows)))
    pot = "" if bath_in.pot is None else f" in pot {int(number_of(deed, bath_in.pot))}"
    deed.say(f"{' and '.join(names)}: {skeins(count)} of {recipe.name}{pot}")
    return {"bath": bath, "lots": [lot for lot, _ in lots], "codes": [code for _, code in lots]}


def into_lots(
    deed: Deed, bath: int, rows: Sequence[int], random: Random
) -> list[tuple[int, str | None]]:
    """One lot of this bath for each base among the rows, each with a code of its own."""
    colourway = deed.value(
        select(RecipeVersion.colourway).join(Bath, Bath.recipe_version == RecipeVersion.id)
        .where(Bath.id == bath))
    lots: dict[int, tuple[int, str | None]] = {}
    for row in rows:
        must_be_whole(deed, row)
        base = deed.value(select(Yarn.base).where(Yarn.id == row))
        if base not in lots:
            code = _new_code(deed, random)
            lots[base] = (deed.add(DyeLot(code=code, bath=bath, base=base, colourway=colourway)),
                          code)
        deed.add(InBath(yarn=row, lot=lots[base][0], basis="scanned"))
    return list(lots.values())


def name_lot(deed: Deed, lot: int, random: Random) -> str:
    """The day is certain now: a lot that was pending gets its code."""
    row = deed.one(select(DyeLot.code, DyeLot.id).where(DyeLot.id == lot, DyeLot.struck.is_(None)))
    if row is None or row.code:
        raise Refused("This lot has its code already; nothing was saved.", "Look it up again.")
    code = _new_code(deed, random)
    if code is None:
        raise Refused("The clock is still behind the last entry; no code was given.",
                      "Set the computer's clock first.")
    deed.change(DyeLot, lot, code=code)
    deed.say(f"named lot {shown(code)}")
    return code


def lift(deed: Deed, bath: int) -> None:
    """The yarn is lifted out: the pot may be used again."""
    row = deed.one(select(Bath.lifted, Bath.plate).where(Bath.id == bath, Bath.struck.is_(None)))
    if row is None or row.lifted:
        raise Refused("This bath was lifted already; nothing was saved.", "Scan the pot again.")
    deed.change(Bath, bath, lifted=deed.seq)
    _look_at_steam(deed, bath)
    deed.say(f"lifted pot {int(number_of(deed, row.plate))}" if row.plate else "lifted")


def _look_at_steam(deed: Deed, bath: int) -> None:
    begun = deed.value(
        select(DeedRow.happened).join(Bath, Bath.deed == DeedRow.seq)
        .join(Load, Load.deed == Bath.deed)
        .where(Bath.id == bath, Bath.plate.is_(None), Load.step == "steamer"))
    minutes = None if begun is None else int((deed.happened - begun).total_seconds() // 60)
    if minutes is not None and minutes < LEAST_STEAM:
        deed.note(f"{minutes} minutes in the steamer: below {LEAST_STEAM} the dye is not fixed.")


def _new_code(deed: Deed, random: Random) -> str | None:
    if deed.clock_in_doubt:
        deed.note("The clock is behind the last entry: the lot gets its code when the day is sure. "
                  "See to it at the Desk, under Book.")
        return None
    year, week, _ = deed.happened.isocalendar()
    start = f"{year % 100:02}{week:02}"
    taken = [code for (code,) in deed.all(
        select(DyeLot.code).where(DyeLot.code >= start, DyeLot.code < start + "~"))]
    return draw_lot_code(year, week, taken, random).text


def _look_at_weighing(deed: Deed, rows: Sequence[int], bath_in: BathIn) -> None:
    """What was weighed is poured in: it has happened, and what does not fit is marked."""
    if bath_in.weighing is None:
        return
    out = weigh_out(deed.connection, bath_in.weighing)
    if out is None:
        raise NotFound("This weigh-out is not in the book; nothing was saved.",
                       "Scan its sheet again, or go on without one.")
    if out.recipe_version != bath_in.recipe_version:
        deed.note("This was weighed out for another recipe: the lot is marked by what is in it.")
    if any(line.is_open for line in out.lines):
        deed.note("A line of the weigh-out is still open: say what became of its cup.")
    if deed.value(select(Bath.id).where(
            Bath.weighing == out.id, Bath.struck.is_(None))) is not None:
        deed.note("This weigh-out was poured into another bath already: is it the right one?")
    mg = deed.value(select(func.sum(Yarn.mg)).where(Yarn.id.in_(rows)))
    if out.dry_mg and abs(mg - out.dry_mg) > out.dry_mg * OFF_WEIGHT:
        deed.note(f"{mg / 1000:.0f} g of yarn is in it, and it was weighed out for "
                  f"{out.dry_mg / 1000:.0f} g.")


def _look_at_size(deed: Deed, rows: Sequence[int], bath_in: BathIn) -> None:
    asked = bath_asked(deed.connection, rows, bath_in.pot, bath_in.recipe_version,
                       bath_in.weighing, deed.happened)
    if asked is not None and asked.too_much:
        deed.note(f"{asked.level_l:.2f} L with the yarn is more than the {asked.usable_l:.2f} L "
                  "this pot takes: stir it more, for it dyes unlevel.")


def _look_at_pot(deed: Deed, rows: Sequence[int], pot: int | None) -> None:
    look_at_yarn(deed, rows)
    full = None if pot is None else deed.one(
        select(DyeLot.code, Plate.code).join(Bath, Bath.id == DyeLot.bath)
        .join(Plate, Plate.id == Bath.plate)
        .where(Bath.plate == pot, Bath.lifted.is_(None), Bath.struck.is_(None)))
    if full is not None:
        deed.note("The lot before was not lifted out of this pot: which bucket is it in?")


def look_at_yarn(deed: Deed, rows: Sequence[int]) -> None:
    """Note what is to be known of yarn that is dyed together: holds, like ties, several bases."""
    found = thread(deed.connection, rows)
    if any(held_by(found, row) for row in rows):
        deed.note("HOLD lies on yarn in this pot: it goes on, marked. Ask who placed the hold.")
    _same_ties(deed, rows, found)
    bases = deed.all(select(Base.name).join(Yarn, Yarn.base == Base.id)
                     .where(Yarn.id.in_(rows)).distinct())
    if len(bases) > 1:
        deed.note(f"{len(bases)} bases in one bath: companion lots, each with its own code.")


def _same_ties(deed: Deed, rows: Sequence[int], found: Thread) -> None:
    """Rows of different cones whose ties look alike; a join alone has two cones and two colours."""
    worn: dict[tuple[int, str], set[frozenset[int | None]]] = {}
    for yarn, base, tie in deed.all(select(Yarn.id, Yarn.base, Yarn.tie).where(Yarn.id.in_(rows))):
        if tie:
            cones = frozenset(link.thing for link in links(found, yarn, "cone"))
            worn.setdefault((base, tie), set()).add(cones)
    for (_, tie), origins in worn.items():
        if len(origins) > 1:
            met = frozenset().union(*origins)
            deed.note(f"{len(met)} cones with {tie} ties in one pot: keep their cords closed, "
                      "else each skein is one of them.")
