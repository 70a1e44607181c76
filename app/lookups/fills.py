"""Where powder went: from a filling of a jar to its baths, and from lots back to their fills.

A fill lives on in the fill that was tipped onto its rest, and in stocks and bottles made of it.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import Any

from sqlalchemy import Connection, Row, bindparam, func, select

from app.records import (
    Bath,
    BottleSet,
    Component,
    DeedRow,
    DyeLot,
    Fill,
    FillPart,
    OnBoard,
    Stock,
    Weighing,
    WeighLine,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class DyedOf:
    """What a lot was dyed of, as far as it was weighed."""

    bath: int
    fills: frozenset[int]
    """The fills whose powder reached it, as they were scanned."""
    known: bool
    """Whether every dye that reached it was scanned; nothing weighed is not known."""
    off_recipe: tuple[str, ...]
    """Why it is off its recipe: another dye instead, a dye added at the pot, another recipe."""
    weighings: frozenset[int] = frozenset()


_NONE = listed(())
_LOTS = (
    select(DyeLot.id, DyeLot.bath, Bath.weighing, OnBoard.bottle_set, Bath.recipe_version,
           Weighing.recipe_version.label("weighed_by"))
    .join(Bath, Bath.id == DyeLot.bath).outerjoin(Weighing, Weighing.id == Bath.weighing)
    .outerjoin(OnBoard, (OnBoard.bath == Bath.id) & OnBoard.struck.is_(None))
    .where(among(DyeLot.id, "ids"), DyeLot.struck.is_(None)).distinct()
)
_SETS = select(BottleSet.id, BottleSet.after, BottleSet.weighing).where(among(BottleSet.id, "ids"))
_LINE = select(
    WeighLine.id, WeighLine.weighing, WeighLine.bath, WeighLine.kind, WeighLine.mg, WeighLine.ul,
    WeighLine.component, Component.role, Component.substance,
    func.coalesce(WeighLine.fill, Stock.fill).label("fill"),
).outerjoin(Stock, Stock.id == WeighLine.stock).outerjoin(
    Component, Component.id == WeighLine.component).where(WeighLine.struck.is_(None))
_POURED = _LINE.where(among(WeighLine.weighing, "ids"))
_ADDED = _LINE.where(among(WeighLine.bath, "ids"))
_INTO = select(FillPart.fill).where(
    among(FillPart.from_fill, "ids"), FillPart.struck.is_(None))
_OF_LOT = select(FillPart.fill).where(
    FillPart.supplier_lot == bindparam("lot"), FillPart.struck.is_(None))
_OUT_OF = (
    select(WeighLine.weighing).where(among(WeighLine.fill, "ids"), WeighLine.struck.is_(None)),
    select(WeighLine.weighing).join(Stock, Stock.id == WeighLine.stock)
    .where(among(Stock.fill, "ids"), WeighLine.struck.is_(None)),
)
_ADDED_OUT_OF = (
    select(WeighLine.bath).where(among(WeighLine.fill, "ids"), WeighLine.struck.is_(None)),
    select(WeighLine.bath).join(Stock, Stock.id == WeighLine.stock)
    .where(among(Stock.fill, "ids"), WeighLine.struck.is_(None)),
)
_BATHS = select(Bath.id).where(among(Bath.weighing, "ids"), Bath.struck.is_(None))
_FILLED = select(BottleSet.id).where(among(BottleSet.weighing, "ids"), BottleSet.struck.is_(None))
_REFILLED = select(BottleSet.id).where(among(BottleSet.after, "ids"), BottleSet.struck.is_(None))
_PAINTED = select(OnBoard.bath).where(
    among(OnBoard.bottle_set, "ids"), OnBoard.bath.is_not(None), OnBoard.struck.is_(None))
_PARTS = select(FillPart.supplier_lot, FillPart.from_fill, FillPart.mg).where(
    FillPart.fill == bindparam("fill"), FillPart.struck.is_(None))


def dyed_of(connection: Connection, lots: Iterable[int]) -> Mapping[int, DyedOf]:
    """What these lots were dyed of; a lot from before the book has no bath and is left out."""
    asked = listed(lots)
    rows = connection.execute(_LOTS, {"ids": asked}).all() if asked != _NONE else []
    if not rows:
        return {}
    sets = _sets_before(connection, {row.bottle_set for row in rows if row.bottle_set})
    poured: dict[int, set[int]] = defaultdict(set)
    strange = {row.bath for row in rows if row.weighed_by not in (None, row.recipe_version)}
    for row in rows:
        poured[row.bath] |= set() if row.weighing is None else {row.weighing}
        poured[row.bath] |= sets.get(row.bottle_set, set())
    lines = defaultdict(list)
    weighings = set().union(*poured.values())
    if weighings:
        for line in connection.execute(_POURED, {"ids": listed(weighings)}):
            lines["weighing", line.weighing].append(line)
    for line in connection.execute(_ADDED, {"ids": listed(poured)}):
        lines["bath", line.bath].append(line)
    baths = {
        bath: _dyed_of(bath, poured[bath], [
            *lines["bath", bath], *(line for one in sorted(poured[bath])
                                    for line in lines["weighing", one])], bath in strange)
        for bath in poured
    }
    return {row.id: baths[row.bath] for row in rows}


def _sets_before(connection: Connection, sets: Collection[int]) -> dict[int, set[int]]:
    """For each set of bottles the weigh-outs that are in it: its own and those before a refill."""
    before: dict[int, tuple[int | None, int | None]] = {}
    waiting = set(sets)
    while waiting:
        for row in connection.execute(_SETS, {"ids": listed(waiting)}):
            before[row.id] = row.after, row.weighing
        waiting = {after for after, _ in before.values() if after is not None} - before.keys()
    found: dict[int, set[int]] = {}
    for one in sets:
        met: set[int] = set()
        here: int | None = one
        while here is not None:
            after, weighing = before[here]
            met |= set() if weighing is None else {weighing}
            here = after
        found[one] = met
    return found


def _dyed_of(
    bath: int, weighings: set[int], lines: list[Row[*tuple[Any, ...]]], strange: bool
) -> DyedOf:
    reached: dict[tuple[int | None, int | None], int] = defaultdict(int)
    instead: dict[tuple[int | None, int | None], str] = {}
    off, dyed = dict[str, None](), False
    if strange:
        off["weighed out for another recipe"] = None
    for line in lines:
        if line.kind == "thrown":
            continue
        size = line.mg if line.mg is not None else line.ul
        reached[line.component, line.fill] += 1 if size is None else size  # open: it may be in
        if line.kind == "instead of":
            instead[line.component, line.fill] = line.substance or "what the recipe asks"
        if line.kind == "addition" and (line.fill is not None or line.role == "dye"):
            off["dye was added at the pot"] = None
        dyed = dyed or line.role == "dye" or line.fill is not None
    off |= {f"weighed instead of {asked}": None for source, asked in instead.items()
            if reached[source] > 0}
    unscanned = {line.component for line in lines
                 if line.role == "dye" and line.fill is None and line.kind != "thrown"}
    fills = frozenset(fill for (_, fill), size in reached.items() if fill is not None and size > 0)
    return DyedOf(bath, fills, dyed and not unscanned, tuple(off), frozenset(weighings))


def fills_after(connection: Connection, fill: int) -> frozenset[int]:
    """This fill and all that its rest went on into."""
    return frozenset(_all_after(connection, _INTO, [fill]))


def fills_of(connection: Connection, supplier_lot: int) -> frozenset[int]:
    """The fills that powder of this maker's lot went into, at once or with a rest."""
    tipped = connection.execute(_OF_LOT, {"lot": supplier_lot}).scalars()
    return frozenset(_all_after(connection, _INTO, tipped))


