"""Scans in the order they came: what is asked of the book for one is answered before the next."""

from collections import deque
from collections.abc import Callable
from typing import Any, Concatenate, ParamSpec, TypeVar

from app.problems import Problem
from app.window.bench import Bench

P = ParamSpec("P")
T = TypeVar("T")


class InTurn:
    """The questions and actions of one bench, one after another."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._waiting: deque[Callable[[], None]] = deque()
        self._asking = False

    def ask(
        self,
        show: Callable[[T], None],
        question: Callable[Concatenate[Any, P], T],
        *args: P.args,
        **more: P.kwargs,
    ) -> None:
        """Ask a question of app.lookups when all before is answered; `show` gets the answer."""
        session = self._bench.around.session
        self._waiting.append(lambda: self._ask(show, lambda: session.ask(question, *args, **more)))
        self._go_on()

    def then(self, action: Callable[[], None]) -> None:
        """Do this when all that came before is answered; at once where nothing did."""
        self._waiting.append(action)
        self._go_on()

    def _go_on(self) -> None:
        while self._waiting and not self._asking:
            self._waiting.popleft()()

    def _ask(self, show: Callable[[T], None], job: Callable[[], T]) -> None:
        self._asking = True

        def answered(answer: T) -> None:
            self._asking = False
            show(answer)
            self._go_on()

        def failed(error: BaseException) -> None:
            self._asking = False
            if not isinstance(error, Problem):
                raise error
            self._bench.around.trouble(error)
            self._go_on()

        self._bench.around.background.read(self._bench, job, answered, failed)
