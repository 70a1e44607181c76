"""At the packing bench: a studio with skeins on shelves, and orders for them."""

import shutil
from datetime import timedelta

from sqlalchemy import select

from app.calculations.codes import Kind, numbered
from app.lookups.orders import open_orders
from app.lookups.skeins import named_by_tag
from app.records import DyeLot
from app.store.book import Book
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.moving import To, move
from app.work.selling import OrderIn, Wanted, know_customer, place_order
from tests.large_book import copy_of
from tests.makers import Clock, Studio
from tests.window.benches.at_work import begin_work

SLUICE, MOTH = "Sluice Keeper's Glove", "Moth at the Window"
HEADS = "Order;Date;Customer;E-mail;Product;Quantity;Lot;Price\n"


def shelf(number):
    return numbered(Kind.SHELF, number).text


def stock(studio):
    """Shelf 3: four of a lot of Sluice and two of another; shelf 4: three of Moth."""
    studio.shelves = studio.do(make_plates, Kind.SHELF, [3, 4])
    sluice, moth = 1, studio.do(name_colourway, MOTH, "#A89C97")
    studio.lots, studio.marks, studio.skeins = [], [], []
    for recipe, count, place in ((sluice, 4, 0), (sluice, 2, 0), (moth, 3, 1)):
        studio.recipe = recipe
        lot, skeins = studio.tagged(studio.cone(), count)
        studio.do(move, skeins, To("shelf", place=studio.shelves[place]))
        named = studio.book.ask(named_by_tag, skeins)
        studio.lots.append(lot)
        studio.skeins.append(skeins)
        studio.marks.append([named[skein].mark for skein in skeins])
    studio.moth = studio.book.ask(_colourway_of, studio.lots[2])


def stocked(studio_file, folder):
    """A studio with these skeins, and order 1042 for three of Sluice and one of Moth."""
    book = Book(copy_of(studio_file, folder), Clock())
    studio = Studio(book, furnished=True)
    stock(studio)
    order(studio, "1042", (SLUICE, 3, 1, None), (MOTH, 1, studio.moth, None))
    book.close()
    return studio


def again(book, kept):
    """The same studio once more, in a book of its own."""
    book.close()
    shutil.copy(kept.book.path, book.path)
    studio = Studio(book, furnished=True)
    studio.clock.now = kept.clock.now + timedelta(minutes=1)
    for name in ("shelves", "lots", "marks", "skeins", "moth"):
        setattr(studio, name, getattr(kept, name))
    return studio


def _colourway_of(connection, lot):
    return connection.execute(select(DyeLot.colourway).where(DyeLot.id == lot)).scalar_one()


def order(studio, number, *lines, name="Ada Nygård"):
    """An order of the web shop; each line is (words, count, colourway, lot)."""
    buyer = studio.do(know_customer, name) if name else None
    wanted = tuple(Wanted(what, count, lot, None, colourway, 1 if colourway else None)
                   for what, count, colourway, lot in lines)
    return studio.do(place_order, OrderIn(number, studio.clock.now, "web", wanted, buyer))


class AtPacking:
    """Someone at the packing bench, and what stands on the screen."""

    def __init__(self, at_work):
        self.at_work, self.studio = at_work, at_work.studio

    def __getattr__(self, name):
        return getattr(self.at_work, name)

    @property
    def card(self):
        """The order in hand."""
        return self.bench.in_hand.card

    @property
    def headline(self):
        """The number that decides, with its words."""
        return self.card.number.accessibleName()

    @property
    def lines(self):
        """Every line as it is read out."""
        return [row.accessibleName() for row in self.card.rows]

    @property
    def asked(self):
        """The kind of card that asks first."""
        return type(self.card.aside).__name__ if self.card.aside else ""

    @property
    def listed(self):
        """Rows of the orders that wait."""
        return [tuple(row) for row in self.bench.waiting.table._rows]

    def answer(self, words):
        """Answer what was found with these words."""
        floor = self.window.floor
        floor.findings._answer(floor.findings._open[0], words)
        self.quiet()

    def orders(self):
        """{number: (filled, wanted)} of the open orders in the book."""
        return {one.number: (one.filled, one.wanted) for one in self.studio.book.ask(open_orders)}


def at_packing(qtbot, settings, studio):
    """Open the window at the packing bench; closes it at the end."""
    for at_work in begin_work(qtbot, settings, studio, 8):
        yield AtPacking(at_work)
