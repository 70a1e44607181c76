"""Sheets of tags made and kept: proven, written into the book, saved beside it as a file."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import cast

from app.calculations.codes import shown
from app.exchange.tag_printing import OnStock, Printed, PrintOrder, print_for_pile
from app.exchange.tag_reprinting import print_in_place
from app.problems import Refused
from app.store.book import Book
from app.store.deed import By
from app.window.benches.tagging.print_card import Wanted
from app.window.papers import keep
from app.window.session import Session

FOLDER = "tags"


@dataclass(frozen=True, slots=True)
class Sheets:
    """What came of a printing: where the file is, or none if it could not be saved."""

    file: Path | None
    printed: Printed


@dataclass(frozen=True, slots=True)
class Outcome:
    """A printing told as a deed is."""

    answer: Sheets
    seq: int
    said: str
    findings: tuple[str, ...]


def print_pile(session: Session, pile: int, wanted: Wanted) -> Outcome:
    """Tags for a pile."""
    order = PrintOrder(pile, wanted.plan.count, _on(wanted), wanted.version, wanted.why)
    return _kept(session, lambda book, by: print_for_pile(book, by, order, Random()))


def print_anew(session: Session, skeins: tuple[int, ...], wanted: Wanted) -> Outcome:
    """Tags in place of those that these skeins wear, or have lost."""
    return _kept(session, lambda book, by: print_in_place(book, by, skeins, _on(wanted), Random()))


def _on(wanted: Wanted) -> OnStock:
    return OnStock(wanted.plan.stock.name, wanted.plan.first)


def _kept(session: Session, make: Callable[[Book, By], Printed]) -> Outcome:
    book = cast(Book, session.book)
    printed = make(book, session.sign(session.person, session.station))
    lot = printed.places[0].code.partition("-")[0]
    findings: tuple[str, ...] = ()
    file: Path | None = None
    try:
        file = keep(book.path, FOLDER, f"{lot} entry {printed.seq}.pdf", printed.pdf)
    except Refused as refused:
        findings = (f"The sheet of {shown(lot)} could not be saved: {refused.what} "
                    "Take the printing back, make room there, and print again.",)
    return Outcome(Sheets(file, printed), printed.seq, printed.said, findings)
