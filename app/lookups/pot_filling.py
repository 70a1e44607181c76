"""Before the bath: which weigh-out is for this yarn, how much water, and whether the pot takes it.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from sqlalchemy import Connection, func, select

from app.calculations.bath import level_l, liquor_l, most_g, ratio_of, split, usable_l, widest_ratio
from app.lookups.loads import last_of
from app.lookups.pots import Recipe
from app.lookups.rails import SPUN
from app.lookups.recipes import recipe_then
from app.lookups.walks import above
from app.lookups.weighings import WeighOut, weigh_out
from app.problems import Refused
from app.records import Bath, Plate, RecipeVersion, WeighedFor, Weighing, Yarn
from app.store.dialect import among, listed

_BRINGS = {"soak": Decimal(1), "wash": Decimal(1), "spin": SPUN}
"""Water that yarn brings along, as a share of its dry weight (common practice, no source)."""
_LITRES = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:l|litres?|liters?)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Weighed:
    """A closed weigh-out that was not poured yet."""

    weighing: int
    recipe: Recipe
    begun: datetime
    dry_mg: int | None
    for_all: bool
    """It was weighed for just this yarn; else for some of it, or for more."""


@dataclass(frozen=True, slots=True)
class BathAsked:
    """The bath that a recipe asks for some yarn, in litres, in a pot whose size may be known."""

    dry_g: Decimal
    skeins: int
    bath_l: Decimal
    in_yarn_l: Decimal
    in_stocks_l: Decimal
    pot_l: Decimal | None

    @property
    def ratio(self) -> Decimal:
        """Litres of bath a kilogram of dry yarn."""
        return ratio_of(self.bath_l, self.dry_g)

    @property
    def to_add_l(self) -> Decimal:
        """The water still to add; below nothing where the yarn and the stocks bring too much."""
        return self.bath_l - self.in_yarn_l - self.in_stocks_l

    @property
    def level_l(self) -> Decimal:
        """What the pot shows with the yarn in it."""
        return level_l(self.bath_l, self.dry_g)

    @property
    def usable_l(self) -> Decimal | None:
        """What the pot may be filled to, where its size is known."""
        return None if self.pot_l is None else usable_l(self.pot_l)

    @property
    def too_much(self) -> bool:
        """More than the pot takes; not where its size is not known."""
        return self.usable_l is not None and self.level_l > self.usable_l

    @property
    def most_mg(self) -> int:
        """The most dry yarn that this pot takes at this ratio; 0 where its size is not known."""
        return 0 if self.pot_l is None else int(most_g(self.pot_l, self.ratio) * 1000)

    @property
    def pots(self) -> tuple[int, ...]:
        """The skeins of each pot of this size, each a lot of its own; none where none fits."""
        if self.pot_l is None:
            return ()
        try:
            return split(self.skeins, self.dry_g / self.skeins, self.ratio, self.pot_l).skeins
        except Refused:
            return ()

    @property
    def widest(self) -> int:
        """The widest ratio at which all of it fits into the pot; 0 where none does."""
        return 0 if self.pot_l is None else widest_ratio(self.dry_g, self.pot_l)


@dataclass(frozen=True, slots=True)
class PotFilling:
    """What the book knows before the bundles meet the bath."""

    weighed: tuple[Weighed, ...]
    bath: BathAsked | None


def pot_filling(
    connection: Connection, rows: Sequence[int], pot: int | None, version: int | None,
    weighing: int | None, at: datetime,
) -> PotFilling:
    """Weigh-outs for this yarn that were not poured; the bath, where its recipe says how large."""
    return PotFilling(_weighed_for(connection, rows),
                      bath_asked(connection, rows, pot, version, weighing, at))


def bath_asked(
    connection: Connection, rows: Sequence[int], pot: int | None, version: int | None,
    weighing: int | None, at: datetime,
) -> BathAsked | None:
    """The bath for this yarn as it was wound; none where nobody said how much."""
    mg, count = connection.execute(
        select(func.sum(Yarn.mg), func.sum(Yarn.count)).where(among(Yarn.id, "ids")),
        {"ids": listed(rows)}).one()
    out = None if weighing is None else weigh_out(connection, weighing)
    tenths = None if version is None else connection.execute(
        select(RecipeVersion.liquor_tenths).where(RecipeVersion.id == version)).scalar()
    if not mg or not (tenths or (out and out.bath_ml)):
        return None
    dry_g = Decimal(mg) / 1000
    bath_l = (Decimal(out.bath_ml) / 1000 if out and out.bath_ml
              else liquor_l(dry_g, Decimal(tenths or 0) / 10))
    return BathAsked(dry_g, count, bath_l, _in_yarn_l(connection, rows, at), _stocks_l(out),
                     _size_l(connection, pot))


def _weighed_for(connection: Connection, rows: Sequence[int]) -> tuple[Weighed, ...]:
    poured = select(Bath.weighing).where(Bath.weighing.is_not(None), Bath.struck.is_(None))
    found = connection.execute(
        select(Weighing.id).join(WeighedFor, WeighedFor.weighing == Weighing.id)
        .where(among(WeighedFor.yarn, "ids"), WeighedFor.struck.is_(None),
               Weighing.purpose == "bath", Weighing.closed.is_not(None), Weighing.struck.is_(None),
               Weighing.id.not_in(poured))
        .order_by(Weighing.id).distinct(), {"ids": listed(above(connection, rows))}).scalars().all()
    outs = [out for one in found if (out := weigh_out(connection, one)) is not None]
    return tuple(Weighed(out.id, recipe, out.begun, out.dry_mg, set(out.yarn) == set(rows))
                 for out in outs if (recipe := _recipe(connection, out)) is not None)


def _recipe(connection: Connection, out: WeighOut) -> Recipe | None:
    then = None if out.recipe_version is None else recipe_then(connection, out.recipe_version)
    return None if then is None else Recipe(
        then.version, then.number, then.name, then.swatch, then.reason)


def _in_yarn_l(connection: Connection, rows: Sequence[int], at: datetime) -> Decimal:
    met = last_of(connection, rows, at)
    mg = dict(connection.execute(
        select(Yarn.id, Yarn.mg).where(among(Yarn.id, "ids")), {"ids": listed(rows)}).all())
    return sum((_BRINGS.get(one.step, Decimal(0)) * mg[row] / 1_000_000
                for row, one in met.items()), Decimal(0))


def _stocks_l(out: WeighOut | None) -> Decimal:
    """What was measured and not weighed is water of the bath already."""
    lines = out.lines if out else ()
    return Decimal(sum(line.ul or 0 for line in lines if line.kind != "thrown")) / 1_000_000


def _size_l(connection: Connection, pot: int | None) -> Decimal | None:
    """The litres that stand on the pot's plate, '20 L'; else its size is not known."""
    words = None if pot is None else connection.execute(
        select(Plate.words).where(Plate.id == pot)).scalar()
    size = _LITRES.search(words or "")
    litres = Decimal(size[1].replace(",", ".")) if size else Decimal(0)
    return litres or None
