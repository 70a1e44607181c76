"""A cord on the table: its ties are counted, then the scissors may come."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.lookups.bundles import IN_POT, WOUND, BundleFacts
from app.window.benches.finishing.cord_head import CordHead
from app.window.benches.finishing.strange import StrangeTies
from app.window.benches.finishing.tally import Tally
from app.window.benches.finishing.tie_panel import NARROW, WIDE, TiePanel
from app.window.look.look import Gap
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import Words

_STAGES = {
    WOUND: "The book does not have it dyed yet: is it the right disc?",
    IN_POT: "The book has it in the pot still: it was never lifted there.",
}


class Counting(Card):
    """Counts the ties of one cord; `done` when all are counted and DONE was said."""

    done = Signal()
    left = Signal()

    def __init__(self, cord: BundleFacts, tally: Tally) -> None:
        super().__init__(in_hand=True)
        self.cord, self.tally = cord, tally
        self.panels: list[TiePanel] = []
        self.look_for = Words(bold=True)
        self.finish = KeyButton("Counted", "Enter", strong=True)
        self.another = KeyButton("Another tie", "T")
        self.fault = KeyButton("A fault", "F1")
        leave = KeyButton("Leave it", "F8")
        self.strange = StrangeTies()
        self.strange.hide()
        self.strange.chosen.connect(self._add_strange)
        self.finish.clicked.connect(self.say_done)
        self.another.clicked.connect(self.ask_strange)
        leave.clicked.connect(self.left)
        self._place = QVBoxLayout()
        self._place.setSpacing(Gap.SMALL)
        self.add(CordHead(cord), self.look_for, self._place, self.strange)
        self.add_last(Actions(self.finish, self.another, self.fault, leave))
        self._lay_panels()
        self.show_look_for(())

    def show_look_for(self, sentences: Sequence[str]) -> None:
        """What to look for before the ties are gone."""
        stage = _STAGES.get(self.cord.stage)
        words = [*([stage] if stage else []), *sentences]
        self.look_for.setText("\n".join(words))
        self.look_for.setVisible(bool(words))

    def say_done(self) -> None:
        """The tie in hand is counted; when all are, the cord is."""
        if self.tally.open and self.tally.now.counted is not None:
            self.tally.go_on()
            self.show_count()
        elif not self.tally.open:
            self.done.emit()

    def figure(self, digit: int) -> None:
        """A figure was typed."""
        if self.strange.isVisible():
            self.strange.choose(digit)
        else:
            self.tally.now.figure(digit)
            self.show_count()

    def plate(self, number: int) -> None:
        """A COUNT plate was scanned."""
        if self.strange.isVisible():
            self.strange.choose(number)
        elif self.tally.now.plate(number):
            self.tally.go_on()
        self.show_count()

    def step(self, by: int) -> None:
        """One more or one less of the tie in hand."""
        self.tally.now.step(by)
        self.show_count()

    def walk(self, by: int) -> None:
        """Go to a neighbour tie."""
        self.tally.go_to(self.tally.at + by)
        self.show_count()

    def forget(self) -> None:
        """The tie in hand is counted again."""
        self.tally.now.forget()
        self.show_count()

    def ask_strange(self) -> None:
        """A tie that is not of this cord: which thread is it?"""
        self.strange.show_but([tie.tie for tie in self.tally.ties])

    def show_count(self) -> None:
        """Show all counts, and what is still to be counted."""
        for place, panel in enumerate(self.panels):
            panel.show_count(current=place == self.tally.at)
        still = bool(self.tally.open)
        if still and self.tally.now.counted is None:
            self.finish.refuse(f"Count the {self.tally.now.tie} ties first.")
        else:
            self.finish.allow()
            self.finish.say("Next tie" if still else f"{self.tally.total} counted")

    def _lay_panels(self) -> None:
        take_down(self._place)
        width = WIDE if len(self.tally.ties) < 3 else NARROW
        self.panels = [TiePanel(tie, strange=not tie.most, width=width) for tie in self.tally.ties]
        for place, panel in enumerate(self.panels):
            panel.said.connect(partial(self._said, place))
            panel.stepped.connect(partial(self._stepped, place))
        self._place.addWidget(Actions(*self.panels))
        self.show_count()

    def _said(self, place: int, number: int) -> None:
        self.tally.go_to(place)
        self.tally.now.set(number)
        self.tally.go_on()
        self.show_count()

    def _stepped(self, place: int, by: int) -> None:
        self.tally.go_to(place)
        self.step(by)

    def _add_strange(self, tie: str) -> None:
        self.strange.hide()
        self.tally.add_strange(tie)
        self._lay_panels()
