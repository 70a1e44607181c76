"""A list is looked at away from the screen: what it holds, or why it cannot be read."""

from collections.abc import Callable
from pathlib import Path
from typing import Protocol, TypeVar

from app.exchange.taking_in import Said
from app.problems import Problem
from app.window.bench import Bench

S = TypeVar("S")
S_in = TypeVar("S_in", contravariant=True)


class ListShown(Protocol[S_in]):
    """A card with a list: which file, and what was said of its columns."""

    path: Path

    @property
    def said(self) -> Said: ...
    def show_seen(self, seen: S_in) -> None: ...
    def show_problem(self, problem: Problem) -> None: ...
    def begin(self) -> None: ...


def look_at(bench: Bench, card: ListShown[S], question: Callable[[], S]) -> None:
    """Ask what the list holds and show it, unless another file or column was said meanwhile."""
    path, said = card.path, card.said

    def shown(seen: S) -> None:
        if (path, said) == (card.path, card.said):
            card.show_seen(seen)
            card.begin()

    def failed(error: BaseException) -> None:
        if not isinstance(error, Problem):
            raise error
        card.show_problem(error)

    bench.around.background.read(bench, question, shown, failed)
