"""How a fault of the program reaches the person: a box that blocks nothing, and the log."""

import logging
import sys
from types import TracebackType

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QMessageBox, QWidget

from app.problems import Problem

_log = logging.getLogger(__name__)


def show_failure(owner: QObject | None, error: BaseException) -> QMessageBox:
    """A Problem in its own words; anything else as a fault of the program."""
    parent = owner.window() if isinstance(owner, QWidget) else None
    box = QMessageBox(parent)
    box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setWindowTitle("Conetrail")
    if isinstance(error, Problem):
        _log.info("shown to the person: %s", error.what)
        box.setText(error.what)
        box.setInformativeText(error.next_step)
    else:
        _log.error("fault", exc_info=error)
        box.setText("The program made a mistake. Nothing of this was saved; all before it is safe.")
        box.setInformativeText("Do it again. If it happens again, send the log to who helps you.")
        box.setDetailedText("".join(map(str, (type(error).__name__, ": ", error))))
    box.open()
    return box


def install() -> None:
    """Exceptions that escape a slot arrive here instead of vanishing."""

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if isinstance(error, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        show_failure(None, error)

    sys.excepthook = hook
