"""Back on a cord: the disc is asked for, and it is said what becomes of the tags."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.window.look.look import Gap, Size
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words


class Gathering(QWidget):
    """Waits for the scan of a disc; `left` when nothing is gathered."""

    left = Signal()

    def __init__(self, count: int) -> None:
        super().__init__()
        self.asks = Words("Scan the disc of the cord they go on.", Size.TITLE, bold=True)
        self.void = Words(
            "Its tag comes off and is void then."
            if count == 1
            else f"Their {count} tags come off and are void then.",
            bold=True,
        )
        leave = KeyButton("Leave it", "F8")
        leave.clicked.connect(self.left)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.SMALL)
        for part in (self.asks, self.void, Actions(leave)):
            column.addWidget(part)

    def begin(self) -> None:
        """Keys that are typed go to the scan line: a disc may be typed."""
        self.setFocus()
