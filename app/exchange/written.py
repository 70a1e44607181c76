"""Weights, shares, days and cone numbers as people and programs write them; none is guessed."""

import re
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, date, datetime, time
from decimal import ROUND_HALF_UP, Decimal
from typing import Final

from app.calculations.codes import Kind, bare_characters, code_of
from app.exchange.cells import Cell
from app.problems import BadInput

COMMA, POINT = ",", "."
_SPACE = " \u00a0\u2007\u2009\u202f'’"
_AMOUNT = re.compile(rf"([\d.,{_SPACE}]*\d)\s*([^\d\s.,].*)?")
_LONGEST = 40
_MONEY = re.compile(rf"([^\d\s.,]{{1,4}})?\s*(\d[\d.,{_SPACE}]*\d|\d)\s*([^\d.,]{{1,5}})?")
_DEAREST = Decimal(100_000)
_CARD = re.compile(r"(?:[A-Za-z]{1,2}[-·. ]?)?(\d{1,6})", re.ASCII)
_DAY_FORMS = ("%Y-%m-%d", "%Y/%m/%d", "%Y.%m.%d", "%Y%m%d", "%d.%m.%Y", "%d.%m.%y", "%d %b %Y",
              "%d %B %Y")
_CLOCK = re.compile(r"[T ]\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?\s*(?:Z|UTC|[+-]\d{2}:?\d{2})?$",
                    re.ASCII)
_TWO_WAYS = re.compile(r"(\d{1,2})[/-](\d{1,2})[/-](\d{4})", re.ASCII)
_FIRST_YEAR = 1990  # no list that a studio gets is older
_GRAM, _KILO = Decimal(1000), Decimal(1_000_000)  # in milligrams
GRAMS: Final[Mapping[str, Decimal]] = {
    **dict.fromkeys(("g", "gr", "gm", "gram", "grams", "gramm", "gramme", "grammes", "grammi",
                     "gramos"), _GRAM),
    **dict.fromkeys(("kg", "kgs", "kilo", "kilos", "kilogram", "kilogramm", "kilogrammes"), _KILO),
}
PERCENT: Final[Mapping[str, Decimal]] = {"%": Decimal(10), "share": Decimal(1000)}  # in per mille


@dataclass(frozen=True, slots=True)
class Measure:
    """What a column holds: its name, its units in what is kept, and what it can be at all."""

    word: str
    units: Mapping[str, Decimal]
    least: int
    most: int
    may_be_none: bool = False
    said_in: tuple[int, str] | None = None
    """So many as are kept make one of this unit, where a person reads it."""


GROSS = Measure("the weight of a cone with its centre", GRAMS, 50_000, 20_000_000)
NET = Measure("the weight of the yarn on a cone", GRAMS, 50_000, 20_000_000)
TARE = Measure("the weight of an empty centre", GRAMS, 2_000, 1_000_000, may_be_none=True)
WRAP = Measure("the weight of 100 m", GRAMS, 1_000, 500_000)
MOISTURE = Measure("the moisture of yarn", PERCENT, 20, 400)


def readings(number: str) -> Mapping[str, Decimal]:
    """What a number says with a decimal comma and with a decimal point; {} where it is none."""
    found = {}
    for mark, other in ((COMMA, POINT), (POINT, COMMA)):
        grouped = rf"[1-9]\d{{0,2}}([{other}{_SPACE}])\d{{3}}(?:\2\d{{3}})*"
        match = re.fullmatch(rf"({grouped}|\d+)(?:[{mark}](\d+))?", number, re.ASCII)
        if match:
            digits = re.sub(r"\D", "", match[1])
            found[mark] = Decimal(f"{digits}.{match[3] or 0}")
    return found


def decimal_marks(cells: Iterable[Cell]) -> frozenset[str]:
    """The decimal marks of which a list gives proof: '1.462,5' and '63,5' prove the comma."""
    marks: set[str] = set()
    for cell in cells:
        match = _AMOUNT.fullmatch(cell) if isinstance(cell, str) else None
        found = readings(match[1]) if match else {}
        if len(found) == 1:
            marks |= found.keys()
    return frozenset(marks)


def amount(cell: Cell, measure: Measure, unit: str, marks: frozenset[str]) -> int:
    """The amount in whole units as kept; `unit` is the heading's, '' where it names none.

    A number that can be read in two ways is taken only where one of them can be at all; raises
    BadInput with what is wrong.
    """
    numbers, own_unit = _numbers(cell, marks)
    unit = own_unit or unit
    if unit and unit not in measure.units:
        raise BadInput(f"“{unit}” is no unit for {measure.word}.")
    worths = {measure.units[unit]} if unit else set(measure.units.values())
    sizes = {int((n * worth).to_integral_value(ROUND_HALF_UP)) for n in numbers for worth in worths}
    if sizes == {0} and measure.may_be_none:
        return 0
    possible = sorted(size for size in sizes if measure.least <= size <= measure.most)
    if len(possible) != 1:
        said = " or ".join(_said(size, measure) for size in possible or sorted(sizes))
        raise BadInput(f"it may be {said}." if possible else f"{said} cannot be {measure.word}.")
    return possible[0]


