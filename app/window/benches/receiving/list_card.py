"""The list that came with a delivery: looked at first, taken in with one key."""

from pathlib import Path
from uuid import uuid4

from PySide6.QtCore import Qt, Signal

from app.exchange.delivery_note import DeliveryNote
from app.exchange.headings import FIELDS
from app.exchange.list_file import Seen, gathered, in_trouble, lack
from app.exchange.taking_in import Said, told
from app.problems import Problem
from app.window.benches.receiving.cone_table import ConeTable, Listed
from app.window.benches.receiving.door_words import NOT_STATED, came_words, cones
from app.window.benches.receiving.hand import Hand, go_to
from app.window.benches.receiving.offered import Offered
from app.window.look.look import Size
from app.window.parts.card import Actions
from app.window.parts.columns_panel import ColumnsPanel
from app.window.parts.key_button import KeyButton
from app.window.parts.trouble_lines import TroubleLines
from app.window.parts.words import SECOND, BigNumber, OneLine, Words
from app.work.receiving import batches_apart, looks_off


class ListCard(Hand):
    """What the list says and where it is wrong; `complete` gives whether bad rows stay out."""

    complete = Signal(bool)
    look_wanted = Signal()
    file_wanted = Signal()
    base_wanted = Signal(str)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("the list in hand")
        self.path, self.token = Path(), ""
        self.seen: Seen | None = None
        self._heeded = Said()  # what was said when it was looked at
        self._taking = False  # Enter came with a supplier that was not heeded yet
        self._columns: dict[str, str] = {}
        self._given: dict[str, str] = {}
        self._all_columns, self._asked = False, ""
        self.title, self.wrong = OneLine("", Size.LEAD, bold=True), Words()
        self.number, self.notes = BigNumber(), Words(ink=SECOND)
        self.supplier = Offered("Supplier", NOT_STATED)
        self.columns, self.troubles = ColumnsPanel(), TroubleLines()
        self.table = ConeTable("cones of the list")
        self.take_in = KeyButton("", "Enter", strong=True)
        self.leave_out = KeyButton("", "F7")
        self.base_key = KeyButton("", "F4")
        self.anew = KeyButton("Give them new numbers", "F9")
        self.doubt = Words(bold=True)
        self.again = KeyButton("Read it again", "F5")
        self.columns_key = KeyButton("Columns", "F6")
        self.other = KeyButton("Another list", "F3")
        self.leave = KeyButton("Leave it", "F8")
        self._lay_out()
        self._connect()

    def open(self, path: Path) -> None:
        """Another list is in hand."""
        self.path, self.seen, self.token = path, None, uuid4().hex
        self._columns, self._given = {}, {}
        self._all_columns, self._asked = False, ""
        self.supplier.clear()
        self.title.say(path.name)
        self.show_nothing()
        self.look_wanted.emit()

    @property
    def said(self) -> Said:
        """What the person says of this list."""
        supplier = self.supplier.line.text().strip()
        given = {**self._given, **({"supplier": supplier} if supplier else {})}
        return Said(dict(self._columns), given)

    def show_nothing(self) -> None:
        """It was not looked at yet."""
        self.seen = None
        for part in (self.number, self.notes, self.supplier, self.columns, self.troubles,
                     self.table, self.take_in, self.leave_out, self.base_key, self.columns_key,
                     self.anew, self.doubt, self.wrong):
            part.hide()

    def show_problem(self, problem: Problem) -> None:
        """It cannot be read at all."""
        self.show_nothing()
        self._taking = False
        self.wrong.setText(str(problem))
        self.wrong.show()

    def show_seen(self, seen: Seen) -> None:
        """Show how it was understood."""
        self.show_nothing()
        self.seen, self._heeded = seen, self.said
        stated = "supplier" in seen.match.places or "supplier" in seen.above
        self.supplier.setVisible(not stated)
        self.columns_key.show()
        self.take_in.show()
        self._show_columns(seen)
        if seen.arrival is None:
            self.take_in.say("Look again")
            self.take_in.allow()
        else:
            self._show_note(seen, seen.arrival.note)
            if self._taking and self.take_in.isEnabled():
                self.complete.emit(False)
        self._taking = False

    def begin(self) -> None:
        if self.supplier.isVisible() and not self.supplier.line.text():
            go_to(self.supplier.line)
        else:
            go_to(self.take_in if self.take_in.isEnabled() else self.again, sight=self.title)

    def done(self) -> None:
        """Take it in; or look again where something was written that is not heeded yet."""
        self.columns.settle()
        if self.seen is None:
            return
        if self.said != self._heeded:
            self._taking = self.seen.arrival is not None and self.take_in.isEnabled()
            self.look_wanted.emit()
        elif self.seen.arrival is not None and self.take_in.isEnabled():
            self.complete.emit(False)

    def _show_columns(self, seen: Seen) -> None:
        asked = {field: lack(seen, field, self._given) for field in seen.lacks}
        if self._all_columns and self._asked:
            asked.setdefault(self._asked, f"In which column stands {FIELDS[self._asked]}?")
        self.columns.show_match(seen.match, asked, self._given, all_of=self._all_columns)
        self.columns.setVisible(bool(asked) or self._all_columns)

    def _show_note(self, seen: Seen, note: DeliveryNote) -> None:
        what = "cone" if note.cones == 1 else "cones"
        if len(note.deliveries) == 1:
            (one,) = note.deliveries
            self.number.show_number(str(note.cones), f"{what} of {one.base}", f"note {one.note_no}")
        else:
            self.number.show_number(str(note.cones), what, told(note))
        self.number.show()
        self.table.show_cones(_listed(seen, note))
        batches = len({cone.batch for one in note.deliveries for cone in one.cones})
        how = "Columns as they were settled before." if seen.match.remembered else ""
        apart = batches_apart(batches) if batches > 1 else ""
        said = [*note.notes, *filter(None, (how, apart))]
        self.notes.setText(" ".join(said))
        self.notes.setVisible(bool(said))
        self.troubles.show_lines(
            "It was taken in before." if note.before
            else f"{_rows(note.bad_rows)} cannot be taken in as written.",
            [*(_before(*key) for key in note.before), *gathered(note.troubles)])
        doubt = [came_words(note_no, one) for note_no, all_of in seen.before.items()
                 for one in all_of]
        self.doubt.setText(" ".join([*doubt, "Is this more of it?"]))
        self.doubt.setVisible(bool(doubt))
        self._show_keys(seen, note)

    def _show_keys(self, seen: Seen, note: DeliveryNote) -> None:
        self.take_in.say(f"Take in {cones(note.cones)}" if note.cones else "Take in")
        if note.before:
            self.take_in.refuse("It was taken in before.")
        elif not note.cones:
            self.take_in.refuse("No row of it is a cone yet.")
        elif note.bad_rows:
            self.take_in.refuse("Put its rows right, or leave them out.")
        else:
            self.take_in.allow()
        self.leave_out.say(f"Take in {note.cones}, leave {_rows(note.bad_rows)} out")
        self.leave_out.setVisible(bool(note.bad_rows and note.cones and not note.before))
        unknown = in_trouble(seen, "base")
        self.base_key.say(f"Describe {unknown}")
        self.base_key.setVisible(bool(unknown))
        self.anew.setVisible(bool(in_trouble(seen, "cone")))

    def _choose(self, field: str, heading: str) -> None:
        """This column holds this."""
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
        self._all_columns, self._asked = not self._all_columns, ""
        if self.seen:
            self._show_columns(self.seen)

    def _connect(self) -> None:
        self.take_in.clicked.connect(self.done)
        self.leave_out.clicked.connect(lambda: self.complete.emit(True))
        self.base_key.clicked.connect(
            lambda: self.base_wanted.emit(in_trouble(self.seen, "base") if self.seen else ""))
        self.anew.clicked.connect(lambda: self._choose("cone", ""))
        self.again.clicked.connect(self.look_wanted)
        self.columns_key.clicked.connect(self._turn_columns)
        self.other.clicked.connect(self.file_wanted)
        self.leave.clicked.connect(self.left)
        self.supplier.settled.connect(self.look_wanted)
        self.columns.chosen.connect(self._choose)
        self.columns.given.connect(self._give)
        self.columns.asked.connect(self._ask)

    def _lay_out(self) -> None:
        self.add(self.title, self.wrong)
        head = self.add_row(self.number, self.supplier)
        head.setStretch(0, 3)
        head.setStretch(1, 2)
        head.setAlignment(self.number, Qt.AlignmentFlag.AlignTop)
        head.setAlignment(self.supplier, Qt.AlignmentFlag.AlignTop)
        self.add(self.notes, self.doubt, self.troubles, self.columns,
                 Actions(self.take_in, self.leave_out, self.base_key, self.anew), self.table)
        self.add_last(Actions(self.again, self.columns_key, self.other, self.leave))


def _listed(seen: Seen, note: DeliveryNote) -> list[Listed]:
    millitex = {base.name: base.millitex for base in seen.bases}
    return [Listed(cone, bool(looks_off("", cone, millitex[one.base])), one.base)
            for one in note.deliveries for cone in one.cones]


def _before(supplier: str, number: str, base: str) -> str:
    whose = "" if supplier == NOT_STATED else f" of {supplier}"
    return (f"Note {number}{whose} with {base} is in the book. If more cones came with it, "
            f"number the second part, like {number}/2.")


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count} rows"
