"""Codes and weights in the fixed-width face, with the points between groups set closer."""

import re
from collections.abc import Iterator

from PySide6.QtCore import QPointF
from PySide6.QtGui import QFont, QFontMetricsF, QPainter

_POINTS = re.compile("([·.,])")
_TUCK = 0.14  # of the height of type, on each side of a point


def code_width(text: str, font: QFont) -> float:
    """How wide the code is when drawn."""
    return sum(width for _, _, width in _pieces(text, font))


def draw_code(painter: QPainter, start: QPointF, text: str, font: QFont) -> None:
    """Draw a code from its start on the base line."""
    painter.setFont(font)
    for piece, offset, _ in _placed(text, font):
        painter.drawText(start + QPointF(offset, 0), piece)


def elided_code(text: str, font: QFont, width: float) -> str:
    """As much of the code as fits, with an ellipsis where something is left out."""
    if code_width(text, font) <= width:
        return text
    kept = next(
        (n for n in range(len(text) - 1, 0, -1) if code_width(text[:n] + "…", font) <= width), 0
    )
    return text[:kept] + "…"


def _pieces(text: str, font: QFont) -> Iterator[tuple[str, float, float]]:
    """Each piece, how far it is drawn back, and how wide it stands."""
    metrics = QFontMetricsF(font)
    for piece in filter(None, _POINTS.split(text)):
        tuck = _TUCK * font.pixelSize() if _POINTS.fullmatch(piece) else 0.0
        yield piece, tuck, metrics.horizontalAdvance(piece) - 2 * tuck


def _placed(text: str, font: QFont) -> Iterator[tuple[str, float, float]]:
    x = 0.0
    for piece, tuck, width in _pieces(text, font):
        yield piece, x - tuck, width
        x += width
