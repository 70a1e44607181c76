"""What does not add up, ranked by what it costs; one tap opens the thing, where it is put right."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.gaps import TAG, Gap, worth
from app.lookups.gaps import balance_gaps
from app.lookups.prices import currency, money_words
from app.lookups.tag_counts import TagCounts, tags_by_stock
from app.window.benches.desk.desk_words import how_many
from app.window.look.look import Gap as Space
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

MOST = 40  # rows; the dearest come first
PUT_RIGHT = (
    "A correction is an entry with its reason, never an overwrite: a shelf is counted at Tagging "
    "(DONE on its shelf), a jar is weighed at Weighing, what was found is matched on the page of "
    "its lot here.")
PRICED = ("Yarn is valued at the tag’s price of its base. What dyes cost is not in the book: jars "
          "stand below, the largest gap first.")


@dataclass(frozen=True, slots=True)
class Balances:
    """The gaps, the words that stand after a price, and all tags ever printed."""

    gaps: tuple[Gap, ...]
    currency: str
    tags: tuple[TagCounts, ...]


def balances(connection: Any, at: datetime) -> Balances:
    """All gaps as they are now."""
    return Balances(balance_gaps(connection, at), currency(connection),
                    tuple(tags_by_stock(connection).values()))


class BalancesPage(QWidget):
    """`opened` gives the code of what is to be looked at."""

    opened = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.gaps: Sequence[Gap] = ()
        self.title, self.priced = Words("", Size.TITLE, bold=True), Words(PRICED, ink=SECOND)
        self.tags, self.more = Words(), Words(ink=SECOND)
        self.rows: list[GapRow] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Space.LINE)
        card = Card(in_hand=True)
        card.add(self.title, self.priced, self._rows, self.more, self.tags,
                 Words(PUT_RIGHT, ink=SECOND))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Space.PART)
        column.addWidget(card)
        column.addStretch(1)

    def show_balances(self, one: Balances) -> None:
        """Show all gaps, the dearest first."""
        self.gaps = one.gaps
        total, unknown = worth(one.gaps)
        known = len(one.gaps) - unknown
        self.title.setText(_title(len(one.gaps), known, money_words(total, one.currency)))
        self.priced.setVisible(bool(one.gaps))
        take_down(self._rows)
        self.rows = [GapRow(gap, _cost(gap, one.currency)) for gap in one.gaps[:MOST]]
        for row in self.rows:
            self._rows.addWidget(row)
            row.opens.clicked.connect(lambda _=False, code=row.gap.code: self.opened.emit(code))
        left = len(one.gaps) - len(self.rows)
        self.more.setText(f"And {how_many(left, 'smaller one')}.")
        self.more.setVisible(left > 0)
        self.tags.setText(tag_words(one.tags))


class GapRow(QWidget):
    """One gap: what, how much and what it looks like; what it costs; the key that opens it."""

    def __init__(self, gap: Gap, cost: str) -> None:
        super().__init__()
        self.gap = gap
        self.cost = Words(cost, bold=gap.price is not None, wrap=False,
                          ink=SECOND if gap.price is None else "")
        self.opens = KeyButton("Open it")
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(Words(f"{gap.name}: {amount(gap)}", bold=True))
        words.addWidget(Words(gap.looks_like, ink=SECOND))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(Space.PART)
        row.addLayout(words, 1)
        row.addWidget(self.cost)
        row.addWidget(self.opens, 0, Qt.AlignmentFlag.AlignTop)
        self.opens.setVisible(bool(gap.code))
        self.setAccessibleName(f"{gap.name}: {amount(gap)}, {cost}, {gap.looks_like}")


def _cost(gap: Gap, money: str) -> str:
    if gap.price is None:
        return "price not known"
    return money_words(abs(gap.price), money) + (" found" if gap.price < 0 else "")


def tag_words(stocks: Sequence[TagCounts]) -> str:
    """'Tags: 1,301 printed = 1,248 tied on + 29 in hand + 24 spoiled or void.'"""
    all_of_them = sum(stocks, TagCounts())
    return (f"Tags: {all_of_them.printed:,} printed = {all_of_them.applied:,} tied on + "
            f"{all_of_them.in_hand:,} in hand + {all_of_them.spoiled + all_of_them.void:,} spoiled "
            "or void.")


def amount(gap: Gap) -> str:
    """'6.1 g too little', '1 too many', '3 loose'."""
    if gap.kind == TAG:
        return f"{gap.count} loose"
    if gap.count is not None:
        return f"{abs(gap.count)} {'too few' if gap.count > 0 else 'too many'}"
    mg = gap.mg or 0
    return f"{abs(mg) / 1000:,.1f} g {'too little' if mg > 0 else 'too much'}"


def _title(gaps: int, known: int, price: str) -> str:
    if not gaps:
        return "All balances add up: cones, jars, cords, tags and stock."
    many = how_many(gaps, "balance")
    does = "does" if gaps == 1 else "do"
    return f"{many} {does} not add up" + (f"; {price} are missing." if known else ".")
