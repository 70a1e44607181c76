"""Makes the small book of a shape, to be kept here for ever: `python -m tests.old_books.make`.

Run once at each new shape of the book, before its release; an old file is never made again.
"""

import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from alembic.script import ScriptDirectory

from app.store.book import Book
from app.store.upgrade import migrations_config, upgrade_book
from app.work.holding import clear, hold
from app.work.mixing import lose, recognise
from app.work.opening_stock import OldLot, open_lot
from app.work.studio import choose
from app.work.tagging import spoil_tags
from app.work.winding import end_cone
from tests.deeds import customer, erase, into_load, put, send
from tests.makers import Clock, Studio

FOLDER = Path(__file__).parent


def a_little_thread(studio: Studio) -> None:
    """Something of everything that a book can hold at this shape."""
    one, two = studio.cones(2)
    red, blue = studio.wind(one, 7, "red", studio.discs[0]), studio.wind(two, 5, "blue")
    pool = studio.mix(red, blue, studio.join([(one, 255_200), (two, 157_300)]))
    studio.dye(pool, pot=studio.pot)
    studio.do(into_load, "wash", [pool])
    kept, _ = studio.do(lose, pool, 1)
    seen, rest = studio.split(kept, 1, 11)
    studio.do(recognise, seen, pool, red)
    (pile, *_) = studio.finish(rest, red=6, blue=4)
    skeins = studio.tag(pile, 4)
    studio.do(spoil_tags, studio.print(pile, 1), "jammed")
    ada = studio.do(customer, "Ada Nygård")
    studio.do(send, skeins[:1], ada)
    studio.do(send, skeins[1:2])
    studio.do(put, skeins[2:3], "shelf", studio.pot)
    studio.do(erase, ada, reason="on request")
    studio.do(clear, studio.do(hold, "cone", two, "yellow ecru"), skeins[2], "lamp: clean")
    studio.tag(studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 3), 100_000), 2)
    studio.do(end_cone, two, 86_000)
    studio.do(choose, {"name": "Quernlow Dyeyard"})
    studio.undo()
    studio.check()


def make(folder: Path) -> Path:
    """A book of today's shape, named by it."""
    head = ScriptDirectory.from_config(migrations_config()).get_current_head()
    path = folder / f"{head}.book"
    if path.exists():
        raise SystemExit(f"{path.name} is there already, and stays as it is.")
    upgrade_book(path, datetime(2026, 2, 2, 8, tzinfo=UTC))
    with closing(Book(path, Clock())) as book:
        a_little_thread(Studio(book))
    with closing(sqlite3.connect(path, isolation_level=None)) as raw:  # as small as it can be
        for step in ("journal_mode = DELETE", "page_size = 1024"):
            raw.execute(f"PRAGMA {step}")
        raw.execute("VACUUM")
    return path


if __name__ == "__main__":
    made = make(FOLDER)
    print(f"{made.name}: {made.stat().st_size / 1000:.0f} kB")  # noqa: T201
