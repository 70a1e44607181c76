"""demo: the invented studio's days in a new book, its papers, and one tag traced back."""

import sqlite3
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path

from app.commands.answer import Answer, Options
from app.demo import FIRST_TOKEN, NAME, Lived, live
from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.reports import trace_pdf
from app.exchange.tracing import Traced, sentences, traced
from app.problems import Refused
from app.scanning.resolve import resolve
from app.store.book import Book
from app.store.journal import Verdict, verify
from app.store.opening import Claim
from app.window.picture import picture_of

FOLDER = "conetrail-demo"
BOOK = "quernlow-dyeyard.book"


@dataclass(frozen=True, slots=True)
class _Shown:
    """What came of the demo."""

    lived: Lived
    verdict: Verdict
    tag: Traced
    read_from: str
    held: Traced


def demo(options: Options) -> Answer:
    """Live the days, write the papers, read a tag back from its sheet, follow the held cone."""
    folder = _folder(options.out)
    _may_be_replaced(folder / BOOK)
    with Claim(folder / BOOK), tempfile.TemporaryDirectory(dir=folder, prefix="making-") as made:
        making = Path(made)
        shown = _show(making)
        said = _picture(making)
        files = sorted(path for path in making.iterdir() if path.is_file())
        for rest in (f"{BOOK}-wal", f"{BOOK}-shm"):
            (folder / rest).unlink(missing_ok=True)
        for path in files:
            path.replace(folder / path.name)
    lines = (*_sentences(shown), f"In {folder}: {', '.join(path.name for path in files)}.")
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


def _may_be_replaced(path: Path) -> None:
    """Only a book that the demo itself made, and in which nothing was done since."""
    if not path.exists():
        return
    with suppress(sqlite3.Error), closing(sqlite3.connect(path)) as raw:
        first, last = raw.execute(
            "SELECT (SELECT token FROM deed WHERE seq = 1), token FROM deed ORDER BY seq DESC"
        ).fetchone() or ("", "")
        if first == FIRST_TOKEN and last.startswith(FIRST_TOKEN.partition("-")[0]):
            return
        if first == FIRST_TOKEN:
            raise Refused(f"{path} is the demo's book, and work was done in it; it was left as "
                          "it is.", "Say another folder with --out.")
    raise Refused(f"{path} is there already and no book of the demo; it was left as it is.",
                  "Say another folder with --out.")


def _show(making: Path) -> _Shown:
    lived = live(making / BOOK)
    names = Counter[str]()
    for sheet in lived.sheets:
        names[sheet.lot] += 1
        again = f"-{names[sheet.lot]}" if names[sheet.lot] > 1 else ""
        (making / f"tags-{sheet.lot}{again}.pdf").write_bytes(sheet.pdf)
    last = max(lived.sheets, key=lambda sheet: sheet.count)
    marks = [found.code for page in read_back(last.pdf, stock(last.stock).dpi) for found in page]
    book = Book(making / BOOK, lived.clock)
    try:
        tag = book.ask(resolve, marks[0], False).found
        cone = book.ask(resolve, lived.held, False).found
        assert tag is not None
        assert cone is not None
        at = book.clock()
        shown = _Shown(lived, book.ask(verify), book.ask(traced, tag, at), f"tags-{last.lot}.pdf",
                       book.ask(traced, cone, at))
    finally:
        book.close()
    (making / f"trace-{cone.code}.pdf").write_bytes(trace_pdf(shown.held, "OW"))
    return shown


def _picture(making: Path) -> tuple[str, ...]:
    """The window on this book as a picture; else why not, and all else is there."""
    try:
        picture_of(making / BOOK, making / "window.png")
    except Refused as refusal:
        return (refusal.what,)
    return ()


def _sentences(shown: _Shown) -> Iterator[str]:
    lived, tag, held = shown.lived, shown.tag, shown.held
    printed = sum(sheet.count for sheet in lived.sheets)
    yield (f"{NAME} is invented; its days were lived through the program's own deeds, from the "
           "files in demo_data.")
    yield (f"Taken in: {lived.cones} cones of {lived.notes} delivery notes. Wound: {lived.skeins} "
           f"skeins, one of them over a join. Dyed: {len(lived.lots)} lots.")
    yield (f"Printed: {printed} tags on {len(lived.sheets)} sheets, every code read back before "
           f"it counted; {lived.tied_on} hang on their skeins.")
    yield f"Warned {len(lived.findings)} times. Refused: {' '.join(lived.refusals)}"
    yield f"Read from {shown.read_from}: {tag.found.shown}, {tag.found.words}."
    yield from (f"  {label}: {words}" for label, words in sentences(tag))
    yield f"Followed from the other end: cone {held.found.shown}, {held.found.words}."
    yield from (f"  {label}: {words}" for label, words in sentences(held))
    yield (f"The journal has {shown.verdict.entries} entries, and all {shown.verdict.rows} rows "
           f"agree with it; its head is {shown.verdict.head[:16]}…")
