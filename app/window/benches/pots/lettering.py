"""Names on small cards: two lines, and an ellipsis where there are more."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter


def draw_two_lines(painter: QPainter, box: QRectF, words: str) -> None:
    """Write words into the top of a box, in the painter's face."""
    metrics = QFontMetricsF(painter.font())
    first, rest = _broken(words, metrics, box.width())
    second = metrics.elidedText(rest, Qt.TextElideMode.ElideRight, box.width())
    lines = QRectF(box.left(), box.top(), box.width(), metrics.height())
    painter.drawText(lines, Qt.AlignmentFlag.AlignLeft, first)
    painter.drawText(lines.translated(0, metrics.height()), Qt.AlignmentFlag.AlignLeft, second)


def _broken(words: str, metrics: QFontMetricsF, width: float) -> tuple[str, str]:
    """As many whole words as one line holds, at least one, and the rest."""
    parts = words.split()
    kept = 1
    while kept < len(parts) and metrics.horizontalAdvance(" ".join(parts[: kept + 1])) <= width:
        kept += 1
    return " ".join(parts[:kept]), " ".join(parts[kept:])
