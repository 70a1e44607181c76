"""The trail: a yarn from delivery to customer, with the stations of the thing in hand on it."""

from collections.abc import Sequence
from functools import lru_cache, partial
from itertools import pairwise

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QImage,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QFrame, QScrollArea, QSizePolicy, QWidget

from app.window.look.look import Gap, Look, Size, look
from app.window.look.yarn import YARN, Certainty, draw_yarn, straight
from app.window.parts.station_tag import StationTag, Stop

_LEAST, _MOST = 104, 176  # widths of a tag at a text factor of 1
_BETWEEN = int(Gap.PART)  # least room between two tags
_HALF = 24  # of the height kept for a length of yarn
_SPREAD = 48  # most room that is added between two tags when there is plenty


class YarnTrail(QScrollArea):
    """Runs along the top of every record; it scrolls sideways when it is longer than its place."""

    followed = Signal(str)  # link of the station

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("trail")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._line = _Line()
        self.setWidget(self._line)
        self.tags: list[StationTag] = []

    def show_stations(self, stations: Sequence[Stop]) -> None:
        """Hang up other stations; the one in hand is brought into sight."""
        focused = next((tag.station.link for tag in self.tags if tag.hasFocus()), None)
        for tag in self.tags:
            tag.hide()
            tag.deleteLater()
        self.tags = [StationTag(station) for station in stations]
        for tag in self.tags:
            tag.setParent(self._line)
            tag.clicked.connect(partial(self.followed.emit, tag.station.link))
            tag.walked.connect(partial(self.walk, tag))
            tag.show()
        self._hang()
        for tag in self.tags:
            if tag.station.here:
                self.ensureWidgetVisible(tag, int(Gap.BENCH), 0)
            if focused is not None and tag.station.link == focused:
                tag.setFocus()
        self._let_one_be_tabbed_to(self._in_hand())

    def walk(self, start: StationTag, steps: int) -> None:
        """Move along the yarn from a tag, to its ends at most."""
        place = self.tags.index(start) + steps
        tag = self.tags[max(0, min(place, len(self.tags) - 1))]
        self._let_one_be_tabbed_to(tag)
        tag.setFocus(Qt.FocusReason.OtherFocusReason)
        self.ensureWidgetVisible(tag, int(Gap.BENCH), 0)

    def sizeHint(self) -> QSize:
        bar = self.horizontalScrollBar().sizeHint().height() if self._too_long() else 0
        return QSize(640, self._line.yarn_at() - round(YARN / 2) + StationTag.height_needed() + bar)

    def minimumSizeHint(self) -> QSize:
        return QSize(160, self.sizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._hang()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.StyleChange:
            self._hang()

    def _hang(self) -> None:
        places = self._line.places_for(self.tags, self.viewport().width())
        top = self._line.yarn_at() - round(YARN / 2)
        for tag, (left, width) in zip(self.tags, places, strict=True):
            tag.setGeometry(left, top, width, StationTag.height_needed())
            full = (tag.station.kind, tag.station.code, tag.station.count)
            tag.setToolTip("" if tag.shown_words() == full else "\n".join(full))
        length = max(self.viewport().width(), places[-1][0] + places[-1][1] if places else 0)
        self._line.resize(length, top + StationTag.height_needed())
        self._line.lay([tag.station for tag in self.tags], places)
        self.setFixedHeight(self.sizeHint().height())

    def _too_long(self) -> bool:
        return self._line.width() > self.viewport().width()

    def _in_hand(self) -> StationTag | None:
        return next((tag for tag in self.tags if tag.station.here), next(iter(self.tags), None))

    def _let_one_be_tabbed_to(self, chosen: StationTag | None) -> None:
        for tag in self.tags:
            strong = tag is chosen
            tag.setFocusPolicy(Qt.FocusPolicy.StrongFocus if strong else Qt.FocusPolicy.ClickFocus)


Place = tuple[int, int]  # left edge and width of a tag


class _Line(QWidget):
    """The yarn itself, with the notes written over it."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("ground", "surround")
        self._stations: list[Stop] = []
        self._hooks: list[float] = []
        self._drawn: QPixmap | None = None

    @staticmethod
    def yarn_at() -> int:
        """Where the middle of the yarn runs, below the notes."""
        return look().grid(20) + round(YARN / 2) + int(Gap.SMALL)

    def places_for(self, tags: Sequence[StationTag], room: int) -> list[Place]:
        """Every tag equally wide and far enough from the next for the note between them."""
        if not tags:
            return []
        side = 2 * int(Gap.SMALL)
        widest = max(tag.natural_width() for tag in tags)
        width = max(look().grid(_LEAST), min(widest, look().grid(_MOST))) + side
        steps = [max(width - side + _BETWEEN, _note_width(tag.station)) for tag in tags[1:]]
        spare = room - sum(steps) - width
        each = max(0, min(spare // len(tags), _SPREAD)) // 4 * 4 if len(tags) > 1 else 0
        left = each // 8 * 4
        places = [(left, width)]
        for step in steps:
            left += step + each
            places.append((left, width))
        return places

    def lay(self, stations: Sequence[Stop], places: Sequence[Place]) -> None:
        """Lay the yarn anew."""
        self._stations = list(stations)
        self._hooks = [left + width / 2 for left, width in places]
        self._drawn = None
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._drawn is None:
            self._drawn = self._draw()
        QPainter(self).drawPixmap(0, 0, self._drawn)

    def _draw(self) -> QPixmap:
        ratio = self.devicePixelRatioF()
        drawn = QPixmap(self.size() * ratio)
        drawn.setDevicePixelRatio(ratio)
        drawn.fill(QColor(look().colours.surround))
        painter = QPainter(drawn)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        y = self.yarn_at()
        ends = [-8.0, *self._hooks, self.width() + 8.0]
        known = [Certainty.KNOWN]
        kinds = known + [Certainty(stop.certainty) for stop in self._stations[1:]] + known
        for (left, right), certainty in zip(pairwise(ends), kinds, strict=False):
            length = _length_of_yarn(round(right - left), certainty, ratio, look())
            painter.drawImage(QPointF(left, y - _HALF), length)
        self._write_notes(painter)
        painter.end()
        return drawn

    def _write_notes(self, painter: QPainter) -> None:
        painter.setFont(look().font(Size.SMALL))
        painter.setPen(QColor(look().colours.ink))
        for (left, right), station in zip(pairwise(self._hooks), self._stations[1:], strict=True):
            box = QRectF(left + 4, 4, right - left - 8, look().grid(20))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, station.note)


@lru_cache(maxsize=128)
def _length_of_yarn(length: int, certainty: Certainty, ratio: float, _worn: Look) -> QImage:
    """A length of yarn, drawn once in each look."""
    drawn = QImage(
        round(length * ratio), round(2 * _HALF * ratio), QImage.Format.Format_ARGB32_Premultiplied
    )
    drawn.setDevicePixelRatio(ratio)
    drawn.fill(Qt.GlobalColor.transparent)
    painter = QPainter(drawn)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    draw_yarn(painter, straight(QPointF(0, _HALF), QPointF(length, _HALF)), certainty)
    painter.end()
    return drawn


def _note_width(station: Stop) -> int:
    words = QFontMetricsF(look().font(Size.SMALL)).horizontalAdvance(station.note)
    return -(-round(words + 16) // 4) * 4
