"""What a dyer writes at the pot in one short line: 'pH 4.3 85 clear', '11.4 L', '6 g', '40 mL'."""

import re
from dataclasses import dataclass
from decimal import Decimal

from app.problems import BadInput

CLEARNESS = ("clear", "tinted", "coloured")
_PART = re.compile(
    r"\s*(?:(?P<ph>pH)\s*)?(?P<number>\d+(?:[.,]\d+)?)\s*(?P<unit>°\s*C|°|C|L)?(?=[\s,;]|$)"
    r"|\s*(?P<word>[^\W\d]+)", re.IGNORECASE)
_BETWEEN = re.compile(r"[\s,;]*")
_HIGHEST_PH, _HOTTEST, _MOST_L = 14, 110, 200
_AMOUNT = re.compile(r"\s*(\d+(?:[.,]\d+)?)\s*(g|mg|ml|l)?\s*", re.IGNORECASE)
_MG = {"g": 1000, "mg": 1}
_UL = {"ml": 1000, "l": 1_000_000}


@dataclass(frozen=True, slots=True)
class PotWords:
    """What was read of a bath; none where nothing was said of it."""

    ph_centi: int | None = None
    decidegrees: int | None = None
    clearness: int | None = None
    water_ml: int | None = None


def read_pot_words(text: str) -> PotWords:
    """A number up to 14 is the pH, a larger one degrees Celsius; litres are water that was added.

    Raises BadInput where a part of it cannot be read, or one thing is said twice.
    """
    found: dict[str, int] = {}
    at = 0
    while at < len(text.rstrip()):
        part = _PART.match(text, at)
        name, value = _part(part) if part else ("", 0)
        if part is None or not name or name in found:
            raise _unread(text)
        found[name] = value
        between = _BETWEEN.match(text, part.end())
        at = between.end() if between else part.end()
    if not found:
        raise BadInput("Nothing is written here yet.", "Write it like: pH 4.3 85 clear.")
    return PotWords(**found)


def read_pot_amount(text: str, *, stock: bool = False) -> tuple[int | None, int | None]:
    """Milligrams or microlitres, (2500, None) for '2.5 g'; a bare number is g, of a stock mL.

    Raises BadInput.
    """
    part = _AMOUNT.fullmatch(text)
    if part is None:
        raise BadInput(f"“{text.strip()}” is no amount.", "Write grams like 2.5, or 40 mL.")
    number = Decimal(part[1].replace(",", "."))
    unit = (part[2] or ("ml" if stock else "g")).lower()
    size = number * (_MG.get(unit) or _UL[unit])
    if size != int(size) or not size:
        raise BadInput(f"{text.strip()} is finer than can be kept, or nothing.",
                       "Write fewer decimals.")
    return (int(size), None) if unit in _MG else (None, int(size))


def _part(part: re.Match[str]) -> tuple[str, int]:
    """What one part says, and its value; '' where it says nothing known."""
    if part["word"]:
        word = part["word"].casefold()
        fits = [n for n, one in enumerate(CLEARNESS)
                if one.startswith(word) or word == "colored" and n == len(CLEARNESS) - 1]
        return ("clearness", fits[0]) if len(fits) == 1 else ("", 0)
    number, unit = Decimal(part["number"].replace(",", ".")), (part["unit"] or "").upper()
    if unit == "L":
        return ("water_ml", round(number * 1000)) if number <= _MOST_L else ("", 0)
    if part["ph"] or (not unit and number <= _HIGHEST_PH):
        return ("ph_centi", round(number * 100)) if number <= _HIGHEST_PH else ("", 0)
    return ("decidegrees", round(number * 10)) if number <= _HOTTEST else ("", 0)


def _unread(text: str) -> BadInput:
    return BadInput(f"“{text.strip()}” cannot be read; nothing was saved.",
                    "Write it like: pH 4.3 85 clear. Litres are water that was added: 11.4 L.")
