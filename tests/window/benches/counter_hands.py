"""The counter open in the real window on a real book, and ways to read what it shows."""

from app.calculations.codes import Kind, numbered
from app.lookups.things import of_lot
from app.work.bundling import make_plates
from app.work.moving import To, move
from tests.window.benches.at_work import AtWork, open_window


def shelf(number):
    return numbered(Kind.SHELF, number).text


class AtCounter(AtWork):
    """The shop staff at the counter."""

    @property
    def hand(self):
        return self.bench.hand

    @property
    def card(self):
        """The lot in hand."""
        assert self.hand.lot_card.isVisible()
        return self.hand.lot_card

    @property
    def left(self):
        """The number that decides, with its words."""
        return self.card.left.accessibleName()

    @property
    def rest(self):
        """Where the others are, in a sentence."""
        return self.card.rest.text().replace("\u00a0", " ")

    @property
    def rows(self):
        """What the list offers, row by row."""
        assert self.hand.listed.isVisible()
        return [row.accessibleName() for row in self.hand.listed.rows.rows]

    @property
    def basket(self):
        """What lies on the counter: (mark, price, why not)."""
        return [row.accessibleName() for row in self.hand.basket_card.rows
                if row.isVisible()]

    @property
    def question(self):
        """What is asked, or nothing."""
        asked = self.hand.question
        return "" if asked is None else asked.accessibleName()

    def fill(self, field, words):
        """Write into a field, in place of what stands there, with Enter."""
        field.line.setFocus()
        field.line.clear()
        self.type(words)
        self.press("Enter")

    def shelved(self, count, place, colour="Sluice Keeper's Glove"):
        """A lot of so many skeins on a shelf; its number, its code, and its marks."""
        studio = self.studio
        lot, skeins = studio.tagged(studio.cone(), count)
        studio.do(move, skeins, To("shelf", place=place))
        marks = {thing.id: thing.code for thing in studio.book.ask(of_lot, lot)}
        return lot, studio.code(lot), skeins, [marks[skein] for skein in skeins]


def open_counter(qtbot, settings, studio):
    """The window with the desk and the counter, and two shelves; closes it at the end."""
    settings.person, settings.station = "OW", "till"
    studio.shelves = studio.do(make_plates, Kind.SHELF, [4])
    studio.shelves += studio.do(make_plates, Kind.SHELF, [7], "the window")
    for counter in open_window(AtCounter, qtbot, settings, studio.book, (9, 10), studio):
        counter.enter(9)
        yield counter
