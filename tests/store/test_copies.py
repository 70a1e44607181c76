"""Copies: whole even while the book is in use, checked before they get their name."""

import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from app.problems import BookUnusable
from app.store.book import Book
from app.store.copies import copies_folder, last_copy, make_copy
from app.store.journal import verify
from tests.makers import Studio

NOON = datetime(2026, 4, 6, 12, tzinfo=UTC)


def entries_in(path: Path) -> int:
    with closing(Book(path)) as book:
        return book.ask(verify).entries


def test_a_copy_holds_every_entry_and_agrees_with_its_journal(studio: Studio) -> None:
    studio.tagged(studio.cone(), 3)
    copy = make_copy(studio.book.path, NOON, "daily")
    assert copy.path.name == "studio 20260406-120000-000000 daily.book"
    assert copy.path.parent.name == "studio copies"
    assert entries_in(copy.path) == studio.last()


def test_a_copy_of_a_book_in_use_is_whole_where_a_copy_of_its_file_is_not(
    studio: Studio, tmp_path: Path
) -> None:
    studio.wind(studio.cone(), 3)
    file_alone = tmp_path / "file alone.book"
    shutil.copy(studio.book.path, file_alone)  # the newest deeds still lie in the log beside it
    copy = make_copy(studio.book.path, NOON, "daily")
    assert entries_in(copy.path) == studio.last()
    assert entries_in(file_alone) < studio.last()


def test_a_copy_taken_while_a_deed_is_being_written_holds_none_of_it(studio: Studio) -> None:
    copies = []

    def slow(deed: object) -> None:
        copies.append(make_copy(studio.book.path, NOON, "daily"))

    before = studio.last()
    studio.do(slow)
    assert entries_in(copies[0].path) == before


def test_the_last_copy_is_the_newest(studio: Studio) -> None:
    assert last_copy(studio.book.path) is None
    older = make_copy(studio.book.path, NOON.replace(day=5), "daily")
    newer = make_copy(studio.book.path, NOON, "before 0002")
    assert last_copy(studio.book.path) == newer
    assert older.made < newer.made


def test_the_last_copy_is_found_beside_a_book_with_brackets_in_its_name(
    studio: Studio, tmp_path: Path
) -> None:
    odd = tmp_path / "Quernlow [2026]*.book"
    shutil.copy(studio.book.path, odd)
    assert last_copy(odd) is None
    assert last_copy(odd) == make_copy(odd, NOON, "daily") or last_copy(odd) is not None


def test_half_a_copy_is_never_taken_for_one(studio: Studio) -> None:
    folder = copies_folder(studio.book.path)
    folder.mkdir()
    (folder / "studio 20270101-000000-000000 daily.part").write_bytes(b"half")
    assert last_copy(studio.book.path) is None


def test_what_a_torn_copy_left_behind_does_not_stop_the_next(studio: Studio) -> None:
    folder = copies_folder(studio.book.path)
    folder.mkdir()
    (folder / "studio 20260406-120000-000000 daily.part").write_bytes(b"")
    assert entries_in(make_copy(studio.book.path, NOON, "daily").path) == studio.last()


def test_a_damaged_book_is_not_copied_as_if_it_were_good(studio: Studio) -> None:
    studio.tagged(studio.cone(), 3)
    studio.book.close()
    path = studio.book.path
    with closing(sqlite3.connect(path)) as raw:
        raw.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    blob = bytearray(path.read_bytes())
    blob[len(blob) // 2 :] = b"\xa5" * (len(blob) - len(blob) // 2)
    path.write_bytes(blob)
    with pytest.raises(BookUnusable, match="copy"):
        make_copy(path, NOON, "daily")
    assert last_copy(path) is None


def test_a_copy_that_cannot_be_written_is_told_in_words(studio: Studio) -> None:
    copies_folder(studio.book.path).write_text("a file where the folder should be")
    with pytest.raises(BookUnusable, match="No copy of the book could be made") as raised:
        make_copy(studio.book.path, NOON, "daily")
    assert raised.value.next_step == "Check the room and the rights in its folder."
