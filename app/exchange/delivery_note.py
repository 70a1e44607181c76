"""A mill's list as deliveries: every row is a cone or a trouble that says what is wrong with it.

A row in trouble never hides the good ones, and nothing is saved here.
"""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from difflib import get_close_matches

from app.calculations.codes import Kind, numbered
from app.exchange.cells import Cell, Formula, Row, Table
from app.exchange.columns import ColumnMatch
from app.exchange.headings import FIELDS
from app.exchange.written import (
    GROSS,
    MOISTURE,
    NET,
    TARE,
    WRAP,
    Measure,
    amount,
    cone_number,
    day,
    decimal_marks,
)
from app.problems import BadInput
from app.work.receiving import ConeIn, DeliveryIn

NOT_STATED = "not stated"
MOST_CONES = 1_000  # in one delivery; a studio takes in some 2,000 a year
_SCALES_OFF_MG = 10_000  # what net and gross less tare may differ by rounding
_MEASURES = {"gross": GROSS, "tare": TARE, "net": NET, "wrap": WRAP, "moisture": MOISTURE}
_TOTALS = {"total", "totals", "sum", "summe", "gesamt", "totaal", "totale", "somme", "suma"}


@dataclass(frozen=True, slots=True)
class RowTrouble:
    """Why a row was not taken: its number, the column, what is wrong, and what stood there."""

    row: int
    column: str
    what: str
    kept: str

    @property
    def sentence(self) -> str:
        """'Row 7, Gross (g): it is no number. It says: 12x'."""
        said = f" It says: {self.kept}" if self.kept else ""
        return f"Row {self.row}, {self.column}: {self.what}{said}"


NoteKey = tuple[str, str, str]
"""Supplier, number of the note, base."""


@dataclass(frozen=True, slots=True)
class InBook:
    """What the book has already: bases, numbers of cones, and notes."""

    bases: tuple[str, ...]
    cones: frozenset[int]
    notes: frozenset[NoteKey]


@dataclass(frozen=True, slots=True)
class DeliveryNote:
    """What a list gives: deliveries by note and base, the rows in trouble, and what was seen."""

    deliveries: tuple[DeliveryIn, ...]
    troubles: tuple[RowTrouble, ...]
    before: tuple[NoteKey, ...] = ()
    """What of it is in the book already; such rows are neither cones nor trouble."""
    notes: tuple[str, ...] = ()

    @property
    def cones(self) -> int:
        """Cones in all deliveries."""
        return sum(len(delivery.cones) for delivery in self.deliveries)

    @property
    def bad_rows(self) -> int:
        """Rows that would be left out."""
        return len({trouble.row for trouble in self.troubles})


