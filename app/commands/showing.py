"""demo: the invented studio's weeks in a new book, its papers, and one tag traced back."""

import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from app.commands.answer import Answer, Options
from app.demo import FIRST_TOKEN, NAME, Lived, live
from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.reports import trace_pdf
from app.exchange.tracing import Traced, sentences, traced
from app.lookups.book_totals import BookTotals, book_totals
from app.lookups.now import NOW
from app.lookups.things import Found
from app.problems import NotFound, Refused
from app.scanning.resolve import resolve
from app.store.book import Book
from app.store.journal import Verdict, verify
from app.store.opening import Claim
from app.store.upgrade import upgrade_book
from app.window.picture import picture_of

FOLDER = "conetrail-demo"
BOOK = "quernlow-dyeyard.book"
TAGS, TRACE = "tags-2615R6F.pdf", "trace-C0114F.pdf"
SHEETS = {"2615R6F": TAGS, "2608XKM": "tags-2608XKM.pdf"}
"""The sheets that are kept as paper: whole swing tags, and small ones on a half-used sheet."""
HELD = "C0114F"
SAID = {"in work": "in work", "piled": "counted and not tagged", "table": "on the table",
        "shelf": "on a shelf", "put by": "put by", "kit": "in kits",
        "taken": "taken for an order", "fair": "at a fair", "lost": "lost",
        "given": "given away", "discarded": "thrown away",
        "missing at a count": "missing at a count", "found, not matched": "found without a tag",
        "sent, buyer known": "sold to a buyer with a name",
        "sent, buyer not known": "sold without a name"}
"""The states in words, in the order of the work."""


@dataclass(frozen=True, slots=True)
class _Shown:
    """What the book answers."""

    totals: BookTotals
    verdict: Verdict
    tag: Traced
    held: Traced


def demo(options: Options) -> Answer:
    """Live the weeks where that was not done yet, read a tag from its sheet, follow a held cone."""
    folder = _folder(options.out)
    there = _is_there(folder / BOOK)
    with Claim(folder / BOOK):
        said = () if there else _live_into(folder)
        upgrade_book(folder / BOOK, datetime.now(UTC))
        shown = _look(folder)
    made = sorted(path.name for path in folder.iterdir()
                  if path.suffix in (".book", ".pdf", ".png"))
    lines = (*_sentences(shown), f"In {folder}: {', '.join(made)}.",
             *((f"The weeks were lived before. To live them anew, delete {folder} first.",)
               if there else ()))
    return Answer(lines, said=said, book=folder / BOOK)


def _folder(wanted: Path | None) -> Path:
    """Where it is put: as said, else here, else where the system keeps what may go."""
    folder = wanted or Path(FOLDER)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return folder
    except OSError as error:
        if wanted:
            raise Refused(f"{wanted} cannot be written in: {error.strerror}; nothing was made.",
                          "Say another folder with --out.") from error
        return Path(tempfile.mkdtemp(prefix=f"{FOLDER}-"))


def _is_there(path: Path) -> bool:
    """Whether the demo's book is there; refused where something else lies in its place."""
    if not path.exists():
        return False
    with suppress(sqlite3.Error), closing(sqlite3.connect(path)) as raw:
        first = raw.execute("SELECT token FROM deed WHERE seq = 1").fetchone()
        if first == (FIRST_TOKEN,):
            return True
    raise Refused(f"{path} is there already and no book of the demo; it was left as it is.",
                  "Say another folder with --out.")


def _live_into(folder: Path) -> tuple[str, ...]:
    """The book and its papers, all of them or none; what could not be made of them."""
    with tempfile.TemporaryDirectory(dir=folder, prefix="making-") as made:
        making = Path(made)
        _papers(making, live(making / BOOK, say=_tell))
        _tell("")
        said = _picture(making)
        for rest in (f"{BOOK}-wal", f"{BOOK}-shm"):
            (folder / rest).unlink(missing_ok=True)
        for path in sorted(path for path in making.iterdir() if path.is_file()):
            path.replace(folder / path.name)
    return said


