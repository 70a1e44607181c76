"""A deed takes as long after years as on the first day: counted in steps of the database."""

import sqlite3
from collections.abc import Callable
from cProfile import Profile
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event

from app.lookups.recall import recall_list
from app.lookups.ties import tie_of
from app.store.book import Book
from app.work.tagging import apply_tag
from tests.large_book import analysed, copy_of
from tests.makers import Clock, Studio

SKEINS = 3_120
EVERY = 20
"""Steps of the database between two looks at it."""


class Counted(Studio):
    """A studio whose database's steps are counted."""

    def __init__(self, book: Book) -> None:
        self.steps = 0

        @event.listens_for(book.engine, "connect")
        def _count(raw: sqlite3.Connection, _record: object) -> None:
            raw.set_progress_handler(self.step, EVERY)
        super().__init__(book, furnished=True)

    def step(self) -> int:
        self.steps += EVERY
        return 0

    def taken_by(self, work: Callable[[], Any]) -> int:
        before = self.steps
        work()
        return self.steps - before


def a_day(studio: Counted) -> dict[str, int]:
    """The steps that each deed of a skein's way takes, and taking each back."""
    steps: dict[str, int] = {}

    def count(name: str, work: Callable[[], Any]) -> Any:
        answer: list[Any] = []
        steps[name] = studio.taken_by(lambda: answer.append(work()))
        return answer[0]

    def twice(name: str, work: Callable[[], Any]) -> Any:
        count(name, work)
        count(f"{name}, taken back", studio.undo)
        return work()
    cone = twice("receive", studio.cone)
    count("next tie", lambda: studio.book.ask(tie_of, cone, 1))
    group = twice("wind", lambda: studio.wind(cone, 5, disc=studio.discs[0]))
    other = studio.wind(cone, 3)
    pool = twice("mix", lambda: studio.mix(group, other))
    twice("dye", lambda: studio.dye(pool, pot=studio.pot))
    part, _ = twice("split", lambda: studio.split(pool, 6, 2))
    (pile,) = twice("count", lambda: studio.finish(part, red=6))
    tags = twice("print", lambda: studio.print(pile, 6))
    twice("tie a tag on", lambda: studio.do(apply_tag, tags[0]))
    return steps


@pytest.fixture(scope="module")
def days(
    studio_file: Path, tmp_path_factory: pytest.TempPathFactory
) -> list[dict[str, int]]:
    """A day in a book of 26 skeins, and one in a book of more than a hundred times as many."""
    found = []
    for skeins in (26, SKEINS):
        book = Book(copy_of(studio_file, tmp_path_factory.mktemp(f"day{skeins}")), Clock())
        found.append(a_day(analysed(Counted(book), skeins)))  # type: ignore[arg-type]
        book.close()
    return found


def test_no_deed_takes_more_steps_in_a_book_a_hundred_times_as_large(
    days: list[dict[str, int]]
) -> None:
    small, large = days
    assert {name: (steps, large[name]) for name, steps in small.items()
            if large[name] > 1.5 * steps + 3_000} == {}
    assert len(small) == 17


def test_a_recall_of_all_there_is_takes_twice_the_work_for_twice_the_skeins(
    studio_file: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Counted in calls of functions: with the square of the skeins a large recall took minutes."""
    calls = []
    for skeins in (520, 1_040):
        book = Book(copy_of(studio_file, tmp_path_factory.mktemp(f"all{skeins}")), Clock())
        analysed(Studio(book, furnished=True), skeins)
        profile = Profile()
        listed = profile.runcall(book.ask, recall_list, "supplier_lot", 1)
        assert listed.count >= skeins
        calls.append(sum(one.callcount for one in profile.getstats()))
        book.close()
    assert calls[1] < 2.3 * calls[0]
