"""A list is looked at away from the screen: what it holds, or why it cannot be read."""

from collections.abc import Callable

from app.problems import Problem
from app.window.bench import Bench
from app.window.parts.list_in import L, ListIn


def look_at(bench: Bench, card: ListIn[L], question: Callable[[], L]) -> None:
    """Ask what the list holds and show it, unless another file or column was said meanwhile."""
    asked = card.path, card.said

    def is_asked_still() -> bool:
        return asked == (card.path, card.said)

    def shown(seen: L) -> None:
        if is_asked_still():
            card.show_seen(seen)
            card.begin()

    def failed(error: BaseException) -> None:
        if not isinstance(error, Problem):
            raise error
        if is_asked_still():
            card.show_problem(error)

    bench.around.background.read(bench, question, shown, failed)
