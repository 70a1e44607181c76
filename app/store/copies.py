"""Copies of the book that are whole even while it is in use."""

import sqlite3
from dataclasses import dataclass
from datetime import UTC, datetime
from glob import escape
from pathlib import Path

from app.problems import BookUnusable


@dataclass(frozen=True, slots=True)
class Copy:
    """A copy that passed its check."""

    path: Path
    made: datetime


def copies_folder(book: Path) -> Path:
    """Where the copies of this book lie: a folder beside it."""
    return book.with_name(f"{book.stem} copies")


def make_copy(book: Path, at: datetime, reason: str) -> Copy:
    """Copy the book, check the copy, and only then give it its name."""
    folder = copies_folder(book)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        stamp = at.astimezone(UTC).strftime("%Y%m%d-%H%M%S-%f")
        target = folder / f"{book.stem} {stamp} {reason}.book"
        part = target.with_suffix(".part")
        verdict = _copied(book, part)
        if verdict == "ok":
            part.replace(target)
    except (OSError, sqlite3.Error) as error:
        raise BookUnusable(f"No copy of the book could be made: {error}.",
                           "Check the room and the rights in its folder.") from error
    if verdict != "ok":
        raise BookUnusable(f"The copy did not pass its check: {verdict}.",
                           "Keep this file as it is, and go on from the last good copy.")
    return Copy(target, at)


def last_copy(book: Path) -> Copy | None:
    """The newest copy of this book, or none."""
    found = sorted(copies_folder(book).glob(f"{escape(book.stem)} ????????-??????-?????? *.book"))
    if not found:
        return None
    stamp = found[-1].name.removeprefix(f"{book.stem} ")[:22]
    return Copy(found[-1], datetime.strptime(stamp, "%Y%m%d-%H%M%S-%f").replace(tzinfo=UTC))


def _copied(book: Path, part: Path) -> str:
    source, copy = sqlite3.connect(book), sqlite3.connect(part)
    try:
        source.backup(copy)
        return str(copy.execute("PRAGMA integrity_check").fetchone()[0])
    finally:
        copy.close()
        source.close()
