"""The pots in use, each as a card that is read across the room."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QVBoxLayout, QWidget

from app.calculations.moments import moment_words
from app.lookups.pots import PotNow
from app.window.benches.pots.shade import draw_swatch
from app.window.look.codes_face import draw_code
from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_focus
from app.window.parts.card import Actions
from app.window.parts.words import Words
from app.work.dividing import skeins

_PAD = int(Gap.PART)
_WIDTH = 344
_CODE, _NAME, _FOOT = 24, 20, 20  # heights of a line at a text factor of 1


def pot_name(pot: PotNow) -> str:
    """'1', or 'tray' for a bath that is in no pot."""
    return "tray" if pot.pot is None else str(int(pot.pot))


class PotCards(QWidget):
    """All pots with yarn in them; a card takes its bath in hand."""

    chosen = Signal(int)  # bath

    def __init__(self) -> None:
        super().__init__()
        self.cards: list[PotCard] = []
        self._title = Words("", Size.LEAD, bold=True)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)
        self._column.addWidget(self._title)
        self._flow: QWidget | None = None

    def show_pots(self, pots: Sequence[PotNow]) -> None:
        """Show these pots, the one that was filled first first."""
        if self._flow is not None:
            self._flow.hide()
            self._flow.deleteLater()
        self.cards = [PotCard(pot) for pot in pots]
        for card in self.cards:
            card.clicked.connect(partial(self.chosen.emit, card.pot.bath))
        self._flow = Actions(*self.cards) if pots else None
        self._title.setText("In the pots" if pots else "All pots are empty.")
        if self._flow is not None:
            self._column.addWidget(self._flow)


class PotCard(QAbstractButton):
    """One pot: its number huge, its lots, colourway, skeins, and since when."""

    def __init__(self, pot: PotNow) -> None:
        super().__init__()
        self.pot = pot
        count = sum(lot.count for lot in pot.lots)
        self._feet = (skeins(count), f"since {moment_words(pot.since)}")
        codes = " and ".join(lot.code for lot in pot.lots)
        words = (f"pot {pot_name(pot)}: {codes}", pot.colourway, *self._feet)
        self.setAccessibleName(", ".join(words))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        lines = _CODE * len(self.pot.lots) + 2 * _NAME + 2 * _FOOT
        return QSize(look().grid(_WIDTH), look().grid(lines) + 2 * _PAD + 2 * Gap.HAIR)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = look().colours
        box = QRectF(self.rect())
        lifted = self.underMouse() or self.isDown()
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colours.in_hand if lifted else colours.paper))
        painter.drawRoundedRect(box, 6, 6)
        inner = box.adjusted(_PAD, _PAD, -_PAD, -_PAD)
        left = self._draw_number(painter, inner)
        swatch = QRectF(
            inner.right() - look().grid(64), inner.top(), look().grid(64), inner.height()
        )
        draw_swatch(painter, swatch, self.pot.swatch)
        words = QRectF(left, inner.top(), swatch.left() - Gap.LINE - left, inner.height())
        self._draw_words(painter, words)
        if self.hasFocus():
            draw_focus(painter, box)

    def _draw_number(self, painter: QPainter, inner: QRectF) -> float:
        """The pot's number, read at two metres; answers where the words begin."""
        name = pot_name(self.pot)
        font = look().figures(Size.HUGE if len(name) < 3 else Size.TITLE, bold=True)
        metrics = QFontMetricsF(font)
        width = max(look().grid(56), metrics.horizontalAdvance(name))
        painter.setFont(font)
        painter.setPen(QColor(look().colours.ink))
        base = inner.center().y() + metrics.capHeight() / 2
        at = inner.left() + (width - metrics.horizontalAdvance(name)) / 2
        painter.drawText(QPointF(at, base), name)
        return inner.left() + width + Gap.PART

    def _draw_words(self, painter: QPainter, box: QRectF) -> None:
        colours, line = look().colours, look().grid(_CODE)
        code = look().font(Size.LEAD, bold=True, codes=True)
        painter.setPen(QColor(colours.ink))
        y = box.top()
        for lot in self.pot.lots:
            base = y + (line + QFontMetricsF(code).capHeight()) / 2
            draw_code(painter, QPointF(box.left(), base), lot.code, code)
            y += line
        painter.setFont(look().font(Size.PLAIN, bold=True))
        name = QRectF(box.left(), y + Gap.HAIR, box.width(), look().grid(2 * _NAME))
        painter.drawText(name, Qt.TextFlag.TextWordWrap, self.pot.colourway)
        painter.setPen(QColor(colours.second_ink))
        painter.setFont(look().font(Size.SMALL))
        for number, words in enumerate(reversed(self._feet), 1):
            foot = QRectF(
                box.left(),
                box.bottom() - number * look().grid(_FOOT),
                box.width(),
                look().grid(_FOOT),
            )
            painter.drawText(foot, Qt.AlignmentFlag.AlignVCenter, words)
