"""Photographs are read away from the screen, those of one drop together."""

from app.window.bench import Bench
from app.window.photo_reading import PhotoReading
from tests.scanning.photographed import as_file, photo
from tests.window.conftest import quiet


def reading(shell):
    """A reading for the bench in front, and what it was given."""
    bench, shown = shell.floor.bench(), []
    assert isinstance(bench, Bench)
    bench.ask = lambda _show, _question, photos: shown.append(photos)
    return PhotoReading(bench, shown.append), shown


def test_pictures_of_one_drop_are_read_in_one_go(qtbot, shell):
    photos, shown = reading(shell)
    photos.take(as_file(photo(0)))
    photos.take(b"%PDF-1.7")
    quiet(qtbot, shell)
    (read,) = shown
    assert (len(read.sought.codes), read.count, len(read.problems)) == (1, 2, 1)


def test_a_file_that_cannot_be_opened_is_told_and_reads_nothing(qtbot, shell, tmp_path):
    photos, shown = reading(shell)
    photos.open([tmp_path / "gone.jpg"])
    quiet(qtbot, shell)
    assert shown == []
    assert "gone.jpg cannot be read" in shell.floor.problem.accessibleName()
