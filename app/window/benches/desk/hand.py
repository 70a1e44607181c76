"""What is in hand at the desk: found, chosen, shown; held, cleared, freed, put on paper."""

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.exchange.reports import trace_pdf
from app.lookups.holds import HoldFacts, live_holds
from app.lookups.recognising import MayBeOf, StillToSay
from app.lookups.things import Found, by_name
from app.problems import NotFound
from app.scanning.gaps import said_with_gaps
from app.scanning.how_known import Came
from app.scanning.read_back import ReadBack, read_with_gaps
from app.scanning.resolve import Resolution, resolve_many
from app.window.bench import Bench
from app.window.benches.desk.choices_page import ChoicesPage
from app.window.benches.desk.empty_page import NEWEST, EmptyPage
from app.window.benches.desk.looking import Answer, InHand, find, look_at
from app.window.benches.desk.matching import Matching
from app.window.benches.desk.questions import (
    why_clear,
    why_hold,
    why_hold_batch,
    why_lift,
    why_lost,
    why_recognised,
)
from app.window.benches.desk.reporting import Reporting
from app.window.benches.desk.thing_page import ThingPage
from app.window.in_turn import InTurn
from app.window.papers import put_on_paper
from app.window.parts.read_page import ReadPage
from app.window.parts.sight import to_top
from app.window.parts.why_card import Why, WhyCard
from app.window.photo_reading import PhotoReading
from app.work.holding import clear, hold, lift_hold
from app.work.mixing import lose, recognise


