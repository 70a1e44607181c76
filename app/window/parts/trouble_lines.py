"""What is wrong with a list, a line each: the row, the sentence, and what stood there."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.look.look import Gap
from app.window.parts.take_down import take_down
from app.window.parts.words import Words

_MOST = 6


class TroubleLines(QWidget):
    """A headline and as many sentences as can be read; the rest is counted."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("what is wrong with the list")
        self.lines: list[str] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.HAIR)

    def show_lines(self, headline: str, sentences: Sequence[str]) -> None:
        """Show them; nothing to say hides it."""
        take_down(self._column)
        more = len(sentences) - _MOST
        self.lines = [*sentences[:_MOST], *([f"And {more} more like these."] if more > 0 else [])]
        for words in (Words(headline, bold=True), *map(Words, self.lines)):
            self._column.addWidget(words)
        self.setVisible(bool(sentences))
