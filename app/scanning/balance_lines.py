"""What a balance sends, line by line: a weight in grams, or a sentence why there is none.

Balances send plain text: marks, a sign, a number, a unit, in an order of their own. A number is
believed only where one reading of the line is possible.
"""

import re
from dataclasses import dataclass
from decimal import Decimal

LONGEST = 120  # characters; what goes on beyond them without an end is no line
_ENDS = re.compile(r"[\r\n\x02\x03]+")
_GRAMS = {"g": Decimal(1), "kg": Decimal(1000), "mg": Decimal("0.001")}
_OTHERS = {
    "ct": "carats", "oz": "ounces", "ozt": "troy ounces", "lb": "pounds", "lbs": "pounds",
    "dwt": "pennyweights", "gn": "grains", "gr": "grains", "pcs": "pieces", "t": "tonnes",
}
_NUMBER = re.compile(
    r"(?:(?<![^\s,;])(?P<sign>[+\-−])\s*|(?<!\S))(?P<figures>\d+(?:[.,]\d+)?)"
    r"(?:(?P<near>[A-Za-z]+)|\s+(?P<unit>[A-Za-z]+))?(?![^\s?*])", re.ASCII)
_GROUPED = re.compile(r"(?<![\w.:/-])\d{1,3}[ ']\d{3}(?!\d)")
_COMMA = re.compile(r"[1-9]\d{0,2},\d{3}")
_OVER = re.compile(r"\b(?:OVER\w*|O\.?L\.?|H{3,})(?![A-Za-z])|\^{3,}|\+{3,}", re.IGNORECASE)
_UNDER = re.compile(r"\b(?:UNDER\w*|U\.?L\.?|L{3,})(?![A-Za-z])|_{3,}|-{3,}", re.IGNORECASE)
_MOVES = re.compile(r"\?|\b(?:unstable|moving|motion|dynamic)\b", re.IGNORECASE)
_STANDS = re.compile(r"\bstable\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Weight:
    """A weight as the balance said it; `steady` is none where its marks do not tell."""

    text: str
    g: Decimal
    figures: str
    """What its display shows, in grams: '5.10'."""
    has_unit: bool = True
    steady: bool | None = None


@dataclass(frozen=True, slots=True)
class NoWeight:
    """A line without a weight that could be taken, and why."""

    text: str
    sentence: str
    is_noise: bool = False


def read_line(text: str) -> Weight | NoWeight:
    """One line without its end. Without a unit the number counts as grams."""
    if any(character != "−" and not " " <= character <= "~" for character in text):
        return _noise(text)
    numbers = list(_NUMBER.finditer(text))
    united = [one for one in numbers if _unit(one) in _GRAMS]
    foreign = [one for one in numbers if _unit(one) in _OTHERS]
    chosen = united or foreign or numbers
    if len(chosen) != 1 or _is_torn(text, chosen[0]):
        return _without(text)
    found = chosen[0]
    unit = _unit(found)
    if unit in _OTHERS:
        return NoWeight(text, f"The balance sends {_OTHERS[unit]} ({unit}): set it to grams. "
                              "Nothing was taken.")
    if _GROUPED.search(text) or _COMMA.fullmatch(found["figures"]):
        return NoWeight(text, f"“{text.strip()}” can be read in two ways: set the balance to send "
                              "a point and no groups. Nothing was taken.")
    return _weight(text, found, unit)


def is_weight(text: str) -> bool:
    """Whether a balance that types sent this: its point is no separator of a code of ours."""
    return "." in text and isinstance(read_line(text), Weight)


def cut(received: str) -> tuple[list[str], str]:
    """The lines that are whole, and the rest that has no end yet.

    A rest too long for a line counts as one, so that noise without ends is not kept for ever.
    """
    *lines, rest = _ENDS.split(received)
    if len(rest) > LONGEST:
        lines, rest = [*lines, rest], ""
    return [line for line in lines if line.strip()], rest


def _weight(text: str, found: re.Match[str], unit: str) -> Weight:
    number = Decimal(found["figures"].replace(",", "."))
    grams = (number * _GRAMS.get(unit, Decimal(1))).quantize(_places(number, unit))
    grams = -grams if found["sign"] in ("-", "−") else grams
    steady = False if _MOVES.search(text) else True if _STANDS.search(text) else None
    return Weight(text, grams, f"{grams:f}", bool(unit in _GRAMS), steady)


def _unit(found: re.Match[str]) -> str:
    return (found["near"] or found["unit"] or "").lower()


def _is_torn(text: str, found: re.Match[str]) -> bool:
    """Whether a figure may have become another sign: nothing is believed of such a line."""
    unknown = found["near"] and _unit(found) not in _GRAMS | _OTHERS.keys()
    return bool(unknown) or text[:found.start()].rstrip().endswith(("+", "-", "−"))


def _places(number: Decimal, unit: str) -> Decimal:
    """As fine as the balance said it, counted in grams; no finer than the book, a milligram."""
    exponent = number.as_tuple().exponent
    assert isinstance(exponent, int)
    finest = exponent + {"kg": 3, "mg": -3}.get(unit, 0)
    return Decimal(1).scaleb(max(min(finest, 0), -3))


def _without(text: str) -> NoWeight:
    if _OVER.search(text):
        return NoWeight(text, "Too much stands on the balance: take some off.")
    if _UNDER.search(text):
        return NoWeight(text, "The balance is below its zero: set its pan on, and zero it.")
    return _noise(text)


def _noise(text: str) -> NoWeight:
    return NoWeight(text, "What the balance sends cannot be read: look at its speed, bits and "
                          "parity (Balances, F5).", is_noise=True)
