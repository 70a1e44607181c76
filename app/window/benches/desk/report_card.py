"""One report of a fault as it was told, with its pictures; a picture can be looked at and erased.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPixmap
from PySide6.QtWidgets import QAbstractButton, QLabel

from app.calculations.moments import day_words
from app.lookups.photos import photos_of, picture_of
from app.lookups.reports import ReportRow
from app.scanning.shown_photos import fitted
from app.window.benches.desk.desk_words import how_many
from app.window.look.look import Size, look
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import bring
from app.window.parts.words import SECOND, Words

THUMB, LARGE = 168, 1600  # dots
HIGH = 420  # of the large view, at a text factor of 1
_SPREAD = {"whole": "all of it", "one place": "in one place", "one end": "at one end"}
_FROM = {
    "one end": "At one end only: the bath or a rail.",
    "whole": "All of it: rather the bath, the jar or the whole cone.",
}


@dataclass(frozen=True, slots=True)
class Thumb:
    """A small picture; none where it was removed or cannot be opened."""

    photo: int
    removed: bool
    small: bytes | None


def thumbs_of(connection: Any, report: int) -> tuple[Thumb, ...]:
    """The pictures of a report, made small away from the screen."""
    return tuple(Thumb(one.id, one.picture is None,
                       None if one.picture is None else fitted(one.picture, THUMB))
                 for one in photos_of(connection, report))


def large_of(connection: Any, photo: int) -> tuple[int, bytes | None]:
    """One picture, as large as a screen may show."""
    picture = picture_of(connection, photo)
    return photo, None if picture is None else fitted(picture, LARGE)


class ReportCard(Card):
    """`opened` asks for a picture in full, `erase` for its end; `mistaken` says it was no fault."""

    opened = Signal(int)
    erase = Signal(int)
    mistaken = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.title, self.told = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.hint, self.none = Words(), Words(ink=SECOND)
        self.thumbs: list[ThumbKey] = []
        self.photo: int | None = None
        self.large = QLabel()
        self.large.setAlignment(Qt.AlignmentFlag.AlignLeft)
        self.erase_key = KeyButton("Erase this picture")
        self.close_key = KeyButton("Put it away", "F8")
        self.mistake_key = KeyButton("Told by mistake", "Alt+M")
        self._thumbs = Card()
        self._row = self._thumbs.add_row(None)
        self._keys = Actions(self.close_key, self.erase_key)
        self.add(self.title, self.told, self.hint, self._thumbs, self.none,
                 Actions(self.mistake_key), self._keys, self.large)
        self.mistake_key.clicked.connect(self.mistaken)
        self.close_key.clicked.connect(lambda: self.show_large((0, None)))
        self.erase_key.clicked.connect(lambda: self.erase.emit(self.photo or 0))
        self.show_large((0, None))

    def show_report(self, one: ReportRow) -> None:
        """Show a report; its pictures come after it."""
        where = (f"every {one.repeat_mm / 10:g} cm" if one.repeat_mm
                 else _SPREAD.get(one.where_on, ""))
        self.title.setText(", ".join(filter(None, (one.fault, where))))
        seen = f"{how_many(one.faulty)} with it" if one.faulty else _stated(one)
        good = f", {one.good} seen good beside it" if one.good else ""
        words = f" “{one.words}”" if one.words else ""
        closed = f" Closed: {one.cause}." if one.cause else ""
        self.told.setText(f"{day_words(one.at)} by {one.person}, {one.seen_at}: {seen}{good}."
                          f"{words}{closed}")
        self.hint.setText(_hint(one))
        self.hint.setVisible(bool(self.hint.text()))

    def show_thumbs(self, thumbs: Sequence[Thumb]) -> None:
        """Small pictures, each a key that opens it in full."""
        for old in self.thumbs:
            self._row.removeWidget(old)
            old.hide()
            old.deleteLater()
        left = [one for one in thumbs if not one.removed]
        self.thumbs = [ThumbKey(one, n, len(left)) for n, one in enumerate(left, 1)]
        for place, key in enumerate(self.thumbs):
            self._row.insertWidget(place, key)
            key.clicked.connect(lambda _=False, photo=key.thumb.photo: self.opened.emit(photo))
        removed = len(thumbs) - len(left)
        self._thumbs.setVisible(bool(left))
        self.none.setText(f"{how_many(removed, 'picture')} of it {_were(removed)} removed on "
                          "request.")
        self.none.setVisible(bool(removed))

    def show_large(self, answer: tuple[int, bytes | None]) -> None:
        """One picture in full; none takes it away."""
        photo, picture = answer
        self.photo = photo or None
        pixmap = QPixmap()
        if picture is not None and pixmap.loadFromData(picture):
            room = QSize(max(300, self.width() - 64), look().grid(HIGH))
            self.large.setPixmap(pixmap.scaled(room, Qt.AspectRatioMode.KeepAspectRatio,
                                               Qt.TransformationMode.SmoothTransformation))
        elif photo:
            self.large.setText("This picture cannot be opened; it is kept as it came.")
        for part in (self.large, self._keys):
            part.setVisible(bool(photo))
        if photo:
            bring(self.large)


class ThumbKey(QAbstractButton):
    """A small picture that is opened by a tap, Enter or Space."""

    def __init__(self, thumb: Thumb, number: int, of: int) -> None:
        super().__init__()
        self.thumb = thumb
        self._pixmap = QPixmap()
        if thumb.small is not None:
            self._pixmap.loadFromData(thumb.small)
        self.setAccessibleName(f"picture {number} of {of}")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        return QSize(THUMB, THUMB)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        colours = look().colours
        box = self.rect().adjusted(3, 3, -3, -3)
        if self._pixmap.isNull():
            painter.setPen(QColor(colours.second_ink))
            painter.drawText(QRectF(box), int(Qt.AlignmentFlag.AlignCenter
                                              | Qt.TextFlag.TextWordWrap), "cannot be opened")
        else:
            small = self._pixmap.scaled(box.size(), Qt.AspectRatioMode.KeepAspectRatio,
                                        Qt.TransformationMode.SmoothTransformation)
            painter.drawPixmap(box.center() - small.rect().center(), small)
        painter.setPen(QPen(QColor(colours.ink if self.hasFocus() else colours.edge),
                            3 if self.hasFocus() else 1))
        painter.drawRect(box)


def _stated(one: ReportRow) -> str:
    """'2 skeins of 26·15·R6F as stated, without a tag'."""
    return f"{how_many(one.count or 1)} of {one.lot} as stated, without a tag"


def _hint(one: ReportRow) -> str:
    """What its distance or place says; common practice, no source."""
    if one.repeat_mm is None:
        return _FROM.get(one.where_on, "")
    if 1300 <= one.repeat_mm <= 1700:
        return "It comes back once around the reel: look at the reel and at who wound it."
    if 300 <= one.repeat_mm <= 500:
        return "As far apart as the ties: a tie that was too tight, or dye that did not get in."
    return "Neither once around the reel (about 1.5 m) nor a tie (about 40 cm): the spinning."


def _were(count: int) -> str:
    return "was" if count == 1 else "were"
