"""The branching trail of a thing to look at, to move about in and to walk along by the keys."""

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleEvent,
    QColor,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QGestureEvent, QPinchGesture, QSizePolicy, QWidget

from app.documents.trail_picture import Picture, SetTag
from app.window.look.look import look
from app.window.parts.trail_drawing import draw_trail
from app.window.parts.trail_walk import column_step, yarn_step

_LEAST, _MOST, _STEP = 0.25, 3.0, 1.25
_READABLE = 0.8  # below this the whole is not shown at once, but what is in the middle
_SLIP = 6  # pixels the mouse may move while it clicks
_ROOM = 32


class TrailGraph(QWidget):
    """Arrow keys go along the yarn, Enter opens, + and - come nearer and go back."""

    opened = Signal(str)  # the key of a station
    folded = Signal(str)
    walked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("the trail as a picture")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMouseTracking(True)
        self.setMinimumSize(240, 240)
        self.grabGesture(Qt.GestureType.PinchGesture)
        self.picture: Picture | None = None
        self.at = ""
        self.zoom = 1.0
        self._words: Mapping[str, str] = {}
        self._origin = QPointF()  # the point of the picture at the widget's upper left
        self._pressed: QPointF | None = None
        self._dragged = False
        self._placed = False

    def show_picture(self, picture: Picture, middle: str, words: Mapping[str, str]) -> None:
        """Show another picture; the station walked to keeps its place if it is still there."""
        kept = self._tag(self.at) if self.picture is not None else None
        where = self._on_screen(kept) if kept is not None else None
        self.picture, self._words = picture, words
        there = self._tag(self.at)
        if where is not None and there is not None:
            self._origin += self._on_screen(there) - where
            self._walk_to(there)
        else:
            self.at = middle
            self._placed = False
            self.begin()
        self.update()

    def clear(self) -> None:
        """Nothing is shown, and nothing of it kept."""
        self.picture, self.at, self._placed = None, "", False

    def begin(self) -> None:
        """The whole where it can be read, else what is in the middle."""
        if self.picture is None or self.width() < 2 * _ROOM:
            return
        self._placed = True
        whole = self._fits()
        self.zoom = min(1.0, whole) if whole >= _READABLE else 1.0
        tag = self._tag(self.at)
        if whole >= _READABLE or tag is None:
            self._centre(QPointF(self.picture.width / 2, self.picture.height / 2))
        else:
            self._centre(_middle(tag))
            self._leave_nothing_bare(self.picture)
        self._keep_in_sight()
        self._tell()

    def go_to(self, key: str) -> None:
        """The ring is on this station, and it is in the middle of what is seen."""
        tag = self._tag(key)
        if tag is not None and self.picture is not None:
            self._centre(_middle(tag))
            self._leave_nothing_bare(self.picture)
            self._walk_to(tag)

    def whole(self) -> None:
        """All of it at once."""
        if self.picture is not None:
            self.zoom = max(_LEAST / 2, min(1.0, self._fits()))
            self._centre(QPointF(self.picture.width / 2, self.picture.height / 2))

    def nearer(self, steps: int = 1, at: QPointF | None = None) -> None:
        """Larger, or smaller for steps below zero, about a point of the widget."""
        self._zoom_by(_STEP ** steps, at)

    def sizeHint(self) -> QSize:
        return QSize(640, 240)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(look().colours.surround))
        if self.picture is None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        scale = self._scale()
        painter.scale(scale, scale)
        painter.translate(-self._origin)
        seen = QRectF(self._origin.x(), self._origin.y(),
                      self.width() / scale, self.height() / scale)
        draw_trail(painter, self.picture, seen, self.at if self.hasFocus() else "")

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if not self._placed:
            self.begin()
        else:
            self._keep_in_sight()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, picture = event.key(), self.picture
        if picture is None or not self._pressed_key(picture, key):
            super().keyPressEvent(event)

    def _pressed_key(self, picture: Picture, key: int) -> bool:
        tag = self._tag(self.at)
        if tag is None:
            return False
        if key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self._walk_to(yarn_step(picture, tag, 1 if key == Qt.Key.Key_Right else -1))
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self._walk_to(column_step(picture, tag, 1 if key == Qt.Key.Key_Down else -1))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit(self.at)
        elif key == Qt.Key.Key_Backspace:
            self.folded.emit(self.at)
        elif key == Qt.Key.Key_Home:
            self._walk_to(next(one for one in picture.tags if one.tag.here))
        else:
            return False
        return True

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._pressed, self._dragged = event.position(), False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        here = event.position()
        if self._pressed is None:
            over = self._under(here) is not None
            self.setCursor(Qt.CursorShape.PointingHandCursor if over else
                           Qt.CursorShape.OpenHandCursor)
            return
        moved = here - self._pressed
        if self._dragged or moved.manhattanLength() > _SLIP:
            self._dragged = True
            self._pressed = here
            self._move(moved)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        tag = self._under(event.position())
        if self._pressed is not None and not self._dragged and tag is not None:
            self._walk_to(tag)
            self.opened.emit(tag.tag.key)
        self._pressed = None

    def wheelEvent(self, event: QWheelEvent) -> None:
        turned = event.angleDelta()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier or turned.x():
            self._move(QPointF(turned.x() or turned.y(), 0))
        else:
            self._zoom_by(_STEP ** (turned.y() / 120), event.position())
        event.accept()

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QNativeGestureEvent):
            if event.gestureType() is Qt.NativeGestureType.ZoomNativeGesture:
                self._zoom_by(1 + event.value(), event.position())
                return True
        elif isinstance(event, QGestureEvent):
            pinch = event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(pinch, QPinchGesture):
                self._zoom_by(pinch.scaleFactor(), QPointF(self.mapFromGlobal(
                    pinch.centerPoint().toPoint())))
                return True
        return super().event(event)

    def _walk_to(self, tag: SetTag | None) -> None:
        if tag is None:
            return
        self.at = tag.tag.key
        self._keep_in_sight()
        self._tell()
        self.walked.emit(self.at)

    def _tell(self) -> None:
        """What a screen reader says of the station that is walked to."""
        self.setAccessibleDescription(self._words.get(self.at, ""))
        QAccessible.updateAccessibility(
            QAccessibleEvent(self, QAccessible.Event.DescriptionChanged))
        self.update()

    def _keep_in_sight(self) -> None:
        """Move no further than the station that is walked to needs."""
        tag, scale = self._tag(self.at), self._scale()
        if tag is None:
            return
        for length, start, size, axis in ((self.width(), tag.x, tag.width, "x"),
                                          (self.height(), tag.y, tag.height, "y")):
            room = min(_ROOM / scale, max(0.0, (length / scale - size) / 2))
            least, most = start + size + room - length / scale, start - room
            value = min(max(getattr(self._origin, axis)(), least), most)
            getattr(self._origin, f"set{axis.upper()}")(value)
        self.update()

    def _zoom_by(self, factor: float, at: QPointF | None = None) -> None:
        tag = self._tag(self.at)
        if at is None:
            at = self._on_screen(tag) if tag is not None else QPointF(
                self.width() / 2, self.height() / 2)
        held = self._origin + at / self._scale()
        self.zoom = min(_MOST, max(_LEAST, self.zoom * factor))
        self._origin = held - at / self._scale()
        self.update()

    def _move(self, pixels: QPointF) -> None:
        self._origin -= pixels / self._scale()
        self.update()

    def _centre(self, point: QPointF) -> None:
        self._origin = point - QPointF(self.width(), self.height()) / (2 * self._scale())
        self.update()

    def _leave_nothing_bare(self, picture: Picture) -> None:
        """What is longer than its place fills it."""
        scale = self._scale()
        for axis, whole, seen in (("x", picture.width, self.width() / scale),
                                  ("y", picture.height, self.height() / scale)):
            at = getattr(self._origin, axis)()
            start = max(0.0, min(at, whole - seen)) if whole > seen else (whole - seen) / 2
            getattr(self._origin, f"set{axis.upper()}")(start)

    def _fits(self) -> float:
        """The zoom at which all of it is seen."""
        assert self.picture is not None
        text = look().text
        return min(self.width() / (self.picture.width * text),
                   self.height() / (self.picture.height * text))

    def _scale(self) -> float:
        return self.zoom * look().text

    def _tag(self, key: str) -> SetTag | None:
        tags = self.picture.tags if self.picture is not None else ()
        return next((one for one in tags if one.tag.key == key), None)

    def _on_screen(self, tag: SetTag) -> QPointF:
        return (_middle(tag) - self._origin) * self._scale()

    def _under(self, point: QPointF) -> SetTag | None:
        there = self._origin + point / self._scale()
        tags = self.picture.tags if self.picture is not None else ()
        return next((one for one in tags if QRectF(
            one.x, one.y, one.width, one.height).contains(there)), None)


def _middle(tag: SetTag) -> QPointF:
    return QPointF(tag.x + tag.width / 2, tag.y + tag.height / 2)
