"""The weeks lived: the same every time, whole, and mostly plain correct work."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from sqlalchemy import select

from app.demo import FIRST_TOKEN, live
from app.lookups.recent import entries, head
from app.records import DeedRow
from app.store.book import Book
from app.store.journal import verify
from tests.small import FOLDER, live_small

ROOT = Path(__file__).parents[2]


def head_of(path: Path) -> tuple[int, str]:
    book = Book(path)
    try:
        return book.ask(head)
    finally:
        book.close()


def hash_at(path: Path, entry: int) -> str:
    book = Book(path)
    try:
        return book.ask(lambda c: c.execute(
            select(DeedRow.hash).where(DeedRow.seq == entry)).scalar_one().hex())
    finally:
        book.close()


EIGHT_WEEKS = """
import pathlib, sys
from app.demo import live

class Over(Exception):
    pass

def stop(week):
    if week.startswith("week 14 "):
        raise Over

try:
    live(pathlib.Path(sys.argv[1]), say=stop)
except Over:
    pass
"""


def test_the_same_seed_gives_the_same_book_also_with_another_clock_on_the_wall(
    demo_folder: Path, tmp_path: Path
) -> None:
    """Eight weeks of it: the chain's hash there says that every entry up to there is the same."""
    subprocess.run([sys.executable, "-c", EIGHT_WEEKS, str(tmp_path / "b.book")], check=True,
                   cwd=ROOT, env={**os.environ, "TZ": "Pacific/Auckland", "PYTHONHASHSEED": "7"})
    entry, short = head_of(tmp_path / "b.book")
    assert entry > 2_000
    assert short == hash_at(demo_folder / "quernlow-dyeyard.book", entry)


def test_another_seed_gives_other_codes_and_as_many(tmp_path: Path) -> None:
    one, other = live_small(tmp_path / "a.book"), live(tmp_path / "b.book", 7, FOLDER)
    codes = [{sheet.lot for sheet in lived.sheets} for lived in (one, other)]
    assert codes[0] != codes[1]
    assert len(codes[0]) == len(codes[1])


def test_what_a_line_expects_to_be_refused_must_be_refused(tmp_path: Path) -> None:
    paper = (FOLDER / "days.toml").read_text("utf-8")
    folder = tmp_path / "papers"
    folder.mkdir()
    (folder / "notes").symlink_to(FOLDER / "notes")
    (folder / "studio.toml").write_text((FOLDER / "studio.toml").read_text("utf-8"), "utf-8")
    without_hold = "\n".join(line for line in paper.splitlines() if '"hold"' not in line)
    (folder / "days.toml").write_text(without_hold, "utf-8")
    with pytest.raises(LookupError, match="“HOLD” was to be refused"):
        live(tmp_path / "a.book", folder=folder)


def test_each_week_is_told_as_it_begins(tmp_path: Path) -> None:
    told: list[str] = []
    live(tmp_path / "a.book", folder=FOLDER, say=told.append)
    assert told == ["week 11 of 2026", "week 14 of 2026", "week 15 of 2026", "week 16 of 2026"]


def test_the_journal_is_whole_and_most_of_it_is_plain_correct_work(demo_book: Book) -> None:
    assert demo_book.ask(verify).entries > 3_000
    rows = demo_book.ask(entries, 10_000)
    assert min(rows, key=lambda row: row.happened).person == "OW"
    strange = [row for row in rows if row.findings]
    assert 5 <= len(strange) <= len(rows) * 0.02
    assert all(row.said for row in rows)
    plain = [row for row in rows if row.happened.date().isoformat() == "2026-02-11"]
    assert len(plain) > 10
    assert not any(row.findings for row in plain)


def test_nobody_works_at_night(demo_book: Book) -> None:
    assert all(7 <= row.happened.hour < 18 for row in demo_book.ask(entries, 10_000))


def test_the_first_entry_shows_that_it_is_the_demo(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        first = connection.exec_driver_sql("SELECT token FROM deed WHERE seq = 1").scalar()
    assert first == FIRST_TOKEN
