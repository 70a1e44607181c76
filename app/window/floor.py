"""The work floor: the rail of benches, the trail, what must be said, and the bench that is open."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from app.problems import Problem
from app.window.bench import Around, Bench
from app.window.bench_rail import BenchRail
from app.window.look.look import Gap, Size
from app.window.parts.findings import Finding, Findings
from app.window.parts.station_tag import Stop
from app.window.parts.words import Words
from app.window.parts.yarn_trail import YarnTrail
from app.window.places import Place
from app.window.strips import ProblemStrip, SignOn


class Floor(QWidget):
    """Opens benches and shows what belongs above them; before the book is open, a sentence."""

    moved = Signal(object)  # Place

    def __init__(self, places: Sequence[Place]) -> None:
        super().__init__()
        self.setProperty("ground", "surround")
        self.places = places
        self.rail = BenchRail(places)
        self.trail, self.findings = YarnTrail(), Findings()
        self.problem, self.sign_on = ProblemStrip(), SignOn()
        self._stack = QStackedWidget()
        self._pages: dict[Place, _Page] = {}
        self._around: Around | None = None
        self._here: Place | None = None
        self._answered: Callable[[Finding, str], None] = lambda _finding, _answer: None
        self.trail.hide()
        self.rail.setEnabled(False)
        self._lay_out()
        self.rail.chosen.connect(self.open_place)
        self.findings.answered.connect(lambda finding, answer: self._answered(finding, answer))

    def show_sentence(self, sentence: str) -> None:
        """Say what is going on while no bench is open."""
        words = Words(sentence, Size.LEAD, ink="surround")
        words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.show_page(words)

    def show_page(self, page: QWidget) -> None:
        """Show something that is no bench."""
        self._stack.addWidget(page)
        self._stack.setCurrentWidget(page)

    def let_in(self, around: Around) -> None:
        """The book is open: benches can be entered."""
        self._around = around
        self.rail.setEnabled(True)

    def bench(self) -> Bench | None:
        """The bench that is open."""
        page = self._stack.currentWidget()
        return page.bench if isinstance(page, _Page) else None

    def open_place(self, place: Place) -> Bench | None:
        """Open a bench; none while the book is not open."""
        if self._around is None:
            return None
        if place not in self._pages:
            self._pages[place] = _Page(place.bench_class()(self._around))
            self._stack.addWidget(self._pages[place])
        page = self._pages[place]
        if place is not self._here:
            self._here = place
            self.put_away()
            self.show_trail(())
            self.found(())
            self._stack.setCurrentWidget(page)
            self.rail.mark(place)
            page.bench.entered()
            self.moved.emit(place)
        return page.bench

    def show_trail(self, stops: Sequence[Stop]) -> None:
        """The trail of the thing in hand; none hides the yarn."""
        self.trail.setVisible(bool(stops))
        self.trail.show_stations(stops)

    def found(
        self,
        findings: Sequence[Finding],
        answered: Callable[[Finding, str], None] = lambda _finding, _answer: None,
    ) -> None:
        """What looks wrong; `answered` gets what the person says to it."""
        self._answered = answered
        self.findings.show_findings(findings)

    def trouble(
        self, problem: Problem, offer: str = "", way: Callable[[], None] | None = None
    ) -> None:
        """Say what could not be done, where the person looks."""
        QApplication.beep()
        self.problem.show_problem(problem, offer, way)

    def asks(self) -> bool:
        """Whether something was said or asked that is still to be put away."""
        return self.problem.isVisible() or self.sign_on.isVisible()

    def put_away(self) -> None:
        """Work goes on: what was said and asked is out of the way."""
        self.problem.hide()
        self.sign_on.hide()

    def _lay_out(self) -> None:
        column = QVBoxLayout()
        column.setContentsMargins(0, 0, 0, Gap.PART)
        column.setSpacing(0)
        column.addWidget(self.trail)
        inner = QVBoxLayout()
        inner.setContentsMargins(Gap.PART, Gap.PART, Gap.PART, 0)
        inner.setSpacing(Gap.LINE)
        for widget in (self.sign_on, self.problem, self.findings):
            inner.addWidget(widget)
        inner.addWidget(self._stack, 1)
        column.addLayout(inner, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.rail)
        row.addLayout(column, 1)


class _Page(QScrollArea):
    """A bench in its place; it scrolls when the text is large."""

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self.bench = bench
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidgetResizable(True)
        self.setWidget(bench)
