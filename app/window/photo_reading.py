"""Photographs of tags that are dropped, pasted or chosen: read away from the screen."""

from collections.abc import Callable
from pathlib import Path
from time import monotonic

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtWidgets import QFileDialog

from app.problems import BadInput
from app.scanning.from_photo import SeveralPhotos, read_photos
from app.scanning.read_back import ReadBack, read_from_photos
from app.window.background import Progress
from app.window.bench import Bench

_FILES = "Photographs (*.jpg *.jpeg *.png *.webp *.heic *.heif);;All files (*)"
_READING = "reading the photograph"


class PhotoReading(QObject):
    """For one bench: `show` gets what was read of all pictures that came together."""

    def __init__(self, bench: Bench, show: Callable[[ReadBack], None]) -> None:
        super().__init__(bench)
        self._bench, self._show = bench, show
        self._waiting: list[bytes] = []
        self._begin = QTimer(self)
        self._begin.setSingleShot(True)
        self._begin.timeout.connect(self._read)

    def take(self, picture: bytes) -> bool:
        """One more picture; those of one drop are read together."""
        self._waiting.append(picture)
        self._begin.start(0)
        return True

    def choose(self) -> None:
        """Ask for files, in a window of its own that blocks nothing."""
        dialog = QFileDialog(self._bench, "Photographs of tags", "", _FILES)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFiles)
        dialog.filesSelected.connect(lambda names: self.open([Path(name) for name in names]))
        dialog.open()

    def open(self, paths: list[Path]) -> None:
        """Read these files."""
        self._start(lambda: [_content(path) for path in paths])

    def _read(self) -> None:
        pictures, self._waiting = self._waiting, []
        self._start(lambda: pictures)

    def _start(self, pictures: Callable[[], list[bytes]]) -> None:
        def read(progress: Progress) -> SeveralPhotos:
            return read_photos(pictures(), monotonic, progress.say)

        self._bench.around.background.long(self._bench, _READING, read, self._look_up)

    def _look_up(self, photos: SeveralPhotos) -> None:
        self._bench.ask(self._show, read_from_photos, photos)


def _content(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise BadInput(f"{path.name} cannot be read: {error.strerror or error}; nothing was taken.",
                       "Copy it to this computer and choose it again.") from error
