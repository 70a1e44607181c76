"""Weights, counts and lengths as people write them, read without guessing."""

import re
from decimal import Decimal

from app.problems import BadInput

_SPACE = "[\u0020\u00a0\u2007\u2009\u202f'’]"
_SPACED = re.compile(rf"[0-9]{{1,3}}(?:{_SPACE}[0-9]{{3}})+(?:[.,][0-9]+)?")
_NUMBER = re.compile(r"(?P<whole>[0-9]+)(?:(?P<mark>[.,])(?P<part>[0-9]+))?")
_GROUPED = re.compile(
    r"[1-9][0-9]{0,2}(?P<group>[.,])[0-9]{3}(?:(?P=group)[0-9]{3})*"
    r"(?:(?!(?P=group))[.,][0-9]+)?"
)
_UNIT = re.compile(r"(.*?[0-9])\s*([a-zA-Zµ]*)\s*\.?", re.DOTALL)
_PRICE = re.compile(r"(\d{1,6})(?:[.,](\d{1,2}))?", re.ASCII)
_GRAMS = {
    **dict.fromkeys(("", "g", "gram", "grams"), Decimal(1)),
    "kg": Decimal(1000),
    "mg": Decimal("0.001"),
}


def read_grams(text: str) -> Decimal:
    """Grams from `1 462`, `1.462,5`, `1462 g` or `1.462 kg`; no finer than a milligram."""
    number, unit = _parted(text, "a weight like 1462 or 2.408")
    if unit not in _GRAMS:
        raise BadInput(f"“{unit}” is no weight this program knows.", "Write grams, or kg.")
    grams = (number * _GRAMS[unit]).normalize()
    if grams != round(grams, 3):
        raise BadInput(f"{text.strip()} is finer than a milligram.", "Write fewer decimals.")
    return grams


def read_count(text: str) -> int:
    """A whole number of things, 0 or more."""
    number, unit = _parted(text, "a whole number like 12")
    if unit or number != int(number):
        raise BadInput(f"“{text.strip()}” is not a whole number.", "Write it in figures, like 12.")
    return int(number)


def read_price(text: str) -> int:
    """In hundredths; a mark before three digits is not taken, for it may group thousands."""
    match = _PRICE.fullmatch(text.strip())
    if match is None:
        raise BadInput("Write what one costs, like 18.50.")
    return int(match[1]) * 100 + int((match[2] or "").ljust(2, "0"))


def _parted(text: str, wanted: str) -> tuple[Decimal, str]:
    """The number and the unit after it."""
    if not text.strip():
        raise BadInput("Nothing is written here yet.", f"Write {wanted}.")
    if text.strip().startswith(("-", "−", "–")):
        raise BadInput(f"{text.strip()} is below zero.", f"Write {wanted}.")
    parts = _UNIT.fullmatch(text.strip())
    if parts is None:
        raise BadInput(f"“{text.strip()}” is not a number.", f"Write {wanted}.")
    return _number(parts[1], wanted), parts[2].lower()


def _number(written: str, wanted: str) -> Decimal:
    bare = re.sub(_SPACE, "", written) if _SPACED.fullmatch(written) else written
    grouped = _GROUPED.fullmatch(bare)
    plain = _NUMBER.fullmatch(bare)
    if plain is not None:
        if grouped is not None and plain["mark"] == ",":
            whole, part = plain["whole"], plain["part"]
            raise BadInput(
                f"{bare} can be read as {whole}{part} or as {whole}.{part}.", "Write which it is."
            )
        return Decimal(f"{plain['whole']}.{plain['part'] or 0}")
    if grouped is None:
        raise BadInput(f"“{bare}” is not a number.", f"Write {wanted}.")
    return _ungrouped(bare, grouped["group"])


def _ungrouped(bare: str, group: str) -> Decimal:
    """1.462,5 and 1,462.5: the mark that comes last and is not the group's is the decimal one."""
    other = "," if group == "." else "."
    return Decimal(bare.replace(group, "").replace(other, "."))
