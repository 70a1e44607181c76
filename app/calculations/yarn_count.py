"""Yarn count: tex and the other systems that spinners write, converted exactly.

Factors follow from 1 yd = 0.9144 m and 1 lb = 0.45359237 kg. The systems are those of ASTM D2260;
Yorkshire, Galashiels, West of England and Dewsbury counts are from memory.
"""

import re
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from app.problems import BadInput

MOST_PLIES = 12  # a larger number in a count is never the plies

_YARD_M = Fraction(9144, 10000)
_POUND_G = Fraction(45359237, 100000)
_GRAIN_G = _POUND_G / 7000


class System(StrEnum):
    """A way of numbering yarn, by the short name a delivery note gives it."""

    TEX = "tex"
    DTEX = "dtex"
    DENIER = "den"
    GRAINS = "gr/120 yd"
    NM = "Nm"
    NEC = "NeC"
    NEW = "NeW"
    RUN = "run"
    LEA = "lea"
    YARDS_A_POUND = "yd/lb"
    YORKSHIRE = "Ny"
    GALASHIELS = "Galashiels"
    WEST_OF_ENGLAND = "West of England"
    DEWSBURY = "Dewsbury"


def _tex_of_one(yards: int, pounds: Fraction = Fraction(1)) -> Fraction:
    return 1000 * pounds * _POUND_G / (yards * _YARD_M)


_TEX_TIMES = {  # the thicker, the higher the number
    System.TEX: Fraction(1),
    System.DTEX: Fraction(1, 10),
    System.DENIER: Fraction(1, 9),
    System.GRAINS: 1000 * _GRAIN_G / (120 * _YARD_M),
}
_TEX_OVER = {  # the finer, the higher the number
    System.NM: Fraction(1000),
    System.NEC: _tex_of_one(840),
    System.NEW: _tex_of_one(560),
    System.RUN: _tex_of_one(1600),
    System.LEA: _tex_of_one(300),
    System.YARDS_A_POUND: _tex_of_one(1),
    System.YORKSHIRE: _tex_of_one(256),
    System.GALASHIELS: _tex_of_one(300, Fraction(24, 16)),
    System.WEST_OF_ENGLAND: _tex_of_one(320),
    System.DEWSBURY: _tex_of_one(1, Fraction(1, 16)),
}


def tex_of(count: Fraction, system: System) -> Fraction:
    """The tex of a yarn numbered in another system."""
    if system in _TEX_TIMES:
        return count * _TEX_TIMES[system]
    return _TEX_OVER[system] / count


def count_of(tex: Fraction, system: System) -> Fraction:
    """The number another system gives to a yarn of so many tex."""
    if system in _TEX_TIMES:
        return tex / _TEX_TIMES[system]
    return _TEX_OVER[system] / tex


def tex_of_put_up(mass_g: Decimal, length_m: Decimal) -> Fraction:
    """The tex of a yarn of which this length weighs so much."""
    return 1000 * Fraction(mass_g) / Fraction(length_m)


@dataclass(frozen=True, slots=True)
class YarnCount:
    """What a yarn weighs in tex, all plies together, and how many plies it has."""

    tex: Fraction
    plies: int = 1

    def __str__(self) -> str:
        tex = f"{float(self.tex):.2f}".rstrip("0").rstrip(".")
        return f"R {tex} tex/{self.plies}" if self.plies > 1 else f"{tex} tex"


_NUMBER = r"\d+(?:[.,]\d+)?"
_WRITTEN = re.compile(
    rf"([a-z]*)\s*({_NUMBER})\s*(tex)?\s*(?:/\s*({_NUMBER}))?\s*([a-z]*)", re.IGNORECASE
)
_SYSTEM_OF_WORDS = {
    frozenset(): System.TEX,
    frozenset({"r"}): System.TEX,
    frozenset({"tex"}): System.TEX,
    frozenset({"r", "tex"}): System.TEX,
    frozenset({"nm"}): System.NM,
    frozenset({"nec"}): System.NEC,
    frozenset({"new"}): System.NEW,
}


def read_count(written: str) -> YarnCount:
    """The count as written by hand: `R 250 tex/4`, `250/4`, `Nm 16/4`, `NeW 2/24`, `NeC 8/2`.

    Tex is of all plies together; Nm, NeC and NeW number one ply. Twist take-up is not reckoned.
    """
    found = _WRITTEN.fullmatch(written.strip())
    if found is None:
        raise _unreadable(written)
    before, first, middle, second, after = (part or "" for part in found.groups())
    words = frozenset(word.casefold() for word in (before, middle, after) if word)
    system = _SYSTEM_OF_WORDS.get(words)
    if system is None:
        raise _unreadable(written)
    count, plies = _number(first), Fraction(1)
    if second:
        count, plies = _count_and_plies(count, _number(second), system)
    if not count or not _may_be_plies(plies):
        raise _unreadable(written)
    tex = tex_of(count, system)
    return YarnCount(tex if system is System.TEX else tex * plies, int(plies))


def _count_and_plies(
    first: Fraction, second: Fraction, system: System
) -> tuple[Fraction, Fraction]:
    """Worsted counts put the plies first, all others last; a great number is never the plies."""
    plies_first = system is System.NEW and _may_be_plies(first)
    if plies_first or (system is not System.TEX and not _may_be_plies(second)):
        return second, first
    return first, second


def _number(written: str) -> Fraction:
    return Fraction(written.replace(",", "."))


def _may_be_plies(number: Fraction) -> bool:
    return number.denominator == 1 and 1 <= number <= MOST_PLIES


def _unreadable(written: str) -> BadInput:
    return BadInput(
        f"“{written}” cannot be read as a yarn count.",
        "Write it like R 250 tex/4 or Nm 16/4.",
    )
