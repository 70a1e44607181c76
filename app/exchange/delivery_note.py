"""A mill's list as deliveries: every row is a cone or a trouble that says what is wrong with it.

A row in trouble never hides the good ones, and nothing is saved here.
"""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from difflib import get_close_matches

from app.calculations.codes import Kind, numbered
from app.exchange.cells import Cell, Row, Table
from app.exchange.columns import ColumnMatch
from app.exchange.rows import RowReader, RowTrouble
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


@dataclass(slots=True, kw_only=True)
class _Reader(RowReader):
    """Reads cones; remembers which numbers it met."""

    book: InBook
    now: datetime
    marks: frozenset[str]
    met: dict[int, int] = field(default_factory=dict)
    before: dict[NoteKey, None] = field(default_factory=dict)

    def read(self, row: Row) -> tuple[tuple[NoteKey, datetime], ConeIn] | None:
        """The delivery a row belongs to and its cone; none where anything is wrong with it."""
        before = len(self.troubles)
        note = (self.words(row, "supplier") or NOT_STATED, self.needed(row, "note"),
                self._base(row))
        if note in self.book.notes:
            self.before[note] = None
            return None
        delivery = note, self._day(row)
        gross_mg, tare_mg = self._weights(row)
        number = self._number(row)
        cone = ConeIn(gross_mg, tare_mg, self.words(row, "batch") or None, number,
                      wrap_mg=self._amount(row, "wrap"),
                      moisture_permille=self._amount(row, "moisture"))
        return (delivery, cone) if len(self.troubles) == before else None

    def _base(self, row: Row) -> str:
        said = self.needed(row, "base")
        names = {_plain(name): name for name in self.book.bases}
        if not said or _plain(said) in names:
            return names.get(_plain(said), "")
        near = get_close_matches(_plain(said), names, 1)
        self.trouble(row, "base", "no base is called so in the book"
                      + (f"; nearest is {names[near[0]]}." if near else "."), said)
        return ""

    def _day(self, row: Row) -> datetime:
        cell = self.cell(row, "arrived")
        try:
            return day(cell, self.now) if cell != "" else self.now
        except BadInput as why:
            self.trouble(row, "arrived", why.what, cell)
            return self.now

    def _number(self, row: Row) -> int | None:
        cell = self.cell(row, "cone")
        try:
            number = cone_number(cell)
        except BadInput as why:
            self.trouble(row, "cone", why.what, cell)
            return None
        if number is not None:
            first = self.met.setdefault(number, row.number)
            code = numbered(Kind.CONE, number).grouped
            if first != row.number:
                self.trouble(row, "cone", f"{code} stands in row {first} already.", cell)
            elif number in self.book.cones:
                self.trouble(row, "cone", f"{code} is another cone in the book.", cell)
        return number

    def _amount(self, row: Row, name: str) -> int | None:
        cell = self.cell(row, name)
        measure: Measure = _MEASURES[name]
        try:
            return None if cell == "" else amount(
                cell, measure, self.match.unit(name) if measure is not MOISTURE else "",
                self.marks)
        except BadInput as why:
            self.trouble(row, name, why.what, cell)
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
            self.trouble(row, "tare" if gross else "gross", "two of gross, tare and net are "
                                                             "needed for a cone.")
            return 1, 0
        if not 0 <= tare < gross:
            self.trouble(row, "tare", "the empty centre cannot weigh so much.", _g(tare))
        elif net is not None and abs(gross - tare - net) > _SCALES_OFF_MG:
            self.trouble(row, "net", f"gross less tare is {_g(gross - tare)}.", _g(net))
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
    reader = _Reader(match=match, given=given, book=book, now=now,
                     marks=decimal_marks(weights))
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
