"""The page true to size on this screen, with a line of 50 mm that says whether to trust it."""

from functools import partial

from PySide6.QtCore import QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from app.problems import BadInput
from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.millimetres import read_mm
from app.window.parts.true_size import RULER_MM, Ruler, TrueSize
from app.window.parts.words import SECOND, Words

_LEAST_MM, _MOST_MM = 25.0, 100.0


class PreviewCard(Card):
    """`wanted` asks for the page, `measured` says how long the line is on this screen in mm."""

    wanted = Signal()
    other = Signal()
    test = Signal()
    measured = Signal(float)

    def __init__(self) -> None:
        super().__init__("True to size")
        self.page, self.ruler = TrueSize(), Ruler()
        self.says = Words("", bold=True)
        self.show_key = KeyButton("Show the page", strong=True)
        self.other_key = KeyButton("Another base")
        self.test_key = KeyButton("Print it on plain paper")
        self.line = Field("The line measures, mm", _line_mm, f"{RULER_MM}")
        self.line_key = KeyButton("Put the screen right")
        ruler = QVBoxLayout()
        ruler.setSpacing(Gap.HAIR)
        ruler.addWidget(self.ruler)
        ruler.addWidget(Words("Hold a ruler to it: this line is 50 mm long.", ink=SECOND))
        row = QHBoxLayout()
        row.setSpacing(Gap.PART)
        row.addLayout(ruler, 1)
        row.addWidget(self.line)
        row.addWidget(self.line_key, 0, Qt.AlignmentFlag.AlignBottom)
        self.add(self.says, Actions(self.show_key, self.other_key, self.test_key), row, self.page)
        self.show_key.clicked.connect(self.wanted)
        self.other_key.clicked.connect(self.other)
        self.test_key.clicked.connect(self.test)
        self.line_key.clicked.connect(self._measured)
        self.line.line.returnPressed.connect(self._measured)
        self.forget("Choose a stock, and look at its page.")

    def show_page(self, image: QImage, said: str) -> None:
        """This is what would come out of the printer."""
        self.page.show_image(image)
        self.page.show()
        self.says.setText(said)

    def forget(self, said: str) -> None:
        """The page that was shown is not that of the stock in hand, or there can be none."""
        self.page.hide()
        self.says.setText(said)

    def come_into_sight(self) -> None:
        """Roll the bench until the head of the page can be seen."""
        bench: QWidget | None = self
        while bench is not None and not isinstance(bench, QScrollArea):
            bench = bench.parentWidget()
        if bench is not None:
            QTimer.singleShot(0, self, partial(_roll, bench, self))

    def _measured(self) -> None:
        length = self.line.value()
        if length is not None:
            self.measured.emit(length)


def _roll(bench: QScrollArea, card: QWidget) -> None:
    inside = bench.widget()
    if inside is not None:
        bench.verticalScrollBar().setValue(card.mapTo(inside, QPoint(0, 0)).y())


def _line_mm(text: str) -> float:
    length = read_mm(text)
    if not _LEAST_MM <= length <= _MOST_MM:
        raise BadInput(f"A line of 50 mm is not shown {length:g} mm long.",
                       "Measure it once more, in millimetres.")
    return length
