"""What comes on this cord, cone by cone, and the cords that were made today."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout

from app.calculations.moments import clock_words
from app.lookups.bundles import BundleFacts
from app.window.benches.winding.reel import Group, Join, Reel
from app.window.benches.winding.winding_words import code_of, parts
from app.window.look.codes_face import draw_code, elided_code
from app.window.look.look import TARGET, Gap, Size, look
from app.window.look.palette import contrast
from app.window.parts.card import Card
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.ties import thread_colour, threads_of
from app.window.parts.words import Words
from app.work.dividing import skeins


class CordCard(Card):
    """One key for each group on the cord; pressing it takes that group in hand."""

    taken_up = Signal(object)  # Group

    def __init__(self) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.keys: list[GroupKey] = []
        self._column = QVBoxLayout()
        self._column.setSpacing(Gap.HAIR)
        self.add(self.title, self._column)

    def show_reel(self, reel: Reel) -> None:
        """Show all groups, the one in hand in bold outline."""
        self.title.setText(f"This cord: {skeins(reel.total)}" if reel.total else "This cord")
        for key in self.keys:
            key.hide()
            key.deleteLater()
        self.keys = [GroupKey(group, group is reel.in_hand) for group in reel.groups]
        for key in self.keys:
            self._column.addWidget(key)
            key.clicked.connect(partial(self.taken_up.emit, key.of))
        self.setVisible(bool(self.keys))


class GroupKey(QAbstractButton):
    """The threads, the count, and the cone."""

    def __init__(self, group: Group, in_hand: bool) -> None:
        super().__init__()
        self.of, self._in_hand = group, in_hand
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(f"{self.words()}, {code_of(group)}")

    def words(self) -> str:
        """'6 red', '1 red and yellow, 62 % / 38 %', '3 red minis'."""
        group = self.of
        count = str(group.count) if group.count else "–"
        if isinstance(group, Join):
            return f"{count} {group.tie}, {parts(group)}"
        minis = "" if group.put_up == "skein" else f" {skeins(2, group.put_up)[2:]}"
        return f"{count} {group.tie}{minis}"

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
        draw_code(painter, start, elided_code(code_of(self.of), codes, box.width()), codes)


class TodayCard(Card):
    """Cords that were given their disc today."""

    def __init__(self) -> None:
        super().__init__()
        self.title = Words("", Size.LEAD, bold=True)
        self.table = ThingTable(
            (Head("disc", codes=True), "ties", Head("cone", codes=True), "at"),
            "cords made today",
            "No cord was made today yet.",
            most_rows=7,
        )
        self.add(self.title, self.table)
        self.show_bundles(())

    def show_bundles(self, bundles: Sequence[BundleFacts]) -> None:
        """Show today's cords, the newest first."""
        tied = sum(bundle.count for bundle in bundles)
        self.title.setText(
            f"Today: {skeins(tied)} on {skeins(len(bundles), 'disc')}" if bundles else "Today"
        )
        self.table.show_rows(
            [
                (
                    bundle.number,
                    ", ".join(f"{part.count} {part.tie}" for part in bundle.ties),
                    " ".join(bundle.cones),
                    clock_words(bundle.since),
                )
                for bundle in bundles
            ]
        )
