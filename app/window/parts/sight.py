"""Brings into sight what is asked or shown now, where a bench is longer than its place."""

from PySide6.QtCore import QPoint, QTimer
from PySide6.QtWidgets import QScrollArea, QWidget


def bring(widget: QWidget) -> None:
    """Scroll so far that all of this is seen, once it has its place; what is long from its top."""
    area = _area_of(widget)
    if area is not None:
        QTimer.singleShot(0, widget, lambda: _bring(area, widget))


def _bring(area: QScrollArea, widget: QWidget) -> None:
    page = area.widget()
    if page is not None and 2 * widget.height() > area.viewport().height():
        area.verticalScrollBar().setValue(widget.mapTo(page, QPoint()).y())
    else:
        area.ensureWidgetVisible(widget, 0, widget.height())


def to_top(widget: QWidget) -> None:
    """Begin at the top again."""
    area = _area_of(widget)
    if area is not None:
        area.verticalScrollBar().setValue(0)


def _area_of(widget: QWidget) -> QScrollArea | None:
    above = widget.parentWidget()
    while above is not None and not isinstance(above, QScrollArea):
        above = above.parentWidget()
    return above