class Hand(QWidget):
    """The first view: empty, things to choose from, or one thing with its trail.

    `came` says how the thing in hand was named: what is saved of it is as sure as that.
    """

    turned = Signal(bool)  # whether one thing is shown now

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench, self._in_turn = bench, InTurn(bench)
        self.thing: InHand | None = None
        self.hangs = True  # its trail on the yarn; not while it is drawn larger
        self.came = Came.SCAN
        self.read = ReadPage()
        self.photos = PhotoReading(bench, self._show_read)
        self.empty, self.choices, self.page = EmptyPage(), ChoicesPage(), ThingPage()
        self._matching, self.reporting = Matching(bench, self), Reporting(bench, self)
        self._views: tuple[QWidget, ...] = (self.empty, self.choices, self.read, self.page)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for view in self._views:
            column.addWidget(view)
        self._join()
        self._turn_to(self.empty)

    def seek(self, text: str, *, typed: bool) -> None:
        """Find what was scanned or typed; a scan may answer which lot a skein is of."""
        if typed and self.reporting.waits():
            return
        gaps = said_with_gaps(text) if typed else None
        if gaps is not None:
            came = Came.GAPS if "?" in text else Came.TOLD
            self._in_turn.ask(self._show_read, read_with_gaps, *gaps, came)
        elif typed or not (self._matching.takes(text) or self.reporting.scanned(text)):
            self._in_turn.ask(self._found, find, text, typed, self._now())

    def seek_all(self, codes: Sequence[str]) -> None:
        """Find all of a pasted list."""
        self._in_turn.ask(lambda found: self._show_list(codes, found), resolve_many, list(codes))

    def open(self, thing: Found, came: Came = Came.SCAN) -> None:
        """Take up a thing that is known already."""
        self._in_turn.ask(lambda found: self._show(found, came), look_at, thing, self._now())

    def ask(self, why: Why, answered: Callable[[str], None]) -> WhyCard:
        """Ask it under the name of the thing in hand; `answered` gets the words.

        While a fault is being told nothing else is asked: what is written of it stays.
        """
        card = WhyCard(why)
        if not self.reporting.waits():
            card.said.connect(answered)
            card.left.connect(lambda: self.page.ask_why(None))
            self.page.ask_why(card)
        return card

    def do(self, deed: Callable[..., Any], *args: Any, **terms: Any) -> None:
        """Do it; the question that was answered is taken away."""
        self._bench.do(deed, *args, then=lambda _done: self.answered(), **terms)

    def answered(self) -> None:
        """The question goes; letters are keys of the bench again."""
        self.page.ask_why(None)
        self._bench.setFocus()

    def put_away(self) -> None:
        """The hand is empty again."""
        self.thing = None
        self.page.ask_why(None)
        self._turn_to(self.empty)
        self.look_again()

    def look_again(self) -> None:
        """Show what is in hand as it is now."""
        if self.thing is not None:
            self._in_turn.ask(self._show_again, look_at, self.thing.found, self._now())
        else:
            self._bench.ask(self.empty.show_newest, by_name, "", NEWEST)
            self._bench.ask(self.empty.show_holds, live_holds)

    def show_trail(self) -> None:
        """Hang the trail of the thing in hand on the yarn."""
        in_sight = (self.hangs and self.thing is not None
                    and self.page.isVisibleTo(self._bench))
        self._bench.around.show_trail(self.thing.traced.stops if self.thing and in_sight else ())

    def hold_plate(self) -> None:
        """HOLD was scanned: what was scanned before it is meant."""
        self._in_turn.then(self._hold_plate)

    def done_plate(self) -> None:
        """DONE was scanned: the question that is open is answered."""
        self._in_turn.then(self._done_plate)

    def count_plate(self, number: int) -> None:
        """COUNT was scanned: it chooses from what is offered."""
        self._in_turn.then(lambda: self._count_plate(number))

    def looked_plate(self, *, good: bool) -> None:
        """FAULT or SEEN GOOD was scanned: what is in hand is meant."""
        self._in_turn.then(self.reporting.all_good if good else self.reporting.begin)

    def choose(self, figure: str) -> bool:
        """A figure was typed: choose from the list, if one is in sight."""
        number = int(figure) if figure.isdecimal() else 0
        if self.read.isVisibleTo(self):
            return self.read.choose(number)
        return self.choices.isVisibleTo(self) and self.choices.rows.choose(number)

    def _found(self, answer: Answer) -> None:
        told = answer.resolution
        if answer.in_hand is not None:
            self._show(answer.in_hand)
            self.page.near.show_things(told.choices)
            self.page.show_near(bool(told.choices))
            self._bench.say(told.sentence)
        elif told.choices:
            self.choices.show_choices(told)
            self._turn_to(self.choices)
        else:
            self._bench.around.trouble(NotFound(told.sentence, told.next_step))

    def _show_list(self, codes: Sequence[str], found: Sequence[Resolution]) -> None:
        self.choices.show_list(codes, found)
        self._turn_to(self.choices)

    def _show_read(self, read: ReadBack) -> None:
        """What was read of photographs, or may be meant by a code with gaps."""
        self.read.show_read(read)
        self._turn_to(self.read)
        self.read.begin()

    def _show(self, thing: InHand, came: Came = Came.SCAN) -> None:
        self.came = came
        self.page.ask_why(None)
        self.page.show_near(False)
        self._show_again(thing)
        self._turn_to(self.page)
        self._bench.setFocus()  # its keys are pressed as they are shown

    def _show_again(self, thing: InHand) -> None:
        self.thing = thing
        self.page.show_thing(thing)
        self.page.name.show_came(self.came)
        self.show_trail()

    def _turn_to(self, shown: QWidget) -> None:
        for view in self._views:
            view.setVisible(view is shown)
        to_top(self)
        self.show_trail()
        self.turned.emit(shown is self.page)

    def _hold_plate(self) -> None:
        if self.thing is None or not self.page.isVisibleTo(self):
            self._refuse("Nothing is in hand to hold.", "Scan the thing first, then HOLD.")
        elif self.thing.source is None:
            self._refuse(f"{self.thing.found.shown} cannot be held.",
                         "Scan its lot, its cone or a skein, then HOLD.")
        else:
            self._ask_hold()

    def _done_plate(self) -> None:
        if self.page.why is None:
            self._refuse("Nothing is open here that could be done.")
        else:
            self.page.why.save()

    def _count_plate(self, number: int) -> None:
        asked = self.page.why if self.page.isVisibleTo(self) else None
        if not (asked.choose(number) if asked is not None else self.choose(str(number))):
            self._refuse(f"There is no {number} to choose here.")

    def _refuse(self, what: str, next_step: str = "") -> None:
        self._bench.around.trouble(NotFound(what, next_step))

    def _ask_hold(self) -> None:
        thing = self.thing
        if thing is not None and thing.source is not None:
            source = thing.source
            self.ask(why_hold(thing.found), lambda why: self.do(hold, *source, why))

    def _ask_hold_batch(self, number: int, _checked: bool = False) -> None:
        if self.thing is not None and number < len(self.thing.batches):
            batch = self.thing.batches[number]
            self.ask(why_hold_batch(batch), lambda why: self.do(
                hold, "supplier_lot", batch.id, why))

    def _ask_clear(self, one: HoldFacts) -> None:
        thing = self.thing
        if thing is not None:
            yarn = thing.found.id
            self.ask(why_clear(one, thing.found),
                      lambda why: self.do(clear, one.id, yarn, why))

    def _ask_lift(self, one: HoldFacts) -> None:
        self.ask(why_lift(one), lambda why: self.do(lift_hold, one.id, why))

    def _ask_recognised(self, still: StillToSay, one: MayBeOf) -> None:
        thing = self.thing
        if thing is not None:
            self.ask(why_recognised(thing.found, one), lambda why: self.do(
                recognise, still.yarn, still.pool, one.parent, reason=why))

    def _ask_lost(self, still: StillToSay, count: int) -> None:
        thing = self.thing
        if thing is not None:
            self.ask(why_lost(thing.found, count), lambda why: self.do(
                lose, still.yarn, count, reason=why))

    def _print(self) -> None:
        thing = self.thing
        if thing is not None:
            put_on_paper(self._bench, "traces", f"trace-{thing.found.code}.pdf",
                         lambda person: self._bench.around.session.ask(
                             trace_pdf, thing.found, self._now(), person), "The trace")

    def _now(self) -> Any:
        return self._bench.around.session.now()

    def _join(self) -> None:
        name = self.page.name
        self.empty.newest.chosen.connect(self.open)
        for key in (self.empty.photo_key, self.read.photo_key):
            key.clicked.connect(self.photos.choose)
        self.read.chosen.connect(lambda thing: self.open(thing, self.read.came))
        self.read.copied.connect(lambda _: self._bench.say("the answer can be pasted now"))
        self.choices.chosen.connect(self.open)
        self.page.near.chosen.connect(self.open)
        self.page.opened.connect(lambda code: self.seek(code, typed=False))
        name.hold_key.clicked.connect(self._ask_hold)
        for number, key in enumerate(name.batch_keys):
            key.clicked.connect(partial(self._ask_hold_batch, number))
        name.paper_key.clicked.connect(self._print)
        name.away_key.clicked.connect(self.put_away)
        name.lift.connect(self._ask_lift)
        self.page.evidence.recognised.connect(self._ask_recognised)
        self.page.evidence.lost.connect(self._ask_lost)
        name.clear.connect(self._ask_clear)
