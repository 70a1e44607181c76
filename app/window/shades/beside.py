"""Swatches side by side, all of one size, on the neutral surround, with what they are below."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QSize, Qt, QTimer
from PySide6.QtWidgets import QFrame, QSizePolicy, QVBoxLayout, QWidget

from app.calculations.screen_colour import on_screen
from app.calculations.shade import Colour
from app.window.look.look import Gap, Size, look
from app.window.parts.card import Actions
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.take_down import take_down
from app.window.parts.words import Words

LARGE, PAIR, MIDDLE = QSize(152, 200), QSize(132, 120), QSize(96, 96)
_WORDS = 0.8  # of a swatch's width for the words below it, where the text is large


@dataclass(frozen=True, slots=True)
class Shown:
    """One swatch: what it is, its colours, and the words below it; `none` where there are none."""

    name: str
    zones: tuple[Zone, ...]
    words: tuple[str, ...] = ()
    none: str = "not measured"


def zones_of(*colours: Colour) -> tuple[Zone, ...]:
    """The colours that were read, as bands; their shares are not known, so all are alike."""
    return tuple(Zone(on_screen(colour).swatch) for colour in colours)


def short_of(colours: Mapping[str, Colour]) -> str:
    """What is to be said of colours that no screen shows."""
    lost = [name for name, colour in colours.items() if not on_screen(colour).exact]
    if not lost:
        return ""
    said = " and ".join(lost)
    return (f"{said[:1].upper()}{said[1:]}: more colour than a screen can show; look at the card "
            "itself.")


class Beside(QFrame):
    """All swatches touch the same grey; what does not fit goes on in the next line."""

    def __init__(self, size: QSize = LARGE) -> None:
        super().__init__()
        self.setProperty("ground", "surround")
        self._size = size
        self.shown: tuple[Shown, ...] = ()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(Gap.PART, Gap.PART, Gap.PART, Gap.PART)

    def show_all(self, shown: Sequence[Shown]) -> None:
        """Show others; the same ones are left as they are."""
        if self.shown == tuple(shown):
            return
        self.shown = tuple(shown)
        self.setAccessibleName("; ".join(_said(one) for one in shown))
        self._build()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange and self.shown:
            QTimer.singleShot(0, self, self._build)  # when every part wears the new look

    def _build(self) -> None:
        take_down(self._column)
        self._column.addWidget(Actions(*(_Column(one, self._size) for one in self.shown)))


class _Column(QWidget):
    """One swatch with its words below, never wider than its words need."""

    def __init__(self, one: Shown, size: QSize) -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.HAIR)
        swatch = Swatch(one.zones, one.name, size, one.none)
        swatch.setAccessibleName(_said(one))
        column.addWidget(swatch, 0, Qt.AlignmentFlag.AlignHCenter)
        width = max(size.width(), look().grid(size.width() * _WORDS))
        for words in (Words(one.name, bold=True), *map(self._small, one.words)):
            words.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            words.setFixedWidth(width)
            column.addWidget(words)
        column.addStretch(1)

    @staticmethod
    def _small(words: str) -> Words:
        return Words(words, Size.SMALL, ink="surround")


def _said(one: Shown) -> str:
    return ", ".join((one.name, *one.words, *(() if one.zones else (one.none,))))
