"""The inspecting bench: a lot by the window, held against its standard, and one key a verdict."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QWidget

from app.calculations.codes import Kind, read
from app.calculations.grey_scales import Step
from app.calculations.shade import Colour
from app.exchange.shades_in import see_shades, take_shades_in
from app.lookups.things import Found, by_code
from app.lookups.to_inspect import to_inspect
from app.lookups.trails import trail_of
from app.problems import Refused
from app.window.bench import Around, Bench
from app.window.benches.inspecting.asks import EyeQuestion, SwatchQuestion, WordsQuestion
from app.window.benches.inspecting.inspecting_words import REASONS
from app.window.benches.inspecting.list_card import ReadingsList
from app.window.benches.inspecting.looking import Inspected, inspected, scanned
from app.window.benches.inspecting.lot_card import LotCard
from app.window.benches.inspecting.nothing import Nothing
from app.window.benches.inspecting.reading_card import ReadingCard
from app.window.faults.at_hand import FaultsAtHand
from app.window.faults.fault_card import Seen
from app.window.in_turn import InTurn
from app.window.list_look import look_at
from app.window.parts.action_plates import COUNTS, DONE, HOLD, SECONDS
from app.window.parts.sight import bring, to_top
from app.window.parts.station_tag import Stop
from app.window.shades.showing import Showing
from app.work.inspecting import (
    ShadeIn,
    VerdictIn,
    choose_swatch,
    decide,
    grey_step,
    read_shade,
)

_CONCERNED = frozenset({"shade_reading", "grey_step", "chosen_swatch", "verdict", "hold",
                        "hold_clear", "hold_lift", "dye_lot", "bath", "in_bath"})
_LISTS = "Readings (*.csv *.xlsx *.txt *.cgats *.tsv);;All files (*)"
_KINDS = (Kind.LOT, Kind.SKEIN, Kind.DISC)
_ASKS = {
    "one-off": ("What is it sold as?", "Its name", "Call it so"),
    "seconds": ("Why seconds?", "What is seen", "Seconds"),
    "hold": ("Why a hold? Nothing of it is printed, promised or sold until it is lifted.",
             "What is seen", "Put the hold"),
}


class InspectingBench(Bench):
    """One lot in hand; its questions, the pictures of its colourway, or a file in its place."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("inspecting")
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.found: Inspected | None = None
        self.nothing, self.card, self.list = Nothing(), LotCard(), ReadingsList()
        self.showing = Showing(self)
        self._last_read: Colour | None = None
        self._skein: Found | None = None
        self.in_front = FaultsAtHand(self, self.turn, self._seen, self.card.fault_key,
                                     self.card.good_key)
        self._views = (self.nothing, self.card, self.showing.page, self.list)
        for view in self._views:
            self.body.addWidget(view)
        self.body.addStretch(1)
        self._join()
        self._turn_to(self.nothing)

    def entered(self) -> None:
        self.setFocus()
        self._show_trail()
        self.look_again(_CONCERNED)

    def look_again(self, kinds: frozenset[str]) -> None:
        if not kinds & _CONCERNED:
            return
        self.ask(self.nothing.show_waiting, to_inspect)
        if self.found is not None:
            self.ask(self._show_again, inspected, self.found.lot)
        if not self.showing.page.isHidden():
            self.showing.look_again()

    def take(self, code: str) -> bool:
        """Discs, tags and lots; COUNT is the key with its number, SECONDS and HOLD are verdicts."""
        if read(code).kind in _KINDS:
            self.turn.ask(self._skein_came, by_code, code)
            self.turn.ask(self._take_in_hand, scanned, code, False)
        elif code in COUNTS:
            self.turn.then(lambda: self._count(COUNTS[code]))
        elif code == DONE:
            self.turn.then(self._done)
        elif code in (SECONDS, HOLD):
            self.turn.then(lambda: self._say("seconds" if code == SECONDS else "hold"))
        else:
            return False
        return True

    def seek(self, words: str) -> bool:
        """A lot's code or a disc's number, or a part of one."""
        if not any(character.isdigit() for character in words):
            return False
        self.turn.ask(self._take_in_hand, scanned, words, True)
        return True

    def take_file(self, path: Path) -> bool:
        """Readings of an instrument."""
        self._turn_to(self.list)
        self.list.open(path)
        return True

    def _skein_came(self, found: Found | None) -> None:
        """The skein whose tag was scanned; anything else that is scanned stands for its lot."""
        self._skein = found if found is not None and found.kind == "skein" else None
        self.card.good_key.setVisible(self._skein is not None)

    def _seen(self) -> Seen | None:
        one, lot = self._skein, self.found
        if one is not None and lot is not None and one.code.startswith(f"{lot.code}-"):
            return Seen(one.shown, "inspection", {one.id: one.shown})
        return None if lot is None else Seen(lot.shown, "inspection", lot=lot.lot)

    def _take_in_hand(self, found: Inspected) -> None:
        self.around.found((), lambda _finding, _answer: None)
        self.card.ask(None)
        self._show(found)
        self._turn_to(self.card)

    def _show_again(self, found: Inspected) -> None:
        if self.found is not None and found.lot == self.found.lot:
            self._show(found)

    def _show(self, found: Inspected) -> None:
        self.found = found
        self.card.show_lot(found)

    def _show_trail(self) -> None:
        """Of the lot in hand; a question, the pictures and large text need its room."""
        in_sight = not self.card.isHidden() and not self.card.wants_room
        if self.found is not None and in_sight:
            self.ask(self._trail_came, trail_of, self.found.code)
        else:
            self.around.show_trail(())

    def _trail_came(self, stops: tuple[Stop, ...]) -> None:
        if not self.card.isHidden() and not self.card.wants_room:
            self.around.show_trail(stops)

    def _put_away(self) -> None:
        self.found = self._skein = None
        self._turn_to(self.nothing)

    def _back(self) -> None:
        self._turn_to(self.nothing if self.found is None else self.card)

    def _turn_to(self, view: QWidget) -> None:
        self.setFocus()
        for one in self._views:
            one.setVisible(one is view)
        self._show_trail()
        to_top(self)

    def _count(self, number: int) -> None:
        if not self.showing.page.isHidden():
            self.showing.count(number)
        elif self.card.isHidden() or not self.card.count(number):
            self.around.trouble(Refused(f"COUNT {number} means nothing here; nothing was saved.",
                                        "Scan a lot first, then the number of a key."))

    def _done(self) -> None:
        if not self.list.isHidden():
            self.list.done()
        elif self.card.question is not None:
            self.card.question.done()

    def _say(self, verdict: str) -> None:
        """A verdict: at once, or after its name or reason is said."""
        found = self.found
        if found is None:
            self.around.trouble(Refused("No lot is in hand; nothing was saved.",
                                        "Scan its disc or a tag first."))
            return
        self._back()
        self.card.show_lot(found)
        if verdict not in _ASKS:
            self._decide(VerdictIn(verdict))
            return
        title, asks, does = _ASKS[verdict]
        offered = (f"{found.colourway}, one-off",) if verdict == "one-off" else REASONS
        question = WordsQuestion(title, asks, offered, does)
        question.answered.connect(lambda words: self._decide(
            VerdictIn(verdict, name=words) if verdict == "one-off"
            else VerdictIn(verdict, why=words)))
        self._ask(question)

    def _decide(self, said: VerdictIn) -> None:
        if self.found is not None:
            self.do(decide, self.found.lot, said, then=lambda _done: self._answered())

    def _ask(self, question: WordsQuestion | EyeQuestion | SwatchQuestion | ReadingCard) -> None:
        question.left.connect(self._answered)
        self.card.ask(question)
        self._show_trail()
        bring(question)

    def _answered(self) -> None:
        """The question goes; keys belong to the bench again."""
        self.card.ask(None)
        self._show_trail()
        self.setFocus()

    def _ask_reading(self) -> None:
        found = self.found
        if found is None:
            return
        card = ReadingCard(found.lot, found.standard, self._last_read)
        card.read.connect(self._read)
        self._ask(card)

    def _read(self, one: ShadeIn) -> None:
        self._last_read = one.colour
        self.do(read_shade, one, then=lambda _done: self._answered())

    def _ask_step(self) -> None:
        found = self.found
        if found is None:
            return
        question = EyeQuestion("" if found.before is None else found.before.shown)
        question.answered.connect(self._step)
        self._ask(question)

    def _step(self, step: Step, lamp: str, last: bool) -> None:
        found = self.found
        if found is not None:
            other = found.before.lot if last and found.before is not None else None
            self.do(grey_step, found.lot, step, other, lamp=lamp,
                    then=lambda _done: self._answered())

    def _ask_swatch(self) -> None:
        question = SwatchQuestion()
        question.answered.connect(self._choose_swatch)
        self._ask(question)

    def _choose_swatch(self, swatch: str) -> None:
        if self.found is not None:
            self.do(choose_swatch, self.found.lot, swatch, then=lambda _done: self._answered())

    def _show_shades(self) -> None:
        if self.found is not None:
            self.showing.open(self.found.lot)
            self._turn_to(self.showing.page)

    def _choose_list(self) -> None:
        dialog = QFileDialog(self, "Readings of an instrument", "", _LISTS)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.fileSelected.connect(lambda name: self.take_file(Path(name)))
        dialog.open()

    def _look_at_list(self) -> None:
        asked, session = (self.list.path, self.list.said), self.around.session
        look_at(self, self.list, lambda: session.ask(see_shades, *asked))

    def _take_in(self, leave_out: bool) -> None:
        if self.list.seen is not None:
            self.do(take_shades_in, self.list.seen, leave_out, token=self.list.token,
                    then=lambda _done: self._back())

    def _join(self) -> None:
        card = self.card
        self.nothing.chosen.connect(self.take)
        for key in (self.nothing.list_key, card.list_key):
            key.clicked.connect(self._choose_list)
        card.said.connect(self._say)
        card.read_key.clicked.connect(self._ask_reading)
        card.eye_key.clicked.connect(self._ask_step)
        card.swatch_key.clicked.connect(self._ask_swatch)
        card.shades_key.clicked.connect(self._show_shades)
        card.away_key.clicked.connect(self._put_away)
        self.showing.page.left.connect(self._back)
        self.showing.page.wanted.connect(lambda _lot, code: self.take(code))
        self.list.look_wanted.connect(self._look_at_list)
        self.list.complete.connect(self._take_in)
        self.list.left.connect(self._back)
