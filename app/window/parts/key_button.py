"""An action of the bench: what it does, the key that does it, and why it cannot be done now."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPen,
    QShortcut,
)
from PySide6.QtWidgets import QAbstractButton, QSizePolicy

from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.shapes import draw_key_cap, key_cap_width

_KEYS = {"": (), "Esc": (), "Enter": ("Return", "Enter")}
_WHY_WIDTH = 260  # of the reason's lines, at a text factor of 1


class KeyButton(QAbstractButton):
    """Pressed by hand, by its key, or by Enter and Space when it has the focus.

    `strong` is for the one thing a person most likely wants next. `Enter` as key means both Enter
    keys. `Esc` is only shown: the window itself answers it. A single letter or digit is pressed by
    the bench, for a shortcut would hear it in the first character of a scan.
    """

    pad = int(Gap.LINE)
    """Room at both ends."""

    def __init__(
        self, words: str, key: str = "", *, strong: bool = False, size: float = Size.PLAIN
    ) -> None:
        super().__init__()
        self._words, self._key, self._why = words, key, ""
        self._strong, self._size = strong, size
        self._reckoned: tuple[object, QSize] = None, QSize()
        self.setAccessibleName(words)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleDescription(f"key {key}" if key else "")
        for name in () if len(key) == 1 else _KEYS.get(key, (key,)):
            QShortcut(QKeySequence(name), self, self.click)

    @property
    def key(self) -> str:
        """The key that presses it."""
        return self._key

    def say(self, words: str) -> None:
        """What it does now."""
        self._words = words
        self.setAccessibleName(words)
        self.updateGeometry()
        self.update()

    def refuse(self, why: str) -> None:
        """It cannot be done now: say why in its place."""
        self._why = why
        self.setEnabled(False)
        self._told()

    def allow(self) -> None:
        """It can be done."""
        self._why = ""
        self.setEnabled(True)
        self._told()

    def sizeHint(self) -> QSize:
        """Reckoned once for its words and the look: a layout asks for it dozens of times."""
        asked = self._words, self._why, look()
        if self._reckoned[0] != asked:
            self._reckoned = asked, self._needs()
        return self._reckoned[1]

    def _needs(self) -> QSize:
        width = self._words_width() + self._cap_width() + 2 * self.pad
        if self._why:
            metrics = QFontMetricsF(look().font(Size.SMALL))
            why = min(metrics.horizontalAdvance(self._why), look().px(_WHY_WIDTH))
            width = max(width, why + 2 * self.pad)
        width = max(TARGET, -(-round(width) // 4) * 4)
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def heightForWidth(self, width: int) -> int:
        line = QFontMetricsF(look().font(self._size)).height()
        if not self._why:
            return max(TARGET, -(-round(line + Gap.PART) // 4) * 4)
        return max(TARGET, -(-round(line + self._why_height(width) + Gap.PART) // 4) * 4)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        ink = self._draw_ground(painter, box)
        painter.setPen(ink)
        painter.setFont(look().font(self._size, bold=True))
        line = QRectF(box.adjusted(self.pad, 0, -self.pad, 0))
        if self._why:
            line.setTop(Gap.SMALL)
            line.setHeight(QFontMetricsF(painter.font()).height())
        cap = self._cap_width()
        middle = Qt.AlignmentFlag.AlignVCenter
        at = middle | (Qt.AlignmentFlag.AlignLeft if cap else Qt.AlignmentFlag.AlignHCenter)
        painter.drawText(line, at, self._words)
        if cap:
            self._draw_cap(painter, line, ink)
        if self._why:
            painter.setFont(look().font(Size.SMALL))
            painter.drawText(
                QRectF(self.pad, line.bottom(), box.width() - 2 * self.pad, box.height()),
                Qt.TextFlag.TextWordWrap,
                self._why,
            )

    def _draw_ground(self, painter: QPainter, box: QRectF) -> QColor:
        """Fill and edge for what the button is doing; answers the ink to write with."""
        colours = look().colours
        filled = (self._strong or self.isChecked()) and self.isEnabled()
        ground = colours.ink if filled else colours.in_hand
        if not self.isEnabled():
            ground = colours.foot
        elif self.isDown():
            ground = colours.second_ink if filled else colours.foot
        painter.setBrush(QColor(ground))
        edge = colours.ink if self.isEnabled() else colours.edge
        painter.setPen(QPen(QColor(edge), 1.5 if self.isEnabled() else 1))
        painter.drawRoundedRect(box.adjusted(0.75, 0.75, -0.75, -0.75), 4, 4)
        ink = QColor(colours.in_hand if filled else colours.ink)
        if self.hasFocus():
            painter.setPen(QPen(ink, 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box.adjusted(4, 4, -4, -4), 2, 2)
        return ink if self.isEnabled() else QColor(colours.second_ink)

    def _draw_cap(self, painter: QPainter, line: QRectF, ink: QColor) -> None:
        font = look().font(Size.SMALL, bold=True)
        width, height = key_cap_width(self._key, font), round(QFontMetricsF(font).height() + 6)
        box = QRectF(line.right() - width, line.center().y() - height / 2, width, height)
        draw_key_cap(painter, box, self._key, font, ink)

    def _words_width(self) -> float:
        return QFontMetricsF(look().font(self._size, bold=True)).horizontalAdvance(self._words)

    def _cap_width(self) -> float:
        if not self._key:
            return 0
        return key_cap_width(self._key, look().font(Size.SMALL, bold=True)) + Gap.LINE

    def _why_height(self, width: int) -> float:
        metrics = QFontMetricsF(look().font(Size.SMALL))
        room = QRectF(0, 0, max(1, width - 2 * self.pad), 10_000)
        return metrics.boundingRect(room, int(Qt.TextFlag.TextWordWrap), self._why).height()

    def _told(self) -> None:
        key = f"key {self._key}" if self._key else ""
        self.setAccessibleDescription(" · ".join(filter(None, (key, self._why))))
        self.updateGeometry()
        self.update()
