"""Ties as they are seen: one patch for the thread of a cone, two for a skein over a join."""

from PySide6.QtCore import QEvent
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from app.window.look.look import Size, look
from app.window.parts.take_down import take_down
from app.window.parts.tie_patch import TiePatch

THREADS = {
    "red": "#C2272D",
    "yellow": "#E8B500",
    "blue": "#2457A8",
    "green": "#2F8A3C",
    "orange": "#E8711A",
    "violet": "#7A3C9C",
    "black": "#161616",
    "white": "#F4F2EC",
}
PLAIN = "#FFFFFF"  # under the word of a thread whose colour is not known here


def threads_of(tie: str) -> tuple[str, ...]:
    """The threads of a tie: `red and yellow` are two."""
    return tuple(tie.split(" and ")) if tie else ()


def thread_colour(word: str) -> str:
    """The colour of a thread by its word."""
    named = QColor(word)
    return THREADS.get(word) or (named.name() if named.isValid() else PLAIN)


class Ties(QWidget):
    """A tie with all its threads, each patch with its word.

    What is read across the room already does not grow with the text.
    """

    def __init__(self, tie: str = "", size: float = Size.HUGE) -> None:
        super().__init__()
        self._size = size
        self.tie = ""
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        self.show_tie(tie)

    def show_tie(self, tie: str) -> None:
        """Show another tie."""
        if tie != self.tie:
            self.tie = tie
            self.setAccessibleName(f"{tie} ties" if tie else "no tie")
            self._hang()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange and self._size >= Size.HUGE:
            self._hang()

    def _hang(self) -> None:
        take_down(self._row)
        size = self._size / look().text if self._size >= Size.HUGE else self._size
        for word in threads_of(self.tie):
            self._row.addWidget(TiePatch(word, thread_colour(word), size))
