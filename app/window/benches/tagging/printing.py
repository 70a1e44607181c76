"""Sheets of tags made and kept: proven, written into the book, saved beside it as a file."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from random import Random
from typing import cast

from app.calculations.codes import shown
from app.documents.card_sheets import Card
from app.documents.stocks import Stock
from app.exchange.shelf_cards import CardSheet
from app.exchange.shelf_cards import print_card as card_printed
from app.exchange.sold_as_tags import print_sold_as as sold_as
from app.exchange.tag_printing import OnStock, Printed, PrintOrder, print_for_pile
from app.exchange.tag_reprinting import print_in_place
from app.lookups.tagging import pile_facts
from app.problems import Refused
from app.store.book import Book
from app.store.deed import By
from app.window.bench import Bench
from app.window.benches.tagging.sheet_plan import SheetPlan, Wanted, used_cells
from app.window.handing_out import hand_out
from app.window.papers import keep
from app.window.session import Session

FOLDER = "tags"


@dataclass(frozen=True, slots=True)
class Sheets:
    """What came of a printing: on which stock, and where the file is, or none if it could not be
    saved."""

    printed: Printed
    stock: Stock
    file: Path | None


@dataclass(frozen=True, slots=True)
class Outcome:
    """A printing told as a deed is."""

    answer: Sheets
    seq: int
    said: str
    findings: tuple[str, ...]


def corrected(bench: Bench, wanted: Wanted) -> Wanted:
    """What is wanted, moved as the printer for that stock needs it."""
    return replace(wanted, correction=bench.around.printers.correction(wanted.plan.stock))


def put_out_sheets(bench: Bench, made: Sheets) -> None:
    """Into the printer that takes them straight, or opened; with what gave way on them."""
    hand_out(bench.around, made.printed.pdf, made.file, made.stock,
             "; ".join(made.printed.left_out))


def print_pile(session: Session, pile: int, wanted: Wanted) -> Outcome:
    """Tags for a pile; refused where more are printed than was seen when they were asked for."""
    if wanted.printed not in (None, session.ask(pile_facts, pile).printed):
        raise Refused("Tags of this pile were printed a moment ago; no more were printed.",
                      "Look at its counts; if it needs more, print once more.")
    order = PrintOrder(pile, wanted.plan.count, _on(wanted), wanted.version, wanted.why)
    return _kept(session, wanted, lambda book, by: print_for_pile(book, by, order, Random()))


def print_anew(session: Session, skeins: tuple[int, ...], wanted: Wanted) -> Outcome:
    """Tags in place of those that these skeins wear, or have lost."""
    return _kept(session, wanted,
                 lambda book, by: print_in_place(book, by, skeins, _on(wanted), Random()))


def card_wanted(bench: Bench, on: CardSheet, seen: SheetPlan | None = None) -> Wanted:
    """One card on this sheet; `seen` is the one on the screen, whose cells may have been tapped."""
    same = seen is not None and seen.stock.name == on.stock.name
    used = seen.used if seen and same else used_cells(on.stock, on.kept)
    return corrected(bench, Wanted(SheetPlan(on.stock, used, 1)))


def print_card(
    session: Session, card_of: Callable[..., Card], of: int, wanted: Wanted, kept: frozenset[int]
) -> Outcome:
    """The card of a shelf or a lot, on a sheet of tags of which the book has `kept` as used."""
    card = session.ask(card_of, of)
    return _kept(session, wanted,
                 lambda book, by: card_printed(book, by, card, _on(wanted), kept))


def print_sold_as(
    session: Session, weight: tuple[int, int, int], wanted: Wanted
) -> Outcome:
    """A tag that says the grams a light skein is sold as, in place of its own."""
    return _kept(session, wanted, lambda book, by: sold_as(book, by, weight, _on(wanted), Random()))


def _on(wanted: Wanted) -> OnStock:
    stock = wanted.plan.stock
    return OnStock(stock.name, correction=wanted.correction, as_studio=stock,
                   used=tuple(sorted(wanted.plan.used)))


def _kept(session: Session, wanted: Wanted, make: Callable[[Book, By], Printed]) -> Outcome:
    book = cast(Book, session.book)
    printed = make(book, session.sign(session.person, session.station))
    lot = printed.places[0].code.partition("-")[0]
    findings = printed.warnings
    file: Path | None = None
    try:
        file = keep(book.path, FOLDER, f"{lot} entry {printed.seq}.pdf", printed.pdf)
    except Refused as refused:
        findings += (f"The sheet of {shown(lot)} could not be saved: {refused.what} "
                    "Take the printing back, make room there, and print again.",)
    return Outcome(Sheets(printed, wanted.plan.stock, file), printed.seq, printed.said, findings)
