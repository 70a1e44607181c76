"""Who works at this station with which book; the book is opened after the window is there."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any, Concatenate, ParamSpec, Protocol, TypeVar

from app.calculations.moments import clock_words, moment_words
from app.lookups.now import NOW
from app.problems import NotFound

P = ParamSpec("P")
T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)


class Done(Protocol[T_co]):
    """What came of a deed."""

    @property
    def answer(self) -> T_co: ...
    @property
    def seq(self) -> int: ...
    @property
    def said(self) -> str: ...
    @property
    def findings(self) -> tuple[str, ...]: ...


class Book(Protocol):
    """As much of the studio's book as the window uses."""

    on_saved: Callable[[frozenset[str]], None]

    @property
    def path(self) -> Path: ...
    def do(self, work: Callable[..., Any], *args: Any, by: Any, **terms: Any) -> Done[Any]: ...
    def ask(self, question: Callable[..., Any], *args: Any, **more: Any) -> Any: ...
    def undo(self, seq: int, *, by: Any) -> Done[None]: ...
    def clock(self) -> datetime: ...
    def close(self) -> None: ...


@dataclass(slots=True)
class Session:
    """The open book, signed by whoever is at this station.

    While `late` is set, yesterday's white board is entered: deeds happened then, and what is asked
    as of `NOW` is asked as of then. `sign` makes the signature; `people` and `last_copy` are asked
    of the book and its folder.
    """

    book: Book
    sign: Callable[[str, str], Any]
    people: Callable[[], tuple[str, ...]]
    last_copy: Callable[[], str]
    begin: Callable[[str, str, str, str], None]  # studio, initials, name, station
    person: str = ""
    station: str = ""
    late: datetime | None = None

    @property
    def at(self) -> datetime:
        """The moment to ask for where how things stand is wanted."""
        return self.late or NOW

    def now(self) -> datetime:
        """The moment that is put down for what is entered."""
        return self.late or self.book.clock()

    def do(self, deed: Callable[..., T], *args: Any, **terms: Any) -> Done[T]:
        """Do a deed of app.work in this person's name."""
        if self.late is not None:
            terms = {"happened": self.late, **terms}
        return self.book.do(deed, *args, by=self._by(), **terms)

    def ask(self, question: Callable[Concatenate[Any, P], T], *args: P.args, **more: P.kwargs) -> T:
        """Ask a question of app.lookups."""
        asked = (self.at if arg is NOW else arg for arg in args)
        answer: T = self.book.ask(question, *asked, **more)
        return answer

    def undo(self, seq: int) -> Done[None]:
        """Take a deed back."""
        return self.book.undo(seq, by=self._by())

    def sign_on(self, initials: str) -> str:
        """The initials as the book has them, if such a person works here."""
        wanted = initials.strip().upper()
        found = next((one for one in self.people() if one.upper() == wanted), None)
        if found is None:
            raise NotFound(
                f"Nobody here signs as {wanted or 'nothing'}; the station stays as it was.",
                "Check the initials, or have the owner enrol them at the Desk.",
            )
        return found

    def _by(self) -> Any:
        return self.sign(self.person, self.station)


def open_session(path: Path) -> Session:
    """Open the book at this path; slow, so call it away from the screen.

    The store is brought in here and not on top, because the window must be there before it.
    """
    from app.lookups.studio import people
    from app.store.copies import last_copy
    from app.store.deed import By
    from app.store.opening import copy_once_a_day, open_book
    from app.work.people import enrol
    from app.work.studio import choose

    book = open_book(path)

    def begin(studio: str, initials: str, name: str, station: str) -> None:
        by = By(initials, station)
        book.do(enrol, initials, name, by=by)
        book.do(choose, {"name": studio}, by=by)

    def copied() -> str:
        copy_once_a_day(book)
        copy = last_copy(book.path)
        return _copy_words(copy.made, book.clock()) if copy else "no copy of the book yet"

    return Session(book, By, lambda: book.ask(people), copied, begin)


def _copy_words(made: datetime, now: datetime) -> str:
    today = made.astimezone().date() == now.astimezone().date()
    when = f"{clock_words(made)} today" if today else moment_words(made)
    return f"copy checked {when}"
