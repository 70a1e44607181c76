"""Where from: what lies above the thing in hand, with a length of yarn that tells how sure."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout

from app.exchange.tracing import KIND_WORDS
from app.lookups.certainty import NOT_KNOWN
from app.lookups.origins import Origin
from app.lookups.pools import Pool
from app.window.benches.desk.desk_words import BY, origin_words
from app.window.benches.desk.looking import InHand
from app.window.look.codes_face import code_width, draw_code
from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.shapes import draw_focus
from app.window.look.yarn import Certainty, draw_yarn, straight
from app.window.parts.card import Card
from app.window.parts.words import SECOND, Words

_YARN = 112.0  # long enough to show that it is broken
_WITH_CODE = ("cone", "lot")


class OriginRow(QAbstractButton):
    """One origin: the yarn to it, what it is, how sure and by what; pressed, it is opened."""

    def __init__(self, origin: Origin, pool: Pool | None) -> None:
        super().__init__()
        self.origin = origin
        self.sure = origin_words(origin, pool)
        self.opens = origin.kind in _WITH_CODE and origin.id is not None
        self.setEnabled(self.opens)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if self.opens else Qt.FocusPolicy.NoFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(", ".join((*self._first(), self.sure, BY[origin.link.basis])))

    def sizeHint(self) -> QSize:
        width = round(_YARN) + Gap.LINE + look().grid(160)
        return QSize(width, max(TARGET, look().grid(24) + look().grid(20) + Gap.LINE))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box, colours = QRectF(self.rect()), look().colours
        if self.opens and (self.underMouse() or self.isDown()):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(colours.foot))
            painter.drawRoundedRect(box, 4, 4)
        middle = box.center().y()
        way = straight(QPointF(4, middle), QPointF(_YARN, middle))
        draw_yarn(painter, way, Certainty(self.origin.link.word))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        words = box.adjusted(_YARN + Gap.LINE, Gap.HAIR, -Gap.SMALL, -Gap.HAIR)
        self._draw_first(painter, words)
        self._draw_second(painter, words)
        if self.hasFocus():
            draw_focus(painter, box.adjusted(1, 1, -1, -1), 4)

    def _draw_first(self, painter: QPainter, box: QRectF) -> None:
        kind, code, words = self._first()
        half = QRectF(box.left(), box.top(), box.width(), box.height() / 2)
        painter.setPen(QColor(look().colours.ink))
        plain = look().font(Size.PLAIN)
        left = box.left()
        for text in (kind, code):
            if text and text == code and "·" in code:
                font = look().font(Size.PLAIN, bold=True, codes=True)
                base = half.center().y() + QFontMetricsF(font).capHeight() / 2
                draw_code(painter, QPointF(left, base), text, font)
                left += code_width(text, font) + Gap.LINE
            elif text:
                painter.setFont(plain)
                room = QRectF(left, half.top(), box.right() - left, half.height())
                painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, text)
                left += QFontMetricsF(painter.font()).horizontalAdvance(text) + Gap.SMALL
        painter.setFont(plain)
        room = QRectF(left, half.top(), max(0, box.right() - left), half.height())
        self._draw_line(painter, room, words)

    def _draw_second(self, painter: QPainter, box: QRectF) -> None:
        half = QRectF(box.left(), box.center().y(), box.width(), box.height() / 2)
        painter.setPen(QColor(look().colours.second_ink))
        painter.setFont(look().font(Size.PLAIN))
        by = BY[self.origin.link.basis]
        unknown = self.origin.link.word == NOT_KNOWN  # the first line says so
        self._draw_line(painter, half, by if unknown else f"{self.sure} · {by}")

    def _draw_line(self, painter: QPainter, room: QRectF, words: str) -> None:
        metrics = QFontMetricsF(painter.font())
        shown = metrics.elidedText(words, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, shown)

    def _first(self) -> tuple[str, str, str]:
        origin = self.origin
        kind = KIND_WORDS.get(origin.kind, origin.kind)
        words = "" if origin.kind == "load" else origin.words
        return kind, origin.code, words


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
            old.hide()
            old.deleteLater()
        self._came.setText(came)
        self._came.setVisible(bool(came))
        self.rows = [OriginRow(origin, thing.pool) for origin in thing.traced.origins]
        for row in self.rows:
            row.clicked.connect(lambda _=False, code=row.origin.code: self.opened.emit(code))
            self._rows.addWidget(row)
        known = any(origin.kind == "cone" for origin in thing.traced.origins)
        nothing = not self.rows and not came
        self._none.setText(
            "The book knows of nothing above it." if nothing
            else "No cone is known." if not known and thing.traced.origins
            and thing.found.kind != "cone" else ""
        )
        self._none.setVisible(bool(self._none.text()))
