"""Rows that are built anew: what lay in the layout is hidden at once and dropped."""

from PySide6.QtWidgets import QLayout


def take_down(layout: QLayout) -> None:
    """Hide and drop all widgets of a layout; none flashes as a window of its own meanwhile."""
    while item := layout.takeAt(0):
        if widget := item.widget():
            widget.hide()
            widget.deleteLater()
