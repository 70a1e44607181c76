"""Open a book: one window a book, upgraded, with its daily copy."""

import os
import sys
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import IO

from app.problems import BookUnusable
from app.store.book import Book
from app.store.copies import last_copy, make_copy
from app.store.upgrade import upgrade_book


def open_book(path: Path) -> Book:
    """The book at this path, created if it is not there, brought to the newest shape."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise BookUnusable(f"The folder {path.parent} cannot be made.",
                           "Choose a folder you may write in.") from error
    if not os.access(path.parent, os.W_OK) or (path.exists() and not os.access(path, os.W_OK)):
        raise BookUnusable(f"The book may not be written in {path.parent}; nothing was changed.",
                           "Choose a folder you may write in, or copy the book there.")
    upgrade_book(path, datetime.now(UTC))
    return Book(path)


def copy_once_a_day(book: Book) -> None:
    """Make today's checked copy, unless there is one."""
    last, now = last_copy(book.path), book.clock()
    if last is None or last.made.date() < now.date():
        make_copy(book.path, now, "daily")


class Claim:
    """Held by the one window that works on a book; a crash lets go of it."""

    def __init__(self, book: Path) -> None:
        claim = book.with_name(f"{book.name}.claim")
        try:
            self._file: IO[str] = claim.open("a+", encoding="utf-8")
        except OSError as error:
            raise BookUnusable(f"The folder {book.parent} cannot be written in.",
                               "Choose a folder you may write in.") from error
        try:
            _lock(self._file)
        except OSError as error:
            self._file.close()
            raise BookUnusable(
                "This book is open in another window on this computer; nothing was changed.",
                "Go on in that window, or close it first.",
            ) from error

    def __enter__(self) -> "Claim":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._file.close()


if sys.platform == "win32":  # pragma: no cover
    import msvcrt

    def _lock(file: IO[str]) -> None:
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _lock(file: IO[str]) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
