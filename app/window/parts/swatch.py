"""The yarn's colour, square-cornered on its light patch: the only colour in the window."""

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.look import Size, look

SMALL = QSize(64, 44)
_SPECK = 4.0


@dataclass(frozen=True, slots=True)
class Zone:
    """One colour of a colourway (`#1B856E`) and its share of the yarn; specks lie over the rest."""

    colour: str
    share: float = 1.0
    speckle: bool = False


class Swatch(QWidget):
    """A colour to be judged by eye, or the words that say there is none to show."""

    def __init__(
        self,
        zones: Sequence[Zone] = (),
        of: str = "",
        size: QSize = SMALL,
        none: str = "not measured",
    ) -> None:
        super().__init__()
        self._least, self._none, self._of = size, none, of
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.show_zones(zones, of)

    def show_zones(self, zones: Sequence[Zone], of: str = "") -> None:
        """Show the colours of another thing; none at all shows the words instead."""
        self._zones, self._of = tuple(zones), of
        what = "swatch" if zones else self._none
        self.setAccessibleName(f"{of}: {what}" if of else what)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        if self._zones:
            return self._least
        words = self._words_box(self._least.width() - 4)
        return QSize(round(words.width()) + 4, round(words.height()) + 4).expandedTo(self._least)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        box = QRectF(self.rect())
        if self._zones:
            draw_zones(painter, mounted(painter, box), self._zones)
            return
        painter.setPen(QPen(QColor(look().colours.edge), 1, Qt.PenStyle.DashLine))
        painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5))
        painter.setPen(QColor(look().colours.second_ink))
        painter.setFont(look().font(Size.SMALL))
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(box.adjusted(2, 2, -2, -2), flags, self._none)

    def _words_box(self, width: int) -> QRectF:
        metrics = QFontMetricsF(look().font(Size.SMALL))
        return metrics.boundingRect(
            QRectF(0, 0, width, 10_000), int(Qt.TextFlag.TextWordWrap), self._none
        )


def mounted(painter: QPainter, box: QRectF) -> QRectF:
    """On dark paper a swatch lies on a light patch, so that it is judged as by day."""
    colours = look().colours
    if colours.mount == colours.paper:
        return box
    painter.fillRect(box, QColor(colours.mount))
    return box.adjusted(6, 6, -6, -6)


def draw_zones(painter: QPainter, box: QRectF, zones: Sequence[Zone]) -> None:
    """The colours as bands in proportion from the left, specks strewn over them by their share."""
    bands = [zone for zone in zones if not zone.speckle]
    whole = sum(zone.share for zone in bands) or 1.0
    left = box.left()
    for zone in bands:
        width = box.width() * zone.share / whole
        painter.fillRect(QRectF(left, box.top(), width, box.height()), QColor(zone.colour))
        left += width
    for zone in zones:
        if zone.speckle:
            _strew(painter, box, zone)


def _strew(painter: QPainter, box: QRectF, zone: Zone) -> None:
    """Specks on a grid of cells, always in the same places, that cover the zone's share."""
    columns, rows = int(box.width() // _SPECK), int(box.height() // _SPECK)
    cells = [(column, row) for column in range(columns) for row in range(rows)]
    for column, row in Random(7).sample(cells, round(zone.share * len(cells))):
        place = QRectF(box.left() + column * _SPECK, box.top() + row * _SPECK, _SPECK, _SPECK)
        painter.fillRect(place, QColor(zone.colour))
