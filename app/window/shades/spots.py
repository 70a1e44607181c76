"""A picture with one spot a lot: tapped, or walked to with the arrow keys."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.window.look.look import TARGET
from app.window.look.shapes import draw_focus

_STEPS = {int(Qt.Key.Key_Left): -1, int(Qt.Key.Key_Up): -1,
          int(Qt.Key.Key_Right): 1, int(Qt.Key.Key_Down): 1}


class SpotPicture(QWidget):
    """Base of the pictures; `chosen` gives the place of a lot, counted from 0."""

    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.at: int | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def spots(self) -> Sequence[tuple[int, QPointF]]:
        """Where each lot is drawn; one lot may be drawn at several spots."""
        return ()

    def mark(self, place: int | None) -> None:
        """Show which lot is meant."""
        self.at = place
        self.update()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self.updateGeometry()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        spots = self.spots()
        if spots:
            place, spot = min(spots, key=lambda one: _far(one[1], event.position()))
            if _far(spot, event.position()) <= TARGET / 2:
                self.chosen.emit(place)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        lots = max((place for place, _ in self.spots()), default=-1) + 1
        if event.key() not in _STEPS or not lots:
            super().keyPressEvent(event)
            return
        at = -1 if self.at is None else self.at
        self.chosen.emit(min(max(at + _STEPS[event.key()], 0), lots - 1))

    def draw_focus(self, painter: QPainter) -> None:
        """The ring around all of it while keys walk in it."""
        if self.hasFocus():
            draw_focus(painter, QRectF(self.rect()), 4)


def _far(one: QPointF, other: QPointF) -> float:
    apart = one - other
    return float((apart.x() ** 2 + apart.y() ** 2) ** 0.5)
