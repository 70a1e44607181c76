"""The type of every paper: faces, sizes, how wide words run and where they may break."""

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum
from functools import cache, lru_cache
from typing import Final

from reportlab.lib.colors import Color, HexColor
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from app.paths import resource

MM: Final = 72 / 25.4  # points in a millimetre
BLACK: Final = HexColor("#000000")
WHITE: Final = HexColor("#FFFFFF")
RED: Final = HexColor("#B3001B")  # HOLD and nothing else

_NO_BREAK = "\u00a0"
_MONTHS = "Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec"
_UNIT = re.compile(rf"(?<=\d) +(?=(?:%|°C|g|kg|mL|L|mm|m|min|h|oz|yd|tex|{_MONTHS})(?:\W|$))")
_UNSEEN = ("Cc", "Cf", "Cs", "Cn", "Co", "Zl", "Zp")  # Unicode: control, format, no sign at all
_TUCKED = "·.,"  # set closer on both sides in the face of one width
_TUCK = 0.14  # of the type's size


class Face(StrEnum):
    """Words in a face of varied width; codes, weights and columns of numbers in one of one width.

    The two `WIDE` faces stand in for letters the first faces lack: Greek, Cyrillic and more.
    """

    WORDS = "AtkinsonHyperlegibleNext-Regular"
    BOLD = "AtkinsonHyperlegibleNext-Bold"
    CODE = "AtkinsonHyperlegibleMono-Regular"
    CODE_BOLD = "AtkinsonHyperlegibleMono-Bold"
    WIDE = "NotoSans-Regular"
    WIDE_BOLD = "NotoSans-Bold"


@dataclass(frozen=True, slots=True)
class Type:
    """A size in points, a face and an ink."""

    pt: float
    face: Face = Face.WORDS
    ink: Color = BLACK

    @property
    def ascent_mm(self) -> float:
        """From the base line to the top of a capital."""
        return 0.68 * self.pt / MM

    @property
    def descent_mm(self) -> float:
        """From the base line to the foot of a letter that hangs below it."""
        return 0.2 * self.pt / MM


@dataclass(frozen=True, slots=True)
class Piece:
    """Letters that are set in one go, with their distance from the start of the line in mm."""

    at_mm: float
    letters: str
    face: Face


@dataclass(frozen=True, slots=True)
class Setting:
    """One line of words, set: its pieces and its width."""

    pieces: tuple[Piece, ...]
    width_mm: float


@lru_cache(maxsize=4096)
def set_line(words: str, pt: float, face: Face) -> Setting:
    """The words as one line; what a face has no letter for is taken from its stand-in."""
    pieces, at = [], 0.0
    one_width = face in (Face.CODE, Face.CODE_BOLD)
    for run_face, run in _runs(unicodedata.normalize("NFC", words), face):
        for letters in re.split(f"([{_TUCKED}])", run) if one_width else [run]:
            tuck = _TUCK * pt / MM if one_width and letters and letters in _TUCKED else 0.0
            pieces.append(Piece(at - tuck, letters, run_face))
            at += _width(letters, run_face, pt) - 2 * tuck
    return Setting(tuple(pieces), at)


def width_mm(words: str, kind: Type) -> float:
    """How wide the words run on one line."""
    return set_line(words, kind.pt, kind.face).width_mm


def break_lines(words: str, kind: Type, room_mm: float, *, anywhere: bool = False) -> list[str]:
    """The words as lines no wider than the room; `|` breaks where it stands, a number keeps its
    unit.

    A single word that is too wide stays whole, unless it may be broken `anywhere`.
    """
    lines: list[str] = []
    for part in _UNIT.sub(_NO_BREAK, words).split("|"):
        lines.append("")
        for word in part.split(" "):
            longer = f"{lines[-1]} {word}" if lines[-1] else word
            if width_mm(longer, kind) <= room_mm:
                lines[-1] = longer
            else:
                pieces = _chopped(word, kind, room_mm) if anywhere else [word]
                lines[-1:] = [lines[-1], *pieces] if lines[-1] else pieces
    return lines


@lru_cache(maxsize=4096)
def strangers(words: str) -> str:
    """The letters of these words that no bundled face can print, each once."""
    known = _letters(Face.WORDS) | _letters(Face.WIDE)
    composed = unicodedata.normalize("NFC", words)
    return "".join(
        letter
        for letter in dict.fromkeys(composed)
        if ord(letter) not in known
        or unicodedata.combining(letter)
        or unicodedata.category(letter) in _UNSEEN
    )


def named(signs: str) -> str:
    """Signs as a sentence can show them: what nobody sees, or turns the sentence, by number."""
    return "".join(
        f"[{ord(one):04X}]" if unicodedata.category(one) in _UNSEEN else one for one in signs
    )


def spelled_out(words: str) -> str:
    """The words with every letter that cannot be printed as its number, so that none is lost."""
    unknown = strangers(words)
    composed = unicodedata.normalize("NFC", words)
    return "".join(f"[{ord(one):04X}]" if one in unknown else one for one in composed)


def font_name(face: Face) -> str:
    """The name under which ReportLab knows the face; the font is read when it is first needed."""
    _letters(face)
    return face.value


@cache
def _letters(face: Face) -> frozenset[int]:
    font = TTFont(face.value, str(resource(f"fonts/{face.value}.ttf")))
    pdfmetrics.registerFont(font)
    return frozenset(font.face.charToGlyph)


def _runs(words: str, face: Face) -> list[tuple[Face, str]]:
    own = _letters(face)
    if all(ord(letter) in own for letter in words):
        return [(face, words)]
    bold = face in (Face.BOLD, Face.CODE_BOLD)
    stand_in = Face.WIDE_BOLD if bold else Face.WIDE
    runs: list[tuple[Face, str]] = []
    for letter in words:
        of = face if ord(letter) in own else stand_in
        if runs and runs[-1][0] is of:
            runs[-1] = (of, runs[-1][1] + letter)
        else:
            runs.append((of, letter))
    return runs


def _width(letters: str, face: Face, pt: float) -> float:
    return float(pdfmetrics.stringWidth(letters, font_name(face), pt)) / MM


def _chopped(word: str, kind: Type, room_mm: float) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and width_mm(pieces[-1] + letter, kind) > room_mm:
            pieces.append("")
        pieces[-1] += letter
    return pieces
