"""Scans in their order: the next one waits until the one before it was looked up."""

from collections import deque
from collections.abc import Callable

from app.calculations.codes import Code


class Scans:
    """Hands one code after the other to `answer`, which may ask for a pause and end it."""

    def __init__(self, answer: Callable[[Code], None]) -> None:
        self._answer = answer
        self._waiting: deque[Code] = deque()
        self._paused = False

    def put(self, code: Code) -> None:
        """A code came in."""
        self._waiting.append(code)
        self._next()

    def pause(self) -> None:
        """Something is being looked up."""
        self._paused = True

    def go_on(self) -> None:
        """It was looked up."""
        self._paused = False
        self._next()

    def _next(self) -> None:
        while self._waiting and not self._paused:
            self._answer(self._waiting.popleft())
