"""The pots in use, each as a card that is read across the room."""

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from functools import partial

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QVBoxLayout, QWidget

from app.calculations.moments import moment_words
from app.lookups.pot_steps import PotAtWork
from app.lookups.pots import PotNow
from app.window.benches.pots.lettering import draw_two_lines
from app.window.benches.pots.shade import draw_swatch
from app.window.look.codes_face import draw_code
from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_focus
from app.window.parts.card import Actions
from app.window.parts.words import Words
from app.work.dividing import skeins
from app.work.dyeing import LEAST_STEAM

_PAD = int(Gap.PART)
_WIDTH = 456
_CODE, _NAME, _FOOT = 24, 20, 20  # heights of a line at a text factor of 1
_STEP = 76  # of the step, read at two metres
LONGEST_IN_THE_POT = 20 * 60  # minutes; common practice, no source
EVERY = 20_000  # milliseconds between two looks at the clock


def pot_name(pot: PotNow) -> str:
    """'1', or 'tray' for a bath that is in no pot."""
    return "tray" if pot.pot is None else str(int(pot.pot))


class PotCards(QWidget):
    """All pots with yarn in them; a card takes its bath in hand, and its minutes go by themselves.
    """

    chosen = Signal(int)  # bath

    def __init__(self, clock: Callable[[], datetime]) -> None:
        super().__init__()
        self.cards: list[PotCard] = []
        self._clock = clock
        self._title = Words("", Size.LEAD, bold=True)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)
        self._column.addWidget(self._title)
        self._flow: QWidget | None = None
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.tick)
        self._timer.start(EVERY)

    def show_pots(self, pots: Sequence[PotAtWork]) -> None:
        """Show these pots, the one that was filled first first."""
        if self._flow is not None:
            self._flow.hide()
            self._flow.deleteLater()
        self.cards = [PotCard(pot) for pot in pots]
        for card in self.cards:
            card.clicked.connect(partial(self.chosen.emit, card.pot.bath))
        self._flow = Actions(*self.cards) if pots else None
        self._title.setText("In the pots" if pots else "All pots are empty.")
        self.tick()
        if self._flow is not None:
            self._column.addWidget(self._flow)

    def tick(self) -> None:
        """Look at the clock."""
        now = self._clock() if self.cards else None
        for card in self.cards:
            if now is not None:
                card.show_time(now)


def step_words(work: PotAtWork, at: datetime) -> tuple[str, str]:
    """Its minutes, and what they are of: ('12', 'heat up, 85 °C'), ('+4', 'over: ...') after it.

    What lies in a pot for most of a day is what gets mixed up: then it says so before all else.
    """
    minutes = (at - work.pot.since) // timedelta(minutes=1)
    if work.steams:
        short = f", {LEAST_STEAM} at least" if minutes < LEAST_STEAM else ""
        return str(minutes), f"minutes in the steamer{short}"
    if minutes > LONGEST_IN_THE_POT:
        return "", f"in the pot for {minutes // 60} h: lift it, or scan where it lies now"
    step = work.steps.now
    if step is None:
        return "", "all steps are done: cool, then lift" if work.steps.steps else ""
    heat = "" if step.decidegrees is None else f", {step.decidegrees / 10:g} °C"
    left = work.steps.minutes_left(at)
    if left is not None and left < 0:
        return f"+{-left}", f"over: {step.words}{heat}"
    return "" if left is None else str(left), f"{step.words}{heat}"


class PotCard(QAbstractButton):
    """One pot: its number huge, the minutes of its step, its lots, colourway and skeins."""

    def __init__(self, work: PotAtWork) -> None:
        super().__init__()
        self.work = work
        self.pot = pot = work.pot
        self.minutes, self.step = "", ""
        self._has_step = False
        count = sum(lot.count for lot in pot.lots)
        self._feet = (skeins(count), f"since {moment_words(pot.since)}")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_time(self, now: datetime) -> None:
        """How many minutes are left of its step by this clock."""
        self.minutes, self.step = step_words(self.work, now)
        if bool(self.step) != self._has_step:
            self._has_step = bool(self.step)
            self.updateGeometry()
        codes = " and ".join(lot.code for lot in self.pot.lots)
        step = f"{self.minutes} min {self.step}" if self.minutes else self.step
        if self.work.steams:
            step = f"{self.minutes} {self.step}"
        words = (f"pot {pot_name(self.pot)}: {codes}", self.pot.colourway, *self._feet, step)
        self.setAccessibleName(", ".join(filter(None, words)))
        self.update()

    def sizeHint(self) -> QSize:
        lines = _CODE * len(self.pot.lots) + 2 * _NAME + 2 * _FOOT
        step = look().grid(_STEP) + Gap.SMALL if self._has_step else 0
        return QSize(look().grid(_WIDTH), look().grid(lines) + 2 * _PAD + 2 * Gap.HAIR + step)

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
        if self._has_step:
            high = look().grid(_STEP)
            self._draw_step(
                painter, QRectF(inner.left(), inner.bottom() - high, inner.width(), high))
            inner.setBottom(inner.bottom() - high - Gap.SMALL)
        left = self._draw_number(painter, inner)
        swatch = QRectF(
            inner.right() - look().grid(64), inner.top(), look().grid(64), inner.height()
        )
        draw_swatch(painter, swatch, self.pot.swatch)
        words = QRectF(left, inner.top(), swatch.left() - Gap.LINE - left, inner.height())
        self._draw_words(painter, words)
        if self.hasFocus():
            draw_focus(painter, box)

    def _draw_step(self, painter: QPainter, box: QRectF) -> None:
        """The minutes as large as the pot's number, and what they are of."""
        painter.setPen(QColor(look().colours.ink))
        left = box.left()
        if self.minutes:
            font = look().figures(Size.HUGE, bold=True)
            metrics = QFontMetricsF(font)
            painter.setFont(font)
            base = box.center().y() + metrics.capHeight() / 2
            painter.drawText(QPointF(left, base), self.minutes)
            left += metrics.horizontalAdvance(self.minutes) + Gap.SMALL
            small = look().font(Size.LEAD)
            painter.setFont(small)
            if not self.work.steams:
                painter.drawText(QPointF(left, base), "min")
                left += QFontMetricsF(small).horizontalAdvance("min") + Gap.PART
        painter.setFont(look().font(Size.TITLE, bold=True))
        metrics = QFontMetricsF(painter.font())
        lines = 1 if metrics.horizontalAdvance(self.step) <= box.right() - left else 2
        top = box.center().y() - lines * metrics.height() / 2
        draw_two_lines(painter, QRectF(left, top, box.right() - left, box.height()), self.step)

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
        draw_two_lines(painter, name, self.pot.colourway)
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
