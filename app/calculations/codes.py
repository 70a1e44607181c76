"""The studio's codes: one grammar for lots, marks of skeins, and every thing that wears a plate.

A lot is `YYWW`, two characters drawn at random and a check: 26·19·K44. A skein's mark is its lot
and two characters more. Everything else is a letter that no lot contains, a number and the same
check: C·0114·F. The length alone tells the family, because a number never has five or seven digits.
"""

import re
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from functools import cache

from app.problems import BadInput

DIGITS = "0123456789"
LETTERS = "FHKMRTWXY"
CHARACTERS = DIGITS + LETTERS  # nineteen, none alike to eye or ear; a prime, so the check is sharp

LOT_LENGTH = 7
SKEIN_LENGTH = 9
NUMBER_WIDTHS = (3, 4, 6)
_WEB = re.compile(r"(?:https?://|www\.)", re.IGNORECASE)

_SPOKEN = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_VALUES = {
    character: value
    for characters in (CHARACTERS, "ABCDEGIJLNOPQSUVZ")
    for value, character in enumerate(characters)
}
_SHOP_LENGTHS = (8, 12, 13, 14)


class Kind(StrEnum):
    """What a code may stand for."""

    LOT = "lot"
    SKEIN = "skein"
    CONE = "cone"
    DISC = "disc"
    POT = "pot"
    RAIL = "rail"
    JAR = "jar"
    SHELF = "shelf"
    ACTION = "action"
    BENCH = "bench"
    REEL = "reel"
    SHEET = "sheet"
    KIT = "kit"
    HOLD = "hold"
    VESSEL = "vessel"
    STEAMER = "steamer"
    BOARD = "board"
    BALANCE = "balance"


KIND_OF_LETTER = {
    "C": Kind.CONE,
    "D": Kind.DISC,
    "P": Kind.POT,
    "L": Kind.RAIL,
    "J": Kind.JAR,
    "S": Kind.SHELF,
    "A": Kind.ACTION,
    "B": Kind.BENCH,
    "E": Kind.REEL,
    "G": Kind.SHEET,
    "N": Kind.KIT,
    "Q": Kind.HOLD,
    "U": Kind.VESSEL,
    "V": Kind.STEAMER,
    "Z": Kind.BOARD,
    "O": Kind.BALANCE,
}
LETTER_OF_KIND = {kind: letter for letter, kind in KIND_OF_LETTER.items()}


@dataclass(frozen=True, slots=True)
class Code:
    """A code with the check right, as it is stored: `2615R6F`, `2615R6F-7M`, `C0114F`."""

    kind: Kind
    text: str

    def __str__(self) -> str:
        return self.text

    @property
    def lot(self) -> str | None:
        """The dye lot that a lot's or a skein's code names."""
        return self.text[:LOT_LENGTH] if self.kind in (Kind.LOT, Kind.SKEIN) else None

    @property
    def mark(self) -> str | None:
        """The two characters that tell a skein from its neighbours in the lot."""
        return self.text[-2:] if self.kind is Kind.SKEIN else None

    @property
    def number(self) -> int | None:
        """The number of a thing that is numbered; lots and skeins are not."""
        return None if self.lot else int(self.text[1:-1])

    @property
    def grouped(self) -> str:
        """The code as printed for people: `26·15·R6F`, `26·15·R6F 7M`, `C·0114·F`."""
        return "·".join(self._groups()) + (f" {self.mark}" if self.mark else "")

    @property
    def spoken(self) -> str:
        """The code as said on the telephone: `two six, one nine, K four four`."""
        groups = (*self._groups(), *([self.mark] if self.mark else []))
        return ", ".join(" ".join(_said(character) for character in group) for group in groups)

    def _groups(self) -> tuple[str, str, str]:
        if self.lot:
            return self.lot[:2], self.lot[2:4], self.lot[4:]
        return self.text[0], self.text[1:-1], self.text[-1]


def check_character(body: str) -> str:
    """The check of a code's body: values times places 1, 2, 3 …, summed, modulo 19.

    It gives away every single wrong character and every swap of two.
    """
    total = sum(place * _VALUES[character] for place, character in enumerate(body, 1))
    return CHARACTERS[total % len(CHARACTERS)]


def numbered(kind: Kind, number: int) -> Code:
    """The code of the thing with this number; a number that has grown takes more digits."""
    if not 0 <= number <= 999_999:
        raise ValueError(f"no {kind} can have the number {number}")
    least = 4 if kind is Kind.CONE else 3
    width = next(w for w in NUMBER_WIDTHS if w >= max(least, len(str(number))))
    body = f"{LETTER_OF_KIND[kind]}{number:0{width}}"
    return Code(kind, body + check_character(body))


