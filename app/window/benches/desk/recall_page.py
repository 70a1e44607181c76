"""Who has something of one thing: numbers that add up, then every buyer and place."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.exchange.recalls import Recalled, Sum, who
from app.lookups.recall import WithOne
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.kept_recalls_card import KeptRecallsCard
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words

_HEADS = ("who or where", "order", "how many", "of it", Head("grams", right=True),
          Head("marks", codes=True))


class RecallPage(QWidget):
    """The keys make papers of it, or put down that the list was made."""

    def __init__(self) -> None:
        super().__init__()
        self.shown: Recalled | None = None
        self.sums: tuple[Sum, ...] = ()
        self.title = Words("", Size.TITLE, bold=True)
        self.sure, self.took = Words(), Words(bold=True)
        self.plate = HoldPlate(here=True, size=Size.LEAD)
        self.practice_key = KeyButton("Keep it as practice", "F9")
        self.earnest_key = KeyButton("Keep it, in earnest", "F10", strong=True)
        self.paper_keys = {"PDF": KeyButton("As paper"), "CSV": KeyButton("As CSV"),
                           "XLSX": KeyButton("As XLSX"), "letters": KeyButton("Letters to paste")}
        self.away_key = KeyButton("Back", "F8")
        self.table = ThingTable(_HEADS, "who has it", most_rows=14)
        self.kept = KeptRecallsCard()
        self._sums = QVBoxLayout()
        top = Card(in_hand=True)
        row = top.add_row(self.plate, self.title)
        row.setStretch(1, 1)
        top.add(self._sums, self.sure, self.took,
                Actions(self.practice_key, self.earnest_key, *self.paper_keys.values(),
                        self.away_key))
        below = Card("By buyer, then by place")
        below.add(Words("Names stand here and on the papers of this page only; the papers list "
                        "every mark.", ink=SECOND), self.table)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.PART)
        column.addWidget(top)
        column.addWidget(below)
        column.addWidget(self.kept)
        column.addStretch(1)

    def show_list(self, one: Recalled) -> None:
        """Show another list."""
        self.shown, self.sums = one, one.sums
        self.title.setText(f"Who has something of {one.on}")
        self.plate.setVisible(bool(one.holds))
        take_down(self._sums)
        self._sums.addWidget(Actions(*(_sum(n, each, one.sums)
                                       for n, each in enumerate(one.sums))))
        why = "".join(f" HOLD for: {hold.why}, ask {hold.ask}." for hold in one.holds)
        self.sure.setText(one.how_sure + why)
        self.took.setText("")
        self.took.hide()
        self.table.show_rows([_cells(row) for row in one.found.rows])

    def say_kept(self, said: str) -> None:
        """The list was kept: how long it took, and how much it accounts for."""
        self.took.setText(f"{said[:1].upper()}{said[1:]}.")
        self.took.show()


class SumWords(QWidget):
    """A number of the sum over what it counts; they stand in a row while they fit."""

    def __init__(self, sign: str, one: Sum) -> None:
        super().__init__()
        grams = f"{one.grams} g"
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, Gap.PART, 0)
        column.setSpacing(0)
        column.addWidget(Words(f"{sign}{one.count:,}", Size.LARGE, bold=True, wrap=False))
        column.addWidget(Words(one.words, bold=True, wrap=False))
        for words in filter(None, (one.put_ups, grams)):
            column.addWidget(Words(words, ink=SECOND, wrap=False))
        self.setAccessibleName(" ".join(filter(
            None, (f"{sign}{one.count:,}", one.words, one.put_ups, grams))))


def _cells(row: WithOne) -> tuple[str, ...]:
    """What fits in one row of the screen; the papers have the days too."""
    return (who(row), row.order or "", how_many(row.count, row.put_up), row.of_it,
            f"{row.mg / 1000:,.1f}", _marks(row.marks))


def _marks(marks: tuple[str, ...]) -> str:
    """The first of them; the papers name them all."""
    return "".join(marks[:1]) + ("…" if len(marks) > 1 else "")


def _sum(place: int, one: Sum, sums: tuple[Sum, ...]) -> SumWords:
    return SumWords("" if place == 0 else "= " if place == len(sums) - 1 else "+ ", one)
