"""The sheet as it lies in the printer, drawn to scale: used cells, chosen ones, free ones."""

from collections.abc import Mapping, Set
from dataclasses import dataclass, field
from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.documents.stocks import Stock
from app.window.look.look import Size, look
from app.window.look.shapes import draw_focus

_ROOM = 4.0  # round the page, for the ring of the focus


class Cell(StrEnum):
    """What a cell is, or is going to be."""

    FREE = "free"
    USED = "used"
    CHOSEN = "chosen"


@dataclass(frozen=True, slots=True)
class Shown:
    """A sheet to show: what each cell is; its number, or `words` where a printed sheet is shown."""

    stock: Stock
    used: Set[int] = frozenset()
    chosen: Set[int] = frozenset()
    words: Mapping[int, str] = field(default_factory=dict)

    def cell(self, number: int) -> Cell:
        """What this cell is."""
        if number in self.chosen:
            return Cell.CHOSEN
        return Cell.USED if number in self.used else Cell.FREE


class SheetPicture(QWidget):
    """Cells are tapped, or walked to with the arrow keys and tapped with Space."""

    tapped = Signal(int)

    def __init__(self, height: int = 340) -> None:
        super().__init__()
        self._height = height
        self.shown: Shown | None = None
        self.at = 1
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_sheet(self, shown: Shown, at: int, sentence: str) -> None:
        """Show another sheet; `at` is the cell that the keys walk from."""
        self.shown, self.at = shown, at
        self.setAccessibleName(f"sheet {shown.stock.title}: {sentence}")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        if self.shown is None:
            return QSize(0, 0)
        wide, high = self.shown.stock.page
        scale = min(self._height / high, self._height / wide)
        return QSize(round(wide * scale + 2 * _ROOM), round(high * scale + 2 * _ROOM))

    def box(self, number: int) -> QRectF:
        """Where a cell lies in the picture."""
        assert self.shown is not None
        cell, scale = self.shown.stock.cell(number), self._scale()
        return QRectF(
            _ROOM + cell.left * scale,
            _ROOM + cell.top * scale,
            (cell.right - cell.left) * scale,
            (cell.bottom - cell.top) * scale,
        )

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self.shown is None:
            return
        for number in range(1, self.shown.stock.cells + 1):
            if self.box(number).contains(event.position()):
                self.at = number
                self.tapped.emit(number)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self.walk(event.key()):
            super().keyPressEvent(event)

    def walk(self, key: int) -> bool:
        """An arrow key walks, Space taps where it stands; True if it was one of them."""
        if self.shown is None:
            return False
        steps = {
            int(Qt.Key.Key_Left): -1,
            int(Qt.Key.Key_Right): 1,
            int(Qt.Key.Key_Up): -self.shown.stock.across,
            int(Qt.Key.Key_Down): self.shown.stock.across,
        }
        if key == int(Qt.Key.Key_Space):
            self.tapped.emit(self.at)
            return True
        if key not in steps:
            return False
        if 1 <= self.at + steps[key] <= self.shown.stock.cells:
            self.at += steps[key]
            self.update()
        return True

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.shown is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide, high = self.shown.stock.page
        page = QRectF(_ROOM, _ROOM, wide * self._scale(), high * self._scale())
        painter.setBrush(QColor(look().colours.in_hand))
        painter.setPen(QPen(QColor(look().colours.edge), 1))
        painter.drawRect(page)
        for number in range(1, self.shown.stock.cells + 1):
            self._draw_cell(painter, self.box(number).adjusted(1, 1, -1, -1), number)
        self._draw_here(painter)
        if self.hasFocus():
            draw_focus(painter, QRectF(self.rect()), 2)

    def _draw_cell(self, painter: QPainter, box: QRectF, number: int) -> None:
        assert self.shown is not None
        colours, state = look().colours, self.shown.cell(number)
        ground = {Cell.FREE: colours.in_hand, Cell.USED: colours.foot, Cell.CHOSEN: colours.ink}
        painter.setBrush(QColor(ground[state]))
        painter.setPen(QPen(QColor(colours.edge), 1))
        painter.drawRoundedRect(box, 2, 2)
        if state is Cell.USED and number not in self.shown.words:
            painter.drawLine(QPointF(box.bottomLeft()), QPointF(box.topRight()))
        painter.setPen(QColor(colours.in_hand if state is Cell.CHOSEN else colours.second_ink))
        font = look().font(Size.SMALL, bold=state is Cell.CHOSEN, codes=True)
        font.setPixelSize(min(font.pixelSize(), max(9, int(box.height() * 0.45))))
        painter.setFont(font)
        plain = "" if state is Cell.USED or self.shown.words else str(number)
        words = self.shown.words.get(number, plain)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    def _draw_here(self, painter: QPainter) -> None:
        """A ring round the cell where the keys stand."""
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(look().colours.ink), 2))
        painter.drawRoundedRect(self.box(self.at).adjusted(-1.5, -1.5, 1.5, 1.5), 3, 3)

    def _scale(self) -> float:
        assert self.shown is not None
        wide, high = self.shown.stock.page
        return min(self._height / high, self._height / wide)
