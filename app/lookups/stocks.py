"""The stock solutions that stand ready: of which jar, how strong, how old, how much is left."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.calculations.stock import good_until, is_past_its_life
from app.records import DeedRow, Fill, Jar, Plate, Stock, WeighLine

MOST = 60  # stocks shown, the newest first


@dataclass(frozen=True, slots=True)
class StockOnShelf:
    """A stock with what is left of it. `mg_per_l` is powder as it was weighed."""

    stock: int
    bottle: str | None
    """The number on its bottle's plate."""
    dye: str | None
    jar: str | None
    """'jar 3, fill 4'."""
    mg_per_l: int
    left_ul: int
    made: datetime
    life_days: int | None

    @property
    def good_until(self) -> datetime | None:
        """The end of its life; none where it keeps."""
        return good_until(self.made, self.life_days)

    def too_old(self, at: datetime) -> bool:
        """Past its life."""
        return is_past_its_life(self.made, self.life_days, at)


_USED = (
    select(WeighLine.stock, func.sum(WeighLine.ul).label("ul"))
    .where(WeighLine.stock.is_not(None), WeighLine.struck.is_(None)).group_by(WeighLine.stock)
    .subquery()
)
_STOCKS = (
    select(Stock.id, Stock.plate, Stock.mg_per_l, Stock.ml, Stock.life_days, DeedRow.happened,
           func.coalesce(_USED.c.ul, 0).label("used"), Plate.code.label("bottle"),
           Fill.number, Jar.code, Jar.dye)
    .join(DeedRow, DeedRow.seq == Stock.deed)
    .outerjoin(_USED, _USED.c.stock == Stock.id)
    .outerjoin(Plate, Plate.id == Stock.plate)
    .outerjoin(Fill, Fill.id == Stock.fill).outerjoin(Jar, Jar.id == Fill.jar)
    .where(Stock.struck.is_(None)).order_by(Stock.id.desc())
)


def stocks_on_shelf(connection: Connection) -> tuple[StockOnShelf, ...]:
    """Stocks of which something is left, the newest first; of a bottle only what is in it now."""
    found, seen = [], set()
    for row in connection.execute(_STOCKS):
        if row.plate is not None and row.plate in seen:
            continue
        seen.add(row.plate)
        left = row.ml * 1000 - row.used
        if left > 0:
            jar = f"jar {int(row.code[1:-1])}, fill {row.number}" if row.code else None
            found.append(StockOnShelf(
                row.id, str(int(row.bottle[1:-1])) if row.bottle else None, row.dye, jar,
                row.mg_per_l, left, row.happened, row.life_days))
        if len(found) == MOST:
            break
    return tuple(found)
