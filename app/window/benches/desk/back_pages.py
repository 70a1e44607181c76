"""The further pages of the desk, each with what it asks of the book and does in it."""

from datetime import timedelta
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from app.calculations.codes import Kind, numbered
from app.calculations.moments import clock_words
from app.documents.plates import Plate, action_plates, plate_for, plate_sheets
from app.documents.scanner_plate import scanner_test_plate
from app.lookups.holds import HoldFacts, live_holds
from app.lookups.past_recalls import past_recalls
from app.lookups.plates import PlatesMade, plates_made
from app.lookups.recent import entries
from app.lookups.studio import everyone, tag_words
from app.lookups.warned import warned
from app.problems import Problem
from app.store.copies import Copy, make_copy
from app.store.journal import verify
from app.window.bench import Bench
from app.window.benches.desk.balances_page import BalancesPage, balances
from app.window.benches.desk.book_page import BookPage
from app.window.benches.desk.clock_card import Clock
from app.window.benches.desk.faults import Faults
from app.window.benches.desk.holds_page import HoldsPage, stopped
from app.window.benches.desk.people_page import PeoplePage
from app.window.benches.desk.plates_page import PlatesPage
from app.window.benches.desk.questions import why_lift
from app.window.benches.desk.shop_page import Shop
from app.window.benches.desk.tags_page import TagsAndPrinters
from app.window.papers import keep, open_paper
from app.window.parts.why_card import WhyCard
from app.window.problem_box import show_failure
from app.work.bundling import make_plates
from app.work.holding import lift_hold
from app.work.people import enrol, retire
from app.work.studio import choose


