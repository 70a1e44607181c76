"""A list of old lots: looked at first, opened with one key."""

from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import Signal

from app.exchange.list_file import gathered
from app.exchange.old_lots import OLD_LOTS, OldLots
from app.exchange.taking_in import Said
from app.problems import Problem
from app.window.benches.receiving.hand import Hand, go_to
from app.window.look.look import Size
from app.window.parts.card import Actions
from app.window.parts.columns_panel import ColumnsPanel
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.trouble_lines import TroubleLines
from app.window.parts.words import SECOND, BigNumber, OneLine, Words
from app.work.dividing import skeins


class OldListCard(Hand):
    """What the list says and where it is wrong; `complete` gives whether bad rows stay out."""

    complete = Signal(bool)
    look_wanted = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("the list of old lots in hand")
        self.path, self.token = Path(), ""
        self.seen: OldLots | None = None
        self._columns: dict[str, str] = {}
        self._given: dict[str, str] = {}
        self._all, self._asked = False, ""
        self.title, self.wrong = OneLine("", Size.LEAD, bold=True), Words()
        self.number, self.notes = BigNumber(), Words(ink=SECOND)
        self.columns, self.troubles = ColumnsPanel(), TroubleLines()
        self.table = ThingTable(
            (Head("lot", codes=True), "colourway", "base", Head("lies here", right=True)),
            "lots of the list", most_rows=8)
        self.take_in = KeyButton("", "Enter", strong=True)
        self.leave_out = KeyButton("", "F7")
        self.again = KeyButton("Read it again", "F5")
        self.columns_key = KeyButton("Columns", "F6")
        self.leave = KeyButton("Leave it", "F8")
        self._lay_out()
        self._connect()

    @property
    def said(self) -> Said:
        """What the person says of this list."""
        return Said(dict(self._columns), dict(self._given))

    def open(self, path: Path) -> None:
        """Another list is in hand."""
        self.path, self.token = path, uuid4().hex
        self._columns, self._given, self._all, self._asked = {}, {}, False, ""
        self.title.say(path.name)
        self._show_nothing()
        self.look_wanted.emit()

    def begin(self) -> None:
        go_to(self.take_in if self.take_in.isEnabled() else self.again, sight=self.title)

    def done(self) -> None:
        """Open them; or look again where something was written for all rows."""
        given = dict(self._given)
        self.columns.settle()
        if self.seen is None or self.seen.lacks or given != self._given:
            self.look_wanted.emit()
        elif self.take_in.isEnabled():
            self.complete.emit(False)

    def show_problem(self, problem: Problem) -> None:
        """It cannot be read at all."""
        self._show_nothing()
        self.wrong.setText(str(problem))
        self.wrong.show()

    def show_seen(self, seen: OldLots) -> None:
        """Show how it was understood."""
        self._show_nothing()
        self.seen = seen
        self._show_columns(seen)
        self.columns_key.show()
        self.take_in.show()
        if seen.lacks:
            self.take_in.say("Look again")
            self.take_in.allow()
            return
        lots = "old lot" if len(seen.lots) == 1 else "old lots"
        self.number.show_number(str(len(seen.lots)), lots, f"{seen.in_all:,} in all")
        self.number.show()
        self.table.show_rows([
            (one.code, one.colourway, one.base, skeins(one.count, one.put_up))
            for one in seen.lots])
        self.table.setVisible(bool(seen.lots))
        self._show_notes(seen)
        self.troubles.show_lines(f"{_rows(seen.bad_rows)} cannot be taken in as written.",
                                 gathered(seen.troubles))
        self._show_keys(seen)

    def _show_nothing(self) -> None:
        self.seen = None
        for part in (self.number, self.notes, self.columns, self.troubles, self.table,
                     self.take_in, self.leave_out, self.columns_key, self.wrong):
            part.hide()

    def _show_columns(self, seen: OldLots) -> None:
        asked = {field: seen.match.what_lacks(
            {*self._given, *(other for other in seen.lacks if other != field)})
            for field in seen.lacks}
        if self._all and self._asked:
            asked.setdefault(self._asked, "In which column stands "
                                          f"{OLD_LOTS.fields[self._asked]}?")
        self.columns.show_match(seen.match, asked, self._given, all_of=self._all)
        self.columns.setVisible(bool(asked) or self._all)

    def _show_notes(self, seen: OldLots) -> None:
        new = seen.new_colourways
        said = [f"New colourways, named with them: {', '.join(new)}." if new else "",
                "Columns as they were settled before." if seen.match.remembered else ""]
        self.notes.setText(" ".join(filter(None, said)))
        self.notes.setVisible(any(said))

    def _show_keys(self, seen: OldLots) -> None:
        count = len(seen.lots)
        self.take_in.say(f"Open {count} {'lot' if count == 1 else 'lots'}" if count else "Open")
        if not count:
            self.take_in.refuse("No row of it is an old lot yet.")
        elif seen.bad_rows:
            self.take_in.refuse("Put its rows right, or leave them out.")
        else:
            self.take_in.allow()
        self.leave_out.say(f"Open {count}, leave {_rows(seen.bad_rows)} out")
        self.leave_out.setVisible(bool(seen.bad_rows and count))

    def _choose(self, field: str, heading: str) -> None:
        self._columns[field], self._asked = heading, ""
        self._given.pop(field, None)
        self.look_wanted.emit()

    def _give(self, field: str, words: str) -> None:
        self._given[field] = words

    def _ask(self, field: str) -> None:
        self._asked = field
        if self.seen:
            self._show_columns(self.seen)

    def _turn_columns(self) -> None:
        self._all, self._asked = not self._all, ""
        if self.seen:
            self._show_columns(self.seen)

    def _connect(self) -> None:
        self.take_in.clicked.connect(self.done)
        self.leave_out.clicked.connect(lambda: self.complete.emit(True))
        self.again.clicked.connect(self.look_wanted)
        self.columns_key.clicked.connect(self._turn_columns)
        self.leave.clicked.connect(self.left)
        self.columns.chosen.connect(self._choose)
        self.columns.given.connect(self._give)
        self.columns.asked.connect(self._ask)

    def _lay_out(self) -> None:
        self.add(self.title, self.wrong, self.number, self.notes, self.troubles, self.columns,
                 Actions(self.take_in, self.leave_out), self.table)
        self.add_last(Actions(self.again, self.columns_key, self.leave))


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count} rows"
