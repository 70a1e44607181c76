"""A bath being tended: its step and the minutes, what is read of it, what is added at the pot."""

from collections.abc import Callable
from datetime import datetime
from functools import partial

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.moments import clock_words
from app.calculations.pot_words import CLEARNESS, PotWords, read_pot_words
from app.lookups.pot_steps import PotAtWork
from app.window.benches.pots.pot_cards import EVERY, step_words
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Digits, Words


class Tending(Card):
    """`read` gives the PotWords of one short line, `looks` how clear the bath is, 1 to 3.

    `done` is a step, `adds` asks for an addition.
    """

    read = Signal(object)
    looks = Signal(int)
    done = Signal(int)  # step
    adds = Signal()

    def __init__(self, clock: Callable[[], datetime]) -> None:
        super().__init__()
        self.setAccessibleName("the bath now")
        self._clock = clock
        self.work: PotAtWork | None = None
        self.minutes, self.step = Digits(), Words("", Size.LARGE, bold=True)
        self.next, self.readings = Words("", Size.LEAD), Words(ink=SECOND)
        self.step_done = KeyButton("Step done", "Enter", strong=True)
        self.step_done.clicked.connect(self.finish)
        self.field: Field[PotWords] = Field("Read at the pot", read_pot_words, "pH 4.3 85 clear")
        note = KeyButton("Note it", "F4")
        note.clicked.connect(self.note)
        add = KeyButton("Add to the bath", "F6")
        add.clicked.connect(self.adds)
        self.clearness = [KeyButton(how.capitalize(), str(n)) for n, how in enumerate(CLEARNESS, 1)]
        for n, key in enumerate(self.clearness, 1):
            key.setCheckable(True)
            key.clicked.connect(partial(self.looks.emit, n))
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addWidget(self.step)
        words.addWidget(self.next)
        row = self.add_row(self.minutes)
        row.addLayout(words, 1)
        self.add(Actions(self.step_done, *self.clearness, note, add), self.readings, self.field)
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.tick)
        self._timer.start(EVERY)

    def show_work(self, work: PotAtWork) -> None:
        """The bath as it is now."""
        self.work = work
        step = work.steps.next
        self.next.setText(f"then {step.words}" if step else "")
        self.next.setVisible(step is not None)
        read = [f"{one.words} at {clock_words(one.at)}" for one in work.steps.read]
        self.readings.setText(", ".join(read))
        for how, key in zip(CLEARNESS, self.clearness, strict=True):
            key.setChecked(any(one.words == how for one in work.steps.read))
        self.readings.setVisible(bool(read))
        self.step_done.setVisible(work.steps.now is not None)
        self.tick()

    def tick(self) -> None:
        """Look at the clock."""
        if self.work is None:
            return
        minutes, words = step_words(self.work, self._clock())
        self.minutes.show_number(minutes)
        self.minutes.setVisible(bool(minutes))
        told = f"min: {words}" if minutes and not self.work.steams else words
        self.step.setText(told or "No steps are written for this recipe.")

    def finish(self) -> None:
        """What stands in the line is noted; else the step it is at was done."""
        if self.field.line.hasFocus() and self.field.line.text().strip():
            self.note()
        elif self.work is not None and self.work.steps.now is not None:
            self.done.emit(self.work.steps.now.id)

    def note(self) -> None:
        """Note what stands in the line; where nothing does, begin to write."""
        if not self.field.line.text().strip():
            self.field.setFocus()
            return
        words = self.field.value()
        if words is not None:
            self.read.emit(words)
