"""Start-up: opens the window, or does what a word of the command line says."""

import gc
import json
import os
import signal
import sys
from collections.abc import Callable, Mapping, Sequence
from contextlib import ExitStack
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

from app.commands.answer import DONE, NO_BOOK, REFUSED, Answer, book_path
from app.commands.words import parser
from app.problems import BookBusy, BookUnusable, Problem, Refused

if TYPE_CHECKING:
    from app.window.session import Session

STOPPED = 130  # by Ctrl-C


def main(arguments: Sequence[str] | None = None) -> int:
    """Does one word, or opens the window; how it ended, for scripts."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    try:
        return _run(arguments)
    except SystemExit as end:
        return end.code if isinstance(end.code, int) else DONE
    except KeyboardInterrupt:
        return STOPPED
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE
    except Problem as problem:
        _say(problem.what, problem.next_step)
        return NO_BOOK if isinstance(problem, BookBusy | BookUnusable) else REFUSED


def _run(arguments: Sequence[str] | None) -> int:
    options = parser().parse_args(arguments)
    if options.run is None:
        return open_window(book_path(options))
    try:
        answer: Answer = options.run(options)
    except Problem as problem:
        if options.json:
            _write(_as_data({"refused": problem.what, "next_step": problem.next_step}))
        raise
    _write(_as_data(answer.data) if options.json else answer.lines)
    _say(*answer.said)
    if answer.book and sys.stdout.isatty() and _has_screen():
        try:
            return open_window(answer.book)
        except Refused as refusal:  # what was asked for is done all the same
            _say(refusal.what)
    return answer.code


def _as_data(data: Mapping[str, object]) -> Sequence[str]:
    return (json.dumps(data, indent=1),)


def _write(lines: Sequence[str]) -> None:
    """The answer, to stdout; refused with a sentence where it cannot be written there."""
    try:
        print(*lines, sep="\n", end="\n" if lines else "", flush=True)
    except BrokenPipeError:
        raise
    except OSError as error:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        raise Refused(f"The answer cannot be written: {error.strerror or error}.",
                      "Whatever was asked for is done; write the answer to another place."
                      ) from error


def _say(*sentences: str) -> None:
    print(*filter(None, sentences), sep="\n", end="\n" if any(sentences) else "", file=sys.stderr)


def open_window(book: Path) -> int:
    """The window on a book, until it is closed; refused with a sentence where Qt cannot start."""
    if not _has_screen() and not os.environ.get("QT_QPA_PLATFORM"):
        raise Refused("There is no screen here to open the window on.",
                      "“conetrail --help” shows what can be done without one.")
    try:
        from PySide6.QtWidgets import QApplication
    except ImportError as error:
        raise Refused(f"The window cannot be opened, because Qt does not start: {error}.",
                      "Install what it lacks; the commands work without it.") from error
    _must_start()
    from platformdirs import user_config_path

    from app.window import problem_box
    from app.window.computer_settings import ComputerSettings
    from app.window.main_window import MainWindow
    from app.window.places import PLACES

    signal.signal(signal.SIGINT, signal.SIG_DFL)  # Qt's loop would not hear it
    problem_box.install()
    qt = QApplication.instance() or QApplication(sys.argv[:1])
    settings = ComputerSettings(user_config_path("Conetrail", appauthor=False) / "computer.ini")
    with ExitStack() as until_closed:
        window = MainWindow(settings, PLACES, opener(book, until_closed))
        window.show()
        gc.freeze()  # the window stays: it need not be gone through at every large question
        return qt.exec()


def opener(path: Path, until_closed: ExitStack) -> Callable[[], "Session"]:
    """Opens the book, and claims it for this window until that is closed."""
    claimed = False

    def opened() -> "Session":
        from app.store.opening import Claim
        from app.window.session import open_session

        nonlocal claimed
        session = open_session(path)
        try:
            if not claimed:  # at a second try it is ours already
                until_closed.enter_context(Claim(path))
        except BookUnusable:
            session.book.close()
            raise
        claimed = True
        return session

    return opened


def _has_screen() -> bool:
    return sys.platform != "linux" or any(map(os.environ.get, ("DISPLAY", "WAYLAND_DISPLAY")))


def _must_start() -> None:
    """Qt ends the whole process where it finds no screen: a child tries it first."""
    if sys.platform != "linux":
        return
    from PySide6.QtGui import QGuiApplication

    child = os.fork()
    if child == 0:
        os.dup2(os.open(os.devnull, os.O_WRONLY), 2)
        QGuiApplication([])
        os._exit(0)
    if os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) != 0:
        raise Refused("The window cannot be opened: Qt finds no screen here, or lacks a library.",
                      "The commands work without it; “conetrail --help” shows them.")


if __name__ == "__main__":
    sys.exit(main())