@dataclass(slots=True)
class _Reader:
    """Reads row after row; remembers which numbers of cones it met."""

    match: ColumnMatch
    given: Mapping[str, Cell]
    book: InBook
    now: datetime
    marks: frozenset[str]
    troubles: list[RowTrouble] = field(default_factory=list)
    met: dict[int, int] = field(default_factory=dict)
    before: dict[NoteKey, None] = field(default_factory=dict)

    def read(self, row: Row) -> tuple[tuple[NoteKey, datetime], ConeIn] | None:
        """The delivery a row belongs to and its cone; none where anything is wrong with it."""
        before = len(self.troubles)
        note = (self._words(row, "supplier") or NOT_STATED, self._needed(row, "note"),
                self._base(row))
        if note in self.book.notes:
            self.before[note] = None
            return None
        delivery = note, self._day(row)
        gross_mg, tare_mg = self._weights(row)
        number = self._number(row)
        cone = ConeIn(gross_mg, tare_mg, self._words(row, "batch") or None, number,
                      wrap_mg=self._amount(row, "wrap"),
                      moisture_permille=self._amount(row, "moisture"))
        return (delivery, cone) if len(self.troubles) == before else None

    def _cell(self, row: Row, name: str) -> Cell:
        place = self.match.places.get(name)
        cell = row[place] if place is not None else ""
        cell = self.given.get(name, "") if cell == "" else cell
        if isinstance(cell, Formula):
            self._trouble(row, name, "it reckons, or begins as a formula does: only values "
                                     "are taken.", cell)
            return ""
        return cell

    def _trouble(self, row: Row, name: str, what: str, kept: Cell = "") -> None:
        place = self.match.places.get(name)
        column = FIELDS[name] if place is None else self.match.headings[place]
        self.troubles.append(RowTrouble(row.number, column, what, str(kept)))

    def _words(self, row: Row, name: str) -> str:
        cell = self._cell(row, name)
        return f"{cell.normalize():f}" if isinstance(cell, Decimal) else str(cell)

    def _needed(self, row: Row, name: str) -> str:
        before = len(self.troubles)
        words = self._words(row, name)
        if not words and len(self.troubles) == before:
            self._trouble(row, name, "nothing stands there.")
        return words

    def _base(self, row: Row) -> str:
        said = self._needed(row, "base")
        names = {_plain(name): name for name in self.book.bases}
        if not said or _plain(said) in names:
            return names.get(_plain(said), "")
        near = get_close_matches(_plain(said), names, 1)
        self._trouble(row, "base", "no base is called so in the book"
                      + (f"; nearest is {names[near[0]]}." if near else "."), said)
        return ""

    def _day(self, row: Row) -> datetime:
        cell = self._cell(row, "arrived")
        try:
            return day(cell, self.now) if cell != "" else self.now
        except BadInput as why:
            self._trouble(row, "arrived", why.what, cell)
            return self.now

    def _number(self, row: Row) -> int | None:
        cell = self._cell(row, "cone")
        try:
            number = cone_number(cell)
        except BadInput as why:
            self._trouble(row, "cone", why.what, cell)
            return None
        if number is not None:
            first = self.met.setdefault(number, row.number)
            code = numbered(Kind.CONE, number).grouped
            if first != row.number:
                self._trouble(row, "cone", f"{code} stands in row {first} already.", cell)
            elif number in self.book.cones:
                self._trouble(row, "cone", f"{code} is another cone in the book.", cell)
        return number

    def _amount(self, row: Row, name: str) -> int | None:
        cell = self._cell(row, name)
        measure: Measure = _MEASURES[name]
        try:
            return None if cell == "" else amount(
                cell, measure, self.match.unit(name) if measure is not MOISTURE else "",
                self.marks)
        except BadInput as why:
            self._trouble(row, name, why.what, cell)
            return None

    def _weights(self, row: Row) -> tuple[int, int]:
        """Gross and tare, from any two of gross, tare and net."""
        before = len(self.troubles)
        gross, tare, net = (self._amount(row, name) for name in ("gross", "tare", "net"))
        if len(self.troubles) > before:
            return 1, 0
        if gross is None and net is not None and tare is not None:
            gross = net + tare
        if tare is None and net is not None and gross is not None:
            tare = gross - net
        if gross is None or tare is None:
            self._trouble(row, "tare" if gross else "gross", "two of gross, tare and net are "
                                                             "needed for a cone.")
            return 1, 0
        if not 0 <= tare < gross:
            self._trouble(row, "tare", "the empty centre cannot weigh so much.", _g(tare))
        elif net is not None and abs(gross - tare - net) > _SCALES_OFF_MG:
            self._trouble(row, "net", f"gross less tare is {_g(gross - tare)}.", _g(net))
        return gross, tare


def read_note(
    table: Table, match: ColumnMatch, given: Mapping[str, Cell], book: InBook, now: datetime
) -> DeliveryNote:
    """All cones of a list; `given` is said once, for every row that does not say it itself.

    An empty batch is one that was not stated. Raises BadInput where a column that must be there
    is not, or where the list is too long for a delivery.
    """
    if match.lacks(given):
        raise BadInput(match.what_lacks(given),
                       "Say which column holds it, or say it once for all rows.")
    rows = [row for row in table.rows if row.number > match.row]
    weights = [row[match.places[name]] for row in rows for name in _MEASURES
               if name in match.places]
    reader = _Reader(match, given, book, now, decimal_marks(weights))
    found: dict[tuple[NoteKey, datetime], list[ConeIn]] = defaultdict(list)
    totals = [row.number for row in rows if _is_total(row)]
    for row in rows:
        read = None if row.number in totals else reader.read(row)
        if read:
            found[read[0]].append(read[1])
    if any(len(cones) > MOST_CONES for cones in found.values()):
        raise BadInput(f"One delivery of more than {MOST_CONES:,} cones: this is another list.",
                       "Choose the file of one delivery.")
    deliveries = tuple(DeliveryIn(supplier, note, base, arrived, tuple(cones))
                       for ((supplier, note, base), arrived), cones in found.items())
    notes = (*table.notes, *(f"Row {number} is a total and was left out." for number in totals))
    return DeliveryNote(deliveries, tuple(reader.troubles), tuple(reader.before), notes)


def _is_total(row: Row) -> bool:
    first = next(str(cell) for cell in row.cells if cell != "")
    return first.casefold().strip(" :.") in _TOTALS


def _plain(name: str) -> str:
    return "".join(c for c in name.casefold() if c.isalnum())


def _g(mg: int) -> str:
    return f"{mg / 1000:,.10g} g"
