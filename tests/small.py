"""A small studio for what wants few things on few screens: one week of it, as readable files."""

from pathlib import Path

from app.demo import Lived, live

FOLDER = Path(__file__).parent / "small_studio"


def live_small(path: Path) -> Lived:
    """The week lived into a new book, some seconds of work."""
    return live(path, folder=FOLDER)
