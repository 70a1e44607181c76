"""Counting in one tap: a key for every number that is likely."""

from PySide6.QtCore import QSize, Signal
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
        self._columns, self._laid = columns, 0
        self._keys = QButtonGroup(self)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(Gap.HAIR)
        self._grid.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        for number in range(least, most + 1):
            key = KeyButton(str(number), size=Size.LEAD)
            key.setCheckable(True)
            key.setAccessibleName(f"{number} {what}".strip())
            self._keys.addButton(key, number)
        self._keys.idClicked.connect(self.counted)
        self._lay(columns)

    def count(self) -> int | None:
        """What was tapped, or nothing yet."""
        number = self._keys.checkedId()
        return None if number < 0 else number

    def minimumSizeHint(self) -> QSize:
        narrow = max(1, self._columns // 2)
        widest = max(key.sizeHint().width() for key in self._keys.buttons())
        return QSize(narrow * (widest + Gap.HAIR), self.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        widest = max(key.sizeHint().width() for key in self._keys.buttons()) + Gap.HAIR
        fits = self._columns * widest <= self.width() + Gap.HAIR
        self._lay(self._columns if fits else max(1, self._columns // 2))

    def _lay(self, columns: int) -> None:
        """All keys in so many columns; half as many when the text is large."""
        if columns == self._laid:
            return
        self._laid = columns
        for place, key in enumerate(self._keys.buttons()):
            self._grid.addWidget(key, place // columns, place % columns)
        self.updateGeometry()

    def clear(self) -> None:
        """Forget what was tapped."""
        self._keys.setExclusive(False)
        for key in self._keys.buttons():
            key.setChecked(False)
        self._keys.setExclusive(True)
