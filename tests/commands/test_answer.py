"""The book that is meant, and files that are there whole or not at all."""

import sqlite3
from argparse import Namespace
from pathlib import Path

import pytest

from app.commands.answer import book_path, new_file, one_thing, signed, the_book
from app.problems import BookUnusable, NotFound, Refused
from app.store.opening import open_book
from tests.makers import Studio


def test_the_book_is_as_said_then_as_the_environment_says_then_ones_own(
    monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("CONETRAIL_BOOK", "/elsewhere/a.book")
    assert book_path(Namespace(book=Path("b.book"))) == Path("b.book")
    assert book_path(Namespace()) == Path("/elsewhere/a.book")
    monkeypatch.delenv("CONETRAIL_BOOK")
    own = book_path(Namespace())
    assert own.parts[-2:] == ("Conetrail", "studio.book")


def test_no_book_is_made_where_there_is_none(tmp_path: Path) -> None:
    with pytest.raises(BookUnusable, match="There is no book at"), the_book(
        Namespace(book=tmp_path / "a.book")
    ):
        pass
    assert list(tmp_path.iterdir()) == []


def test_what_is_no_book_is_left_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "a.book"
    path.write_text("not a book")
    with pytest.raises(BookUnusable), the_book(Namespace(book=path)):
        pass
    assert path.read_text() == "not a book"


def test_a_book_of_a_newer_program_is_not_asked(tmp_path: Path) -> None:
    path = tmp_path / "a.book"
    open_book(path).close()
    with sqlite3.connect(path) as raw:
        raw.execute("UPDATE alembic_version SET version_num = '9999'")
    raw.close()
    with pytest.raises(BookUnusable, match="newer program"), the_book(Namespace(book=path)):
        pass


def test_one_thing_is_found_or_the_choices_are_named(studio: Studio) -> None:
    studio.cones(2)
    assert one_thing(studio.book, "C00017").kind == "cone"
    with pytest.raises(NotFound) as refused:
        one_thing(studio.book, "C000")
    assert "C·0001·7 (Tarnfield 4-ply), C·0002·K" in refused.value.next_step


def test_initials_are_signed_as_the_book_has_them(studio: Studio) -> None:
    assert signed(studio.book, " ow", "desk").person == "OW"
    with pytest.raises(Refused, match="Nobody here signs as ZZ"):
        signed(studio.book, "ZZ", "desk")


def test_a_file_is_written_whole(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(b"%PDF-old")
    with new_file(path) as write:
        assert path.read_bytes() == b"%PDF-old"
        write(b"new")
    assert path.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [path]


def test_what_goes_wrong_before_it_is_written_leaves_the_old_file(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(b"%PDF-old")
    with pytest.raises(KeyError), new_file(path):
        raise KeyError
    assert path.read_bytes() == b"%PDF-old"
    assert list(tmp_path.iterdir()) == [path]


def test_a_place_that_cannot_be_written_is_refused_before_anything_is_done(
    tmp_path: Path
) -> None:
    for place in (tmp_path, tmp_path / "not there" / "a.pdf"):
        done = []
        with pytest.raises(Refused, match="cannot be written"), new_file(place):
            done.append(True)
        assert done == []


@pytest.mark.parametrize("place", ["", ".", "/", "/dev/zero"])
def test_what_is_no_place_for_a_file_is_refused(place: str) -> None:
    with pytest.raises(Refused, match="cannot be written"), new_file(Path(place)):
        pass


def test_no_paper_is_ever_written_over_a_book(tmp_path: Path) -> None:
    book = tmp_path / "own.book"
    book.write_bytes(b"SQLite format 3\0")
    with pytest.raises(Refused, match="no file of this program"), new_file(book) as write:
        write(b"%PDF-")
    assert book.read_bytes() == b"SQLite format 3\0"
