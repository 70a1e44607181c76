"""The first view of the desk: the thing in hand with both ends of its thread."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.exchange.tracing import sentences
from app.window.benches.desk.evidence_card import EvidenceCard
from app.window.benches.desk.looking import InHand
from app.window.benches.desk.name_card import NameCard
from app.window.benches.desk.story_card import StoryCard
from app.window.benches.desk.tagless_card import TaglessCard
from app.window.benches.desk.thing_row import ThingRows
from app.window.benches.desk.where_from import WhereFrom
from app.window.benches.desk.where_to import WhereTo
from app.window.faults.fault_card import FaultCard
from app.window.look.look import Gap
from app.window.parts.card import Card, SideBySide
from app.window.parts.shelf_lots import ShelfLots
from app.window.parts.why_card import WhyCard, in_place_of
from app.window.parts.words import SECOND, Words


class ThingPage(QWidget):
    """Its name and what stops it; where from beside where to; then its story."""

    opened = Signal(str)  # code

    def __init__(self) -> None:
        super().__init__()
        self.name, self.where_from, self.where_to = NameCard(), WhereFrom(), WhereTo()
        self.story = StoryCard()
        self.why: WhyCard | FaultCard | None = None
        self.near = ThingRows()
        self._near = Card("Marks one slip away")
        self._near.add(Words("A mark has no check of its own: compare before you go on.",
                             ink=SECOND), self.near)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.PART)
        self.lies = ShelfLots()
        self._shelf = Card("What lies here")
        self._shelf.add(self.lies)
        self._ends = SideBySide(self.where_from, self.where_to)
        self.evidence, self.tagless = EvidenceCard(), TaglessCard()
        for part in (self.name, self._near, self._shelf, self._ends, self.evidence, self.tagless,
                     self.story):
            self._column.addWidget(part)
        self._column.addStretch(1)
        self.where_from.opened.connect(self.opened)
        self.where_to.opened.connect(self.opened)

    def show_thing(self, thing: InHand) -> None:
        """Show another thing, or the same as it is now."""
        said = dict(sentences(thing.traced))
        self.name.show_thing(thing)
        self.where_from.show_thing(thing, said.get("Came", ""))
        self.where_to.show_thing(thing)
        self.story.show_story(thing.story)
        self.evidence.show_said(thing.still, tagged=thing.found.kind == "skein")
        self.tagless.show_tagless(thing.tagless, skein=thing.found.kind == "skein")
        self._ends.setVisible(thing.shelf is None)
        self._shelf.setVisible(thing.shelf is not None)
        if thing.shelf is not None:
            self.lies.show_shelf(thing.shelf)

    def show_near(self, rows: bool) -> None:
        """Whether the marks one slip away are in sight."""
        self._near.setVisible(rows)

    def ask_why(self, card: WhyCard | FaultCard | None) -> None:
        """Put a question under the name, or take it away."""
        in_place_of(self._column, 1, self.why, card)
        self.why = card
        self.name.away_key.setVisible(card is None)  # its key leaves the question now
