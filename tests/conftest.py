"""Fixtures for all tests."""

import fcntl
import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import closing, redirect_stdout
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from app.__main__ import main
from app.store.book import Book
from app.store.upgrade import upgrade_book
from tests.makers import Clock, Studio

if sys.platform == "linux" and not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


# How long a thing takes is measured by tests of its own: a busy machine must turn no other red.
settings.register_profile(
    "conetrail", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("conetrail")


@pytest.fixture(scope="session")
def empty_book_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book brought up by the real migrations, once a run."""
    path = tmp_path_factory.mktemp("empty") / "empty.book"
    upgrade_book(path, datetime(2026, 2, 2, 8, tzinfo=UTC))
    return path


@pytest.fixture
def book(empty_book_file: Path, tmp_path: Path) -> Iterator[Book]:
    """A fresh copy of the empty book, with a clock that a test may set."""
    path = tmp_path / "studio.book"
    shutil.copy(empty_book_file, path)
    opened = Book(path, Clock())
    yield opened
    opened.close()


@pytest.fixture(scope="session")
def studio_file(empty_book_file: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The book of a furnished studio, once a run."""
    path = tmp_path_factory.mktemp("studio") / "studio.book"
    shutil.copy(empty_book_file, path)
    with closing(Book(path, Clock())) as opened:
        Studio(opened)
    return path


@pytest.fixture
def studio(book: Book, studio_file: Path) -> Studio:
    """A book with a base, a colourway, discs and a pot, and short ways to do the usual."""
    book.close()
    shutil.copy(studio_file, book.path)
    return Studio(book, furnished=True)


@pytest.fixture(scope="session")
def demo_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that the demo leaves, with what it said; lived once for all workers of a run."""
    base = tmp_path_factory.getbasetemp()
    folder = (base.parent if os.environ.get("PYTEST_XDIST_WORKER") else base) / "lived-demo"
    folder.mkdir(exist_ok=True)
    with (folder / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        said = folder / "said.txt"
        if not said.exists():
            with (folder / "saying.txt").open("w", encoding="utf-8") as out, redirect_stdout(out):
                assert main(["demo", "--out", str(folder)]) == 0
            (folder / "saying.txt").rename(said)
    return folder


@pytest.fixture
def demo_book(demo_folder: Path) -> Iterator[Book]:
    """The demo's book, to be asked only."""
    clock = Clock(datetime(2026, 5, 15, 12, tzinfo=UTC))
    opened = Book(demo_folder / "quernlow-dyeyard.book", clock)
    yield opened
    opened.close()
