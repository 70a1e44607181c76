"""Old lots: what was dyed before the book began, with the codes on its tags."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from app.calculations.codes import bare_characters
from app.calculations.old_lot_codes import no_old_lot
from app.lookups.old_lots import CanBeOld, LiesHere
from app.problems import BadInput
from app.window.benches.receiving.door_words import the_one
from app.window.benches.receiving.hand import Hand, go_to
from app.window.benches.receiving.offered import Offered
from app.window.look.look import Gap, Size
from app.window.parts.amounts import read_count
from app.window.parts.card import Actions
from app.window.parts.fields import Field
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.work.dividing import skeins
from app.work.opening_stock import LayHere


class OldLotsCard(Hand):
    """First base and put-up, then lot after lot in three fields; `laid` gives LayHere."""

    laid = Signal(object)
    file_wanted = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("old lots")
        self._now = CanBeOld({}, (), frozenset())
        self._kind: tuple[str, str] | None = None  # base and put-up of what is entered
        self._new = ""  # a colourway that may be named with the lot
        self.title = Words("Which old lots lay here?", Size.TITLE, bold=True)
        self.told = Words(ink=SECOND)
        self.base = Offered("Base", "a part of it, or ↓", self._one_base)
        self.put_up = Offered("Put-up", "skein", self._one_put_up)
        self.code = Field("Code on its tags", self._one_code, "OLD 77")
        self.colourway = Offered("Colourway", "a part of it, or ↓", self._one_colourway)
        self.count = Field("How many", read_count)
        self.kinds, self.lots = _row(self.base, self.put_up), _row(
            self.code, self.colourway, self.count)
        self.lay = KeyButton("", "Enter", strong=True)
        self.name_new = KeyButton("", "F7")
        self.other = KeyButton("Another base", "F6")
        self.file = KeyButton("A list of them", "F3")
        self.leave = KeyButton("Leave it", "F8")
        self.table = ThingTable(
            (Head("lot", codes=True), "colourway", "base", Head("lies here", right=True)),
            "old lots opened last")
        self._lay_out()
        self._connect()
        self._show_step()

    def begin(self) -> None:
        go_to((self.base if self._kind is None else self.code).line)

    def show_now(self, now: CanBeOld) -> None:
        """Offer what is described."""
        self._now = now
        self.base.offer(list(now.put_ups))
        self.colourway.offer(now.colourways)
        self._offer_put_ups()

    def show_last(self, lots: Sequence[LiesHere]) -> None:
        """The old lots that are in the book, the newest first."""
        self.table.show_rows([
            (one.code, one.colourway, one.base, skeins(one.count, one.put_up)) for one in lots])
        self.table.setVisible(bool(lots))

    def done(self) -> None:
        """The next step: what it is, then one lot after the other."""
        if self._kind is None:
            self._settle_kind()
        else:
            self._lay()

    def again(self) -> None:
        """That lot is in the book: room for the next."""
        self._new = ""
        for field in (self.code, self.colourway, self.count):
            field.clear()
        self._show_step()
        self.begin()

    def ask_kind(self) -> None:
        """Lots of another base follow."""
        self._kind = None
        self._show_step()
        self.begin()

    def _settle_kind(self) -> None:
        base, put_up = self.base.value(), self.put_up.value()
        if base is None or put_up is None:
            go_to((self.base if base is None else self.put_up).line)
            return
        self._kind = base, put_up
        self.base.line.setText(base)
        self._show_step()
        self.begin()

    def _lay(self) -> None:
        code, colourway, count = self.code.value(), self.colourway.value(), self.count.value()
        if self._kind is None or not code or not colourway or not count:
            fields = (self.code, self.colourway, self.count)
            wrong = next((one for one in fields if one.wrong.isVisibleTo(one)), self.count)
            go_to(wrong.line)
            return
        base, put_up = self._kind
        self.laid.emit(LayHere(code, base, colourway, count, put_up))

    def _name_new(self) -> None:
        """The colourway that was written is named with this lot."""
        self._new = " ".join(self.colourway.line.text().split())
        self._offer_new()
        self._lay()

    def _show_step(self) -> None:
        kind = self._kind
        self.kinds.setVisible(kind is None)
        self.lots.setVisible(kind is not None)
        self.other.setVisible(kind is not None)
        self.lay.say("Go on" if kind is None else "It lies here")
        self.told.setText(
            "Dyed before the book began. Each lot becomes a pile whose cones are not known, and "
            "its tags can be printed at Tagging." if kind is None
            else f"{kind[0]}, {kind[1]}s: the code as it stands on the tags.")
        self._offer_new()

    def _offer_new(self) -> None:
        """A name that nothing is called is offered as a new colourway's."""
        written = " ".join(self.colourway.line.text().split())
        self.name_new.say(f"Name it: {written}")
        self.name_new.setVisible(
            self._kind is not None and bool(written) and written != self._new
            and not any(written.casefold() in name.casefold() for name in self._now.colourways))

    def _offer_put_ups(self) -> None:
        self.put_up.offer(self._now.put_ups.get(self.base.line.text().strip(), ()))

    def _one_base(self, text: str) -> str:
        return the_one(text, self._now.put_ups, "base")

    def _one_put_up(self, text: str) -> str:
        base = self.base.line.text().strip()
        forms = next((forms for name, forms in self._now.put_ups.items()
                      if base and base.casefold() in name.casefold()), ())
        said = text.strip().casefold().removesuffix("s") or (forms[0] if forms else "")
        if said not in forms:
            raise BadInput(f"It is sold as {' or '.join(forms)}." if forms
                           else "Say the base first.")
        return said

    def _one_code(self, text: str) -> str:
        bare = bare_characters(text)
        if not bare:
            raise BadInput("Write the code that stands on its tags.")
        if bare in self._now.codes:
            raise BadInput(f"Lot {text.strip()} is in the book already.", "Look it up instead.")
        if (why := no_old_lot(bare)) is not None:
            raise BadInput(f"It {why[0]}.", why[1])
        return text.strip()

    def _one_colourway(self, text: str) -> str:
        words = " ".join(text.split())
        if words and words == self._new:
            return words
        if not words:
            raise BadInput("Say which colourway it is.")
        exact = [name for name in self._now.colourways if name.casefold() == words.casefold()]
        having = exact or [name for name in self._now.colourways
                           if words.casefold() in name.casefold()]
        if len(having) == 1:
            return having[0]
        if having:
            raise BadInput(f"“{words}” may be {' or '.join(having[:3])}.", "Write more of it.")
        raise BadInput(f"No colourway is called “{words}”.",
                       "Write it as it is called, or name it new: F7.")

    def _connect(self) -> None:
        self.lay.clicked.connect(self.done)
        self.name_new.clicked.connect(self._name_new)
        self.other.clicked.connect(self.ask_kind)
        self.file.clicked.connect(self.file_wanted)
        self.leave.clicked.connect(self.left)
        self.base.line.textChanged.connect(self._offer_put_ups)
        self.colourway.line.textChanged.connect(self._offer_new)

    def _lay_out(self) -> None:
        self.add(self.title, self.told, self.kinds, self.lots,
                 Actions(self.lay, self.name_new, self.other), self.table)
        self.add_last(Words("Or drop a list of them here: CSV or XLSX.", ink=SECOND))
        self.add_last(Actions(self.file, self.leave))
        self.table.hide()
        for field in (self.code, self.count):
            field.line.setAcceptDrops(False)  # a list that is dropped here is for the bench


def _row(*fields: QWidget) -> QWidget:
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(Gap.PART)
    for field in fields:
        line.addWidget(field, 1, Qt.AlignmentFlag.AlignTop)
    return row