def read(text: str) -> Code:
    """The code that was scanned or typed, separators and case aside; nothing is ever guessed.

    Raises BadInput with the reason.
    """
    bare = bare_characters(text)
    code = code_of(bare)
    if code is None:
        raise _why_not(text, bare)
    return code


def bare_characters(text: str) -> str:
    """What was typed, in capitals and without spaces, dashes, points, and what nobody sees."""
    kept = (c for c in text if c.isprintable() and c not in " -‐‑–—·.")
    return "".join(c.upper() if c.isascii() else c for c in kept)


def shown(text: str) -> str:
    """A stored code as people read it; an old lot's code from before the book as it stands."""
    code = code_of(bare_characters(text))
    return text if code is None else code.grouped


@cache
def places(length: int) -> tuple[str, ...]:
    """What may stand at each place of a code of so many bare characters; nothing if none has."""
    if length in (LOT_LENGTH, SKEIN_LENGTH):
        return (DIGITS,) * 4 + (CHARACTERS,) * (length - 4)
    if length - 2 in NUMBER_WIDTHS:
        return ("".join(KIND_OF_LETTER), *(DIGITS,) * (length - 2), CHARACTERS)
    return ()


def check_place(length: int) -> int:
    """Where the check stands in a code of so many bare characters: after the lot, or last."""
    return LOT_LENGTH - 1 if length == SKEIN_LENGTH else length - 1


def code_of(bare: str) -> Code | None:
    """The code that these bare characters are, if form, check, and week or number are right."""
    if not _has_form(bare) or not _check_fits(bare):
        return None
    if bare[0] in KIND_OF_LETTER:
        code = numbered(KIND_OF_LETTER[bare[0]], int(bare[1:-1]))
        return code if code.text == bare else None
    if not _week_exists(bare):
        return None
    if len(bare) == LOT_LENGTH:
        return Code(Kind.LOT, bare)
    return Code(Kind.SKEIN, f"{bare[:LOT_LENGTH]}-{bare[LOT_LENGTH:]}")


def is_formed_as_lot(text: str) -> bool:
    """Whether these bare characters have the form of a lot of ours, right or wrong."""
    return len(text) == LOT_LENGTH and _has_form(text)


def is_shop_bar_code(text: str) -> bool:
    """Whether this is the bar code of a shop's article: 8, 12, 13 or 14 digits, the last a check.

    Check digit: GS1 General Specifications, weights 3 and 1 from the right, modulo 10.
    """
    bare = bare_characters(text)
    if len(bare) not in _SHOP_LENGTHS or not all(character in DIGITS for character in bare):
        return False
    from_right = [int(digit) for digit in reversed(bare)]
    return (sum(from_right[0::2]) + 3 * sum(from_right[1::2])) % 10 == 0


def is_web_address(text: str) -> bool:
    """Whether this is an address in the web, such as another maker's square code holds."""
    return bool(_WEB.match(text.strip()))


def _said(character: str) -> str:
    return _SPOKEN[int(character)] if character in DIGITS else character


def _has_form(bare: str) -> bool:
    allowed = places(len(bare))
    return bool(allowed) and all(c in at for c, at in zip(bare, allowed, strict=True))


def _check_fits(bare: str) -> bool:
    at = check_place(len(bare))
    return check_character(bare[:at]) == bare[at]


def _week_exists(bare: str) -> bool:
    try:
        date.fromisocalendar(2000 + int(bare[:2]), int(bare[2:4]), 1)
    except ValueError:
        return False
    return True


def _why_not(text: str, bare: str) -> BadInput:
    typed = text.strip() if len(text.strip()) <= 40 else f"{text.strip()[:40]}…"
    if is_shop_bar_code(bare):
        return BadInput(
            f"{typed} is a shop's bar code, not one of the studio's codes.",
            "Scan the square code on the tag or plate.",
        )
    if is_web_address(text):
        return BadInput(
            f"“{typed}” is a web address, not one of the studio's codes.",
            "Scan the square code on the studio's own tag: another maker's may be beside it.",
        )
    if not _has_form(bare):
        return BadInput(
            f"“{typed}” is not one of the studio's codes.",
            "Scan the square code, or type the code as it is printed, like 26·19·K44.",
        )
    if not _check_fits(bare):
        return BadInput(
            f"The check character of {typed} does not fit, so a character is wrong or misplaced.",
            "Read the code once more.",
        )
    if bare[0] in DIGITS:
        return BadInput(
            f"{typed} is not a lot: the year 20{bare[:2]} has no week {bare[2:4]}.",
            "Read the code once more; a tag may be upside down.",
        )
    return BadInput(
        f"{typed} is not one of the studio's codes: its number is not written like that.",
        "Read the code once more.",
    )
