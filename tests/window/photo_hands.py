"""Hands with a photograph: it is dropped on the window or pasted."""

from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication


def drop(at_work, *paths):
    """Drop files on the window."""
    dropped = QMimeData()
    dropped.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    how = (Qt.DropAction.CopyAction, dropped, Qt.MouseButton.LeftButton,
           Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(at_work.window, QDragEnterEvent(QPoint(400, 400), *how))
    QApplication.sendEvent(at_work.window, QDropEvent(QPointF(400, 400), *how))
    at_work.quiet()


def paste(at_work, picture):
    """A picture is on the clipboard, and Ctrl+V is pressed."""
    QGuiApplication.clipboard().setImage(QImage.fromData(picture))
    QTest.keyClick(at_work.window.windowHandle(), Qt.Key.Key_V,
                   Qt.KeyboardModifier.ControlModifier)
    at_work.quiet()


def read_rows(page):
    """What was read, row by row."""
    assert page.isVisible()
    return [row.accessibleName() for row in page.rows.rows]
