"""Recipes from a notebook's file: looked at first, columns matched once, taken in with one key."""

from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import Signal

from app.exchange.list_file import gathered
from app.exchange.recipes_in import NotebookSeen, see_notebook, take_in_notebook
from app.exchange.taking_in import Said
from app.window.bench import Around
from app.window.benches.weighing.hand import WeighHand
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.columns_panel import ColumnsPanel
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.trouble_lines import TroubleLines
from app.window.parts.words import SECOND, OneLine, Words


class NotebookPage(WeighHand):
    """Nothing of the file is in the book before Enter; what is there already is not written."""

    file_wanted = Signal()

    def __init__(self, around: Around, path: Path) -> None:
        super().__init__(around)
        self.path, self.token = path, uuid4().hex
        self.seen: NotebookSeen | None = None
        self._columns: dict[str, str] = {}
        self._given: dict[str, str] = {}
        self.title, self.notes = OneLine(path.name, Size.LEAD, bold=True), Words("", ink=SECOND)
        self.columns, self.troubles = ColumnsPanel(), TroubleLines()
        self.table = ThingTable(("colourway", Head("rows", right=True), "becomes"),
                                "recipes of the notebook")
        self.take_in = KeyButton("Take in", "Enter", strong=True)
        self.leave_out = KeyButton("Leave the others out", "F7")
        again, other = KeyButton("Read it again", "F5"), KeyButton("Another file", "F3")
        self.take_in.clicked.connect(self.done)
        self.leave_out.clicked.connect(lambda: self._take(leave_out=True))
        again.clicked.connect(self.read)
        other.clicked.connect(self.file_wanted)
        self.columns.chosen.connect(self._choose)
        self.columns.given.connect(self._give)
        card = Card(in_hand=True)
        card.add(self.title, self.notes, self.troubles, self.columns, self.table)
        card.add_last(Actions(self.take_in, self.leave_out, again, other,
                              self.put_away("Leave it")))
        self.body.addWidget(card)
        self.read()

    def read(self) -> None:
        """Read the file with what is said of it."""
        self.ask(self._show, see_notebook, self.path, Said(dict(self._columns),
                                                           dict(self._given)))

    def done(self) -> None:
        """Take it in; where a column is asked for, look again with what was written."""
        if self.columns.settle() or self.seen is None or self.seen.notebook is None:
            self.read()
        else:
            self._take(leave_out=False)

    def _take(self, *, leave_out: bool) -> None:
        if self.seen is not None:
            self.do(take_in_notebook, self.seen, leave_out, token=self.token,
                    then=lambda _: self.over.emit(None))

    def _choose(self, field: str, heading: str) -> None:
        self._columns[field] = heading
        self.read()

    def _give(self, field: str, words: str) -> None:
        self._given[field] = words

    def _show(self, seen: NotebookSeen) -> None:
        self.seen = seen
        asked = {field: f"In which column stands {seen.match.kind.fields[field]}?"
                 for field in seen.lacks}
        self.columns.show_match(seen.match, asked, self._given, all_of=False)
        self.columns.setVisible(bool(asked))
        book = seen.notebook
        self.table.show_rows([] if book is None else [
            (one.colourway, str(len(one.components)), seen.becomes[one.colourway].value)
            for one in book.recipes])
        self.notes.setText(" ".join((*(book.notes if book else ()), *(
            ("Columns as they were settled before.",) if seen.match.remembered else ()))))
        self.notes.setVisible(bool(self.notes.text()))
        self.troubles.show_lines(
            "These recipes cannot be taken in as written.",
            gathered(book.troubles) if book else ())
        self.leave_out.setVisible(bool(book and (book.out or book.troubles) and book.recipes))
        self.take_in.say("Look again" if book is None else "Take in")
