"""A book that keeps nothing, so that the window can be tried without one."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from app.window.places import Place
from app.window.session import Session


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a deed."""

    answer: Any
    seq: int
    said: str
    findings: tuple[str, ...] = ()


class _NoRows(tuple):
    def all(self):
        return []


@dataclass
class FakeBook:
    """Numbers the deeds it is given and forgets them."""

    done: list[tuple[str, tuple[Any, ...], Any]] = field(default_factory=list)
    undone: list[int] = field(default_factory=list)
    on_saved: Callable[[frozenset[str]], None] = lambda kinds: None
    closed: bool = False

    def do(self, work, *args, by, **terms):
        answer = work(self, *args)
        self.done.append((work.__name__, args, by))
        self.on_saved(frozenset({"yarn"}))
        said, findings = answer if isinstance(answer, tuple) else (str(answer), ())
        return Outcome(answer, len(self.done), said, findings)

    def ask(self, question, *args, **more):
        return question(self, *args, **more)

    def execute(self, *_question):
        """Nothing stands in it, whatever is looked up."""
        return _NoRows()

    def undo(self, seq, *, by):
        self.undone.append(seq)
        return Outcome(None, len(self.done) + 1, "")

    def clock(self):
        return datetime(2026, 4, 14, 9, tzinfo=UTC)

    def close(self):
        self.closed = True


def a_session(book=None, people=("SK", "DA"), person="SK", station="till"):
    """A session at the till, signed on as SK."""
    people = list(people)

    def begin(studio, initials, name, station):
        people.append(initials)

    return Session(
        book or FakeBook(),
        lambda who, where: (who, where),
        lambda: tuple(people),
        lambda: "copy checked 09:58 today",
        begin,
        person,
        station,
    )


def a_place(bench_class, title="Counter", **changes):
    """A place whose bench is at hand and need not be brought in."""

    class Here(Place):
        def bench_class(self):
            return bench_class

    from app.window.look.icons import Icon

    facts = {"icon": Icon.COUNTER, "number": 9, "bench": "", "finds": True} | changes
    return Here(title, **facts)
