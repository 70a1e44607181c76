"""What a word of the command line gives back, and what it works on: the book, and new files."""

import argparse
import os
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from app import paths
from app.problems import BookUnusable, NotFound, Refused

if TYPE_CHECKING:
    from app.lookups.things import Found
    from app.store.book import Book
    from app.store.deed import By

DONE, REFUSED, WRONG_WORDS, NO_BOOK = 0, 1, 2, 3
BOOK_VARIABLE = "CONETRAIL_BOOK"

Options = argparse.Namespace


@dataclass(frozen=True, slots=True)
class Answer:
    """What goes to stdout, as lines or as data; what else must be said; how it ends."""

    lines: tuple[str, ...] = ()
    data: Mapping[str, Any] = field(default_factory=dict)
    said: tuple[str, ...] = ()
    code: int = DONE
    book: Path | None = None
    """A book that may be opened in the window now."""


def book_path(options: Options) -> Path:
    """The book that is meant: as said, as the environment says, else in the user's own folder."""
    said = getattr(options, "book", None) or os.environ.get(BOOK_VARIABLE)
    if said:
        return Path(said)
    from platformdirs import user_data_path

    return user_data_path("Conetrail", appauthor=False) / "studio.book"


@contextmanager
def the_book(options: Options) -> Iterator["Book"]:
    """The book, closed afterwards; raises BookUnusable where there is none."""
    path = book_path(options)
    if not path.is_file():
        raise BookUnusable(f"There is no book at {path}.",
                           "Say where it is with --book, or open the window: it begins one.")
    if not path.stat().st_size:
        raise BookUnusable(f"Nothing is in {path}: it is no book, or was one.",
                           "Keep it as it is, and go on from the last good copy.")
    book = _opened(path)
    try:
        yield book
    finally:
        book.close()


def one_thing(book: "Book", code: str, *wanted: str) -> "Found":
    """The one thing that is meant; raises NotFound with what it may be."""
    from app.scanning.resolve import resolve

    answer = book.ask(resolve, code, True, frozenset(wanted))
    if answer.found is None:
        listed = ", ".join(one.shown + (f" ({one.words})" if one.words else "")
                           for one in answer.choices)
        raise NotFound(answer.sentence, f"{answer.next_step} {listed}".strip())
    return answer.found


def signed(book: "Book", initials: str, station: str) -> "By":
    """Who does it, if they work here."""
    from app.lookups.studio import people
    from app.store.deed import By

    here = book.ask(people)
    found = next((one for one in here if one.upper() == initials.strip().upper()), None)
    if found is None:
        raise Refused(f"Nobody here signs as {initials.strip() or 'nothing'}; nothing was saved.",
                      f"Those who sign: {', '.join(here) or 'nobody yet'}.")
    return By(found, station)


@contextmanager
def new_file(path: Path, begins: bytes = b"%PDF") -> Iterator[Callable[[bytes], None]]:
    """Gives the hand that writes a file whole or not at all; refused before anything is done.

    A file that is there is written over only where it begins as ours do.
    """
    part = path.parent / f"{path.name}.part"

    def write(content: bytes) -> None:
        with part.open("wb") as file:
            file.write(content)
        part.replace(path)

    try:
        if path.is_dir():
            raise IsADirectoryError(None, "it is a folder")
        if path.exists() and not _begins(path, begins):
            raise FileExistsError(None, "it is there already and no file of this program")
        part.touch()
        yield write
    except OSError as error:
        raise Refused(f"{path} cannot be written: {error.strerror or error}; nothing was saved.",
                      "Say another place.") from error
    finally:
        if part.is_file():
            part.unlink()


def _begins(path: Path, begins: bytes) -> bool:
    """Whether this is a file, and not a device that never ends, that begins so."""
    if not path.is_file():
        return False
    with path.open("rb") as file:
        return file.read(len(begins)) == begins


def _opened(path: Path) -> "Book":
    """What is needed to upgrade a book is brought in only where it must be upgraded."""
    if _is_newest(path):
        from app.store.book import Book

        return Book(path)
    from app.store.opening import open_book

    return open_book(path)


def _is_newest(path: Path) -> bool:
    newest = max(script.name[:4] for script in (paths.MIGRATIONS / "versions").glob("[0-9]*.py"))
    try:
        with closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as raw:
            return raw.execute("SELECT version_num FROM alembic_version").fetchall() == [(newest,)]
    except (sqlite3.Error, UnicodeDecodeError):
        return False