def _said(size: int, measure: Measure) -> str:
    worth, unit = measure.said_in or ((1000, "g") if measure.units is GRAMS else (10, "%"))
    return f"{size / worth:,.10g} {unit}"


def _numbers(cell: Cell, marks: frozenset[str]) -> tuple[set[Decimal], str]:
    """The numbers a cell may say, and the unit that stands in it."""
    if isinstance(cell, Decimal):
        return {cell}, ""
    match = _AMOUNT.fullmatch(cell) if isinstance(cell, str) and len(cell) < _LONGEST else None
    found = readings(match[1]) if match else {}
    if not match or not found:
        raise BadInput("it is no number.")
    proven = {found[mark] for mark in marks if mark in found}
    unit = (match[2] or "").partition("/")[0].strip(" .").casefold()
    return proven or set(found.values()), unit


def cone_number(cell: Cell) -> int | None:
    """The number of a cone by its code or its card: 'C·0114·F', 'T-0114', 114; none if empty."""
    if cell == "":
        return None
    text = f"{cell:f}" if isinstance(cell, Decimal) else str(cell)
    code = code_of(bare_characters(text))
    if code and code.kind is Kind.CONE:
        return code.number
    match = _CARD.fullmatch(text)
    if match is None or int(match[1]) == 0:
        raise BadInput("it is no cone's number.")
    return int(match[1])


def pieces(cell: Cell, most: int) -> int:
    """A whole number of things, from 1 to so many; raises BadInput."""
    found = cell if isinstance(cell, Decimal) else _only_number(str(cell))
    if found is None or found != int(found):
        raise BadInput("it is no whole number.")
    if not 1 <= found <= most:
        raise BadInput(f"{Decimal(int(found)):,.10g} cannot be wanted: from 1 to {most:,} can.")
    return int(found)


def money(cell: Cell, marks: frozenset[str]) -> tuple[int, str]:
    """A price in hundredths, and its currency as it is written there; raises BadInput."""
    if isinstance(cell, Decimal):
        numbers, currency = {cell}, ""
    else:
        match = _MONEY.fullmatch(str(cell)) if len(str(cell)) < _LONGEST else None
        found = readings(match[2]) if match else {}
        if match is None or not found:
            raise BadInput("it is no price.")
        numbers = {found[mark] for mark in (marks & found.keys()) or found
                   if _in_hundredths(found[mark])}
        currency = (match[1] or match[3] or "").strip(" .").casefold()
    if len(numbers) != 1:
        raise BadInput("it may be two prices." if numbers else "it is no price.")
    price = numbers.pop()
    if not _in_hundredths(price) or price > _DEAREST:
        raise BadInput("it is no price of yarn.")
    return int(price * 100), currency


def number_in(text: str) -> str:
    """The number in a written price, for proof of its decimal mark; '' where there is none."""
    match = _MONEY.fullmatch(text) if len(text) < _LONGEST else None
    return match[2] if match else ""


def _in_hundredths(number: Decimal) -> bool:
    return number * 100 == int(number * 100)


def _only_number(text: str) -> Decimal | None:
    """The number that this says, where it can be read in one way only."""
    found = set(readings(text).values())
    return found.pop() if len(found) == 1 else None


def day(cell: Cell, now: datetime) -> datetime:
    """The noon of a day, or this moment where that is still to come; raises BadInput.

    A note says a day only. 3/4/2026 is refused: it may be two days.
    """
    found = cell if isinstance(cell, date) else _day_in(str(cell))
    found = found.date() if isinstance(found, datetime) else found
    if found.year < _FIRST_YEAR:
        raise BadInput("this day is too long ago.")
    if found > now.date():
        raise BadInput("this day has not come yet.")
    return min(datetime.combine(found, time(12), UTC), now)


def _day_in(said: str) -> date:
    text = _CLOCK.sub("", said)
    for form in _DAY_FORMS:
        try:
            return datetime.strptime(text, form).replace(tzinfo=UTC).date()
        except ValueError:
            continue
    match = _TWO_WAYS.fullmatch(text)
    if match is None:
        raise BadInput("it is no day. Write it like 2026-03-13.")
    days = set()
    for number, month in ((match[1], match[2]), (match[2], match[1])):
        with suppress(ValueError):
            days.add(date(int(match[3]), int(month), int(number)))
    if len(days) != 1:
        raise BadInput("it may be two days, or none. Write it like 2026-03-13.")
    return days.pop()
