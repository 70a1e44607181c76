"""Work away from the screen: one writer, two readers, answers back on the screen's thread."""

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from threading import Event
from time import monotonic
from typing import Any, TypeVar

from PySide6.QtCore import QObject, Qt, Signal, Slot
from shiboken6 import isValid

T = TypeVar("T")
Failed = Callable[[BaseException], None]
_TOLD_EVERY = 0.05  # seconds; a job may say more often how far it is


class Cancelled(Exception):
    """The person wanted a long job no further; raised inside it, where it says how far it is."""


class Progress:
    """Handed to a long job, which says how far it is; and to the window, which may cancel it."""

    def __init__(self, words: str, told: Callable[["Progress"], None]) -> None:
        self.words, self.done, self.of = words, 0, 0
        self._told, self._last = told, 0.0
        self._cancel = Event()

    def say(self, done: int, of: int) -> None:
        """So many of so many; ends the job here if it was cancelled."""
        if self._cancel.is_set():
            raise Cancelled(self.words)
        self.done, self.of = done, of
        if monotonic() - self._last >= _TOLD_EVERY or done == of:
            self._last = monotonic()
            self._told(self)

    def cancel(self) -> None:
        """Ask the job to end at its next step."""
        self._cancel.set()


class Background(QObject):
    """Runs jobs off the screen's thread.

    A job touches no widget and returns plain values. `done` and `failed` are called on the
    screen's thread, and not at all once `owner` is gone.
    """

    saved = Signal(frozenset)  # names of the tables that one deed wrote
    busy = Signal(int)  # jobs that are not over
    progressed = Signal(object)  # Progress of a long job, now and then
    ended = Signal(object)  # Progress of a long job that is over
    _arrived = Signal(object)

    def __init__(self, show_failure: Callable[[QObject, BaseException], None]) -> None:
        super().__init__()
        self._show_failure = show_failure
        self._open = 0
        self._closed = False
        self._writer = ThreadPoolExecutor(max_workers=1, thread_name_prefix="writer")
        self._readers = ThreadPoolExecutor(max_workers=2, thread_name_prefix="reader")
        self._arrived.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    def write(
        self,
        owner: QObject,
        job: Callable[[], T],
        done: Callable[[T], None],
        failed: Failed | None = None,
    ) -> None:
        """Queue a job that changes the book; such jobs run one after another."""
        self._start(self._writer, owner, job, done, failed)

    def read(
        self,
        owner: QObject,
        job: Callable[[], T],
        done: Callable[[T], None],
        failed: Failed | None = None,
    ) -> None:
        """Run a job that only looks."""
        self._start(self._readers, owner, job, done, failed)

    def long(
        self,
        owner: QObject,
        words: str,
        job: Callable[[Progress], T],
        done: Callable[[T], None],
        failed: Failed | None = None,
    ) -> Progress:
        """Run a long job that only looks and says how far it is; the person may cancel it."""
        progress = Progress(words, self.progressed.emit)

        def steps() -> T:
            try:
                progress.say(0, 0)
                return job(progress)
            finally:
                self.ended.emit(progress)

        self._start(self._readers, owner, steps, done, failed)
        return progress

    def jobs(self) -> int:
        """How many jobs are not over."""
        return self._open

    def close(self) -> None:
        """Let running jobs end and drop the waiting reads; waiting writes are still done.

        What is asked for afterwards is not begun.
        """
        self._closed = True
        self._readers.shutdown(wait=True, cancel_futures=True)
        self._writer.shutdown(wait=True)

    def _start(
        self,
        pool: ThreadPoolExecutor,
        owner: QObject,
        job: Callable[[], T],
        done: Callable[[T], None],
        failed: Failed | None,
    ) -> None:
        def deliver(future: Future[T]) -> None:
            if not isValid(owner) or future.cancelled():
                return
            error = future.exception()
            if error is None:
                done(future.result())
            elif failed is not None:
                failed(error)
            elif not isinstance(error, Cancelled):
                self._show_failure(owner, error)

        if self._closed:
            return
        self._count(1)
        pool.submit(job).add_done_callback(lambda future: self._arrived.emit((deliver, future)))

    @Slot(object)
    def _deliver(self, answer: tuple[Callable[[Future[Any]], None], Future[Any]]) -> None:
        deliver, future = answer
        self._count(-1)
        deliver(future)

    def _count(self, more: int) -> None:
        self._open += more
        self.busy.emit(self._open)
