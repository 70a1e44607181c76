"""One station of the trail: a swing tag on a loop of thread."""

from typing import Protocol

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QAbstractButton

from app.window.look.codes_face import code_width, draw_code, elided_code
from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_hold, hold_size, swing_tag
from app.window.look.yarn import YARN, Certainty

LOOP = 24  # from the middle of the yarn to the top of the tag
_SIDE = int(Gap.SMALL)  # room beside the tag for a plate that hangs over its corner
_CUT, _HOLE = 12, 4.0


class Stop(Protocol):
    """What hangs at one place of the trail, as the lookups answer it.

    `certainty` (known, partly, one of a pool, not known) and `note` tell of the yarn that leads
    here from the stop before. `held` is `here`, `below` or empty. `link` is what opens it.
    """

    @property
    def kind(self) -> str: ...
    @property
    def code(self) -> str: ...
    @property
    def count(self) -> str: ...
    @property
    def certainty(self) -> str: ...
    @property
    def note(self) -> str: ...
    @property
    def held(self) -> str: ...
    @property
    def here(self) -> bool: ...
    @property
    def link(self) -> str: ...


def spoken(stop: Stop) -> str:
    """The stop in words, as a screen reader says it."""
    joined = "" if stop.certainty == Certainty.KNOWN else f"origin {stop.certainty}"
    hold = {"here": "on hold", "below": "below a hold"}.get(stop.held, "")
    here = "in hand" if stop.here else ""
    words = (f"{stop.kind} {stop.code}", stop.count, joined, stop.note, hold, here)
    return ", ".join(filter(None, words))


class StationTag(QAbstractButton):
    """The tag as a button; left and right, Home and End ask to walk along the yarn."""

    walked = Signal(int)  # so many tags to the right

    def __init__(self, station: Stop) -> None:
        super().__init__()
        self.station = station
        self.setAccessibleName(spoken(station))
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)

    def natural_width(self) -> int:
        """How wide the tag must be to show all of its words, on the grid."""
        words = max(
            *(QFontMetricsF(_small()).horizontalAdvance(t) for t in self._small_words()),
            code_width(self.station.code, _bold(self.station.code)),
        )
        return -(-round(words + 2 * Gap.SMALL + 4) // 4) * 4

    @staticmethod
    def height_needed() -> int:
        """From the top of the yarn to the bottom of the tag."""
        return round(YARN / 2) + LOOP + look().grid(60) + 20

    def sizeHint(self) -> QSize:
        return QSize(self.natural_width() + 2 * _SIDE, self.height_needed())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {
            int(Qt.Key.Key_Left): -1,
            int(Qt.Key.Key_Right): 1,
            int(Qt.Key.Key_Home): -1000,
            int(Qt.Key.Key_End): 1000,
        }
        if event.key() in steps:
            self.walked.emit(steps[event.key()])
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tag = QRectF(self.rect()).adjusted(_SIDE, YARN / 2 + LOOP, -_SIDE, -2)
        self._draw_tag(painter, tag)
        self._draw_loop(painter, tag)
        self._draw_words(painter, tag)
        if self.station.held:
            px = look().px(Size.SMALL)
            width, height = hold_size(px)
            plate = QRectF(self.width() - width, tag.top() - height / 2, width, height)
            draw_hold(painter, plate, px, self.station.held == "here")

    def shown_words(self) -> tuple[str, str, str]:
        """Kind, code and count as there is room for them."""
        width = self.width() - 2 * _SIDE - 2 * Gap.HAIR
        small = QFontMetricsF(_small())
        right = Qt.TextElideMode.ElideRight
        return (
            small.elidedText(self.station.kind, right, width),
            elided_code(self.station.code, _bold(self.station.code), width),
            small.elidedText(self.station.count, right, width),
        )

    def _draw_tag(self, painter: QPainter, tag: QRectF) -> None:
        colours = look().colours
        lifted = self.station.here or self.underMouse() or self.isDown()
        painter.setBrush(QColor(colours.in_hand if lifted else colours.paper))
        bold = self.station.here
        pen = QPen(QColor(colours.ink if bold else colours.edge), 2.5 if bold else 1)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.setPen(pen)
        painter.drawPolygon(swing_tag(tag.adjusted(1, 1, -1, -1), _CUT))
        if self.hasFocus():
            painter.setPen(QPen(QColor(colours.ink), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPolygon(swing_tag(tag.adjusted(5, 5, -5, -5), _CUT - 3))

    def _draw_loop(self, painter: QPainter, tag: QRectF) -> None:
        """The thread goes up behind the yarn, over it and down in front into the hole."""
        colours = look().colours
        hole = QPointF(tag.center().x(), tag.top() + 10)
        painter.setPen(QPen(QColor(colours.ink), 1.4))
        painter.setBrush(QColor(colours.surround))
        painter.drawEllipse(hole, _HOLE, _HOLE)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        top = QPointF(hole.x(), 0.8)
        for side, thread in ((-1, 1.6), (1, 1.6)):
            path = QPainterPath(hole)
            path.cubicTo(
                QPointF(hole.x() + side * 9, hole.y() - 14),
                QPointF(hole.x() + side * 6, top.y() - 1),
                top,
            )
            painter.save()
            if side < 0:
                painter.setClipRect(QRectF(0, YARN, self.width(), self.height()))
            painter.setPen(QPen(QColor(colours.ink), thread))
            painter.drawPath(path)
            painter.restore()

    def _draw_words(self, painter: QPainter, tag: QRectF) -> None:
        colours = look().colours
        kind, code, count = self.shown_words()
        first = tag.top() + 15
        line = (tag.bottom() - 4 - first) / 3
        painter.setFont(_small())
        for row, text, ink in ((0, kind, colours.second_ink), (2, count, colours.ink)):
            painter.setPen(QColor(ink))
            box = QRectF(tag.left(), first + row * line, tag.width(), line)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)
        font = _bold(self.station.code)
        base = first + 1.5 * line + QFontMetricsF(font).capHeight() / 2
        start = QPointF(tag.center().x() - code_width(code, font) / 2, base)
        painter.setPen(QColor(colours.ink))
        draw_code(painter, start, code, font)

    def _small_words(self) -> tuple[str, str]:
        return self.station.kind, self.station.count


def _small() -> QFont:
    return look().font(Size.SMALL)


def _bold(code: str) -> QFont:
    """Codes in their own face; a date or a count is words."""
    return look().font(Size.PLAIN, bold=True, codes="·" in code)
