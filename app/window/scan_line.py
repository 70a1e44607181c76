"""The scan line: always alive, it takes a scan, a typed question, a pasted list or a picture."""

from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QEvent, QIODevice, QMimeData, QSize, Qt, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
    QImage,
    QKeyEvent,
    QKeySequence,
)
from PySide6.QtWidgets import QLineEdit

from app.scanning.keystrokes import Again, Garbled, Keystrokes, Scanned, pasted_codes
from app.window.look.look import look
from app.window.scan_watch import ScanWatch

PICTURES = (".png", ".jpg", ".jpeg", ".webp", ".bmp", ".heic", ".heif")
_LITTLE_PACKED = 95  # of 100: a pasted picture is large, and packing it well takes seconds


class ScanLine(QLineEdit):
    """Hears every scan whatever has the focus; what is typed in it is asked for with Enter."""

    scanned = Signal(str)
    scanned_again = Signal(str)  # the same within two seconds
    asked = Signal(str)
    pasted = Signal(list)  # of codes
    pictured = Signal(bytes)  # a photo, as it would stand in a file; one after the other
    filed = Signal(list)  # of the paths of files that were dropped and are no pictures
    garbled = Signal(str)  # a sentence

    _being_typed = False

    def __init__(self, prefixes: Mapping[str, str] | None = None) -> None:
        super().__init__()
        self.setProperty("scan", "true")
        self.setPlaceholderText("scan, type, or drop a picture")
        self.setAccessibleName("scan line")
        self.setClearButtonEnabled(False)
        self.setAcceptDrops(True)
        self.watch = ScanWatch(Keystrokes(prefixes or {}), self, self.take_pasted_picture)
        self.watch.heard.connect(self._hear)
        self.returnPressed.connect(self._ask)
        self.textEdited.connect(self._typed)

    def minimumSizeHint(self) -> QSize:
        return QSize(look().grid(240), super().minimumSizeHint().height())

    def begin(self, text: str) -> None:
        """A person began to type while nothing that takes words had the focus."""
        self.setFocus()
        if self._being_typed:
            self.end(False)
        else:
            self.selectAll()
        self.insert(text)
        self._being_typed = True

    def take(self, dropped: QMimeData) -> bool:
        """Pictures or files that were dropped or pasted anywhere; False if it holds none."""
        pictures = _pictures(dropped)
        files = [path for url in dropped.urls() if url.isLocalFile()
                 and (path := Path(url.toLocalFile())).suffix.lower() not in PICTURES]
        for picture in pictures:
            self.pictured.emit(picture)
        if files and not pictures:
            self.filed.emit(files)
        return bool(pictures or files)

    def take_pasted(self) -> None:
        """Pasted while nothing that takes words had the focus: files, or words."""
        if not self.take(QGuiApplication.clipboard().mimeData()):
            self.setFocus()
            self.selectAll()
            self.paste()

    def take_pasted_picture(self) -> bool:
        """Ctrl+V wherever the focus is: a picture is no words for any field."""
        pasted = QGuiApplication.clipboard().mimeData()
        is_picture = _picture_files(pasted) or (pasted.hasImage() and not pasted.hasText())
        return bool(is_picture) and self.take(pasted)

    def event(self, event: QEvent) -> bool:
        if self._being_typed and event.type() is QEvent.Type.ShortcutOverride:
            assert isinstance(event, QKeyEvent)
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                event.accept()  # Enter asks for what is being typed, it is no key of the bench
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        pasting = event.matches(QKeySequence.StandardKey.Paste)
        if not (pasting and self.take(QGuiApplication.clipboard().mimeData())):
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        if self.take(event.mimeData()):
            event.acceptProposedAction()
        else:
            super().dropEvent(event)

    def _hear(self, heard: Scanned | Again | Garbled) -> None:
        if isinstance(heard, Garbled):
            self.garbled.emit(heard.sentence)
            return
        if not self._being_typed:
            self.setText(heard.text)
            self.selectAll()
        (self.scanned_again if isinstance(heard, Again) else self.scanned).emit(heard.text)

    def _typed(self, text: str) -> None:
        self._being_typed = bool(text)
        if any(mark in text for mark in "\r\n\u2028"):
            self._ask()

    def _ask(self) -> None:
        text = self.text().replace("\u2028", "\n").strip()
        self._being_typed = False
        self.selectAll()
        codes = pasted_codes(text)
        if codes:
            self.pasted.emit(codes)
        elif text:
            self.asked.emit(" ".join(text.split()))


def _picture_files(dropped: QMimeData) -> list[Path]:
    paths = (Path(url.toLocalFile()) for url in dropped.urls())
    return [path for path in paths if path.suffix.lower() in PICTURES and path.is_file()]


def _pictures(dropped: QMimeData) -> list[bytes]:
    """The pictures in what was dropped, as the bytes of their files."""
    files = _picture_files(dropped)
    if files:
        return [path.read_bytes() for path in files]
    image = dropped.imageData() if dropped.hasImage() else None
    if not isinstance(image, QImage) or image.isNull():
        return []
    stored = QByteArray()
    buffer = QBuffer(stored)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG", _LITTLE_PACKED)  # type: ignore[call-overload]
    return [bytes(stored.data())]
