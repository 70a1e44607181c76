"""Paper on the bench: a card with what belongs together, and cards side by side."""

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QLayout,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from app.window.look.look import Gap, Size, look
from app.window.parts.words import Words

_COMFORTABLE = 300  # least width of a card beside another, at a text factor of 1


class Card(QFrame):
    """A card of paper, white for what is in hand; its title, and below it what is added."""

    def __init__(self, title: str = "", *, in_hand: bool = False) -> None:
        super().__init__()
        self.setProperty("ground", "in hand" if in_hand else "paper")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(Gap.PART, Gap.PART, Gap.PART, Gap.PART)
        self._column.setSpacing(Gap.LINE)
        self._column.addStretch(1)
        if title:
            self.add(Words(title, Size.LEAD, bold=True))
            self.setAccessibleName(title)

    def add(self, *things: QWidget | QLayout) -> None:
        """Put things on the card, one below the other; what room is left stays below them."""
        for thing in things:
            place = self._column.count() - 1
            if isinstance(thing, QWidget):
                self._column.insertWidget(place, thing)
            else:
                self._column.insertLayout(place, thing)

    def add_row(self, *widgets: QWidget | None) -> QHBoxLayout:
        """Put widgets on the card side by side; None is the place that gives way."""
        row = QHBoxLayout()
        row.setSpacing(Gap.PART)
        for widget in widgets:
            if widget is None:
                row.addStretch(1)
            else:
                row.addWidget(widget)
        self.add(row)
        return row

    def add_last(self, thing: QWidget | QLayout) -> None:
        """Put something at the foot of the card, below the room that is left."""
        if isinstance(thing, QWidget):
            self._column.addWidget(thing)
        else:
            self._column.addLayout(thing)


class SideBySide(QWidget):
    """Widgets in a row while they fit, one below the other when the text is large."""

    def __init__(self, *widgets: QWidget, shares: tuple[int, ...] = ()) -> None:
        super().__init__()
        self._widgets = widgets
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(Gap.PART)
        self._row.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        for n, widget in enumerate(widgets):
            self._row.addWidget(widget, shares[n] if shares else 1)

    def minimumSizeHint(self) -> QSize:
        widest = max(widget.minimumSizeHint().width() for widget in self._widgets)
        return QSize(widest, self._row.minimumSize().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._turn()

    def event(self, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest:
            self._turn()
        return super().event(event)

    def _turn(self) -> None:
        """Lie down or stand up, as the width allows."""
        least = look().grid(_COMFORTABLE)
        wanted = sum(max(least, widget.minimumSizeHint().width()) for widget in self._widgets)
        fits = wanted + Gap.PART * (len(self._widgets) - 1) <= self.width()
        way = QBoxLayout.Direction.LeftToRight if fits else QBoxLayout.Direction.TopToBottom
        if way is not self._row.direction():
            self._row.setDirection(way)
            self.updateGeometry()


class Actions(QWidget):
    """Keys in a row that goes on in the next line when the text is large."""

    def __init__(self, *keys: QWidget, gap: int = Gap.LINE) -> None:
        super().__init__()
        self._keys, self._gap = keys, gap
        for key in keys:
            key.setParent(self)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def minimumSizeHint(self) -> QSize:
        widest = max((key.sizeHint().width() for key in self._shown()), default=0)
        return QSize(widest, self.heightForWidth(max(widest, self.width())))

    def sizeHint(self) -> QSize:
        widths = [key.sizeHint().width() + self._gap for key in self._shown()]
        width = max(0, sum(widths) - self._gap)
        return QSize(width, self.heightForWidth(width))

    def heightForWidth(self, width: int) -> int:
        return self._place(width, move=False)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place(self.width(), move=True)

    def event(self, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._place(self.width(), move=True)
        return super().event(event)

    def _place(self, width: int, *, move: bool) -> int:
        """Put the keys in lines; answers the height of all lines."""
        x = y = line = 0
        for key in self._shown():
            needs = key.sizeHint()
            if x and x + needs.width() > width:
                x, y, line = 0, y + line + Gap.SMALL, 0
            if move:
                key.setGeometry(x, y, min(needs.width(), width), needs.height())
            x, line = x + needs.width() + self._gap, max(line, needs.height())
        return y + line

    def _shown(self) -> list[QWidget]:
        """Keys that are hidden leave no gap."""
        return [key for key in self._keys if not key.isHidden()]


def stacked(*widgets: QWidget, gap: int = Gap.LINE) -> QWidget:
    """Widgets one below the other, as one thing to put beside another."""
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(gap)
    for widget in widgets:
        column.addWidget(widget)
    column.addStretch(1)
    return holder
