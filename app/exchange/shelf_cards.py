"""The cards of shelves and lots out of the book, each on the next free cell of a sheet of tags."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.documents.card_sheets import Card, card_sheets
from app.documents.shelf_cards import LotCard, ShelfCard
from app.documents.stocks import Stock
from app.documents.tags import Place
from app.exchange.tag_printing import OnStock, Printed
from app.exchange.tag_stocks import tag_stocks
from app.lookups.lot_lines import lot_line
from app.lookups.printed import sheets_used
from app.lookups.tagging import pile_facts
from app.problems import Refused
from app.records import BaseVersion, Plate
from app.store.book import Book
from app.store.deed import By, Deed
from app.store.dialect import among, listed
from app.work.tagging import keep_sheet

ROOM_FOR_A_CARD = ("swing", "card")
"""The layouts of stocks that are large enough for one."""


@dataclass(frozen=True, slots=True)
class CardSheet:
    """What the next card is printed on; `kept` are the used cells as the book has them."""

    stock: Stock
    kept: frozenset[int]


def card_sheet(connection: Connection, seen: str = "") -> CardSheet:
    """The stock that is `seen` on the screen, else the one printed on last, else the first of the
    list: the first of them that has room for a card.

    Raises Refused where the studio uses no such stock.
    """
    used = sheets_used(connection)
    fitting = {one.name: one for one in tag_stocks(connection).in_use
               if one.layout in ROOM_FOR_A_CARD}
    if not fitting:
        raise Refused("No stock in use has room for a card; nothing was printed.",
                      "Take swing tags out again at the Desk, Tags.")
    name = next(one for one in (seen, *used, *fitting) if one in fitting)
    return CardSheet(fitting[name], used.get(name, frozenset()))


def shelf_card(connection: Connection, shelf: int) -> ShelfCard:
    """The card of a shelf: what its plate calls it."""
    row = connection.execute(select(Plate.code, Plate.words).where(Plate.id == shelf)).one()
    return ShelfCard(code=row.code, name=row.words or "")


def lot_card(connection: Connection, pile: int) -> LotCard:
    """The card of the lot that lies in this pile; of two compositions it names both.

    Raises Refused where its lot is not known.
    """
    facts = pile_facts(connection, pile)
    lot = facts.lots[0] if len(facts.lots) == 1 else None
    if lot is None or facts.lot is None:
        raise Refused("Which lot lies in this pile is not known; no card was printed.",
                      "Scan the disc of a pile of one lot.")
    line = lot_line(connection, lot)
    fibres = connection.execute(
        select(BaseVersion.fibre).where(among(BaseVersion.id, "ids")).order_by(BaseVersion.id),
        {"ids": listed(facts.versions)}).scalars()
    return LotCard(code=facts.lot, colourway=line.colourway, base=line.base,
                   fibre=", or ".join(dict.fromkeys(fibres)),
                   dyed=f"dyed {day_words(line.dyed)}" if line.dyed else "")


def print_card(
    book: Book, by: By, card: Card, on: OnStock, kept: frozenset[int]
) -> Printed:
    """One card, drawn and proven, and only then is its cell used.

    Refused where something was printed on that stock since `kept` was asked: a key pressed twice
    prints one card.
    """
    stock = on.described
    ((_, cell),) = stock.places(1, on.first_cell, on.used)
    pdf = card_sheets([card], stock, first_cell=cell, correction=on.correction)
    used = {*on.used, cell}
    done = book.do(use_cell, card.code, on.stock, kept, sorted(used), by=by)
    return Printed(pdf, (), (Place(card.code, 1, cell),), stock.cells - len(used), (), done.said,
                   done.seq)


def use_cell(
    deed: Deed, code: str, stock: str, kept: frozenset[int], used: Sequence[int]
) -> None:
    """A card leaves the printer: these cells of the sheet in hand are used now."""
    if sheets_used(deed.connection).get(stock, frozenset()) != kept:
        raise Refused("This sheet was printed on a moment ago; no card was printed.",
                      "Press the key once more if another card is wanted.")
    keep_sheet(deed, stock, used, of_tags=False)
    deed.say(f"printed the card of {shown(code)}")
