"""Painted on boards, set in the steamer: a lot is one bottle set, one steamer run and one base."""

from collections.abc import Sequence
from random import Random
from typing import TypedDict

from sqlalchemy import func, select

from app.calculations.codes import shown
from app.lookups.trays import BOTTLES_KEEP
from app.problems import NotFound, Refused
from app.records import Bath, BottleSet, Colourway, DeedRow, OnBoard, RecipeVersion, Yarn
from app.store.deed import Deed
from app.work.bundling import number_of
from app.work.dividing import must_be_whole, skeins
from app.work.dyeing import into_lots, look_at_yarn
from app.work.loading import into_load


class Steamed(TypedDict):
    """A steamer run: its load, and the baths and lots that it made, in their order."""

    load: int
    baths: list[int]
    lots: list[int]
    codes: list[str | None]


def lay_on_board(deed: Deed, board: int, yarn: Sequence[int], bottle_set: int) -> list[int]:
    """Skeins laid on a board and painted from a set of bottles. The rows on the board."""
    rows = list(dict.fromkeys(yarn))
    if not rows:
        raise Refused("Nothing lies on the board yet; nothing was saved.", "Scan a disc.")
    made = deed.one(
        select(BottleSet.number, DeedRow.happened, Colourway.name)
        .join(DeedRow, DeedRow.seq == BottleSet.deed)
        .join(RecipeVersion, RecipeVersion.id == BottleSet.recipe_version)
        .join(Colourway, Colourway.id == RecipeVersion.colourway)
        .where(BottleSet.id == bottle_set, BottleSet.struck.is_(None)))
    if made is None:
        raise NotFound("This bottle set is not in the book; nothing was saved.", "Fill it first.")
    for row in rows:
        must_be_whole(deed, row)
    lying = deed.all(select(OnBoard.yarn, OnBoard.board, OnBoard.bottle_set).where(
        OnBoard.bath.is_(None), OnBoard.struck.is_(None),
        OnBoard.yarn.in_(rows) | (OnBoard.board == board)))
    twice = next((one for one in lying if one.yarn in rows), None)
    if twice is not None:
        raise Refused(f"This yarn lies on board {int(number_of(deed, twice.board))} already; "
                      "nothing was saved.", "Take that entry back if it is on this board.")
    if any(one.bottle_set != bottle_set for one in lying):
        deed.note("Another bottle set was used on this board: it will be lots of their own.")
    if deed.happened - made.happened > BOTTLES_KEEP:
        deed.note(f"Bottle set {made.number} is older than 48 hours: shake it and look for dye at "
                  "the bottom.")
    look_at_yarn(deed, rows)
    count = deed.value(select(func.sum(Yarn.count)).where(Yarn.id.in_(rows)))
    deed.say(f"laid {skeins(count)} of {made.name} on board {int(number_of(deed, board))}")
    return deed.add_all([OnBoard(yarn=row, board=board, bottle_set=bottle_set) for row in rows])


def into_steamer(
    deed: Deed, boards: Sequence[int], steamer: int | None, random: Random
) -> Steamed:
    """Boards enter the steamer: one lot for each bottle set and base, its code born here."""
    lying = deed.all(
        select(OnBoard.id, OnBoard.yarn, OnBoard.bottle_set, BottleSet.recipe_version)
        .join(BottleSet, BottleSet.id == OnBoard.bottle_set)
        .join(Yarn, Yarn.id == OnBoard.yarn)
        .where(OnBoard.board.in_(boards), OnBoard.bath.is_(None), OnBoard.struck.is_(None),
               Yarn.closed.is_(None))
        .order_by(OnBoard.id))
    if not lying:
        raise Refused("Nothing lies on these boards; nothing was saved.",
                      "Lay the yarn on them first, or scan the right boards.")
    load = into_load(deed, "steamer", yarn=[one.yarn for one in lying], plate=steamer)
    done: Steamed = {"load": load, "baths": [], "lots": [], "codes": []}
    for bottle_set in dict.fromkeys(one.bottle_set for one in lying):
        laid = [one for one in lying if one.bottle_set == bottle_set]
        bath = deed.add(Bath(plate=None, recipe_version=laid[0].recipe_version))
        for one in laid:
            deed.change(OnBoard, one.id, bath=bath)
        lots = into_lots(deed, bath, [one.yarn for one in laid], random)
        done["baths"].append(bath)
        done["lots"] += [lot for lot, _ in lots]
        done["codes"] += [code for _, code in lots]
    count = deed.value(select(func.sum(Yarn.count)).where(
        Yarn.id.in_([one.yarn for one in lying])))
    names = " and ".join(shown(code) if code else "a lot still without a code"
                         for code in done["codes"])
    where = "" if steamer is None else f" in steamer {int(number_of(deed, steamer))}"
    deed.say(f"{names}: {skeins(count)}{where}")
    return done