def _tell(week: str) -> None:
    """Which week is being lived, for one who waits before a terminal."""
    if sys.stderr.isatty():
        sys.stderr.write(f"\r\033[KLiving {week} ..." if week else "\r\033[K")
        sys.stderr.flush()


def _papers(making: Path, lived: Lived) -> None:
    for sheet in lived.sheets:
        if sheet.lot in SHEETS:
            (making / SHEETS[sheet.lot]).write_bytes(sheet.pdf)
    book = Book(making / BOOK)
    try:
        (making / TRACE).write_bytes(book.ask(trace_pdf, _found(book, HELD), lived.until, "OW"))
    finally:
        book.close()


def _picture(making: Path) -> tuple[str, ...]:
    """The window on this book as a picture; else why not, and all else is there."""
    try:
        picture_of(making / BOOK, making / "window.png")
    except Refused as refusal:
        return (refusal.what,)
    return ()


def _look(folder: Path) -> _Shown:
    paper = folder / TAGS
    if not paper.exists():
        raise NotFound(f"{paper} is not there any more; the book is.",
                       f"Open it with --book, or delete {folder} to live the weeks anew.")
    marks = [found.code for page in read_back(paper.read_bytes(), stock("swing-85x55").dpi)
             for found in page]
    book = Book(folder / BOOK)
    try:
        return _Shown(book.ask(book_totals), book.ask(verify), _trace(book, marks[-1]),
                      _trace(book, HELD))
    finally:
        book.close()


def _trace(book: Book, code: str) -> Traced:
    return book.ask(traced, _found(book, code), NOW)


def _found(book: Book, code: str) -> Found:
    found = book.ask(resolve, code, False).found
    if found is None:
        raise NotFound(f"{code} is not in the book.", "It is not the demo's book.")
    return found


def _sentences(shown: _Shown) -> Iterator[str]:
    totals, tag, held = shown.totals, shown.tag, shown.held
    yield (f"{NAME} is invented; its weeks 6 to 20 of 2026 were lived through the program's own "
           "deeds, from the files in demo_data.")
    yield from _made(totals)
    yield f"Read from {TAGS}: {tag.found.shown}, {tag.found.words}."
    yield from (f"  {label}: {words}" for label, words in sentences(tag))
    yield f"Followed from the other end: cone {held.found.shown}, {held.found.words}."
    yield from (f"  {label}: {words}" for label, words in sentences(held))
    yield (f"The journal has {shown.verdict.entries} entries, and all {shown.verdict.rows} rows "
           f"agree with it; its head is {shown.verdict.head[:16]}…")


def _made(totals: BookTotals) -> Iterator[str]:
    wound = " and ".join(f"{count} {put_up}s" for put_up, count in
                         sorted(totals.wound.items(), reverse=True))
    yield (f"Taken in: {totals.cones} cones, by {totals.deliveries} deliveries and as stock of the "
           f"first day; {totals.cones_ended} are wound to their end.")
    yield (f"Wound: {wound}. Dyed: {totals.lots} lots. Printed: {totals.tags} tags, every code "
           f"read back before it counted; {totals.tags_void} are void.")
    orders = ", ".join(f"{count} {where}" for channel, where in
                       (("web", "on the web"), ("shop", "in the shop"), ("fair", "at a fair"))
                       if (count := totals.orders.get(channel, 0)))
    yield (f"Ordered and sold: {orders}; {totals.orders_open or 'none'} of it open. "
           f"{totals.customers} customers have a name; {totals.kits} kits were made.")
    where = ", ".join(
        f"{count} {words}" for state, words in SAID.items()
        if (count := sum(amount.count for (one, _), amount in totals.states.items()
                         if one == state)))
    yield (f"{totals.somewhere} skeins, minis and balls are each in one place: {where}.")
