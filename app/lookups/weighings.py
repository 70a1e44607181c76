"""Weigh-outs: what is open at the balance, and what a lot was weighed with, line by line."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import Any

from sqlalchemy import Connection, Row, RowMapping, bindparam, func, select
from sqlalchemy.orm import aliased

from app.lookups.fills import dyed_of
from app.lookups.weigh_sources import source_words
from app.records import (
    Colourway,
    Component,
    DeedRow,
    Fill,
    Jar,
    Plate,
    RecipeVersion,
    Stock,
    WeighedFor,
    Weighing,
    WeighLine,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class LineThen:
    """One line at the balance or one addition at the pot, with its source as it was."""

    id: int
    kind: str
    """taken, instead of, tipped back, thrown, addition."""
    component: int | None
    role: str | None
    asked: str
    """What the recipe asks here; without a recipe what was taken."""
    source: str
    """'jar 3, fill 4', '1 % stock of jar 3, fill 4', 'not scanned'."""
    fill: int | None
    stock: int | None
    target_mg: int | None
    target_ul: int | None
    mg: int | None
    ul: int | None
    why: str
    balance: str | None
    person: str
    begun: datetime
    taken: datetime | None
    """None: the cup stands on the balance, or nobody said what became of it."""

    @property
    def is_open(self) -> bool:
        """Begun and neither taken, tipped back nor thrown."""
        return self.taken is None

    @property
    def off(self) -> Fraction | None:
        """How far off its target, as a share of it: 0.02 is two per cent too much."""
        for target, got in ((self.target_mg, self.mg), (self.target_ul, self.ul)):
            if target and got is not None and self.kind in ("taken", "instead of"):
                return Fraction(got - target, target)
        return None


@dataclass(frozen=True, slots=True)
class WeighOut:
    """A weigh-out with its lines in their order."""

    id: int
    purpose: str
    recipe_version: int | None
    colourway: str | None
    version: int | None
    dry_mg: int | None
    dry_basis: str
    pick_up_permille: int | None
    bath_ml: int | None
    person: str
    begun: datetime
    closed: bool
    yarn: tuple[int, ...]
    lines: tuple[LineThen, ...]
    missing: tuple[str, ...]
    """What the recipe asks and no line has in it yet."""


_WEIGHINGS = (
    select(Weighing.id, Weighing.purpose, Weighing.recipe_version, Weighing.dry_mg,
           Weighing.dry_basis, Weighing.pick_up_permille, Weighing.bath_ml, Weighing.closed,
           Colourway.name, RecipeVersion.number, DeedRow.person, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Weighing.deed)
    .outerjoin(RecipeVersion, RecipeVersion.id == Weighing.recipe_version)
    .outerjoin(Colourway, Colourway.id == RecipeVersion.colourway)
    .where(Weighing.struck.is_(None)).order_by(Weighing.id)
)
_ONE = _WEIGHINGS.where(Weighing.id == bindparam("weighing"))
_OPEN = _WEIGHINGS.where(Weighing.closed.is_(None))
_TAKEN = aliased(DeedRow)
_LINES = (
    select(WeighLine.__table__, Component.role, Component.substance,
           Plate.words.label("balance_words"),
           DeedRow.person, DeedRow.happened, _TAKEN.person.label("taker"),
           _TAKEN.happened.label("taken_at"), Stock.mg_per_l, Fill.number, Jar.code, Jar.dye)
    .join(DeedRow, DeedRow.seq == WeighLine.deed)
    .outerjoin(_TAKEN, _TAKEN.seq == WeighLine.taken)
    .outerjoin(Component, Component.id == WeighLine.component)
    .outerjoin(Plate, Plate.id == WeighLine.balance)
    .outerjoin(Stock, (Stock.id == WeighLine.stock) & Stock.struck.is_(None))
    .outerjoin(Fill, (Fill.id == func.coalesce(Stock.fill, WeighLine.fill))
               & Fill.struck.is_(None))
    .outerjoin(Jar, (Jar.id == Fill.jar) & Jar.struck.is_(None))
    .where(WeighLine.struck.is_(None)).order_by(WeighLine.id)
)
_WEIGHED = _LINES.where(among(WeighLine.weighing, "ids"))
_ADDED = _LINES.where(WeighLine.bath == bindparam("bath"))
_FOR = (
    select(WeighedFor.weighing, WeighedFor.yarn)
    .where(among(WeighedFor.weighing, "ids"), WeighedFor.struck.is_(None)).order_by(WeighedFor.id)
)
_COMPONENTS = (
    select(Component.id, Component.recipe_version, Component.substance)
    .where(among(Component.recipe_version, "ids"), Component.struck.is_(None))
    .order_by(Component.recipe_version, Component.place)
)


def weigh_out(connection: Connection, weighing: int) -> WeighOut | None:
    """One weigh-out, or none."""
    found = _weigh_outs(connection, connection.execute(_ONE, {"weighing": weighing}).all())
    return found[0] if found else None


def open_weighings(connection: Connection) -> tuple[WeighOut, ...]:
    """Weigh-outs that were not closed: where to go on after a stop, the oldest first."""
    return _weigh_outs(connection, connection.execute(_OPEN).all())


@dataclass(frozen=True, slots=True)
class LotWeighed:
    """What a lot was weighed with; additions at the pot come last."""

    lines: tuple[LineThen, ...]
    off_recipe: tuple[str, ...]
    """Why it is off its recipe; nothing where it is on it, as far as is known."""
    fills: frozenset[int]
    known: bool
    """Whether every dye of it was weighed by scanned jars."""


def weighed_with(connection: Connection, lot: int) -> LotWeighed:
    """Every line of a lot; without a weigh-out nothing is known of what it was dyed with."""
    of = dyed_of(connection, [lot]).get(lot)
    if of is None:
        return LotWeighed((), (), frozenset(), False)
    weighed = connection.execute(_WEIGHED, {"ids": listed(of.weighings)}).mappings().all()
    added = connection.execute(_ADDED, {"bath": of.bath}).mappings().all()
    return LotWeighed(tuple(map(_line, (*weighed, *added))), of.off_recipe, of.fills, of.known)


def _weigh_outs(
    connection: Connection, rows: Iterable[Row[*tuple[Any, ...]]]
) -> tuple[WeighOut, ...]:
    found = {row.id: row for row in rows}
    lines: dict[int, list[LineThen]] = defaultdict(list)
    ids = {"ids": listed(found)}
    for line in connection.execute(_WEIGHED, ids).mappings():
        lines[line["weighing"]].append(_line(line))
    yarn: dict[int, list[int]] = defaultdict(list)
    for weighing, one in connection.execute(_FOR, ids):
        yarn[weighing].append(one)
    asked: dict[int, list[tuple[int, str]]] = defaultdict(list)
    versions = {row.recipe_version for row in found.values() if row.recipe_version}
    for component in connection.execute(_COMPONENTS, {"ids": listed(versions)}):
        asked[component.recipe_version].append((component.id, component.substance))
    return tuple(
        WeighOut(
            row.id, row.purpose, row.recipe_version, row.name, row.number, row.dry_mg,
            row.dry_basis, row.pick_up_permille, row.bath_ml, row.person, row.happened,
            row.closed is not None, tuple(yarn[row.id]), tuple(lines[row.id]),
            tuple(words for one, words in asked[row.recipe_version]
                  if net(lines[row.id], one) <= 0))
        for row in found.values())


def net(lines: Iterable[LineThen], component: int | None, source: LineThen | None = None) -> int:
    """What lines put in for a component, of one source alone where that is asked, in mg or ul."""
    return sum(
        line.mg if line.mg is not None else line.ul or 0 for line in lines
        if line.component == component and line.kind != "thrown"
        and (source is None or (line.fill, line.stock) == (source.fill, source.stock)))


def _line(row: RowMapping) -> LineThen:
    scanned = row["code"] is not None or row["mg_per_l"] is not None
    return LineThen(
        id=row["id"], kind=row["kind"], component=row["component"], role=row["role"],
        asked=row["substance"] or row["dye"] or row["why"] or "not said",
        source=source_words(row["code"], row["number"], row["mg_per_l"]) if scanned
        else "not scanned", fill=row["fill"], stock=row["stock"], target_mg=row["target_mg"],
        target_ul=row["target_ul"], mg=row["mg"], ul=row["ul"], why=row["why"],
        balance=row["balance_words"], person=row["taker"] or row["person"],
        begun=row["happened"], taken=row["taken_at"])
