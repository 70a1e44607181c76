"""How long the picture of a trail takes in a large book: python -m tests.graph_speed [SKEINS]

Run by hand: a book of 500,000 takes some minutes to make. The largest fan is a filling of a jar
that reached 10,000 skeins; beside it what the Desk's own page asks of a cone and a lot. Its story
is left out: only this book has one deed of half a million rows, which takes a minute to read.
"""

import gc
import sqlite3
import sys
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any

from PySide6.QtWidgets import QApplication

from app.exchange.tracing import traced
from app.exchange.trail_pictures import drawn
from app.lookups.destinations import destinations
from app.lookups.graph_web import Centre
from app.lookups.now import NOW
from app.lookups.things import Found, lot_found
from app.records import Bath, Fill, Jar, Weighing, WeighLine
from app.store.book import Book
from app.store.deed import Deed
from app.store.upgrade import upgrade_book
from app.window.parts.trail_graph import TrailGraph
from tests.large_book import SIZES, analysed
from tests.makers import Clock, Studio

FAN, OF_A_LOT, TURNS = 12_600, sum(SIZES) * 2 / 3, 5  # two cones make three lots


def weighed_out_of_one_jar(deed: Deed, lots: list[int]) -> list[tuple[int, int]]:
    """A bath for each lot, all weighed out of one filling of one jar: (lot, bath)."""
    (jar,) = deed.add_all([Jar(code="J001X", dye="navy N1")])
    (fill,) = deed.add_all([Fill(jar=jar, number=1, mg=25_000_000, strength_permille=1000)])
    weighings = deed.add_all([Weighing(purpose="bath", recipe_version=1) for _ in lots])
    deed.add_all([WeighLine(weighing=one, fill=fill, kind="taken", mg=5000, taken=deed.seq)
                  for one in weighings])
    baths = deed.add_all([Bath(plate=None, recipe_version=1, weighing=one) for one in weighings])
    deed.say("weighed out")
    return list(zip(lots, baths, strict=True))


def large_book(path: Path, skeins: int) -> Book:
    """So many skeins, `FAN` of them dyed out of one jar."""
    upgrade_book(path, datetime(2026, 2, 2, 8, tzinfo=UTC))
    book = Book(path, Clock())
    studio = analysed(Studio(book), skeins)
    with closing(sqlite3.connect(path)) as raw:
        lots = [lot for (lot,) in raw.execute(
            "SELECT id FROM dye_lot ORDER BY id DESC LIMIT ?", [round(FAN / OF_A_LOT)])]
    baths = studio.do(weighed_out_of_one_jar, lots)
    book.close()
    with closing(sqlite3.connect(path)) as raw, raw:
        raw.executemany("UPDATE dye_lot SET bath = ? WHERE id = ?",
                        [(bath, lot) for lot, bath in baths])
        raw.execute("ANALYZE")
    return book


def timed(work: Callable[[], Any]) -> tuple[float, float, Any]:
    """The first and the median of some turns in milliseconds, and the answer."""
    took, answer = [], None
    for _ in range(TURNS):
        began = perf_counter()
        answer = work()
        took.append(1000 * (perf_counter() - began))
    return took[0], median(took), answer


def tell(name: str, work: Callable[[], Any]) -> Any:
    """One line of the table."""
    first, usual, answer = timed(work)
    sys.stdout.write(f"{name:<54}{first:>10.1f}{usual:>10.1f} ms\n")
    return answer


def main(skeins: int) -> None:
    """Make the book, then ask and draw some times and print the first and the median."""
    app = QApplication.instance() or QApplication([])
    gc.freeze()  # as the window does
    with TemporaryDirectory() as folder:
        began = perf_counter()
        book = large_book(Path(folder) / "large.book", skeins)
        sys.stdout.write(f"{skeins:,} skeins, made in {perf_counter() - began:.0f} s; "
                         f"first, median of {TURNS}\n")
        cone = book.ask(lambda c: c.exec_driver_sql("SELECT max(id) FROM cone").scalar())
        lot = book.ask(lambda c: c.exec_driver_sql("SELECT max(id) FROM dye_lot").scalar())
        fill = book.ask(lambda c: c.exec_driver_sql("SELECT max(id) FROM fill").scalar())
        for name, centre in (("cone", Centre("cone", (cone,))), ("lot", Centre("lot", (lot,))),
                             ("jar fill", Centre("fill", (fill,)))):
            one = tell(f"picture of a {name}: asked, folded and laid out",
                       lambda centre=centre: book.ask(drawn, centre, NOW))
            widget = TrailGraph()
            widget.resize(1060, 520)
            widget.show_picture(one.picture, "here", {})
            tell(f"  {len(one.picture.tags)} stations of {one.graph.together.of:,} skeins: painted",
                 widget.grab)
            widget.whole()
            tell("  the whole of it: painted", widget.grab)
        for name, found in (
            ("cone", Found("cone", cone, "X1", "")),
            ("lot", book.ask(lot_found, lot)),
        ):
            tell(f"the Desk's page of a {name}: its trail and states",
                 lambda found=found: book.ask(traced, found, NOW))
            tell(f"the Desk's page of a {name}: its skeins",
                 lambda found=found: book.ask(destinations, found.kind, found.id))
    del app


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 500_000)
