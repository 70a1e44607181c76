"""Nothing is in hand: how a thing is found, what is on hold, and the newest lots."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.lookups.holds import HoldFacts
from app.lookups.things import Found
from app.window.benches.desk.hold_row import HoldRow
from app.window.benches.desk.thing_row import ThingRows
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide, stacked
from app.window.parts.key_button import KeyButton
from app.window.parts.read_page import PHOTO_KEY
from app.window.parts.ways import ways_to_ask
from app.window.parts.words import SECOND, Words

WAYS = (
    ("26·19·K44", "a code, with or without its points"),
    ("26?9K4? teal", "a ? for what cannot be read, and what is known of the yarn"),
    ("2619", "how a code begins"),
    ("C 114", "a number from a card or a disc"),
    ("glove", "a part of a colourway or a base"),
)
NEWEST = 5


class EmptyPage(QWidget):
    """Says how to begin; the newest lots can be opened from here."""

    def __init__(self) -> None:
        super().__init__()
        self.newest = ThingRows()
        self._holds = QVBoxLayout()
        self._holds.setSpacing(Gap.SMALL)
        self.holds: list[HoldRow] = []
        self._none = Words(ink=SECOND)
        self._held, self._lots = Card("On hold"), Card("The newest lots")
        self._held.add(self._holds, self._none)
        self._lots.add(self.newest)
        self.photo_key = KeyButton("Read a photograph", PHOTO_KEY)
        sides = (stacked(_how_to(self.photo_key)),
                 stacked(self._held, self._lots, gap=Gap.PART))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(SideBySide(*sides, shares=(1, 1)))
        whole.addStretch(1)

    def show_newest(self, lots: Sequence[Found]) -> None:
        """The lots that were dyed last."""
        self.newest.show_things(lots[:NEWEST])
        self._lots.setVisible(bool(lots))

    def show_holds(self, holds: Sequence[HoldFacts]) -> None:
        """What stands still."""
        for old in self.holds:
            old.hide()
            old.deleteLater()
        self.holds = [HoldRow(hold, lifts=False) for hold in holds[:3]]
        for row in self.holds:
            self._holds.addWidget(row)
        more = len(holds) - len(self.holds)
        self._none.setText("Nothing is on hold." if not holds else f"and {more} more")
        self._none.setVisible(not holds or more > 0)


def _how_to(photo_key: KeyButton) -> Card:
    card = Card(in_hand=True)
    card.add(
        Words("Scan anything, or type what you know of it.", Size.TITLE, bold=True),
        Words("The desk follows it to its cone and to everything made of it.", ink=SECOND),
    )
    card.add(ways_to_ask(WAYS))
    card.add(Words("A list of codes can be pasted whole. A photograph of tags can be dropped here "
                   "or pasted.", ink=SECOND))
    card.add_last(Actions(photo_key))
    return card