def _all_after(connection: Connection, step: Any, start: Iterable[int]) -> set[int]:
    met = set(start)
    waiting = set(met)
    while waiting:
        waiting = set(connection.execute(step, {"ids": listed(waiting)}).scalars()) - met
        met |= waiting
    return met


def baths_of(connection: Connection, fill: int) -> frozenset[int]:
    """The baths that powder of this fill reached, by weighing, stock, bottle or addition.

    What was wholly tipped back, or thrown, reached none.
    """
    return baths_with(connection, fills_after(connection, fill))


def baths_with(connection: Connection, fills: frozenset[int]) -> frozenset[int]:
    """The baths that powder of one of these fills reached."""
    ids = {"ids": listed(fills)}
    weighings = {one for question in _OUT_OF
                 for one in connection.execute(question, ids).scalars() if one is not None}
    baths = {one for question in _ADDED_OUT_OF
             for one in connection.execute(question, ids).scalars() if one is not None}
    if weighings:
        wanted = {"ids": listed(weighings)}
        baths |= set(connection.execute(_BATHS, wanted).scalars())
        sets = _all_after(connection, _REFILLED, connection.execute(_FILLED, wanted).scalars())
        baths |= {one for one in connection.execute(_PAINTED, {"ids": listed(sets)}).scalars()
                  if one is not None}
    lots = connection.execute(
        select(DyeLot.id).where(among(DyeLot.bath, "ids")), {"ids": listed(baths)}).scalars()
    return frozenset(one.bath for one in dyed_of(connection, lots.all()).values()
                     if one.fills & fills)


@dataclass(frozen=True, slots=True)
class Share:
    """So much of a fill came from this lot of a maker."""

    supplier_lot: int
    share: Fraction


def shares_of(connection: Connection, fill: int) -> tuple[Share, ...]:
    """The makers' lots in a fill, through all that was tipped together; the shares add to 1."""
    found: dict[int, Fraction] = defaultdict(Fraction)
    waiting = [(fill, Fraction(1))]
    while waiting:
        one, whole = waiting.pop()
        parts = connection.execute(_PARTS, {"fill": one}).all()
        total = sum(part.mg for part in parts)
        for part in parts:
            share = whole * Fraction(part.mg, total)
            if part.supplier_lot is None:
                waiting.append((part.from_fill, share))
            else:
                found[part.supplier_lot] += share
    return tuple(Share(lot, share) for lot, share in sorted(found.items()))


def fill_at(connection: Connection, jar: int, at: datetime) -> int | None:
    """The fill that was in a jar at a moment; none before it was opened."""
    fill: int | None = connection.execute(
        select(Fill.id).join(DeedRow, DeedRow.seq == Fill.deed)
        .where(Fill.jar == jar, Fill.struck.is_(None), DeedRow.happened <= at)
        .order_by(DeedRow.happened.desc(), Fill.number.desc())).scalar()
    return fill
