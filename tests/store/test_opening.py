"""Opening a book: made, left alone or refused, one window a book, one copy a day."""

import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from app.problems import BookUnusable
from app.store.book import Book
from app.store.copies import copies_folder
from app.store.journal import verify
from app.store.opening import Claim, copy_once_a_day, open_book
from tests.makers import Studio

ROOT = Path(__file__).resolve().parents[2]


def in_another_process(words: str, *arguments: object) -> list[str]:
    """What another program of this computer prints."""
    done = subprocess.run(
        [sys.executable, "-c", words, *map(str, arguments)],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
        timeout=60,
    )
    return (done.stdout + done.stderr).splitlines()


@pytest.fixture
def open_to_all() -> Iterator[Path]:
    """A folder that also one who is not the owner of this run can reach."""
    with tempfile.TemporaryDirectory() as name:
        Path(name).chmod(0o755)
        yield Path(name)


OPEN_AS_NOBODY = """
import os, sys; from pathlib import Path
from app.problems import BookUnusable; from app.store.opening import open_book
if os.geteuid() == 0:
    os.setuid(65534)  # who may do everything cannot be forbidden anything
try:
    open_book(Path(sys.argv[1])).close(); print("opened")
except BookUnusable as problem:
    print(problem.what); print(problem.next_step)
"""
needs_rights = pytest.mark.skipif(os.name == "nt", reason="rights are kept otherwise there")


def test_a_book_that_is_not_there_is_made_with_its_folder(tmp_path: Path) -> None:
    with closing(open_book(tmp_path / "new" / "studio.book")) as book:
        assert book.ask(verify).entries == 0


def test_a_book_that_is_there_is_opened_as_it_is(studio: Studio) -> None:
    studio.tagged(studio.cone(), 2)
    studio.book.close()
    with closing(open_book(studio.book.path)) as book:
        assert book.ask(verify).entries == studio.last()
    assert not copies_folder(studio.book.path).exists()


@needs_rights
def test_a_book_in_a_folder_that_may_only_be_read_is_told_in_words(
    studio: Studio, open_to_all: Path
) -> None:
    path = open_to_all / "studio.book"
    studio.book.close()
    path.write_bytes(studio.book.path.read_bytes())
    open_to_all.chmod(0o555)
    path.chmod(0o444)
    told = in_another_process(OPEN_AS_NOBODY, path)
    open_to_all.chmod(0o755)
    assert told == [
        f"The book may not be written in {open_to_all}; nothing was changed.",
        "Choose a folder you may write in, or copy the book there.",
    ]


@needs_rights
def test_a_book_that_may_only_be_read_is_told_in_words(studio: Studio, open_to_all: Path) -> None:
    path = open_to_all / "studio.book"
    studio.book.close()
    before = studio.book.path.read_bytes()
    path.write_bytes(before)
    open_to_all.chmod(0o777)
    path.chmod(0o444)
    told = in_another_process(OPEN_AS_NOBODY, path)
    assert told[0] == f"The book may not be written in {open_to_all}; nothing was changed."
    assert path.read_bytes() == before
    assert [each.name for each in open_to_all.iterdir()] == ["studio.book"]


def test_a_folder_that_cannot_be_made_is_told_in_words(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder")
    with pytest.raises(BookUnusable, match="cannot be made"):
        open_book(tmp_path / "file" / "studio.book")


def test_a_picture_is_not_opened_as_a_book_and_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "picture.book"
    path.write_bytes(b"\x89PNG" * 400)
    with pytest.raises(BookUnusable, match="This file is not a book"):
        open_book(path)
    assert path.read_bytes() == b"\x89PNG" * 400
    assert [each.name for each in tmp_path.iterdir()] == ["picture.book"]


def test_a_folder_in_place_of_the_book_is_told_in_words(tmp_path: Path) -> None:
    (tmp_path / "studio.book").mkdir()
    with pytest.raises(BookUnusable, match="cannot be opened"):
        open_book(tmp_path / "studio.book")


def test_today_is_copied_once(studio: Studio) -> None:
    copy_once_a_day(studio.book)
    copy_once_a_day(studio.book)
    assert len(list(copies_folder(studio.book.path).iterdir())) == 1
    studio.clock.now += timedelta(days=1)
    copy_once_a_day(studio.book)
    assert len(list(copies_folder(studio.book.path).iterdir())) == 2


CLAIM = """
import os, sys; from pathlib import Path
from app.problems import BookUnusable; from app.store.opening import Claim
for path in sys.argv[1:]:
    try:
        kept = Claim(Path(path)); print("claimed", flush=True)
    except BookUnusable as problem:
        print(problem.what)
os._exit(9)  # and it crashes
"""


def test_a_second_window_on_one_book_is_refused_and_a_crashed_one_lets_go(book: Book) -> None:
    other = book.path.with_name("other.book")
    with Claim(book.path):
        assert in_another_process(CLAIM, book.path, other) == [
            "This book is open in another window on this computer; nothing was changed.",
            "claimed",
        ]
    with Claim(book.path), Claim(other):
        pass


def test_a_claim_where_nothing_can_be_written_is_told_in_words(tmp_path: Path) -> None:
    with pytest.raises(BookUnusable, match="cannot be written in"):
        Claim(tmp_path / "nowhere" / "studio.book")
