"""A small book of every shape that was ever released opens today, with all it held."""

import shutil
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import select

from app.lookups.destinations import destinations
from app.lookups.things import by_code
from app.lookups.trail import trail
from app.records import Cone, DyeLot
from app.store.book import Book
from app.store.copies import copies_folder
from app.store.journal import verify
from app.store.opening import open_book
from tests.makers import Clock, Studio
from tests.old_books.make import FOLDER, make
from tests.sums import adds_up

OLD_BOOKS = sorted(FOLDER.glob("*.book"))


@pytest.mark.parametrize("old", OLD_BOOKS, ids=lambda path: path.stem)
def test_an_old_book_opens_with_all_it_held(old: Path, tmp_path: Path) -> None:
    path = tmp_path / "old.book"
    shutil.copy(old, path)
    with closing(open_book(path)) as book:
        verdict = book.ask(verify)
        assert verdict.entries > 30
        assert verdict.removed == ("name of customer 1 was removed",)
        book.ask(adds_up)
        cones = book.ask(lambda c: c.execute(select(Cone.id).order_by(Cone.id)).scalars().all())
        assert [book.ask(destinations, "cone", cone).count for cone in cones[:2]] == [9, 6]
        code = book.ask(lambda c: c.execute(select(DyeLot.code).limit(1)).scalar_one())
        found = book.ask(by_code, code or "")
        assert found is not None
        assert len(book.ask(trail, found, Clock().now)) >= 6
    newest = old == OLD_BOOKS[-1]
    assert copies_folder(path).exists() is not newest


@pytest.mark.parametrize("old", OLD_BOOKS, ids=lambda path: path.stem)
def test_work_goes_on_in_an_old_book(old: Path, tmp_path: Path) -> None:
    path = tmp_path / "old.book"
    shutil.copy(old, path)
    open_book(path).close()
    with closing(Book(path, Clock(datetime(2031, 1, 6, tzinfo=UTC)))) as book:
        studio = Studio(book, furnished=True)
        studio.tagged(studio.cone(), 3)
        studio.undo()
        studio.check()


def test_an_old_book_is_small_enough_to_be_kept() -> None:
    assert OLD_BOOKS
    assert all(old.stat().st_size <= 450_000 for old in OLD_BOOKS)


def test_the_book_of_todays_shape_can_be_made_again(tmp_path: Path) -> None:
    assert make(tmp_path).stem == OLD_BOOKS[-1].stem
