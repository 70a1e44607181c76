"""Papers that the window makes: kept beside the book, and shown by the computer's own reader."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices

from app.problems import Refused
from app.window.bench import Bench

_NO_FILE_BEARS = str.maketrans(dict.fromkeys('/\\:*?"<>|', "-"))
"""Signs that stand in an old lot's code and not in the name of a file."""


def keep(book: Path, kind: str, name: str, pdf: bytes) -> Path:
    """Write a paper whole or not at all, in the folder of its kind beside the book."""
    path = _path(book, kind, name)
    part = path.with_name(f"{path.name}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part.write_bytes(pdf)
        part.replace(path)
    except OSError as error:
        raise Refused(f"{path} cannot be written: {error.strerror or error}; no paper was made.",
                      "Look whether the folder may be written in, and whether the paper is open "
                      "in another program.") from error
    return path


def throw_away(book: Path, kind: str, name: str) -> None:
    """A paper that the book no longer stands for; one that is not there is well thrown away."""
    path = _path(book, kind, name)
    try:
        path.unlink(missing_ok=True)
    except OSError as error:
        raise Refused(f"{path} cannot be thrown away: {error.strerror or error}.",
                      "Throw it away by hand: it says what was removed from the book.") from error


def _path(book: Path, kind: str, name: str) -> Path:
    return book.with_name(f"{book.stem} {kind}") / name.translate(_NO_FILE_BEARS)


def open_paper(path: Path) -> bool:
    """Show it in the computer's own reader; False where there is none."""
    return QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))


def put_on_paper(
    bench: Bench, kind: str, name: str, pdf: Callable[[str], bytes], said: str
) -> None:
    """Made away from the screen, by who is signed on; kept, shown, and told: 'The trace is …'."""
    session = bench.around.session
    book, person = session.book.path, session.person or f"the {session.station}"

    def made() -> str:
        path = keep(book, kind, name, pdf(person))
        open_paper(path)
        return path.name

    bench.around.background.read(bench, made, lambda made_as: bench.say(f"{said} is {made_as}."))
