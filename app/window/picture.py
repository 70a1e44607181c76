"""A picture of the real window on a book: the desk with a thing in hand, or any bench."""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

from app.problems import Refused

Size = tuple[int, int]
_WITHOUT_SCREEN = {"QT_QPA_PLATFORM": "offscreen"}


def picture_of(
    book: Path, png: Path, show: str = "", size: Size = (1280, 800), text: float = 1.0
) -> None:
    """Open the window on a book, show a bench by its title or a thing at the desk, and save it.

    With nothing to show, the desk shows what is on hold, else the newest lot. A child draws it,
    without a screen, so that Qt is not begun here: a window may still be opened, and where Qt
    does not start at all the answer is a sentence.
    """
    words = [str(book), str(png), show, str(size[0]), str(size[1]), str(text)]
    child = subprocess.run(
        [sys.executable, "-m", "app.window.picture", *words], env={**os.environ, **_WITHOUT_SCREEN},
        capture_output=True, text=True, check=False,
    )
    if child.returncode != 0:
        why = (child.stderr.strip().splitlines() or ["Qt does not start"])[-1]
        raise Refused(f"The picture of the window could not be made: {why}",
                      "All else is there; the window itself may still open.")


def _draw(book: str, png: str, show: str, width: str, height: str, text: str) -> None:
    from PySide6.QtWidgets import QApplication

    from app.window.posing import open_window, save, show_in

    QApplication([])
    with tempfile.TemporaryDirectory() as folder:
        window = open_window(Path(book), Path(folder), (int(width), int(height)), float(text))
        try:
            show_in(window, show)
            save(window, Path(png))
        finally:
            window.close()


if __name__ == "__main__":
    _draw(*sys.argv[1:])
