"""The page of shades at a bench: the book is asked, away from the screen."""

import pytest

from app.lookups.things import lot_found
from app.window.bench import Bench
from app.window.shades.showing import Showing
from tests.calculations.shades import TEAL
from tests.lookups.cards import dyed, read_lot


class Asks(Bench):
    """A bench that answers at once."""

    def __init__(self, book):
        super().__init__(None)
        self.book = book

    def ask(self, show, question, *args, **more):
        show(self.book.ask(question, *args, **more))


@pytest.fixture
def showing(qtbot, studio):
    bench = Asks(studio.book)
    qtbot.addWidget(bench)
    return Showing(bench)


def test_it_shows_the_colourway_of_a_lot_and_sorts_it_anew(showing, studio):
    lots = [dyed(studio, 1) for _ in range(3)]
    for lot, name in zip(lots, "PQR", strict=True):
        read_lot(studio, lot, TEAL[name].lab)
    showing.open_of(studio.book.ask(lot_found, lots[1]))
    page = showing.page
    assert (page.shades.lot, len(page.shades.groups)) == (lots[1], 2)
    page.limits[1.5].click()
    assert len(page.shades.groups) == 1
    showing.count(3)
    assert page.meant == 2
    showing.count(9)
    assert page.meant == 2
