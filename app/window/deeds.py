"""Deeds done from the window: away from the screen, told in the foot, taken back with one key."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any, TypeVar
from uuid import uuid4

from PySide6.QtCore import QObject, Signal
from shiboken6 import isValid

from app.problems import BookBusy, BookUnusable, Problem, Refused
from app.window.background import Background
from app.window.problem_box import show_failure
from app.window.session import Done, Session

T = TypeVar("T")
_SIGN_ON = "Sign on and do it again."
_ON_PAPER = Refused("Paper is printed now, not then; nothing was printed.",
                    "Go back to now with Esc, and print.")


class Deeds(QObject):
    """Runs deeds one after another and remembers the last, so that it can be taken back."""

    said = Signal(str, bool)  # sentence, and whether it can be undone
    found = Signal(tuple)  # sentences of what looked wrong
    failed = Signal(Problem)

    def __init__(self, background: Background, parent: QObject) -> None:
        super().__init__(parent)
        self._background = background
        self._last: Done[Any] | None = None
        self.session: Session | None = None

    def do(
        self,
        owner: QObject,
        deed: Callable[..., T],
        args: Sequence[Any],
        then: Callable[[Done[T]], None] | None,
        terms: dict[str, Any],
    ) -> None:
        """Do it in the name of who has signed on, at the moment that is being entered."""
        terms = {"token": uuid4().hex, **terms}
        self._sign(owner, lambda session: session.do(deed, *args, **terms), then)

    def run(
        self,
        owner: QObject,
        job: Callable[[Session], Done[T]],
        then: Callable[[Done[T]], None] | None,
    ) -> None:
        """Run what ends in one deed and happens now, such as printing, in the person's name."""
        if self.session is not None and self.session.late is not None:
            self.failed.emit(_ON_PAPER)
        else:
            self._sign(owner, job, then)

    def _sign(
        self,
        owner: QObject,
        job: Callable[[Session], Done[T]],
        then: Callable[[Done[T]], None] | None,
    ) -> None:
        session = self.session
        if session is None or not session.person:
            self.failed.emit(Refused("Nobody has signed on here, so nothing was saved.", _SIGN_ON))
            return
        signed = replace(session)  # as it is now, whoever signs on before the deed's turn comes

        def done(outcome: Done[T]) -> None:
            self._last = outcome if outcome.seq else None
            self.said.emit(outcome.said, self._last is not None)
            self.found.emit(outcome.findings)
            if then is not None and isValid(owner):  # the sentence is told all the same
                then(outcome)

        self._background.write(self, lambda: job(signed), done, self._tell)

    def undo_last(self) -> None:
        """Take back what was done last at this window."""
        last, self._last = self._last, None
        session = self.session
        if last is None or session is None:
            self.said.emit("Nothing to take back", False)
            return
        seq, said = last.seq, last.said

        def done(outcome: Done[None]) -> None:
            self.said.emit(f"taken back: {said}", False)
            self.found.emit(outcome.findings)

        def failed(error: BaseException) -> None:
            if isinstance(error, BookBusy | BookUnusable):
                self._last = last
            self._tell(error)

        self._background.write(self, lambda: session.undo(seq), done, failed)

    def _tell(self, error: BaseException) -> None:
        if isinstance(error, Problem):
            self.failed.emit(error)
        else:
            show_failure(self.parent(), error)
