"""The list that came with a delivery: looked at first, taken in with one key."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal

from app.exchange.delivery_note import NOT_STATED, DeliveryNote
from app.exchange.list_file import Seen, gathered, in_trouble, lack
from app.exchange.taking_in import Said, told
from app.window.benches.receiving.cone_table import ConeTable, Listed
from app.window.benches.receiving.door_words import came_words, cones
from app.window.benches.receiving.hand import Hand, go_to
from app.window.benches.receiving.offered import Offered
from app.window.parts.card import Actions
from app.window.parts.key_button import KeyButton
from app.window.parts.list_in import ListIn, cannot_be_taken
from app.window.parts.words import Words
from app.work.receiving import batches_apart, looks_off


class ListCard(ListIn[Seen], Hand):
    """The cones of a delivery note; its supplier is asked where it says none."""

    file_wanted = Signal()
    base_wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__("the list in hand")
        self.supplier = Offered("Supplier", NOT_STATED)
        self.table = ConeTable("cones of the list")
        self.base_key = KeyButton("", "F4")
        self.anew = KeyButton("Give them new numbers", "F9")
        self.doubt = Words(bold=True)
        self.other = KeyButton("Another list", "F3")
        self.base_key.clicked.connect(
            lambda: self.base_wanted.emit(in_trouble(self.seen, "base") if self.seen else ""))
        self.anew.clicked.connect(lambda: self.choose("cone", ""))
        self.other.clicked.connect(self.file_wanted)
        self.supplier.settled.connect(self.look_wanted)
        self._lay_out()

    @property
    def said(self) -> Said:
        """What the person says of this list."""
        said, supplier = super().said, self.supplier.line.text().strip()
        return Said(said.columns, {**said.given, **({"supplier": supplier} if supplier else {})})

    def open(self, path: Path) -> None:
        self.supplier.clear()
        super().open(path)

    def begin(self) -> None:
        if self.supplier.isVisible() and not self.supplier.line.text():
            go_to(self.supplier.line)
        else:
            go_to(self.take_in if self.take_in.isEnabled() else self.again, sight=self.title)

    def show_nothing(self) -> None:
        super().show_nothing()
        for part in (self.supplier, self.table, self.base_key, self.anew, self.doubt):
            part.hide()

    def show_seen(self, seen: Seen) -> None:
        super().show_seen(seen)
        stated = "supplier" in seen.match.places or "supplier" in seen.above
        self.supplier.setVisible(not stated)

    def why_asked(self, seen: Seen, field: str) -> str:
        return lack(seen, field, self._given)

    def show_list(self, seen: Seen) -> None:
        if seen.arrival is not None:
            self._show_note(seen, seen.arrival.note)

    def _show_note(self, seen: Seen, note: DeliveryNote) -> None:
        what = "cone" if note.cones == 1 else "cones"
        if len(note.deliveries) == 1:
            (one,) = note.deliveries
            self.show_number(note.cones, f"{what} of {one.base}", f"note {one.note_no}")
        else:
            self.show_number(note.cones, what, told(note))
        self.table.show_cones(_listed(seen, note))
        batches = len({cone.batch for one in note.deliveries for cone in one.cones})
        self.show_notes(seen, *note.notes, batches_apart(batches) if batches > 1 else "")
        self.troubles.show_lines(
            "It was taken in before." if note.before else cannot_be_taken(note.bad_rows),
            [*(_before(*key) for key in note.before), *gathered(note.troubles)])
        doubt = [came_words(note_no, one) for note_no, all_of in seen.before.items()
                 for one in all_of]
        self.doubt.setText(" ".join([*doubt, "Is this more of it?"]))
        self.doubt.setVisible(bool(doubt))
        self._show_keys(seen, note)

    def _show_keys(self, seen: Seen, note: DeliveryNote) -> None:
        self.show_ways("Take in", cones(note.cones), note.cones, note.bad_rows,
                       "No row of it is a cone yet.")
        if note.before:
            self.take_in.refuse("It was taken in before.")
            self.leave_out.hide()
        unknown = in_trouble(seen, "base")
        self.base_key.say(f"Describe {unknown}")
        self.base_key.setVisible(bool(unknown))
        self.anew.setVisible(bool(in_trouble(seen, "cone")))

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
