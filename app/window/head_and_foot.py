"""The dark head with the scan line, and the foot with what was just done."""

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPen,
    QShortcut,
)
from PySide6.QtWidgets import QAbstractButton, QFrame, QHBoxLayout, QSizePolicy

from app.window.background import Background, Progress
from app.window.look.look import TARGET, Gap, Size, look
from app.window.parts.key_button import KeyButton
from app.window.parts.words import OneLine, Words
from app.window.scan_line import ScanLine


class Head(QFrame):
    """The scan line, a way to enter what happened before, and who is at which station."""

    def __init__(self, scanners: Mapping[str, str]) -> None:
        super().__init__()
        self.setProperty("ground", "head")
        self.scan_line = ScanLine(scanners)
        self.hint = Words("Esc comes back here", Size.SMALL, ink="head second", wrap=False)
        self.late = HeadKey("Written late", "F12")
        self.late.setToolTip("what happened yesterday is entered today: F12")
        self.who = WhoKey()
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.PART, 6, Gap.HAIR, 6)
        row.setSpacing(Gap.CARD)
        row.addWidget(self.scan_line, 3)
        row.addWidget(self.hint)
        row.addStretch(1)
        row.addWidget(self.late)
        row.addWidget(self.who)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self.hint.setVisible(look().text <= 1.5)


class HeadKey(QAbstractButton):
    """Words in the dark head that are pressed, by hand or by their key."""

    def __init__(self, words: str, key: str = "") -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self._words = " ".join(filter(None, (words, key)))
        self.setAccessibleName(words)
        if key:
            self.setAccessibleDescription(f"key {key}")
            QShortcut(QKeySequence(key), self, self.click)

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(look().font(Size.PLAIN, bold=True))
        width = round(metrics.horizontalAdvance(self._words)) + 2 * Gap.LINE
        return QSize(width, max(TARGET, look().grid(28)))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = QColor(look().colours.head_ink)
        box = QRectF(self.rect())
        painter.setFont(look().font(Size.PLAIN, bold=True))
        painter.setPen(ink)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self._words)
        if self.hasFocus() or self.underMouse():
            painter.setPen(QPen(ink, 2.5 if self.hasFocus() else 1))
            painter.drawRoundedRect(box.adjusted(2, 4, -2, -4), 4, 4)


class WhoKey(HeadKey):
    """Who is at which station; pressing it lets another person sign on."""

    def __init__(self) -> None:
        super().__init__("")
        self.setToolTip("another person signs on here")
        self.show_who("", "")

    def show_who(self, person: str, station: str) -> None:
        """Show who it is now."""
        self._words = f"{person} at the {station}" if person else "nobody has signed on"
        self.setAccessibleName(f"{self._words}; another person signs on here")
        self.updateGeometry()
        self.update()


class Foot(QFrame):
    """What was just done with Undo, what is still going on, and the last good copy."""

    undo_wanted = Signal()

    def __init__(self, background: Background) -> None:
        super().__init__()
        self.setProperty("ground", "foot")
        self.said = OneLine(bold=True)
        self.undo = KeyButton("Undo", "F2")
        self.note = OneLine(second=True)
        self.going_on = OneLine(second=True)
        self.cancel = KeyButton("Cancel")
        self.copy = OneLine(size=Size.SMALL, second=True, right=True)
        self._long: Progress | None = None
        row = QHBoxLayout(self)
        row.setContentsMargins(Gap.PART, Gap.HAIR, Gap.PART, Gap.HAIR)
        row.setSpacing(Gap.PART)
        for widget in (self.said, self.undo, self.note, self.going_on, self.cancel):
            row.addWidget(widget)
        row.addStretch(1)
        row.addWidget(self.copy)
        self.setMinimumHeight(TARGET + Gap.SMALL)
        self.undo.hide()
        self.cancel.hide()
        self.undo.clicked.connect(self.undo_wanted)
        self._nothing = QShortcut(QKeySequence(self.undo.key), self, self.undo_wanted.emit)
        self.cancel.clicked.connect(self._stop)
        background.busy.connect(self._show_busy)
        background.progressed.connect(self._show_progress)
        background.ended.connect(self._show_end)

    def show_said(self, sentence: str, *, undo: bool = False) -> None:
        """What was just done; it stays until the next."""
        self.said.say(sentence)
        self.note.say("")
        self.undo.setVisible(undo)
        self._nothing.setEnabled(not undo)

    def show_note(self, sentence: str) -> None:
        """Something worth telling that is no deed."""
        self.note.say(sentence)

    def _show_busy(self, jobs: int) -> None:
        if self._long is None:
            self.going_on.say("working …" if jobs else "")

    def _show_progress(self, progress: Progress) -> None:
        self._long = progress
        far = f": {progress.done:,} of {progress.of:,}".replace(",", " ") if progress.of else " …"
        self.going_on.say(progress.words + far)
        self.cancel.show()

    def _show_end(self, progress: Progress) -> None:
        if self._long is progress:
            self._long = None
            self.going_on.say("")
            self.cancel.hide()

    def _stop(self) -> None:
        if self._long is not None:
            self._long.cancel()
