"""How every table looks: no grid, a light line under each row, codes and swatches as on a card."""

from typing import Any

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from app.window.look.codes_face import code_width, draw_code, elided_code
from app.window.look.look import TARGET, Gap, Size, look
from app.window.tables.record_table import COLUMN_ROLE, SWATCH_ROLE, Column, Index

_SWATCH = QSize(56, 44)
_APART = int(Gap.PART)  # room at the right of a cell
_MEASURED = 50  # rows that decide how wide a column is
_MOST_SPARE = 80  # room given to a column beyond what it needs


class QuietView(QTableView):
    """A table to read and to walk with the arrow keys; Enter opens a row.

    When rows open, a click does it too and rows are as high as anything that is pressed.
    """

    opened = Signal(int)  # number of the row

    def __init__(
        self, name: str = "", parent: QWidget | None = None, *, opens: bool = True
    ) -> None:
        super().__init__(parent)
        self._opens = opens
        self.setAccessibleName(name)
        self.setItemDelegate(_Cell(self))
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setSectionsClickable(False)
        self.horizontalHeader().setMinimumSectionSize(2 * _APART)
        self.horizontalHeader().setResizeContentsPrecision(_MEASURED)
        self.activated.connect(self._open)
        if opens:
            self.clicked.connect(self._open)
        self._fit_rows()

    def fit_columns(self) -> None:
        """Make every column as wide as its rows need, and share out some of what is left."""
        self.horizontalHeader().setStretchLastSection(False)
        self.resizeColumnsToContents()
        self._fit_rows()
        header, columns = self.horizontalHeader(), _count(self)
        if columns > 1:
            spare = (self.viewport().width() - header.length()) // columns
            for column in range(columns - 1):
                more = max(0, min(spare, look().grid(_MOST_SPARE)))
                header.resizeSection(column, header.sectionSize(column) + more)
        header.setStretchLastSection(True)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit_columns()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self._fit_rows()
            self.fit_columns()

    def row_height(self) -> int:
        """Height of a row in the present look."""
        swatches = any(_column(self, n).swatch for n in range(_count(self)))
        plain = max(look().grid(28), TARGET if self._opens else 0)
        return max(plain, TARGET + Gap.LINE if swatches else 0)

    def _open(self, index: Index) -> None:
        self.opened.emit(index.row())

    def _fit_rows(self) -> None:
        self.verticalHeader().setDefaultSectionSize(self.row_height())


class _Cell(QStyledItemDelegate):
    """One cell, drawn in the hand of the window."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        column: Column[Any] = index.data(COLUMN_ROLE)
        colours = look().colours
        box = option.rect
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(colours.foot))
        painter.fillRect(QRect(box.left(), box.bottom(), box.width(), 1), QColor(colours.line))
        inner = box.adjusted(0, 0, -_APART, -1)
        swatch = index.data(SWATCH_ROLE)
        if swatch:
            top = inner.top() + (inner.height() - _SWATCH.height()) // 2
            painter.fillRect(QRect(inner.left(), top, 56, 44), QColor(swatch))
        if column.swatch:
            inner.setLeft(inner.left() + _SWATCH.width() + Gap.LINE)
        painter.setPen(QColor(colours.ink))
        _draw_text(painter, inner, str(index.data()), column)
        painter.restore()

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        column: Column[Any] = index.data(COLUMN_ROLE)
        width = _text_width(str(index.data()), column) + _APART + 2
        if column.swatch:
            width += _SWATCH.width() + Gap.LINE
        return QSize(round(width), look().grid(28))


def _font(column: Column[Any]) -> QFont:
    if column.codes:
        return look().font(Size.PLAIN, bold=True, codes=True)
    return look().figures(Size.PLAIN) if column.right else look().font(Size.PLAIN)


def _text_width(text: str, column: Column[Any]) -> float:
    font = _font(column)
    return code_width(text, font) if column.codes else QFontMetricsF(font).horizontalAdvance(text)


def _draw_text(painter: QPainter, box: QRect, text: str, column: Column[Any]) -> None:
    font = _font(column)
    metrics = QFontMetricsF(font)
    painter.setFont(font)
    if column.codes:
        base = box.top() + (box.height() + metrics.capHeight()) / 2
        shown = elided_code(text, font, box.width())
        draw_code(painter, QPointF(box.left(), base), shown, font)
        return
    side = Qt.AlignmentFlag.AlignRight if column.right else Qt.AlignmentFlag.AlignLeft
    shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
    painter.drawText(QRectF(box), side | Qt.AlignmentFlag.AlignVCenter, shown)


def _count(view: QTableView) -> int:
    return view.model().columnCount() if view.model() and view.model().rowCount() else 0


def _column(view: QTableView, number: int) -> Column[Any]:
    column: Column[Any] = view.model().index(0, number).data(COLUMN_ROLE)
    return column
