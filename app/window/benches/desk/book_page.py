"""The book: whether it agrees with itself, its copies, and the journal as people read it."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.lookups.recent import EntryRow
from app.lookups.warned import Warned
from app.store.journal import Verdict
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.story_card import entry_cells
from app.window.look.look import Gap
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, CodeWords, Words

PAGE = 100


class BookPage(QWidget):
    """`more` asks for so many entries."""

    more = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.limit = PAGE
        self.verify_key = KeyButton("Check the whole book", "F9", strong=True)
        self.copy_key = KeyButton("Copy it now", "F10")
        self.verdict, self.head = Words(), CodeWords(bold=False)
        self.copied = Words()
        self.table = ThingTable(
            (Head("no.", right=True), "when", "who", "at", "what was done", ""),
            "the journal", "The journal is empty.", most_rows=PAGE * 10,
        )
        self.older = KeyButton("Older entries")
        self.warned = ThingTable(
            ("who", Head("deeds", right=True), Head("warnings", right=True), "most often"),
            "warnings today", "Nobody wrote anything today.")
        warned = Card("Warnings today")
        warned.add(Words("Too many of one kind are not read any more: mend their cause.",
                         ink=SECOND), self.warned)
        check, copies, journal = Card("Does it agree?"), Card("Copies"), Card("Journal")
        check.add(Words("Every entry is chained to the one before; the check replays them all "
                        "against every row.", ink=SECOND), self.verdict, self.head)
        check.add_last(Actions(self.verify_key))
        copies.add(Words("One is made and checked every day, and before every upgrade.",
                         ink=SECOND), self.copied)
        copies.add_last(Actions(self.copy_key))
        journal.add(self.table, Actions(self.older))
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.PART)
        self._column.addWidget(SideBySide(check, copies, shares=(1, 1)))
        self._column.addWidget(warned)
        self._column.addWidget(journal)
        self._column.addStretch(1)
        self.verdict.setText("It was not checked since this window was opened.")
        self.head.hide()
        self.older.clicked.connect(self._ask_older)

    def put_first(self, card: Card) -> None:
        """What must be said before all else."""
        self._column.insertWidget(0, card)

    def show_entries(self, entries: Sequence[EntryRow]) -> None:
        """Show the newest entries."""
        self.table.show_rows([(str(entry.seq), *entry_cells(entry)) for entry in entries])
        self.older.setVisible(bool(entries) and entries[-1].seq > 1)

    def show_warned(self, people: Sequence[Warned]) -> None:
        """How many warnings each person got today."""
        self.warned.show_rows([(one.person, str(one.deeds), str(one.warnings), one.often)
                               for one in people])

    def show_copy(self, words: str) -> None:
        """When the book was copied last."""
        self.copied.setText(f"{words[:1].upper()}{words[1:]}.")

    def show_verdict(self, verdict: Verdict) -> None:
        """The book agrees with its journal."""
        removed = "".join(f" {what}." for what in verdict.removed)
        self.verdict.setText(
            f"It agrees: {how_many(verdict.entries, 'entrie')}, {how_many(verdict.rows, 'row')}."
            .replace("1 entrie,", "1 entry,") + removed
        )
        self.head.show_code(f"head {verdict.head[:16]} …")
        self.head.show()

    def show_trouble(self, sentence: str) -> None:
        """It does not agree, and what to do."""
        self.verdict.setText(sentence)
        self.head.hide()

    def _ask_older(self) -> None:
        self.limit += PAGE
        self.more.emit(self.limit)
