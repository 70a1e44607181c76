"""The tubs, machines and rails in use, each as a card that is read across the room."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from functools import partial

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QVBoxLayout, QWidget

from app.calculations.moments import moment_words
from app.lookups.loads import InPlace, WetCord
from app.window.look.codes_face import code_width, draw_code
from app.window.look.look import Gap, Size, look
from app.window.look.shapes import draw_focus, draw_hold, hold_size
from app.window.parts.card import Actions
from app.window.parts.swatch import Zone, draw_zones, mounted
from app.window.parts.words import Words
from app.work.dividing import skeins

MOST_LINES = 6
_PAD = int(Gap.PART)
_WIDTH, _HEAD, _LINE, _CHIP = 456, 84, 40, 56  # at a text factor of 1


class PlaceCards(QWidget):
    """All places with yarn in them; a card begins a load in its place."""

    chosen = Signal(object)  # InPlace

    def __init__(self) -> None:
        super().__init__()
        self.cards: list[PlaceCard] = []
        self._title = Words("", Size.LEAD, bold=True)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.SMALL)
        self._column.addWidget(self._title)
        self._flow: QWidget | None = None

    def show_places(self, places: Sequence[InPlace], dry: Mapping[int, datetime]) -> None:
        """Show these places, the one that was filled first first, each rail with its hour."""
        if self._flow is not None:
            self._flow.hide()
            self._flow.deleteLater()
        self.cards = [
            PlaceCard(place, dry.get(place.place.id) if place.place else None) for place in places]
        for card in self.cards:
            card.clicked.connect(partial(self.chosen.emit, card.place))
        self._flow = Actions(*self.cards) if places else None
        self._title.setText(
            "In the water and on the rails" if places else "All tubs, machines and rails are empty."
        )
        if self._flow is not None:
            self._column.addWidget(self._flow)


class PlaceCard(QAbstractButton):
    """One place: its number huge, what is done in it since when, and the cords in it."""

    def __init__(self, place: InPlace, dry: datetime | None = None) -> None:
        super().__init__()
        self.place = place
        self.dry = f"dry about {moment_words(dry)}" if dry else ""
        self.lines = place.cords[:MOST_LINES]
        left = place.cords[MOST_LINES:]
        rest = sum(wet.cord.count for wet in left)
        self.more = f"and {len(left)} more: {skeins(rest)}" if left else ""
        what = place.place.what if place.place else "in no place"
        steps = dict.fromkeys(wet.step for wet in place.cords)
        self.head = (
            what,
            _steps(steps, what),
            skeins(sum(one.cord.count for one in place.cords)),
            f"since {moment_words(place.since)}",
        )
        discs = [f"disc {wet.cord.number}, {skeins(wet.cord.count)}" for wet in place.cords]
        words = (f"{what} {self._number()}", *self.head[1:], self.dry, *discs)
        self.setAccessibleName("; ".join(filter(None, words)))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        lines = len(self.lines) + bool(self.more)
        height = look().grid(_HEAD) + lines * look().grid(_LINE) + Gap.SMALL + 2 * _PAD
        return QSize(look().grid(_WIDTH), height)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours, box = look().colours, QRectF(self.rect())
        painter.setPen(Qt.PenStyle.NoPen)
        lifted = self.underMouse() or self.isDown()
        painter.setBrush(QColor(colours.in_hand if lifted else colours.paper))
        painter.drawRoundedRect(box, 6, 6)
        inner = box.adjusted(_PAD, _PAD, -_PAD, -_PAD)
        head = QRectF(inner.left(), inner.top(), inner.width(), look().grid(_HEAD))
        self._draw_head(painter, head)
        y, line = head.bottom() + Gap.SMALL, look().grid(_LINE)
        for wet in self.lines:
            _draw_cord(painter, QRectF(inner.left(), y, inner.width(), line), wet)
            y += line
        if self.more:
            painter.setPen(QColor(colours.second_ink))
            painter.setFont(look().font(Size.PLAIN))
            painter.drawText(
                QRectF(inner.left(), y, inner.width(), line),
                Qt.AlignmentFlag.AlignVCenter,
                self.more,
            )
        if self.hasFocus():
            draw_focus(painter, box)

    def _number(self) -> str:
        return str(self.place.place.number) if self.place.place else "?"

    def _draw_head(self, painter: QPainter, box: QRectF) -> None:
        """The number, read at two metres, and beside it what, how many and since when."""
        colours, number = look().colours, self._number()
        font = look().figures(Size.HUGE, bold=True)
        metrics = QFontMetricsF(font)
        width = max(look().grid(56), metrics.horizontalAdvance(number))
        painter.setFont(font)
        painter.setPen(QColor(colours.ink))
        base = box.center().y() + metrics.capHeight() / 2
        at = box.left() + (width - metrics.horizontalAdvance(number)) / 2
        painter.drawText(QPointF(at, base), number)
        words = box.adjusted(width + Gap.PART, 0, 0, 0)
        what, step, count, since = self.head
        title = look().font(Size.TITLE, bold=True)
        for text, face, ink, share in (
            (f"{what}: {step}" if step else what, title, colours.ink, 0),
            (
                f"{count} · {self.dry or since}", look().font(Size.PLAIN, bold=bool(self.dry)),
                colours.ink if self.dry else colours.second_ink, 1,
            ),
        ):
            painter.setFont(face)
            painter.setPen(QColor(ink))
            half = words.height() / 2
            line = QRectF(words.left(), words.top() + share * half, words.width(), half)
            shown = QFontMetricsF(face).elidedText(text, Qt.TextElideMode.ElideRight, line.width())
            painter.drawText(line, Qt.AlignmentFlag.AlignVCenter, shown)


def _steps(steps: dict[str, None], what: str) -> str:
    """What is done there, unless the place says it already: 'wash', 'wash and spin'."""
    return " and ".join(step for step in steps if step not in what.casefold())


def _draw_cord(painter: QPainter, box: QRectF, wet: WetCord) -> None:
    """Its colour, its disc, how many, its lot; HOLD in outline."""
    colours, cord = look().colours, wet.cord
    chip = QRectF(box.left(), box.top() + 3, look().grid(_CHIP), box.height() - 6)
    if cord.swatch:
        draw_zones(painter, mounted(painter, chip), [Zone(cord.swatch)])
    else:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(colours.edge), 1, Qt.PenStyle.DashLine))
        painter.drawRect(chip)
    disc, code = (look().font(size, bold=True, codes=True) for size in (Size.TITLE, Size.LEAD))
    count = look().figures(Size.TITLE, bold=True)
    middle = box.center().y() + QFontMetricsF(disc).capHeight() / 2
    painter.setPen(QColor(colours.ink))
    x = chip.right() + Gap.LINE
    draw_code(painter, QPointF(x, middle), cord.number, disc)
    x += code_width("000", disc) + Gap.PART
    painter.setFont(count)
    wide = QFontMetricsF(count).horizontalAdvance("00")
    words = str(cord.count)
    painter.drawText(
        QPointF(x + wide - QFontMetricsF(count).horizontalAdvance(words), middle), words
    )
    x += wide + Gap.PART
    lot = cord.lot or "not dyed yet"
    if cord.lot:
        draw_code(painter, QPointF(x, middle), lot, code)
        x += code_width(lot, code)
    else:
        painter.setFont(look().font(Size.PLAIN))
        painter.drawText(QPointF(x, middle), lot)
        x += QFontMetricsF(painter.font()).horizontalAdvance(lot)
    if cord.held:
        width, height = hold_size(look().px(Size.SMALL))
        plate = QRectF(x + Gap.LINE, box.center().y() - height / 2, width, height)
        draw_hold(painter, plate, look().px(Size.SMALL), here=False)
