"""The steps of a recipe at the pot or the steamer: what to do, how hot, how long."""

from app.problems import BadInput
from app.window.benches.weighing.rows_card import RowsCard
from app.window.parts.amounts import read_count, read_grams
from app.window.parts.card import Actions
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head
from app.window.parts.words import SECOND, Words
from app.work.recipes import StepIn

HOTTEST = 105  # °C: an open pot boils below, a steamer does not go above


class StepsCard(RowsCard[StepIn]):
    """'heat up', 85 °C, 46 minutes; a step may be without heat or time."""

    def __init__(self, *leave: KeyButton) -> None:
        self.what = TextField("What is done", "heat up slowly")
        self.heat, self.minutes = TextField("Up to °C", "85"), TextField("Minutes", "46")
        super().__init__(
            "Its steps", ("in this order", Head("°C", right=True), Head("minutes", right=True)),
            "steps", "No step is written yet: the pot then shows none.",
            self.what, self.heat, self.minutes)
        self.add_step = KeyButton("Add this step", "Enter", strong=True)
        self.out = KeyButton("Take the step out", "F7")
        self.back = KeyButton("Back to the dyes", "F3")
        self.add(self.table)
        self.add_row(self.what, self.heat, self.minutes).setStretch(0, 3)
        self.add(Words("The pot counts the minutes and says what is next.", ink=SECOND))
        self.add_last(Actions(self.add_step, self.out, self.back, *leave))

    def read(self) -> StepIn:
        """The step in the fields."""
        words = " ".join(self.what.line.text().split())
        if not words:
            raise BadInput("Nobody said what is done.", "Write the step, like “heat up slowly”.")
        heat, minutes = self.heat.line.text().strip(), self.minutes.line.text().strip()
        tenths = round(read_grams(heat) * 10) if heat else None
        if tenths is not None and not 0 < tenths <= HOTTEST * 10:
            raise BadInput(f"{heat} °C is no heat of a bath.", f"Write up to {HOTTEST} °C.")
        return StepIn(words, tenths, read_count(minutes) if minutes else None)

    def words(self, row: StepIn) -> tuple[str, ...]:
        """'heat up', '85', '46'."""
        heat = "" if row.decidegrees is None else f"{row.decidegrees / 10:g}"
        return row.words, heat, "" if row.minutes is None else str(row.minutes)
