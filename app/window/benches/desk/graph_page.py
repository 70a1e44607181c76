"""The trail of a thing as a picture: where from to the left, where to to the right."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from app.documents.trail_on_paper import KEY
from app.documents.yarn import Certainty
from app.exchange.trail_pictures import Drawn, sentences, spoken
from app.lookups.things import Found
from app.window.benches.desk.desk_words import kind_words
from app.window.look.look import Gap, Size, look
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import to_top
from app.window.parts.take_down import take_down
from app.window.parts.trail_drawing import draw_stroke
from app.window.parts.trail_graph import TrailGraph
from app.window.parts.words import SECOND, Words


class GraphPage(QWidget):
    """The picture, the same in words, and the keys to move about in it."""

    def __init__(self) -> None:
        super().__init__()
        self.shown: Drawn | None = None
        self.title, self.together = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.none = Words()
        self.graph = TrailGraph()
        self.lines: list[Words] = []
        self.back_key = KeyButton("Back", "F8")
        self.near_key, self.far_key = KeyButton("Nearer", "+"), KeyButton("Further", "-")
        self.whole_key = KeyButton("Whole", "0")
        self.words_key = KeyButton("In words", "W")
        self.fold_key = KeyButton("Fold all", "Z")
        self.pdf_key, self.svg_key = KeyButton("As PDF", "P"), KeyButton("As SVG", "V")
        self._in_words, self._said = Card(), QVBoxLayout()
        self._said.setSpacing(Gap.SMALL)
        self._in_words.add(self._said)
        self._key = Actions(*(_KindOfYarn(*one) for one in KEY), Words(
            "Arrow keys go along the yarn, Enter opens what the ring is on.", Size.SMALL,
            wrap=False))
        self._lay_out()
        self._join()

    def show_trail(self, drawn: Drawn | None, found: Found | None = None) -> None:
        """Show another trail, or the same as it is now; none says what has no trail."""
        self.shown = drawn
        alone = drawn is None or len(drawn.graph.knots) < 2
        self.title.setText(drawn.title if drawn else "No trail to draw")
        self.together.setText(drawn.together if drawn else "")
        self.together.setVisible(bool(drawn and drawn.together))
        self.none.setText(_nothing(drawn, found) if alone else "")
        self.none.setVisible(alone)
        self.fold_key.setVisible(bool(drawn and drawn.graph.opened))
        for key in (self.words_key, self.pdf_key, self.svg_key):
            key.setVisible(not alone)
        if drawn is None:
            self.graph.clear()
        else:
            self.graph.show_picture(drawn.picture, drawn.graph.here.key, {
                knot.key: spoken(knot) for knot in drawn.graph.knots})
        self._say(drawn)
        self.turn_to_words(self.in_words)

    @property
    def in_words(self) -> bool:
        """Whether the sentences are shown in place of the picture."""
        return self.words_key.isChecked()

    def turn_to_words(self, words: bool) -> None:
        """The sentences in place of the picture, or the picture again."""
        alone = self.shown is None or len(self.shown.graph.knots) < 2
        self.words_key.setChecked(words)
        self.words_key.say("As a picture" if words else "In words")
        self._in_words.setVisible(words and not alone)
        for part in (self.graph, self._key, self.near_key, self.far_key, self.whole_key):
            part.setVisible(not words and not alone)
        to_top(self)
        if not words:
            self.graph.setFocus()

    def _say(self, drawn: Drawn | None) -> None:
        take_down(self._said)
        self.lines = []
        for title, said in sentences(drawn.graph) if drawn else ():
            self._said.addWidget(Words(title, bold=True))
            for sentence in said:
                line = Words(sentence)
                self.lines.append(line)
                self._said.addWidget(line)

    def _lay_out(self) -> None:
        self.words_key.setCheckable(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.SMALL)
        words = QVBoxLayout()
        words.setSpacing(0)
        for part in (self.title, self.together, self.none):
            words.addWidget(part)
        column.addLayout(words)
        column.addWidget(self.graph, 1000)
        column.addWidget(self._in_words)
        column.addWidget(self._key)
        column.addWidget(Actions(self.back_key, self.near_key, self.far_key, self.whole_key,
                                 self.words_key, self.fold_key, self.pdf_key, self.svg_key))
        column.addStretch(1)  # where the picture is not shown

    def _join(self) -> None:
        self.near_key.clicked.connect(lambda: self.graph.nearer())
        self.far_key.clicked.connect(lambda: self.graph.nearer(-1))
        self.whole_key.clicked.connect(self.graph.whole)
        self.words_key.clicked.connect(lambda: self.turn_to_words(self.in_words))


class _KindOfYarn(QWidget):
    """What one of the ways in which yarn is drawn tells."""

    def __init__(self, certainty: Certainty, words: str) -> None:
        super().__init__()
        self._certainty, self._words = certainty, words
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(f"{_LOOKS[certainty]}: {words}")

    def sizeHint(self) -> QSize:
        font = QFontMetricsF(look().font(Size.SMALL))
        return QSize(round(font.horizontalAdvance(self._words)) + _SAMPLE + Gap.SMALL + 2,
                     round(font.height()) + 2)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        path = QPainterPath(QPointF(0, self.height() / 2))
        path.lineTo(QPointF(_SAMPLE, self.height() / 2))
        draw_stroke(painter, path, self._certainty)
        painter.setFont(look().font(Size.SMALL))
        painter.setPen(QColor(look().colours.ink))
        painter.drawText(QRectF(self.rect()).adjusted(_SAMPLE + Gap.SMALL, 0, 0, 0),
                         Qt.AlignmentFlag.AlignVCenter, self._words)


_SAMPLE = 44  # pixels of yarn beside its words
_LOOKS = {Certainty.KNOWN: "whole yarn", Certainty.PARTLY: "opened yarn",
          Certainty.POOL: "dashed yarn", Certainty.UNKNOWN: "dotted yarn"}


def _nothing(drawn: Drawn | None, found: Found | None) -> str:
    """What to do where there is nothing to draw."""
    if drawn is not None:
        return "Nothing lies above it, and nothing was made of it yet."
    if found is None:
        return "Scan anything: its trail is drawn here."
    if found.kind == "disc":
        return "It hangs on nothing now. Scan a disc on a cord, a cone, a lot or a skein."
    if found.kind == "jar":
        return "It was never filled. Scan a jar that was, a cone, a lot or a skein."
    return (f"A {kind_words(found.kind)} has no yarn of its own: scan what lies there, and its "
            "trail is drawn here.")
