"""A kit's pattern as it is written: its name and price, then place after place."""

from dataclasses import dataclass
from string import ascii_uppercase
from typing import Any

from PySide6.QtCore import Signal

from app.lookups.kit_patterns import PatternNow
from app.lookups.order_words import StudioNames, read_words
from app.problems import BadInput
from app.window.benches.packing.one_by_one import OneByOne
from app.window.look.look import Size
from app.window.parts.amounts import read_price
from app.window.parts.card import Actions, SideBySide
from app.window.parts.fields import Field, TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.thing_table import Head, ThingTable
from app.window.parts.words import SECOND, Words
from app.work.kit_patterns import PatternIn, PlaceIn


@dataclass(frozen=True, slots=True)
class _Place:
    """A place as it was said, and as it was read."""

    what: str
    count: int
    others: str
    colourway: int
    base: int
    put_up: str
    stand_ins: tuple[int, ...]


class PatternWriting(OneByOne[_Place]):
    """`written` gives the PatternIn once its places are there."""

    written = Signal(object)

    def __init__(self) -> None:
        self.what = Field("Colourway and base", self._read_yarn, "Ferry Ledger, Tarnfield 4-ply")
        self.others = Field("What may stand in", self._read_others, "Brickyard Cat; Nettle Cellar")
        super().__init__("a kit pattern", "place", self.what, self.others)
        self.names = StudioNames({}, {}, ())
        self.title = Words("", Size.TITLE, bold=True)
        self.name = TextField("What is knitted of it", "Stair-Rail Cowl",
                              "Say what the kit is called.")
        self.price = Field("Price of a whole kit", read_price, "if it has one")
        self.table = ThingTable(("place", Head("", right=True), "what", "may stand in"),
                                "its places", most_rows=8)
        self.go = KeyButton("Add the place", "Enter", strong=True)
        self.whole = KeyButton("Keep the pattern", "F5")
        self.go.clicked.connect(self.done)
        self.whole.clicked.connect(self.keep)
        self.add(self.title, SideBySide(self.name, self.price, shares=(2, 1)),
                 SideBySide(*self.fields, shares=(3, 1, 3)),
                 Words("A is the main colour. An empty line and Enter keep the pattern.",
                       ink=SECOND), self.table)
        self.add_last(Actions(self.go, self.whole, self.back, self.leave))

    def begin(self, names: StudioNames, before: PatternNow | None = None) -> None:
        """A new pattern, or one that is there already: kits that were made by it stay."""
        self.names, self.rows = names, []
        fields: tuple[Field[Any], ...] = (self.name, self.price, *self.fields)
        for field in fields:
            field.clear()
        if before is not None:
            self.name.line.setText(before.name)
            self.price.line.setText("" if before.price is None else f"{before.price / 100:.2f}")
            self.rows = [_Place(
                f"{place.name}, {place.base_name}", place.wanted,
                "; ".join(one.name for one in place.stand_ins), place.colourway, place.base,
                place.put_up, tuple(one.colourway for one in place.stand_ins))
                for place in before.places]
        self.show_rows()
        (self.what if before else self.name).line.setFocus()

    def done(self) -> None:
        """Enter: on from the name, the next place, or the pattern is whole."""
        if self.name.line.hasFocus() or self.price.line.hasFocus():
            if self._named():
                self.what.line.setFocus()
        else:
            self.go_on()

    def read_row(self) -> _Place | None:
        yarn = self.what.value()
        if yarn is None:
            self.what.line.setFocus()
            return None
        count, others = self.how_many(), self.others.value()
        if count and others is None:
            self.others.line.setFocus()
        if not count or others is None:
            return None
        return _Place(self.what.line.text().strip(), count, self.others.line.text().strip(),
                      *yarn, others)

    def as_written(self, row: _Place) -> tuple[str, ...]:
        return row.what, str(row.count), row.others

    def keep(self) -> None:
        if not (self._named() and self.is_whole()):
            return
        price = self.price.value() if self.price.line.text().strip() else None
        self.written.emit(PatternIn(self.name.line.text().strip(), tuple(
            PlaceIn(letter, place.count, place.colourway, place.base, place.put_up,
                    place.stand_ins)
            for letter, place in zip(ascii_uppercase, self.rows, strict=False)), price))

    def _named(self) -> bool:
        """Whether name and price can be read; what cannot has the focus."""
        if not self.name.value():
            self.name.line.setFocus()
            return False
        if self.price.line.text().strip() and self.price.value() is None:
            self.price.line.setFocus()
            return False
        return True

    def show_rows(self) -> None:
        letter = ascii_uppercase[len(self.rows) % len(ascii_uppercase)]
        self.title.setText(f"Place {letter} of the kit")
        self.table.show_rows([
            (letter, f"{place.count} ×", place.what, place.others or "nothing")
            for letter, place in zip(ascii_uppercase, self.rows, strict=False)])
        self.table.setVisible(bool(self.rows))
        self.back.setVisible(bool(self.rows))

    def _read_yarn(self, text: str) -> tuple[int, int, str]:
        if not text.strip():
            raise BadInput("Say the colourway and its base.")
        read = read_words(text, self.names)
        if read.colourway is None or read.base is None:
            raise BadInput(read.doubt or f"“{text.strip()}” names no base of the studio.")
        return read.colourway, read.base, read.put_up or "skein"

    def _read_others(self, text: str) -> tuple[int, ...]:
        found = []
        for words in (part for part in text.replace(",", ";").split(";") if part.strip()):
            read = read_words(words, self.names)
            if read.colourway is None:
                raise BadInput(read.doubt)
            found.append(read.colourway)
        return tuple(found)

