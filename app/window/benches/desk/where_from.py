"""Where from: what lies above the thing in hand, with a length of yarn that tells how sure."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from app.exchange.tracing import KIND_WORDS
from app.lookups.certainty import NOT_KNOWN
from app.lookups.origins import Origin
from app.window.benches.desk.desk_words import BY, origin_words
from app.window.benches.desk.looking import InHand
from app.window.look.look import Gap, look
from app.window.look.shapes import draw_focus
from app.window.look.yarn import Certainty, draw_yarn, straight
from app.window.parts.card import Card
from app.window.parts.words import SECOND, CodeWords, OneLine, Words

_WITH_CODE = ("cone", "lot")


class _Yarn(QWidget):
    """A length of the yarn, long enough to show that it is broken."""

    def __init__(self, certainty: Certainty) -> None:
        super().__init__()
        self._certainty = certainty
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(112, 32)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = self.height() / 2
        way = straight(QPointF(4, middle), QPointF(self.width(), middle))
        draw_yarn(painter, way, self._certainty)


class OriginRow(QAbstractButton):
    """One origin: the yarn to it, what it is, how sure and by what; pressed, it is opened."""

    def __init__(self, origin: Origin, thing: InHand) -> None:
        super().__init__()
        self.origin = origin
        singly = thing.singly.get((origin.kind, origin.id))
        self.sure = origin_words(origin, thing.pool, singly)
        self.certainty = Certainty(self.sure.partition(":")[0])
        self.opens = origin.kind in _WITH_CODE and origin.id is not None
        self.setEnabled(self.opens)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if self.opens else Qt.FocusPolicy.NoFocus)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        kind = KIND_WORDS.get(origin.kind, origin.kind)
        words = "" if origin.kind == "load" else origin.words
        by = BY[origin.link.basis]
        self.setAccessibleName(", ".join((kind, origin.code, words, self.sure, by)))
        column = QVBoxLayout()
        column.setSpacing(0)
        column.addLayout(_first_line(kind, origin.code, words))
        unknown = origin.link.word == NOT_KNOWN  # the first line says so
        column.addWidget(Words(by if unknown else f"{self.sure} · {by}", ink=SECOND))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, Gap.HAIR, Gap.SMALL, Gap.HAIR)
        row.setSpacing(Gap.LINE)
        row.addWidget(_Yarn(self.certainty))
        row.addLayout(column, 1)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        if self.opens and (self.underMouse() or self.isDown()):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(look().colours.foot))
            painter.drawRoundedRect(box, 4, 4)
        if self.hasFocus():
            draw_focus(painter, box, 4)


def _first_line(kind: str, code: str, words: str) -> QHBoxLayout:
    line = QHBoxLayout()
    line.setSpacing(Gap.SMALL)
    line.addWidget(Words(kind, wrap=False))
    if "·" in code:
        line.addWidget(CodeWords(code))
    else:
        words = ", ".join(filter(None, (code, words)))
    line.addWidget(OneLine(words), 1)
    return line


class WhereFrom(Card):
    """All origins, surest first; `opened` gives the code of the one that was pressed."""

    opened = Signal(str)

    def __init__(self) -> None:
        super().__init__("Where from")
        self.rows: list[OriginRow] = []
        self._came, self._none = Words(ink=SECOND), Words(ink=SECOND)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Gap.HAIR)
        self.add(self._came, self._rows, self._none)

    def show_thing(self, thing: InHand, came: str) -> None:
        """Show what lies above another thing."""
        for old in self.rows:
            self._rows.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._came.setText(came)
        self._came.setVisible(bool(came))
        self.rows = [OriginRow(origin, thing) for origin in thing.traced.origins]
        for row in self.rows:
            row.clicked.connect(lambda _=False, code=row.origin.code: self.opened.emit(code))
            self._rows.addWidget(row)
        self._none.setText(_nothing(thing, came))
        self._none.setVisible(bool(self._none.text()))


def _nothing(thing: InHand, came: str) -> str:
    """What is to be said where an origin is missing."""
    origins = thing.traced.origins
    if not origins:
        return "" if came else "The book knows of nothing above it."
    no_cone = all(origin.kind != "cone" for origin in origins)
    return "No cone is known." if no_cone and thing.found.kind != "cone" else ""
