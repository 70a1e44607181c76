"""What the counter shows where no lot is in hand: how to begin, choices, purchases, a shelf."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.calculations.moments import short_day
from app.lookups.put_bys import Over
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.offer_rows import Offer, OfferRows
from app.window.parts.read_page import PHOTO_KEY
from app.window.parts.ways import ways_to_ask
from app.window.parts.words import SECOND, Words

WAYS = (
    ("26·15·R6F", "a lot, or the tag of a skein"),
    ("26?9K4? teal", "a ? for what cannot be read; or drop a photograph"),
    ("glove 4-ply", "parts of a colourway and a base"),
    ("T12", "an order’s number"),
    ("Osk", "a customer, also with words of what was bought"),
    ("april glove", "what was sold in a month without a name"),
    ("S·004·R", "a shelf’s plate: what lies there"),
    ("N·005·F", "a kit’s bag: it is sold whole, or opened"),
)


class EmptyPage(QWidget):
    """What the box takes; put-bys that are over are named here."""

    def __init__(self) -> None:
        super().__init__()
        self.over: tuple[Over, ...] = ()
        self.over_words = Words("", Size.LEAD, bold=True)
        self.over_which = Words(ink=SECOND)
        self.back_key = KeyButton("Back on the shelf", "Alt+B", strong=True)
        self.find_key = KeyButton("Found without a tag", "F9")
        self.photo_key = KeyButton("Read a photograph", PHOTO_KEY)
        self._over = Card(in_hand=True)
        self._over.add(self.over_words, self.over_which, Actions(self.back_key))
        self._over.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(self._over)
        column.addWidget(self._how_to())
        column.addStretch(1)

    def show_over(self, over: Sequence[Over]) -> None:
        """Put-bys whose day is over; none hides the card."""
        self.over = tuple(over)
        many = len(over) != 1
        self.over_words.setText(
            f"{len(over)} put-by{'s' if many else ''} {'are' if many else 'is'} over: back on the "
            "shelf?")
        self.over_which.setText("; ".join(_over_words(one) for one in over[:6]) + "."
                                + (f" And {len(over) - 6} more." if len(over) > 6 else ""))
        places = {one.place for one in over}
        where = over[0].place_words if len(places) == 1 and None not in places else ""
        self.back_key.say(f"Back on {where}" if where else "Back on the shelf")
        self._over.setVisible(bool(over))

    def _how_to(self) -> Card:
        card = Card(in_hand=True)
        card.add(Words("Scan or type whatever the customer brings or knows.", Size.TITLE,
                       bold=True),
                 Words("The largest number is how many are left to sell.", ink=SECOND))
        card.add(ways_to_ask(WAYS))
        card.add(Words("To sell, scan the tags and press F5, or scan DONE.", ink=SECOND))
        card.add_last(Actions(self.find_key, self.photo_key))
        return card


class ListPage(QWidget):
    """A sentence, and rows of which one is chosen; nothing is chosen by itself."""

    def __init__(self) -> None:
        super().__init__()
        self.title, self.hint = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.rows = OfferRows()
        self.untagged_key = KeyButton("One came back without its tag", "F10")
        self._card = Card(in_hand=True)
        self._card.add(self.title, self.hint, self.rows)
        self._card.add_last(Actions(self.untagged_key))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._card)
        column.addStretch(1)

    def show_list(
        self, title: str, hint: str, offers: Sequence[Offer], *, untagged: bool = False
    ) -> None:
        """Show other rows; `untagged` offers to take back what lost its tag."""
        self.title.setText(title)
        self.hint.setText(hint)
        self.hint.setVisible(bool(hint))
        self.rows.show_offers(offers)
        self.untagged_key.setVisible(untagged)


def _over_words(one: Over) -> str:
    parts = (shown(one.mark) if one.mark else "a skein without a tag",
             f"for {one.name}" if one.name else "", f"until {short_day(one.ends)}",
             f"on {one.place_words}" if one.place_words else "")
    return " ".join(filter(None, parts))
