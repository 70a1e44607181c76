"""What comes on this cord, cone by cone, and the cords that were made today."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from app.calculations.moments import clock_words
from app.lookups.bundles import BundleFacts
from app.window.benches.winding.reel import Group, Join, Reel
from app.window.benches.winding.winding_words import code_of, parts
from app.window.look.codes_face import draw_code, elided_code
from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.palette import contrast
from app.window.parts.card import Card
from app.window.parts.ties import thread_colour, threads_of
from app.window.parts.words import SECOND, CodeWords, Words
from app.work.dividing import skeins

MOST_SHOWN = 6  # of today's cords


class CordCard(Card):
    """One key for each group on the cord; pressing it takes that group in hand."""

    taken_up = Signal(object)  # Group

    def __init__(self) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.keys: list[GroupKey] = []
        self._groups = QVBoxLayout()
        self._groups.setSpacing(Gap.HAIR)
        self.add(self.title, self._groups)

    def show_reel(self, reel: Reel) -> None:
        """Show all groups, the one in hand in bold outline."""
        self.title.setText(f"This cord: {skeins(reel.total)}" if reel.total else "On the reel")
        for key in self.keys:
            key.hide()
            key.deleteLater()
        self.keys = [GroupKey(group, group is reel.in_hand) for group in reel.groups]
        for key in self.keys:
            self._groups.addWidget(key)
            key.clicked.connect(partial(self.taken_up.emit, key.of))
        self.setVisible(bool(self.keys))


class GroupKey(QAbstractButton):
    """The threads, the count, and the cone."""

    def __init__(self, group: Group, in_hand: bool) -> None:
        super().__init__()
        self.of, self._in_hand = group, in_hand
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(f"{self.words()}, {self.cones()}")

    def words(self) -> str:
        """'6 red', '1 red and yellow', '3 red minis'."""
        group = self.of
        if isinstance(group, Join):
            return f"{group.count} {group.tie}"
        minis = "" if group.put_up == "skein" else f" {skeins(2, group.put_up)[2:]}"
        return f"{group.count} {group.tie}{minis}"

    def cones(self) -> str:
        """The cone, or the shares of two cones in a join."""
        return parts(self.of) if isinstance(self.of, Join) else code_of(self.of)

    def sizeHint(self) -> QSize:
        lines = (
            QFontMetricsF(look().font(Size.LEAD)).height()
            + QFontMetricsF(look().font(Size.PLAIN)).height()
        )
        return QSize(look().grid(160), max(TARGET, round(lines) + Gap.PART))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours, box = look().colours, QRectF(self.rect())
        edge = 2.5 if self._in_hand or self.hasFocus() else 1.0
        painter.setPen(QPen(QColor(colours.ink if edge > 1 else colours.edge), edge))
        painter.setBrush(QColor(colours.in_hand))
        painter.drawRoundedRect(box.adjusted(1.5, 1.5, -1.5, -1.5), 4, 4)
        left = self._draw_threads(painter, box)
        self._draw_words(painter, box.adjusted(left + Gap.LINE, Gap.SMALL, -Gap.SMALL, -Gap.SMALL))

    def _draw_threads(self, painter: QPainter, box: QRectF) -> float:
        threads = threads_of(self.of.tie)
        side = box.height() - Gap.PART
        for n, word in enumerate(threads):
            place = QRectF(
                Gap.SMALL + n * side / len(threads), Gap.SMALL, side / len(threads), side
            )
            colour = thread_colour(word)
            painter.fillRect(place, QColor(colour))
            if contrast(colour, look().colours.in_hand) < 1.5:
                painter.setPen(QPen(QColor(look().colours.edge), 1))
                painter.drawRect(place.adjusted(0.5, 0.5, -0.5, -0.5))
        return side + Gap.SMALL

    def _draw_words(self, painter: QPainter, box: QRectF) -> None:
        font = look().font(Size.LEAD, bold=True)
        metrics = QFontMetricsF(font)
        painter.setPen(QColor(look().colours.ink))
        painter.setFont(font)
        words = metrics.elidedText(self.words(), Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft, words)
        codes = look().font(Size.PLAIN, codes=True)
        base = box.bottom() - QFontMetricsF(codes).descent()
        start = box.bottomLeft()
        start.setY(base)
        draw_code(painter, start, elided_code(self.cones(), codes, box.width()), codes)


class TodayCard(Card):
    """Cords that were given their disc today, or on the day that is written late; newest first."""

    def __init__(self) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.rows: list[CordRow] = []
        self._day = "Today"
        self._none, self._more = Words(ink=SECOND), Words(ink=SECOND)
        self._cords = QVBoxLayout()
        self._cords.setSpacing(Gap.SMALL)
        self.add(self.title, self._none, self._cords, self._more)
        self.show_bundles(())

    def of_day(self, day: str) -> None:
        """The day whose cords are shown from now on: 'Today', '14 May'."""
        self._day = day

    def show_bundles(self, bundles: Sequence[BundleFacts]) -> None:
        """Show the cords of the day."""
        tied = sum(bundle.count for bundle in bundles)
        self.title.setText(
            f"{self._day}: {skeins(tied)} on {skeins(len(bundles), 'disc')}" if bundles
            else self._day
        )
        self._none.setText("No cord was made today yet." if self._day == "Today"
                           else "No cord of that day still wears its disc.")
        for row in self.rows:
            row.hide()
            row.deleteLater()
        self.rows = [CordRow(bundle) for bundle in bundles[:MOST_SHOWN]]
        for row in self.rows:
            self._cords.addWidget(row)
        more = len(bundles) - MOST_SHOWN
        self._none.setVisible(not bundles)
        self._more.setText(f"and {more} before")
        self._more.setVisible(more > 0)


class CordRow(QWidget):
    """One cord: its disc, what hangs on it, of which cones, and when."""

    def __init__(self, bundle: BundleFacts) -> None:
        super().__init__()
        ties = Words(", ".join(f"{part.count} {part.tie}" for part in bundle.ties))
        cones = Words(" ".join(bundle.cones), Size.SMALL, ink=SECOND)
        cones.setProperty("codes", "true")
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(ties)
        words.addWidget(cones)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Gap.LINE)
        top = Qt.AlignmentFlag.AlignTop
        row.addWidget(CodeWords(bundle.number, Size.LEAD), 0, top)
        row.addLayout(words, 1)
        row.addWidget(Words(clock_words(bundle.since), Size.SMALL, ink=SECOND, wrap=False), 0, top)
        self.setAccessibleName(f"disc {bundle.number}: {ties.text()}, {cones.text()}")
