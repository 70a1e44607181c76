"""What is said of a stock solution: its strength as it is spoken, its life, what is left."""

from datetime import datetime
from decimal import Decimal

from app.calculations.moments import day_words
from app.lookups.stocks import StockOnShelf
from app.problems import BadInput
from app.window.benches.weighing.weigh_words import bare
from app.window.parts.amounts import read_count

LONGEST = 3650  # days: beyond it a year slipped
_HUNDREDTH = Decimal("0.01")


def percent_words(mg_per_l: int | Decimal) -> str:
    """'1 %'."""
    return f"{bare((Decimal(mg_per_l) / 10_000).quantize(Decimal('0.001')))} %"


def strength_aloud(mg_per_l: int | Decimal) -> str:
    """'1 % w/v: 10 g in a litre'."""
    grams = (Decimal(mg_per_l) / 1000).quantize(_HUNDREDTH)
    return f"{percent_words(mg_per_l)} w/v: {bare(grams)} g in a litre"


def left_words(ul: int) -> str:
    """'640 mL'."""
    return f"{bare((Decimal(ul) / 1000).quantize(Decimal('0.1')))} mL"


def age_words(stock: StockOnShelf, at: datetime) -> str:
    """'3 days old', 'of today'."""
    days = (at - stock.made).days
    return "of today" if days < 1 else "1 day old" if days == 1 else f"{days} days old"


def life_words(stock: StockOnShelf, at: datetime) -> str:
    """'4 May 2026', or that it is past it; 'no end' where it keeps."""
    if stock.good_until is None:
        return "no end"
    day = day_words(stock.good_until)
    return f"past {day}: make it new" if stock.too_old(at) else day


def read_life(text: str) -> int | None:
    """Days that a stock keeps; nothing written means that it keeps. Raises BadInput."""
    said = text.strip().removesuffix("days").removesuffix("day")
    if not said.strip():
        return None
    days = read_count(said)
    if not 0 < days <= LONGEST:
        raise BadInput(f"{days} days is no life of a stock.", "Write days, like 180 or 7.")
    return days
