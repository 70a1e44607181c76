"""The balance as it is read at two metres: the jar, what is wanted, what is in the cup, a word."""

from collections.abc import Sequence
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout

from app.calculations.balances import allowed_g, judge
from app.lookups.balances import BalanceNow
from app.problems import BadInput
from app.window.benches.weighing.bench_words import BenchWords
from app.window.benches.weighing.weigh_words import at_step, millilitres, read_millilitres
from app.window.benches.weighing.weight_bar import WeightBar
from app.window.look.look import Gap, Size
from app.window.parts.amounts import read_grams
from app.window.parts.card import Actions, Card
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

NONE_YET = "–"
_FIELD = 240  # pixels: room for a weight at any size of text
FINEST_ML = Decimal("0.1")


class CupCard(Card):
    """One line at the balance; the weight is typed, by fingers or by the balance itself."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.step = Decimal("0.01")
        self.target: Decimal | None = None
        self.by_volume = False
        self.live: Decimal | None = None
        self.fetch = Words("", Size.LEAD, ink=SECOND)
        self.name, self.plate = BenchWords(below=True), BenchWords(Size.LARGE, below=True)
        self.wanted, self.unit = BenchWords(), Words("", Size.LEAD, ink=SECOND)
        self.cup = BenchWords()
        self.cup_words = Words("in the cup", Size.LEAD, ink=SECOND)
        self.bar, self.verdict, self.way = WeightBar(), BenchWords(), Words("", bold=True)
        self.field: Field[Decimal] = Field("In the cup", self._read, "grams")
        self.take = KeyButton("Take the weight", "Enter", strong=True)
        self.other = KeyButton("Another line", "F4")
        self.tip = KeyButton("Tip back", "F6")
        self.change = KeyButton("", "F7")
        self.wire = Words("", ink=SECOND)
        self.close_key = KeyButton("Close as it is", "F9")
        self.leave = KeyButton("Put away", "F8")
        self.field.line.textChanged.connect(self._judge)
        self._lay_out()

    def show_line(
        self, name: str, plate: str, fetch: str, target: Decimal | None, *, by_volume: bool = False
    ) -> None:
        """A line: what is fetched or stands there, and how much of it is wanted."""
        self.target, self.by_volume = target, by_volume
        self.fetch.setText(fetch)
        self.name.show_number(name)
        self.plate.show_number(plate)
        self.field.line.setPlaceholderText("millilitres" if by_volume else "grams")
        self.wanted.show_number(NONE_YET if target is None else self._figures(target))
        self.unit.setText(f"{'mL' if by_volume else 'g'} wanted")
        self._judge()

    def show_way(self, words: str) -> None:
        """Why it is not weighed, and how it is measured instead; '' for nothing to say."""
        self.way.setText(words)
        self.way.setVisible(bool(words))

    def show_balance(self, on: BalanceNow | None, others: Sequence[BalanceNow]) -> None:
        """Which balance it is; with another one in the studio the key goes on to that."""
        self.change.setVisible(bool(others))
        self.change.say(f"On {on.title}" if on else "Which balance?")

    def show_live(self, grams: Decimal | None, *, stands: bool, why: str = "") -> None:
        """What the balance on the wire says, or why it says nothing."""
        self.live = grams
        self.cup_words.setText("in the cup" if grams is None or stands else "still moving")
        self.wire.setText(why)
        self.wire.setVisible(bool(why))
        self._judge()

    def say(self, word: str) -> None:
        """A word at bench size that is no weight: WRONG JAR."""
        self.verdict.show_number(word)

    def only(self, words: str) -> None:
        """A weight is wanted and nothing else: no other key is in the way."""
        self.take.say(words)
        self.take.allow()
        self.show_way("")
        for key in (self.other, self.tip, self.close_key):
            key.hide()

    def ask_weight(self, asks: bool) -> None:
        """The cup stands on the balance: show what is in it; else only what is wanted."""
        for part in (self.field, self.bar, self.cup, self.cup_words):
            part.setVisible(asks)
        if asks:
            self.field.setFocus()
            self._judge()

    def _read(self, text: str) -> Decimal:
        return read_millilitres(text) if self.by_volume else read_grams(text)

    def _figures(self, amount: Decimal) -> str:
        return millilitres(amount) if self.by_volume else at_step(amount, self.step)

    def _judge(self) -> None:
        taken: Decimal | None
        try:
            taken = self._read(self.field.line.text())
        except BadInput:
            live = not self.field.line.text().strip() and not self.by_volume
            taken = self.live if live and self.field.isVisible() else None
        self.cup.show_number(NONE_YET if taken is None else self._figures(taken))
        if not self.target:
            self.bar.show_weight(Decimal(0), Decimal(0), Decimal(0), "")
            self.verdict.show_number("")
            return
        step = FINEST_ML if self.by_volume else self.step
        allowed = allowed_g(self.target, step)
        least = _marks(max(Decimal(0), self.target - allowed), step, ROUND_CEILING)
        most = _marks(self.target + allowed, step, ROUND_FLOOR)
        limits = f"{self._figures(least)} to {self._figures(most)}"
        self.bar.show_weight(self.target, allowed, max(taken or Decimal(0), Decimal(0)), limits)
        word = "" if taken is None else judge(self.target, max(taken, Decimal(0)), step).value
        self.verdict.show_number(word)

    def _lay_out(self) -> None:
        top = Qt.AlignmentFlag.AlignBottom
        jar = self.add_row(self.name, self.plate, None, self.fetch)
        jar.setAlignment(self.plate, top)
        jar.setAlignment(self.fetch, Qt.AlignmentFlag.AlignTop)
        figures = self.add_row(self.wanted, self.unit, None, self.cup_words, self.cup)
        figures.setAlignment(self.unit, top)
        figures.setAlignment(self.cup_words, top)
        self.add(self.bar, self.way, self.wire)
        word = QHBoxLayout()
        word.setSpacing(Gap.PART)
        word.addWidget(self.verdict)
        word.addStretch(1)
        word.addWidget(self.field)
        self.field.setFixedWidth(_FIELD)
        self.add(word)
        for words in (self.unit, self.cup_words, self.fetch):
            words.setWordWrap(False)
        self.add_last(Actions(
            self.take, self.other, self.tip, self.change, self.close_key, self.leave))


def _marks(amount: Decimal, step: Decimal, way: str) -> Decimal:
    """The reading that is still within: limits are never shown wider than they are."""
    return (amount / step).to_integral_value(way) * step
