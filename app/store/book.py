"""The book: the only way to write is `do`, one deed, all or nothing, with its journal entry."""

import json
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from random import Random, SystemRandom
from typing import Any, Concatenate, Generic, ParamSpec, TypeVar

from sqlalchemy import Connection, bindparam, event, select
from sqlalchemy.engine import URL, ExecutionContext
from sqlalchemy.exc import DBAPIError

from app.calculations.moments import moment_words
from app.problems import BookBusy, BookUnusable, NotFound, Problem, Refused
from app.records import DeedRow, Head, Person
from app.store.deed import JOURNALLED, By, Deed
from app.store.dialect import MODE, locks_rows, open_engine
from app.store.journal import Entry, begin_entry, write_entry
from app.store.taking_back import take_back

P = ParamSpec("P")
T = TypeVar("T")


def _now() -> datetime:
    return datetime.now(UTC)


@dataclass(frozen=True, slots=True)
class Done(Generic[T]):
    """What came of a deed: its answer, its place in the journal, what is said of it."""

    answer: T
    seq: int
    said: str
    findings: tuple[str, ...]


class Book:
    """The studio's book, open. Made once at start-up and handed down.

    `chance` draws tokens and salts; the system's own, but where a book has to be the same twice.
    """

    def __init__(
        self, path: Path, clock: Callable[[], datetime] = _now, chance: Random | None = None
    ) -> None:
        self.path = path
        self.clock = clock
        self.chance = chance or SystemRandom()
        self.engine = open_engine(URL.create("sqlite", database=str(path)))
        self.on_saved: Callable[[frozenset[str]], None] = lambda _tables: None
        event.listen(self.engine, "before_cursor_execute", _only_deeds_write)

    def do(
        self,
        work: Callable[Concatenate[Deed, P], T],
        *args: Any,
        by: By,
        happened: datetime | None = None,
        token: str | None = None,
        reason: str | None = None,
        **more: Any,
    ) -> Done[T]:
        """Run one function of app.work and save what it did, with its entry; or nothing at all.

        `happened` is when it was, if not now; the same `token` twice is a retry, not a second deed.
        """
        return self._deed(lambda deed: work(deed, *args, **more), work.__name__, by,
                          _Terms(happened, token or self._new_token(), reason, None))

    def undo(self, seq: int, *, by: By, reason: str | None = None) -> Done[None]:
        """Take a deed back: its rows are struck, what it changed is put back, nothing is removed.

        Refused when a later deed stands on it.
        """
        terms = _Terms(None, self._new_token(), reason, seq)
        return self._deed(lambda deed: take_back(deed, seq), "take_back", by, terms)

    def ask(
        self, question: Callable[Concatenate[Connection, P], T], *args: P.args, **more: P.kwargs
    ) -> T:
        """Run one function of app.lookups; nothing can be saved by it."""
        with self.reading() as connection:
            return question(connection, *args, **more)

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A steady view of the book."""
        with _plain_errors(), self.engine.connect() as connection, connection.begin():
            yield connection

    def close(self) -> None:
        """Let go of the file."""
        self.engine.dispose()

    def _deed(self, work: Callable[[Deed], T], name: str, by: By, terms: "_Terms") -> Done[T]:
        with _plain_errors(), self.engine.connect() as raw:
            connection = raw.execution_options(**{MODE: "write"})
            with connection.begin():
                again = _done_before(connection, terms.token)
                if again is not None:
                    return again
                before, deed = self._take_the_pen(connection, by, terms)
                entry = Entry(name, terms.token, terms.reason, terms.undoes)
                begin_entry(deed, entry)
                answer = work(deed)
                write_entry(deed, entry, answer, before)
        self.on_saved(frozenset(change.table for change in deed.changes))
        return Done(answer, deed.seq, deed.said, tuple(deed.findings))

    def _new_token(self) -> str:
        return self.chance.randbytes(8).hex()

    def _take_the_pen(
        self, connection: Connection, by: By, terms: "_Terms"
    ) -> tuple[bytes, Deed]:
        question = _HEAD.with_for_update() if locks_rows(connection.dialect) else _HEAD
        seq, last, before = connection.execute(question).one()
        if connection.execute(_LEFT, {"initials": by.person}).scalar():
            raise Refused(f"{by.person} left and signs nothing any more; nothing was saved.",
                          "Let another sign on here, and do it again.")
        written = self.clock()
        now = max(written, last)  # a clock that runs backwards does not turn the order of things
        happened = terms.happened or now
        if happened > now:
            raise Refused(f"{moment_words(happened)} has not come yet; nothing was saved.",
                          "Check the day and the hour.")
        deed = Deed(connection, seq + 1, happened, written, by, self.chance,
                    clock_in_doubt=written < last, late=happened < now)
        return before, deed


_HEAD = select(Head.seq, Head.written, Head.hash)
_LEFT = select(Person.left).where(Person.initials == bindparam("initials"),
                                  Person.left.is_not(None), Person.struck.is_(None))


@dataclass(frozen=True, slots=True)
class _Terms:
    happened: datetime | None
    token: str
    reason: str | None
    undoes: int | None


_TOLD_BEFORE = select(DeedRow.seq, DeedRow.body).where(DeedRow.token == bindparam("token"))


def _done_before(connection: Connection, token: str) -> Done[Any] | None:
    row = connection.execute(_TOLD_BEFORE, {"token": token}).first()
    if row is None:
        return None
    said = json.loads(row.body)
    return Done(said["answer"], row.seq, said["said"], tuple(said["findings"]))


_READING = ("SELECT", "WITH", "PRAGMA", "BEGIN", "EXPLAIN", "SET TRANSACTION READ ONLY")
_WITH_THAT_WRITES = re.compile(r"\s*WITH\b.*\b(INSERT|UPDATE|DELETE|REPLACE)\b", re.I | re.S)


def _only_deeds_write(
    _connection: Connection, _cursor: object, statement: str, _values: object,
    context: ExecutionContext | None, _many: bool,
) -> None:
    allowed = context is not None and context.execution_options.get(JOURNALLED)
    reads = statement.lstrip().upper().startswith(_READING)
    if not allowed and (not reads or _WITH_THAT_WRITES.match(statement)):
        raise RuntimeError(f"only a deed may write, and only through its own hand: {statement}")


_BUSY = ("SQLITE_BUSY", "SQLITE_LOCKED")
_WORDS = {
    "SQLITE_FULL": ("There is no room left on the disk; nothing of this was saved.",
                    "Free some room and do it again: all before it is safe."),
    "SQLITE_READONLY": ("The book may only be read here; nothing was saved.",
                        "Move the book to a folder you may write in."),
    "SQLITE_CANTOPEN": ("The book cannot be opened.", "Check that its folder is there."),
    "SQLITE_IOERR": ("The disk did not answer; nothing of this was saved.",
                     "Check the disk or the network drive, then start again."),
    "SQLITE_CORRUPT": ("The book's file is damaged.",
                       "Keep it as it is, and go on from the last good copy."),
    "SQLITE_NOTADB": ("This file is not a book.", "Choose another file."),
}
_TWICE = Refused("This was done already, perhaps at another station; nothing was saved.",
                 "Look at the thing again.")
_UNKNOWN = NotFound("Something that this names is not in the book; nothing was saved.",
                    "Scan or choose it again.")
_TOO_LARGE = Refused("A number here is larger than any the book can keep; nothing was saved.",
                     "Write it again.")


@contextmanager
def _plain_errors() -> Iterator[None]:
    try:
        yield
    except DBAPIError as error:
        unreadable = "Could not decode" in str(error.orig)
        name = getattr(error.orig, "sqlite_errorname", "")
        problem = problem_of("SQLITE_CORRUPT" if unreadable else name)
        if problem is None:
            raise
        raise problem from error
    except OverflowError as error:
        if "SQLite" not in str(error):
            raise
        raise _TOO_LARGE from error
    except UnicodeDecodeError as error:
        raise BookUnusable(*_WORDS["SQLITE_CORRUPT"]) from error


def problem_of(sqlite_name: str) -> Problem | None:
    """The sentence for an error of the file, or none where the program itself is at fault."""
    if sqlite_name.startswith(_BUSY):
        return BookBusy("The book is busy: someone else is writing. Nothing of this was saved.",
                        "Wait a moment and do it again.")
    if sqlite_name in ("SQLITE_CONSTRAINT_UNIQUE", "SQLITE_CONSTRAINT_TRIGGER"):
        return _TWICE
    if sqlite_name == "SQLITE_CONSTRAINT_FOREIGNKEY":
        return _UNKNOWN
    for name, words in _WORDS.items():
        if sqlite_name.startswith(name):
            return BookUnusable(*words)
    return None
