"""The lots of a picture as rows: number, mark, code and numbers; a tap means this lot."""

from PySide6.QtCore import QEvent, QPointF, QSize, QTimer, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from app.lookups.shade_map import ShadeMap
from app.window.look.look import Gap, Size, look
from app.window.parts.row_button import RowButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, CodeWords, Words
from app.window.shades.map_picture import MARK
from app.window.shades.marks import draw_mark
from app.window.shades.shade_words import named, step_words


class LotList(QWidget):
    """`chosen` gives the place of a lot, counted from 0."""

    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("lots in the picture")
        self.rows: list[LotRow] = []
        self._shades: ShadeMap | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def show_map(self, shades: ShadeMap) -> None:
        """Show other lots."""
        self._shades = shades
        take_down(self._column)
        self.rows = [LotRow(shades, place) for place in range(len(shades.lots))]
        for place, row in enumerate(self.rows):
            row.clicked.connect(lambda _=False, place=place: self.chosen.emit(place))
            self._column.addWidget(row)
        self._column.addStretch(1)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        shades = self._shades
        if event.type() is QEvent.Type.StyleChange and shades is not None:
            QTimer.singleShot(0, self, lambda: self.show_map(shades))


class LotRow(RowButton):
    """One lot."""

    def __init__(self, shades: ShadeMap, place: int) -> None:
        super().__init__()
        step = shades.lots[place]
        words = step_words(shades, place)
        here = ", in hand" if step.lot == shades.lot else ""
        self.setAccessibleName(f"{named(shades, place)}{here}: {words}")
        self.row.setContentsMargins(Gap.HAIR, Gap.HAIR, Gap.SMALL, Gap.HAIR)
        number = Words(str(place + 1), bold=True, wrap=False)
        number.setFixedWidth(look().grid(28))
        text = QVBoxLayout()
        text.setSpacing(0)
        text.addWidget(CodeWords(step.code))
        text.addWidget(Words(words, Size.SMALL, ink=SECOND))
        self.row.addWidget(number)
        self.row.addWidget(_Mark(shades.group_of(place), filled=shades.left[place] > 0,
                                 in_hand=step.lot == shades.lot))
        self.row.addLayout(text, 1)


class _Mark(QWidget):
    """The mark that the lot has in the map."""

    def __init__(self, shape: int, *, filled: bool, in_hand: bool) -> None:
        super().__init__()
        self._shape, self._filled, self._in_hand = shape, filled, in_hand
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(32, 32)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_mark(painter, QPointF(16, 16), MARK, self._shape, filled=self._filled,
                  in_hand=self._in_hand)
