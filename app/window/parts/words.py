"""Words on the window: a line of text, a named fact, a code, a number that decides."""

from PySide6.QtCore import QEvent, QPointF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from app.window.look.codes_face import code_width, draw_code, elided_code
from app.window.look.look import Gap, Size, look

SECOND = "second"  # ink for what is read second, on paper


class Words(QLabel):
    """Plain words; they wrap unless told not to, and are never read as markup."""

    def __init__(
        self,
        text: str = "",
        size: Size = Size.PLAIN,
        *,
        bold: bool = False,
        ink: str = "",
        wrap: bool = True,
    ) -> None:
        super().__init__(text)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setProperty("type", str(size.value))
        self.setProperty("bold", "true" if bold else "false")
        self.setProperty("ink", ink)
        self.setWordWrap(wrap)


class OneLine(QWidget):
    """One line that gives way: what does not fit ends in an ellipsis and shows when pointed at."""

    def __init__(
        self,
        text: str = "",
        size: Size = Size.PLAIN,
        *,
        bold: bool = False,
        right: bool = False,
        second: bool = False,
    ) -> None:
        super().__init__()
        self._text, self._size, self._bold, self._second = text, size, bold, second
        self._side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.say(text)

    def say(self, text: str) -> None:
        """Say something else."""
        self._text = text
        self.setAccessibleName(text)
        self._hint_when_cut()
        self.updateGeometry()
        self.update()

    def text(self) -> str:
        """What it says, whole."""
        return self._text

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(self._font())
        width = metrics.horizontalAdvance(self._text)
        return QSize(-int(-width // 1), round(metrics.height()))

    def minimumSizeHint(self) -> QSize:
        few = min(self.sizeHint().width(), look().grid(80))
        return QSize(few, self.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._hint_when_cut()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        colours = look().colours
        painter.setPen(QColor(colours.second_ink if self._second else colours.ink))
        painter.setFont(self._font())
        painter.drawText(self.rect(), self._side | Qt.AlignmentFlag.AlignVCenter, self._shown())

    def _shown(self) -> str:
        metrics = QFontMetricsF(self._font())
        return metrics.elidedText(self._text, Qt.TextElideMode.ElideRight, self.width())

    def _hint_when_cut(self) -> None:
        self.setToolTip("" if self._shown() == self._text else self._text)

    def _font(self) -> QFont:
        return look().font(self._size, self._bold)


class FactLine(QWidget):
    """A fact with its name before it; lines below each other have their facts in one column."""

    NAME = 112  # least width of the name at a text factor of 1

    def __init__(self, name: str, fact: str = "") -> None:
        super().__init__()
        self._name = Words(name, ink=SECOND, wrap=False)
        self._fact = Words(fact)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        row.addWidget(self._name, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._fact, 1)
        self._fit()

    def show_fact(self, fact: str) -> None:
        """Say what it is now."""
        self._fact.setText(fact)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self._fit()

    def _fit(self) -> None:
        self._name.setMinimumWidth(look().grid(self.NAME))


class CodeWords(QWidget):
    """A code in groups, as it is printed: 26·15·R6F."""

    def __init__(self, code: str = "", size: float = Size.PLAIN, *, bold: bool = True) -> None:
        super().__init__()
        self._code, self._size, self._bold = code, size, bold
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(code)

    def show_code(self, code: str) -> None:
        """Show another code."""
        self._code = code
        self.setAccessibleName(code)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        font = self._font()
        return QSize(round(code_width(self._code, font)) + 2, round(QFontMetricsF(font).height()))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setPen(QColor(look().colours.ink))
        font = self._font()
        base = (self.height() + QFontMetricsF(font).capHeight()) / 2
        draw_code(painter, QPointF(0, base), elided_code(self._code, font, self.width()), font)

    def _font(self) -> QFont:
        return look().font(self._size, self._bold, codes=True)


class Digits(QWidget):
    """A number drawn as large as asked, or as large as the place it is given allows."""

    LEAST = 28.0

    def __init__(self, number: str = "", size: float = Size.HUGE) -> None:
        super().__init__()
        self._number, self._size = number, size
        self.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self.setAccessibleName(number)

    def show_number(self, number: str) -> None:
        """Show another number."""
        self._number = number
        self.setAccessibleName(number)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return self._needs(look().figures(self._size, bold=True))

    def minimumSizeHint(self) -> QSize:
        return self._needs(look().figures(min(self.LEAST, self._size), bold=True))

    def fitted(self) -> QFont:
        """The face as large as it fits now."""
        font = look().figures(self._size, bold=True)
        full = self._needs(font)
        scale = min(1.0, self.width() / full.width(), self.height() / full.height())
        font.setPixelSize(max(1, int(font.pixelSize() * scale)))
        return font

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        font = self.fitted()
        painter.setFont(font)
        painter.setPen(QColor(look().colours.ink))
        base = (self.height() + QFontMetricsF(font).capHeight()) / 2
        painter.drawText(QPointF(-font.pixelSize() * 0.04, base), self._number)

    def _needs(self, font: QFont) -> QSize:
        metrics = QFontMetricsF(font)
        return QSize(
            int(metrics.horizontalAdvance(self._number)) + 2,
            int(metrics.capHeight() + font.pixelSize() * 0.22),
        )


class BigNumber(QWidget):
    """The number that decides, with what it counts and where."""

    def __init__(
        self, number: str = "", counts: str = "", more: str = "", size: float = Size.HUGE
    ) -> None:
        super().__init__()
        self._digits = Digits(number, size)
        self._counts = Words(counts, Size.LEAD, bold=True)
        self._more = Words(more, ink=SECOND)
        beside = QVBoxLayout()
        beside.setSpacing(Gap.HAIR)
        beside.addStretch(1)
        beside.addWidget(self._counts)
        beside.addWidget(self._more)
        beside.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.PART)
        row.addWidget(self._digits)
        row.addLayout(beside, 1)
        self.show_number(number, counts, more)

    def show_number(self, number: str, counts: str, more: str = "") -> None:
        """Say another number: `1`, `skein left to sell`, `388 m · shelf 3`."""
        self._digits.show_number(number)
        self._counts.setText(counts)
        self._more.setText(more)
        self._more.setVisible(bool(more))
        self.setAccessibleName(" ".join(filter(None, (number, counts, more))))
