"""What the picture of a trail asks of the book, and what it opens, folds and puts on paper."""

from functools import partial

from PySide6.QtCore import QObject, Signal

from app.calculations.moments import clock_words, day_words
from app.documents.graph_sheet import GraphSheet, graph_sheet_pdf
from app.exchange.trail_pictures import Drawn, drawn, sentence_lines
from app.exchange.trail_svg import picture_svg
from app.lookups.graph import Knot
from app.lookups.graph_web import Centre
from app.lookups.things import Found
from app.window.bench import Bench
from app.window.benches.desk.graph_page import GraphPage
from app.window.papers import put_on_paper

_OPENED_BY_CODE = ("cone", "lot", "yarn")


class Graphs(QObject):
    """`asked_for` comes when a picture is wanted, `left` when it is done with.

    `wanted` gives the code of a station that was opened: it is taken in hand.
    """

    asked_for = Signal()
    left = Signal()
    wanted = Signal(str)

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench, self.page = bench, GraphPage()
        self.found: Found | None = None
        self._middle: Found | Centre | None = None
        self._opened: frozenset[str] = frozenset()
        self._turned_to = ""  # the fold that was opened or shut last
        page = self.page
        page.back_key.clicked.connect(self.back)
        page.fold_key.clicked.connect(lambda: self._look(frozenset()))
        page.graph.opened.connect(self._open)
        page.graph.folded.connect(self._fold)
        page.pdf_key.clicked.connect(lambda: self._paper("pdf"))
        page.svg_key.clicked.connect(lambda: self._paper("svg"))

    def open(self, found: Found) -> None:
        """The trail of another thing in hand."""
        self.found = self._middle = found
        self.asked_for.emit()
        self._look(frozenset())

    def look_again(self) -> None:
        """The same as it is now."""
        if self._middle is not None:
            self._look(self._opened)

    def back(self) -> None:
        """From a station without a code to the thing in hand; from there to its page."""
        if self.found is not None and self._middle is not self.found:
            self.open(self.found)
        else:
            self.left.emit()

    def _look(self, opened: frozenset[str]) -> None:
        if self._middle is not None:
            self._opened = opened
            self._bench.ask(self._show, drawn, self._middle, self._bench.around.session.now(),
                            opened)

    def _show(self, one: Drawn | None) -> None:
        self.page.show_trail(one, self.found)
        stage, self._turned_to = self._turned_to, ""
        if one is not None and stage:
            keys = [knot.key for knot in one.graph.knots if stage in (
                knot.stage, knot.key.partition(":")[2])]
            self.page.graph.go_to(min(keys, key=lambda key: key.startswith("fold:"), default=""))

    def _open(self, key: str) -> None:
        knot = self._knot(key)
        if knot is None:
            return
        if knot.folded:
            self._turned_to = key.partition(":")[2]
            self._look(self._opened | {self._turned_to})
        elif knot.side == "here":
            self.left.emit()
        elif knot.named.code and knot.centre is not None and knot.centre.kind in _OPENED_BY_CODE:
            self.wanted.emit(knot.named.code)
        elif knot.centre is not None:
            self._middle = knot.centre
            self._look(frozenset())

    def _fold(self, key: str) -> None:
        knot = self._knot(key)
        stage = (knot.stage or key.partition(":")[2]) if knot is not None else ""
        if stage in self._opened:
            self._turned_to = stage
            self._look(self._opened - {stage})

    def _knot(self, key: str) -> Knot | None:
        return self.page.shown.knots.get(key) if self.page.shown is not None else None

    def _paper(self, ending: str) -> None:
        one = self.page.shown
        if one is not None:
            code = one.graph.here.named.code or one.graph.here.key
            name = f"picture-{code if self._middle is self.found else one.centre.kind}.{ending}"
            put_on_paper(self._bench, "traces", name, partial(_MAKERS[ending], one),
                         "The picture of the trail")


def _pdf(one: Drawn, person: str) -> bytes:
    when = f"{day_words(one.at)}, {clock_words(one.at)}"
    return graph_sheet_pdf(GraphSheet(
        one.title, one.together, one.picture,
        f"{one.studio or 'studio not named'} · printed {when}, by {person}",
        one.journal_head, one.entry))


def _svg(one: Drawn, _person: str) -> bytes:
    return picture_svg(one.picture, one.title, "\n".join(sentence_lines(one.graph)))


_MAKERS = {"pdf": _pdf, "svg": _svg}
