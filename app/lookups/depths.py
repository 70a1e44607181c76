"""How deep a lot is dyed, by what was weighed for it, else by its recipe; else it is not known."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from sqlalchemy import Connection, Row, func, select

from app.lookups.fills import dyed_of
from app.records import Bath, Component, DyeLot, Fill, InBath, Jar, Stock, WeighLine, Yarn, Zone
from app.store.dialect import among, listed

PALE, DEEP = 1_000, 12_000
"""Millionths of the fibre: below 0.1 % a lot is stained easily, above 1.2 % some dyes come off in
the wash (common practice, no source)."""
_COMES_OFF = ("red", "scarlet", "crimson", "magenta", "pink", "rubine", "turquoise", "black")
_MOSTLY = Fraction(1, 2)
_PER_MILLION = 1_000_000


@dataclass(frozen=True, slots=True)
class Depth:
    """The dye on a lot in millionths of its dry fibre, and which dyes."""

    millionths: int
    dyes: Mapping[str, int]
    weighed: bool
    """By what was weighed for it; else by its recipe."""

    @property
    def pale(self) -> bool:
        """Less than 0.1 %."""
        return self.millionths < PALE

    @property
    def deep(self) -> bool:
        """More than 1.2 %, and most of it a red, a turquoise or a black."""
        comes_off = sum(size for name, size in self.dyes.items() if _is_one_of(name))
        return self.millionths > DEEP and comes_off >= self.millionths * _MOSTLY

    @property
    def words(self) -> str:
        """'0.055 %'; a hundredth of a per cent where it is not pale."""
        return f"{self.millionths / 10_000:.{3 if self.pale else 2}f} %"


_LOTS = (
    select(DyeLot.id, DyeLot.bath).where(among(DyeLot.id, "ids"), DyeLot.bath.is_not(None),
                                         DyeLot.struck.is_(None)))
_FIBRE = (
    select(DyeLot.bath, func.sum(Yarn.mg)).join(InBath, InBath.lot == DyeLot.id)
    .join(Yarn, Yarn.id == InBath.yarn)
    .where(among(DyeLot.bath, "ids"), InBath.struck.is_(None)).group_by(DyeLot.bath))
_DYES = (
    select(WeighLine.mg, WeighLine.ul, WeighLine.taken, WeighLine.bath, WeighLine.weighing,
           Component.role, Component.substance, Stock.mg_per_l, Jar.dye)
    .outerjoin(Component, Component.id == WeighLine.component)
    .outerjoin(Stock, Stock.id == WeighLine.stock)
    .outerjoin(Fill, Fill.id == func.coalesce(WeighLine.fill, Stock.fill))
    .outerjoin(Jar, Jar.id == Fill.jar)
    .where(WeighLine.struck.is_(None), WeighLine.kind != "thrown",
           func.coalesce(Component.role, "dye") == "dye"))
_WEIGHED = _DYES.where(among(WeighLine.weighing, "ids"))
_ADDED = _DYES.where(among(WeighLine.bath, "ids"))
_ASKED = (
    select(Component.unit, Component.amount, Component.substance, Zone.ml_per_100_g)
    .outerjoin(Zone, Zone.id == Component.zone)
    .where(Component.role == "dye", Component.struck.is_(None)))


def depths(connection: Connection, lots: Iterable[int]) -> Mapping[int, Depth]:
    """{lot: its depth}; a lot of which it is not known is left out."""
    rows = connection.execute(_LOTS, {"ids": listed(lots)})
    baths = {row.id: row.bath for row in rows if row.bath is not None}
    fibre = dict(connection.execute(_FIBRE, {"ids": listed(baths.values())}).all())
    dyed = dyed_of(connection, baths)
    found = {}
    for lot, bath in baths.items():
        poured = dyed[lot].weighings if lot in dyed else frozenset()
        depth = (_as_weighed(connection, bath, poured, fibre.get(bath, 0))
                 or _as_written(connection, bath))
        if depth is not None:
            found[lot] = depth
    return found


def _as_weighed(
    connection: Connection, bath: int, weighings: Collection[int], mg: int
) -> Depth | None:
    """From the lines of the weigh-out and what was added; bottles paint more than one board."""
    own = connection.execute(select(Bath.weighing).where(Bath.id == bath)).scalar()
    if own is None or own not in weighings or not mg:
        return None
    lines = [*connection.execute(_WEIGHED, {"ids": listed([own])}),
             *connection.execute(_ADDED, {"ids": listed([bath])})]
    sizes: dict[str, int] = defaultdict(int)
    for line in lines:
        size = _dye_mg(line)
        if size is None:
            return None
        sizes[line.substance or line.dye or "a dye"] += size
    return _depth({name: round(Fraction(size * _PER_MILLION, mg)) for name, size in sizes.items()},
                  weighed=True)


def _dye_mg(line: Row[*tuple[Any, ...]]) -> int | None:
    """The dye of a line in milligrams; none where its cup is still open, or its strength unknown.
    """
    if line.mg is not None:
        return int(line.mg)
    if line.ul is None or line.mg_per_l is None:
        return None
    return round(Fraction(line.ul * line.mg_per_l, _PER_MILLION))


def _as_written(connection: Connection, bath: int) -> Depth | None:
    """By its recipe; not known where a dye goes by the litre of bath."""
    version = connection.execute(select(Bath.recipe_version).where(Bath.id == bath)).scalar()
    sizes: dict[str, int] = defaultdict(int)
    for one in connection.execute(_ASKED.where(Component.recipe_version == version)):
        if one.unit == "bath":
            return None
        sizes[one.substance] += (
            one.amount if one.unit == "owf" else one.amount * one.ml_per_100_g // 100)
    return _depth(sizes, weighed=False)


def _depth(sizes: Mapping[str, int], *, weighed: bool) -> Depth | None:
    some = {name: size for name, size in sizes.items() if size > 0}
    return Depth(sum(some.values()), some, weighed) if some else None


def _is_one_of(dye: str) -> bool:
    words = dye.casefold().split()
    return any(word in words for word in _COMES_OFF)
