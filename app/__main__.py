"""Start-up: opens the window, or does what a word of the command line says."""

import json
import os
import signal
import sys
from collections.abc import Callable, Sequence
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
    answer: Answer = options.run(options)
    lines = [json.dumps(answer.data, indent=1)] if options.json else answer.lines
    print(*lines, sep="\n", end="\n" if lines else "", flush=True)
    _say(*answer.said)
    if answer.book and sys.stdout.isatty() and _has_screen():
        return open_window(answer.book)
    return answer.code


def _say(*sentences: str) -> None:
    print(*filter(None, sentences), sep="\n", end="\n" if any(sentences) else "", file=sys.stderr)


def open_window(book: Path) -> int:
    """The window on a book, until it is closed; refused with a sentence where Qt cannot start."""
    if not _has_screen():
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
    window = MainWindow(settings, PLACES, _opener(book))
    window.show()
    return qt.exec()


def _opener(path: Path) -> Callable[[], "Session"]:
    """Opens the book and claims it for this window for as long as the program runs."""
    claims: list[object] = []

    def opened() -> "Session":
        from app.store.opening import Claim
        from app.window.session import open_session

        session = open_session(path)
        try:
            claims.append(Claim(path))
        except BookUnusable:
            session.book.close()
            raise
        return session

    return opened


def _has_screen() -> bool:
    names = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    return sys.platform != "linux" or any(map(os.environ.get, names))


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
