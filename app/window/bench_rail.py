"""The rail at the left: the work places in the order of the work."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QShortcut,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.window.look.icons import draw_icon
from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.shapes import draw_focus
from app.window.places import Place


class BenchRail(QScrollArea):
    """One key a bench, by hand, by arrow keys, by Alt and its number; `chosen` tells which."""

    chosen = Signal(object)  # Place

    def __init__(self, places: Sequence[Place]) -> None:
        super().__init__()
        self.setAccessibleName("benches")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        self.keys = [RailKey(place, self) for place in places]
        inside = QWidget()
        inside.setProperty("ground", "surround")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, Gap.PART, 0, Gap.PART)
        column.setSpacing(0)
        for key in self.keys:
            if key.place.apart:
                column.addSpacing(Gap.LINE)
            column.addWidget(key)
            key.clicked.connect(partial(self.chosen.emit, key.place))
            QShortcut(QKeySequence(key.place.key), self, key.click)
        column.addStretch(1)
        self.setWidget(inside)
        self.mark(None)

    def mark(self, place: Place | None) -> None:
        """Show where one is."""
        for key in self.keys:
            key.setChecked(key.place is place)
        self._let_one_be_tabbed_to(next((k for k in self.keys if k.isChecked()), self.keys[0]))

    def walk(self, start: "RailKey", steps: int) -> None:
        """Move the focus along the rail, to its ends at most."""
        number = max(0, min(self.keys.index(start) + steps, len(self.keys) - 1))
        self._let_one_be_tabbed_to(self.keys[number])
        self.keys[number].setFocus(Qt.FocusReason.OtherFocusReason)
        self.ensureWidgetVisible(self.keys[number], 0, int(Gap.BENCH))

    def sizeHint(self) -> QSize:
        return QSize(max(key.sizeHint().width() for key in self.keys), 200)

    def minimumSizeHint(self) -> QSize:
        return QSize(self.sizeHint().width(), 100)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self.updateGeometry()

    def _let_one_be_tabbed_to(self, chosen: "RailKey") -> None:
        for key in self.keys:
            strong = key is chosen
            key.setFocusPolicy(Qt.FocusPolicy.StrongFocus if strong else Qt.FocusPolicy.ClickFocus)


class RailKey(QAbstractButton):
    """One work place: its picture, its name and its number."""

    def __init__(self, place: Place, rail: BenchRail) -> None:
        super().__init__()
        self.place, self._rail = place, rail
        self.setCheckable(True)
        self.setAccessibleName(place.title)
        self.setAccessibleDescription(f"key {place.key}")
        self.setToolTip(f"{place.title}: {place.key}")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def nextCheckState(self) -> None:
        """The window says which is open; a key does not mark itself."""

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(look().font(Size.PLAIN, bold=True))
        name = metrics.horizontalAdvance(self.place.title)
        number = QFontMetricsF(look().font(Size.SMALL)).horizontalAdvance("0")
        width = Gap.PART + look().grid(24) + Gap.LINE + name + Gap.LINE + number + Gap.LINE
        return QSize(-(-round(width) // 4) * 4, max(TARGET, look().grid(28)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {int(Qt.Key.Key_Up): -1, int(Qt.Key.Key_Down): 1}
        if event.key() in steps:
            self._rail.walk(self, steps[event.key()])
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = look().colours
        box = QRectF(self.rect())
        if self.isChecked():
            painter.fillRect(box, QColor(colours.paper))
        elif self.underMouse():
            painter.fillRect(box, QColor(colours.foot))
        side = look().grid(24)
        picture = QRectF(Gap.PART, (box.height() - side) / 2, side, side)
        ink = colours.ink if self.isEnabled() else colours.surround_ink
        draw_icon(painter, picture, self.place.icon, ink)
        painter.setPen(QColor(ink))
        painter.setFont(look().font(Size.PLAIN, bold=self.isChecked()))
        words = box.adjusted(picture.right() + Gap.LINE, 0, 0, 0)
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter, self.place.title)
        grey = colours.second_ink if self.isChecked() else colours.surround_ink
        painter.setPen(QColor(grey))
        painter.setFont(look().font(Size.SMALL))
        right = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
        painter.drawText(box.adjusted(0, 0, -Gap.LINE, 0), right, self.place.sign)
        if self.hasFocus():
            draw_focus(painter, box.adjusted(2, 2, -2, -2), 4)