class BackPages(QObject):
    """Holds, the book, people, plates; `held_thing` gives a hold to be shown."""

    held_thing = Signal(object)  # HoldFacts
    held_now = Signal(int)

    def __init__(self, bench: Bench, bench_plates: tuple[Plate, ...]) -> None:
        super().__init__(bench)
        self._bench, self._bench_plates = bench, bench_plates
        self.holds, self.book = HoldsPage(), BookPage()
        self.people, self.plates = PeoplePage(), PlatesPage()
        self.balances = BalancesPage()
        self.shop, self.clock, self.faults = Shop(bench), Clock(bench), Faults(bench)
        self.tags = TagsAndPrinters(bench)
        self.book.put_first(self.clock.card)
        self._made: dict[Kind, PlatesMade] = {}
        self.holds.opened.connect(self.held_thing)
        self.holds.lift.connect(self._ask_lift)
        self.book.verify_key.clicked.connect(self._verify)
        self.book.copy_key.clicked.connect(self._copy)
        self.book.more.connect(lambda limit: bench.ask(self.book.show_entries, entries, limit))
        self.people.enrolled.connect(self._enrol)
        self.people.leaving.connect(lambda initials: bench.do(retire, initials))
        self.people.studio.chosen.connect(self._keep_words)
        self.plates.made.connect(self._make)
        self.plates.paper.connect(self._paper_again)
        self.plates.scanners.named.connect(self._name_scanner)
        self.plates.scanners.forgotten.connect(self._forget_scanner)
        self.plates.check.paper_key.clicked.connect(
            lambda: self._paper(scanner_test_plate, "scanner-check.pdf"))

    def look_again(self, page: QWidget) -> None:
        """Ask for what this page shows, and always how much is on hold."""
        ask = self._bench.ask
        ask(self._count_holds, live_holds)
        if page is self.holds:
            ask(self.holds.show_holds, stopped)
            ask(self.holds.kept.show_recalls, past_recalls)
        elif page is self.book:
            around = self._bench.around
            ask(self.book.show_entries, entries, self.book.limit)
            day = around.session.now().astimezone().replace(
                hour=0, minute=0, second=0, microsecond=0)
            ask(self.book.show_warned, warned, day, day + timedelta(days=1))
            self.clock.look_again()
            around.background.read(self, around.session.last_copy, self.book.show_copy)
        elif page is self.people:
            ask(self._show_people, everyone)
            ask(self.people.studio.show_words, tag_words)
        elif page is self.plates:
            ask(self._show_plates, plates_made)
            self._show_scanners()
        elif page is self.balances:
            ask(self.balances.show_balances, balances, self._bench.around.session.now())
        for whole in (self.faults, self.shop, self.tags):
            if page is whole.page:
                whole.look_again()

    def _show_scanners(self) -> None:
        scanners = self._bench.around.scanners
        self.plates.scanners.show_scanners(scanners.names if scanners else {})

    def _name_scanner(self, sign: str, name: str) -> None:
        if self._bench.around.scanners is not None:
            self._bench.around.scanners.name(sign, name)
            self._bench.say(f"the scanner that begins with {sign} is {name}")
        self.plates.scanners.clear()
        self._show_scanners()

    def _forget_scanner(self, sign: str) -> None:
        if self._bench.around.scanners is not None:
            self._bench.around.scanners.forget(sign)
        self._show_scanners()

    def _count_holds(self, holds: tuple[HoldFacts, ...]) -> None:
        self.held_now.emit(len(holds))

    def _ask_lift(self, one: HoldFacts) -> None:
        card = WhyCard(why_lift(one))
        card.said.connect(lambda why: self._bench.do(
            lift_hold, one.id, why, then=lambda _done: self.holds.ask_why(None)))
        card.left.connect(lambda: self.holds.ask_why(None))
        self.holds.ask_why(card)

    def _keep_words(self, words: dict[str, str]) -> None:
        self._bench.do(choose, words, then=lambda _done: self.people.studio.kept())

    def _verify(self) -> None:
        session, page = self._bench.around.session, self.book
        page.show_trouble("It is being checked …")

        def failed(error: BaseException) -> None:
            page.show_trouble(str(error))
            if not isinstance(error, Problem):
                show_failure(self._bench, error)

        self._bench.around.background.read(
            self, lambda: session.ask(verify), page.show_verdict, failed)

    def _copy(self) -> None:
        session = self._bench.around.session
        book = session.book.path

        def made(copy: Copy) -> None:
            self.book.show_copy(
                f"copied and checked at {clock_words(copy.made)}: {copy.path.name}")

        self._bench.around.background.read(
            self, lambda: make_copy(book, session.book.clock(), "by hand"), made)

    def _enrol(self, initials: str, name: str) -> None:
        self._bench.do(enrol, initials, name, then=lambda _done: self.people.clear())

    def _show_people(self, people: Any) -> None:
        self.people.show_people(people, self._bench.around.session.person)

    def _show_plates(self, plates: tuple[PlatesMade, ...]) -> None:
        self._made = {one.kind: one for one in plates}
        self.plates.show_plates(plates)

    def _make(self, kind: Kind, numbers: range, words: str) -> None:
        self._bench.do(make_plates, kind, list(numbers), words,
                       then=lambda _done: self._paper_of(kind, numbers, [words] * len(numbers)))

    def _paper_again(self, kind: Kind | None) -> None:
        if kind is None:
            plates = (*action_plates(), *self._bench_plates)
            self._paper(lambda: plate_sheets(plates), "actions-and-benches.pdf")
        else:
            made = self._made[kind]
            self._paper_of(kind, made.numbers, made.words)

    def _paper_of(self, kind: Kind, numbers: Any, words: Any) -> None:
        plates = [plate_for(numbered(kind, number).text, name)
                  for number, name in zip(numbers, words, strict=True)]
        first, last = min(numbers), max(numbers)
        which = f"{first}" if first == last else f"{first}-to-{last}"
        self._paper(lambda: plate_sheets(plates), f"{kind.value}-{which}.pdf")

    def _paper(self, draw: Any, name: str) -> None:
        around = self._bench.around
        book = around.session.book.path

        def made() -> Path:
            return keep(book, "plates", name, draw())

        def shown(path: Path) -> None:
            there = "" if open_paper(path) else f" in {path.parent}"
            self._bench.say(f"The paper is {path.name}{there}.")

        around.background.read(self, made, shown)
