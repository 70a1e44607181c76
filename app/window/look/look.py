"""What the window wears: its colours and the size of its type, the same for every part of it."""

from dataclasses import dataclass, field
from enum import IntEnum
from functools import cache

from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QFont, QFontDatabase

from app.paths import RESOURCES
from app.window.look.palette import DAY, Palette

LEAST_TEXT, MOST_TEXT = 1.0, 2.0
TARGET = 44  # least side of anything that is pressed, in pixels
LOOK = "conetrail_look"  # the application's property that holds the look


class Size(IntEnum):
    """Heights of type in pixels at a text factor of 1."""

    SMALL = 13
    PLAIN = 16
    LEAD = 20
    TITLE = 28
    LARGE = 40
    HUGE = 84


class Gap(IntEnum):
    """Steps of space in pixels; space does not grow with the text."""

    HAIR = 4
    SMALL = 8
    LINE = 12
    PART = 16
    CARD = 24
    BLOCK = 32
    BENCH = 48


@dataclass(frozen=True, slots=True)
class Families:
    """The faces as the program loaded them: words, and the fixed-width face of the codes."""

    words: str
    codes: str


@cache
def families() -> Families:
    """Loads the shipped faces once and answers the names they are known by."""
    names: dict[str, str] = {}
    for path in sorted((RESOURCES / "fonts").glob("*.ttf")):
        loaded = QFontDatabase.applicationFontFamilies(QFontDatabase.addApplicationFont(str(path)))
        names[path.stem] = loaded[0] if loaded else QFont().family()
    return Families(
        names["AtkinsonHyperlegibleNext-Regular"], names["AtkinsonHyperlegibleMono-Regular"]
    )


@dataclass(frozen=True, slots=True)
class Look:
    """Colours and text factor (1.0 to 2.0)."""

    colours: Palette = field(default=DAY)
    text: float = 1.0

    def px(self, size: float) -> int:
        """A height of type as it is now, in whole pixels."""
        return round(size * self.text)

    def grid(self, length: float) -> int:
        """A length that grows with the text, on the 4 px grid."""
        return round(length * self.text / 4) * 4

    def font(self, size: float, bold: bool = False, codes: bool = False) -> QFont:
        """The face for words, or the fixed-width face for codes."""
        font = QFont(families().codes if codes else families().words)
        font.setPixelSize(self.px(size))
        font.setBold(bold)
        return font

    def figures(self, size: float, bold: bool = False) -> QFont:
        """The face for numbers in columns and large numbers: every figure equally wide."""
        font = self.font(size, bold)
        font.setFeature(QFont.Tag("tnum"), 1)
        return font


def look() -> Look:
    """What the program wears now."""
    app = QCoreApplication.instance()
    worn = app.property(LOOK) if app is not None else None
    return worn if isinstance(worn, Look) else Look()
