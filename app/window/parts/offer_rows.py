"""Rows to choose from: a swatch, a code or name, what is said of it, and what is left of it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.window.look.look import TARGET, Gap, Size
from app.window.parts.row_button import RowButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import CodeWords, OneLine, Words

SWATCH = QSize(64, TARGET)
AT_ONCE = 16  # rows: more than a screen shows


@dataclass(frozen=True, slots=True)
class Offer:
    """What one row says, and what is done when it is chosen."""

    head: str
    aside: str
    below: str
    chosen: Callable[[], None] | None
    right: str = ""
    swatch: str | None = None
    coloured: bool = True
    """Whether there is yarn to be seen at all; a customer has none."""
    is_code: bool = True


class OfferRow(RowButton):
    """One row as a key as wide as its place; arrow keys walk, Enter chooses."""

    def __init__(self, offer: Offer) -> None:
        super().__init__()
        self.offer = offer
        self.setAccessibleName(", ".join(filter(None, (
            offer.head, offer.aside, offer.below, offer.right))))
        self.setEnabled(offer.chosen is not None)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus if offer.chosen else Qt.FocusPolicy.NoFocus)
        row = self.row
        row.setContentsMargins(Gap.SMALL, Gap.SMALL, Gap.LINE, Gap.SMALL)
        if offer.coloured:
            zones = [Zone(offer.swatch)] if offer.swatch else []
            row.addWidget(Swatch(zones, offer.head, SWATCH, "no swatch chosen"))
        row.addLayout(_words(offer), 1)
        if offer.right:
            row.addWidget(Words(offer.right, Size.LEAD, bold=True, wrap=False))


class OfferRows(QWidget):
    """Rows below each other; of many the first stand there at once, the others as it goes on."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[OfferRow] = []
        self._to_come: list[Offer] = []
        self._next = QTimer(self)
        self._next.setSingleShot(True)
        self._next.timeout.connect(self._show_some)
        self._below = QVBoxLayout(self)
        self._below.setContentsMargins(0, 0, 0, 0)
        self._begin_sheet()

    def show_offers(self, offers: Sequence[Offer]) -> None:
        """Show other rows."""
        self._sheet.hide()
        self._below.removeWidget(self._sheet)
        self._sheet.deleteLater()
        self._begin_sheet()
        self.rows, self._to_come = [], list(offers)
        self._show_some()

    def _begin_sheet(self) -> None:
        """A new sheet for rows; an old one goes with all of its rows, for one by one is slow."""
        self._sheet = QWidget(self)
        self._column = QVBoxLayout(self._sheet)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._below.addWidget(self._sheet)
        self._sheet.show()

    def _show_some(self) -> None:
        for offer in self._to_come[:AT_ONCE]:
            row = OfferRow(offer)
            if offer.chosen is not None:
                row.clicked.connect(partial(_choose, offer.chosen))
            self.rows.append(row)
            self._column.addWidget(row)
            row.show()  # now, so that it can have the focus
        del self._to_come[:AT_ONCE]
        if self._to_come:
            self._next.start(0)

    def begin(self) -> None:
        """The first row that can be chosen has the focus: Enter chooses it, arrows go on."""
        first = next((row for row in self.rows if row.isEnabled()), None)
        if first is not None:
            first.setFocus()


def _choose(chosen: Callable[[], None], _checked: bool = False) -> None:
    chosen()


def _words(offer: Offer) -> QVBoxLayout:
    words = QVBoxLayout()
    words.setSpacing(0)
    first = QHBoxLayout()
    first.setSpacing(Gap.LINE)
    first.addWidget(CodeWords(offer.head) if offer.is_code else OneLine(offer.head, bold=True))
    first.addWidget(OneLine(offer.aside, second=True), 1)
    words.addStretch(1)
    words.addLayout(first)
    if offer.below:
        words.addWidget(OneLine(offer.below))
    words.addStretch(1)
    return words
