"""A list that came as a file: looked at first, its columns put right, taken in with one key."""

from pathlib import Path
from typing import Generic, Protocol, TypeVar
from uuid import uuid4

from PySide6.QtCore import Signal

from app.exchange.columns import ColumnMatch
from app.exchange.taking_in import Said
from app.problems import Problem
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.columns_panel import ColumnsPanel
from app.window.parts.key_button import KeyButton
from app.window.parts.trouble_lines import TroubleLines
from app.window.parts.words import SECOND, BigNumber, OneLine, Words


class Understood(Protocol):
    """How a list was understood; what it lacks is asked before anything of it is shown."""

    @property
    def match(self) -> ColumnMatch: ...
    @property
    def lacks(self) -> tuple[str, ...]: ...


L = TypeVar("L", bound=Understood)


class ListIn(Card, Generic[L]):
    """What the list says and where it is wrong; `complete` gives whether bad rows stay out."""

    complete = Signal(bool)
    look_wanted = Signal()
    left = Signal()

    def __init__(self, name: str) -> None:
        super().__init__(in_hand=True)
        self.setAccessibleName(name)
        self.path, self.token = Path(), ""
        self.seen: L | None = None
        self._heeded = Said()  # what was said when it was looked at
        self._taking = False  # Enter came with something that was not heeded yet
        self._columns: dict[str, str] = {}
        self._given: dict[str, str] = {}
        self._all, self._asked = False, ""
        self.title, self.wrong = OneLine("", Size.LEAD, bold=True), Words(bold=True)
        self.number, self.notes = BigNumber(), Words(ink=SECOND)
        self.columns, self.troubles = ColumnsPanel(), TroubleLines()
        self.take_in = KeyButton("", "Enter", strong=True)
        self.leave_out = KeyButton("", "F7")
        self.again, self.columns_key = KeyButton("Read it again", "F5"), KeyButton("Columns", "F6")
        self.leave = KeyButton("Leave it", "F8")
        self.take_in.clicked.connect(self.done)
        self.leave_out.clicked.connect(lambda: self.complete.emit(True))
        self.again.clicked.connect(self.look_wanted)
        self.columns_key.clicked.connect(self._turn_columns)
        self.leave.clicked.connect(self.left)
        self.columns.chosen.connect(self.choose)
        self.columns.given.connect(self._give)
        self.columns.asked.connect(self._ask)

    @property
    def said(self) -> Said:
        """What the person says of this list."""
        return Said(dict(self._columns), dict(self._given))

    def open(self, path: Path) -> None:
        """Another list is in hand."""
        self.path, self.token = path, uuid4().hex
        self._columns, self._given, self._all, self._asked = {}, {}, False, ""
        self.title.say(path.name)
        self.show_nothing()
        self.look_wanted.emit()

    def begin(self) -> None:
        """The key that goes on has the focus."""
        (self.take_in if self.take_in.isEnabled() else self.again).setFocus()

    def done(self) -> None:
        """Take it in; where something was said that is not heeded yet, it is looked at before."""
        self.columns.settle()
        lacking = self.seen is None or bool(self.seen.lacks)
        if lacking or self.said != self._heeded:
            self._taking = not lacking and self.take_in.isEnabled()
            self.look_wanted.emit()
        elif self.take_in.isEnabled():
            self.complete.emit(False)

    def choose(self, field: str, heading: str) -> None:
        """This column holds this; '' is no column."""
        self._columns[field], self._asked = heading, ""
        self._given.pop(field, None)
        self.look_wanted.emit()

    def show_nothing(self) -> None:
        """It was not looked at yet."""
        self.seen = None
        for part in (self.number, self.notes, self.columns, self.troubles, self.take_in,
                     self.leave_out, self.columns_key, self.wrong):
            part.hide()

    def show_problem(self, problem: Problem) -> None:
        """It cannot be read at all."""
        self.show_nothing()
        self._taking = False
        self.wrong.setText(str(problem))
        self.wrong.show()

    def show_seen(self, seen: L) -> None:
        """Show how it was understood."""
        self.show_nothing()
        taking, self._taking = self._taking, False
        self.seen, self._heeded = seen, self.said
        self._show_columns(seen)
        self.columns_key.show()
        if not seen.lacks:
            self.take_in.show()
            self.show_list(seen)
            if taking and self.take_in.isEnabled():
                self.complete.emit(False)
        elif seen.match.kind.for_all:
            self.take_in.show()
            self.take_in.say("Look again")
            self.take_in.allow()

    def show_list(self, seen: L) -> None:
        """Show what stands in it, now that no column is lacking."""
        raise NotImplementedError

    def why_asked(self, seen: L, field: str) -> str:
        """The sentence for one field that it lacks."""
        others = {other for other in seen.lacks if other != field}
        return seen.match.what_lacks({*self._given, *others})

    def show_number(self, number: int, unit: str, means: str) -> None:
        """How many there are of what it is a list of."""
        self.number.show_number(str(number), unit, means)
        self.number.show()

    def show_notes(self, seen: L, *said: str) -> None:
        """What is to be known of it; '' says nothing."""
        how = "Columns as they were settled before." if seen.match.remembered else ""
        self.notes.setText(" ".join(filter(None, (*said, how))))
        self.notes.setVisible(bool(self.notes.text()))

    def show_ways(self, does: str, whole: str, count: int, bad_rows: int, why_none: str) -> None:
        """'Take in 3 cones', or 'Take in 3, leave 2 rows out'; `why_none` where there are none."""
        self.take_in.say(f"{does} {whole}" if count else does)
        if not count:
            self.take_in.refuse(why_none)
        elif bad_rows:
            self.take_in.refuse("Put its rows right, or leave them out.")
        else:
            self.take_in.allow()
        self.leave_out.say(f"{does} {count}, leave {_rows(bad_rows)} out")
        self.leave_out.setVisible(bool(bad_rows and count))

    def _show_columns(self, seen: L) -> None:
        asked = {field: self.why_asked(seen, field) for field in seen.lacks}
        if self._all and self._asked:
            asked.setdefault(self._asked,
                             f"In which column stands {seen.match.kind.fields[self._asked]}?")
        self.columns.show_match(seen.match, asked, self._given, all_of=self._all)
        self.columns.setVisible(bool(asked) or self._all)

    def _give(self, field: str, words: str) -> None:
        self._given[field] = words

    def _ask(self, field: str) -> None:
        self._asked = field
        if self.seen is not None:
            self._show_columns(self.seen)

    def _turn_columns(self) -> None:
        self._all, self._asked = not self._all, ""
        if self.seen is not None:
            self._show_columns(self.seen)


def cannot_be_taken(bad_rows: int) -> str:
    """The headline over what is wrong with them."""
    return f"{_rows(bad_rows)} cannot be taken in as written."


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count} rows"
