"""Counting in one tap: a key for every number that is likely."""

from PySide6.QtCore import QEvent, QSize, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QLayout, QSizePolicy, QWidget

from app.window.look.look import Gap, Size
from app.window.parts.key_button import KeyButton


class CountPad(QWidget):
    """Keys from the least to the most; the one that was tapped stays dark. Arrow keys walk."""

    counted = Signal(int)

    def __init__(self, what: str = "", least: int = 1, most: int = 20, columns: int = 10) -> None:
        super().__init__()
        self.setAccessibleName(what)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self._columns = columns
        self._keys = QButtonGroup(self)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(Gap.HAIR)
        self._grid.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        for number in range(least, most + 1):
            key = KeyButton(str(number), size=Size.LEAD)
            key.setCheckable(True)
            key.setAccessibleName(f"{what}: {number}" if what else str(number))
            self._keys.addButton(key, number)
        self._keys.idClicked.connect(self.counted)
        self.resize(self._width_of(columns), self.height())
        self._lay()

    def count(self) -> int | None:
        """What was tapped, or nothing yet."""
        number = self._keys.checkedId()
        return None if number < 0 else number

    def minimumSizeHint(self) -> QSize:
        return QSize(self._width_of(max(1, self._columns // 2)), self.sizeHint().height())

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self._lay()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._lay()

    def _lay(self) -> None:
        """All keys in equal columns; half as many when the text is large."""
        fits = self._width_of(self._columns) <= self.width()
        columns = self._columns if fits else max(1, self._columns // 2)
        for column in range(self._columns):
            used = column < columns
            self._grid.setColumnMinimumWidth(column, self._widest() if used else 0)
            self._grid.setColumnStretch(column, int(used))
        for place, key in enumerate(self._keys.buttons()):
            self._grid.addWidget(key, place // columns, place % columns)
        self.updateGeometry()

    def _widest(self) -> int:
        return max(key.sizeHint().width() for key in self._keys.buttons())

    def _width_of(self, columns: int) -> int:
        return columns * (self._widest() + Gap.HAIR) - Gap.HAIR

    def clear(self) -> None:
        """Forget what was tapped."""
        self._keys.setExclusive(False)
        for key in self._keys.buttons():
            key.setChecked(False)
        self._keys.setExclusive(True)
