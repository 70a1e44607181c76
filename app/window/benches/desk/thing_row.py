"""Things to choose from: each with its swatch, its code in groups, its base, and its kind."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from app.lookups.things import Found
from app.scanning.saying import void_words
from app.window.benches.desk.desk_words import ICONS, kind_words
from app.window.look.icons import Icon
from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.shapes import draw_key_cap, key_cap_width
from app.window.parts.picture import Picture
from app.window.parts.row_button import RowButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import CodeWords, OneLine

SWATCH = QSize(64, TARGET)
NO_SWATCH = "no swatch chosen"
_WITHOUT_COLOUR = ("cone", "disc", "pot", "jar", "rail", "shelf", "reel", "board", "steamer",
                   "vessel", "action", "bench")


def swatch_of(thing: Found, size: QSize, icon: float) -> QWidget:
    """The colour chosen by eye, the words that none was, or a picture of what has no colour."""
    if thing.kind in _WITHOUT_COLOUR:
        return Picture(ICONS.get(thing.kind, Icon.DISC), icon)
    zones = [Zone(thing.swatch)] if thing.swatch else []
    return Swatch(zones, thing.words, size, NO_SWATCH)


class ThingRow(RowButton):
    """One thing as a key as wide as its place."""

    def __init__(self, thing: Found, key: str = "") -> None:
        super().__init__()
        self.thing, self.key = thing, key
        kind = void_words(thing) if thing.void else kind_words(thing.kind)
        self.setAccessibleName(f"{thing.shown}, {kind}, {thing.words}")
        self.setAccessibleDescription(f"key {key}" if key else "")
        words = QVBoxLayout()
        words.setSpacing(0)
        first = QHBoxLayout()
        first.setSpacing(Gap.LINE)
        first.addWidget(CodeWords(thing.shown))
        first.addWidget(OneLine(kind, second=True), 1)
        words.addStretch(1)
        words.addLayout(first)
        words.addWidget(OneLine(thing.words))
        words.addStretch(1)
        row = self.row
        row.setContentsMargins(0, Gap.SMALL, Gap.LINE, Gap.SMALL)
        picture = swatch_of(thing, SWATCH, TARGET)
        if isinstance(picture, Picture):
            row.addSpacing(10)
            row.addWidget(picture)
            row.addSpacing(10)
        else:
            row.addWidget(picture)
        row.addLayout(words, 1)
        if key:
            row.addWidget(_Cap(key))



class _Cap(QWidget):
    """The figure that chooses it."""

    def __init__(self, key: str) -> None:
        super().__init__()
        self._key = key
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        font = look().font(Size.SMALL, bold=True)
        return QSize(round(key_cap_width(self._key, font)), look().grid(24))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        font = look().font(Size.SMALL, bold=True)
        draw_key_cap(painter, QRectF(self.rect()), self._key, font, QColor(look().colours.ink))


class ThingRows(QWidget):
    """Things below each other; `chosen` gives the one that was pressed."""

    chosen = Signal(object)  # Found

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[ThingRow] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def show_things(self, things: Sequence[Found], *, keys: bool = False) -> None:
        """Show other things; with keys, the first nine have a figure each."""
        for old in self.rows:
            old.hide()
            self._column.removeWidget(old)
            old.deleteLater()
        self.rows = [
            ThingRow(thing, str(number) if keys and number < 10 else "")
            for number, thing in enumerate(things, 1)
        ]
        for row in self.rows:
            row.clicked.connect(partial(self.chosen.emit, row.thing))
            self._column.addWidget(row)

    def choose(self, number: int) -> bool:
        """Press the row with this number, counted from 1; False if there is none."""
        if not 1 <= number <= len(self.rows):
            return False
        self.rows[number - 1].click()
        return True
