"""What a line may be weighed from: a jar's fill or a stock solution, and what speaks against it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.calculations.moments import moment_words
from app.calculations.stock import is_past_its_life
from app.lookups.fills import fills_after
from app.lookups.jars import JarNow, jar_now, jar_of
from app.records import DeedRow, Hold, Plate, Stock, WeighLine


@dataclass(frozen=True, slots=True)
class StockNow:
    """A stock solution. `mg_per_l` is powder as it was weighed; its fill tells how strong."""

    stock: int
    plate: int | None
    fill: int | None
    mg_per_l: int
    made_ml: int
    used_ul: int
    made: datetime
    life_days: int | None

    @property
    def left_ul(self) -> int:
        """What is left of it by its lines."""
        return self.made_ml * 1000 - self.used_ul

    def too_old(self, at: datetime) -> bool:
        """Past its life; one without a life keeps."""
        return is_past_its_life(self.made, self.life_days, at)


@dataclass(frozen=True, slots=True)
class Source:
    """A fill, or a stock with the fill it was made of; none where nobody knows."""

    jar: JarNow | None
    stock: StockNow | None

    @property
    def dye(self) -> str | None:
        """The dye in it, where that is known."""
        return self.jar.dye if self.jar else None

    @property
    def words(self) -> str:
        """'jar 3, fill 4', '1 % stock of jar 3, fill 4'."""
        return source_words(self.jar.code if self.jar else None,
                            self.jar.number if self.jar else None,
                            self.stock.mg_per_l if self.stock else None)


def source_words(code: str | None, fill: int | None, mg_per_l: int | None) -> str:
    """Of a jar's code and the number of its fill, and of a stock what it was made at."""
    jar = f"jar {int(code[1:-1])}, fill {fill}" if code else "a jar not known"
    return jar if mg_per_l is None else f"{mg_per_l / 10_000:g} % stock of {jar}"


_STOCK = select(Stock.id, Stock.plate, Stock.fill, Stock.mg_per_l, Stock.ml, Stock.life_days,
                DeedRow.happened).join(DeedRow, DeedRow.seq == Stock.deed).where(
                    Stock.struck.is_(None))


def stock_now(connection: Connection, stock: int) -> StockNow | None:
    """One stock solution with what is left of it, or none."""
    row = connection.execute(_STOCK.where(Stock.id == stock)).first()
    if row is None:
        return None
    used = connection.execute(
        select(func.coalesce(func.sum(WeighLine.ul), 0))
        .where(WeighLine.stock == stock, WeighLine.struck.is_(None))).scalar() or 0
    return StockNow(row.id, row.plate, row.fill, row.mg_per_l, row.ml, used, row.happened,
                    row.life_days)


def stock_on(connection: Connection, plate: int) -> StockNow | None:
    """The newest stock in the bottle with this plate, or none."""
    stock = connection.execute(
        _STOCK.where(Stock.plate == plate).order_by(Stock.id.desc())).scalars().first()
    return None if stock is None else stock_now(connection, stock)


def stock_with(connection: Connection, code: str) -> StockNow | None:
    """The newest stock in the bottle whose plate has this code, or none."""
    plate = connection.execute(
        select(Plate.id).where(Plate.code == code, Plate.struck.is_(None))).scalar()
    return None if plate is None else stock_on(connection, plate)


def source_of(connection: Connection, fill: int | None, stock: int | None) -> Source | None:
    """A fill or a stock by its number; none where it is not in the book."""
    bottle = None if stock is None else stock_now(connection, stock)
    of = fill if bottle is None else bottle.fill
    jar = None if of is None else jar_of(connection, of)
    return Source(jar, bottle) if jar or bottle else None


def on_hold(connection: Connection, fill: int) -> bool:
    """Whether a hold lies on this fill, or on one whose rest is in it."""
    held = connection.execute(select(Hold.fill).where(
        Hold.fill.is_not(None), Hold.lifted.is_(None), Hold.struck.is_(None))).scalars().all()
    return any(fill in fills_after(connection, one) for one in held if one is not None)


def against(connection: Connection, source: Source, at: datetime) -> Iterator[str]:
    """What is to be known before it is weighed: a hold, age, nearly empty, filled again since."""
    jar, stock = source.jar, source.stock
    if jar and on_hold(connection, jar.fill):
        yield f"HOLD lies on {source.words}. Ask who placed the hold before you weigh."
    if stock:
        if stock.too_old(at):
            yield (f"This stock was made on {moment_words(stock.made)} and is past its "
                   f"{stock.life_days} days: make it new, or dye a sample first.")
        return
    newest = jar_now(connection, jar.jar) if jar else None
    if jar and newest and newest.fill != jar.fill:
        yield f"Jar {jar.shown} was filled again since: fill {newest.number} is in it."
    if jar and jar.expires and jar.expires < at:
        yield f"What is in jar {jar.shown} was good until {moment_words(jar.expires)}."
    if jar and jar.nearly_empty:
        yield f"Jar {jar.shown} is nearly empty: {max(0, jar.left_mg) / 1000:g} g left by the book."
