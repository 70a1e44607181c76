"""What was read back of tags: every one that is there or may be meant, and what to answer."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.listing import listing
from app.calculations.moments import day_words
from app.scanning.how_known import Came
from app.scanning.read_back import ReadBack, ReadRow
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.offer_rows import Offer, OfferRows
from app.window.parts.words import SECOND, Words

ONLY_A_SCAN = ("What is chosen here is kept as stated: only a scan of the tag itself proves which "
               "skein it is.")
PHOTO_KEY = "F10"
"""Reads a photograph, wherever one may be read."""
FROM_WORDS = {
    Came.PHOTO: "from a photograph", Came.GAPS: "from what could be read of the code",
    Came.TOLD: "from what was told",
}


class ReadPage(QWidget):
    """Nothing is chosen by itself; `chosen` gives the thing that a person chose."""

    chosen = Signal(object)  # Found
    copied = Signal(str)  # what was put on the clipboard

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("read back")
        self.came = Came.PHOTO
        self.sentence, self.next_step = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.rows = OfferRows()
        self.known = Words(ONLY_A_SCAN, ink=SECOND)
        self.reply = Words()
        self.reply.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.photo_key = KeyButton("Read a photograph", PHOTO_KEY)
        self.copy_key = KeyButton("Copy the answer", "F9")
        self._answer = Card("To answer whoever sent it")
        self._answer.add(self.reply, Actions(self.copy_key))
        card = Card(in_hand=True)
        card.add(self.sentence, self.next_step, self.rows, self.known)
        card.add_last(Actions(self.photo_key))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(card)
        column.addWidget(self._answer)
        column.addStretch(1)
        self.copy_key.clicked.connect(self._copy)

    def show_read(self, read: ReadBack) -> None:
        """Show what was read, the first row ready for Enter."""
        self.came = read.came
        some = any(row.found for row in read.rows)
        keys = " Arrow keys and Enter choose." if some else ""
        self.sentence.setText(read.sentence)
        self.next_step.setText(f"{read.next_step}{keys}".strip())
        self.rows.show_offers([self._offer(row) for row in read.rows])
        self.known.setVisible(some and read.came is not Came.PHOTO)  # it says so itself
        self.reply.setText(read.reply)
        self._answer.setVisible(bool(read.reply))

    def begin(self) -> None:
        """The first that can be chosen has the focus."""
        self.rows.begin()

    def choose(self, number: int) -> bool:
        """The row with this number, counted from 1; False if there is none to choose."""
        row = self.rows.rows[number - 1] if 1 <= number <= len(self.rows.rows) else None
        if row is None or not row.isEnabled():
            return False
        row.click()
        return True

    def _offer(self, row: ReadRow) -> Offer:
        if row.found is None:
            return Offer(row.text, "not known here", row.said, None, coloured=False)
        chosen = partial(self.chosen.emit, row.found)
        swatch = row.found.swatch
        if row.lot is None:
            return Offer(row.text, row.said, row.found.words, chosen, swatch=swatch)
        line = row.lot
        dyed = f"dyed {day_words(line.dyed)}" if line.dyed else "from before the book"
        have = "has" if len(row.buyers) == 1 else "have"
        buyers = f"{listing(row.buyers)} {have} some" if row.buyers else ""
        plain = row.found.kind in ("lot", "skein") and not row.found.void
        aside = " · ".join(filter(None, (dyed, "" if plain else row.said, buyers)))
        return Offer(row.text, aside, f"{line.colourway}, {line.base}", chosen,
                     f"{line.left.count} left", swatch or line.swatch)

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.reply.text())
        self.copied.emit(self.reply.text())
