"""Shade readings from a file, CSV, XLSX or CGATS text: looked at first, then taken in as one deed.

Rows of one lot that were looked at alike are readings of one card, unless the list says that each
is a mean already.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal, InvalidOperation
from pathlib import Path

from sqlalchemy import Connection, select

from app.calculations.codes import bare_characters
from app.calculations.shade import MOST_CHROMA, Colour, Lamp, Observer, Viewing
from app.calculations.shade_difference import Lab, mean_of
from app.exchange.cells import Row, read_cell
from app.exchange.cgats import cgats_table, is_cgats
from app.exchange.columns import (
    ColumnMatch,
    known_columns,
    match_columns,
    stated_above,
    with_remembered,
)
from app.exchange.reading import bytes_of, read_table
from app.exchange.rows import RowReader, RowTrouble
from app.exchange.shade_headings import SHADES
from app.exchange.taking_in import Said
from app.lookups.studio import setting
from app.problems import Refused
from app.records import DyeLot
from app.store.deed import Deed
from app.work.inspecting import ShadeIn, read_shades
from app.work.studio import choose

SETTING = "shade columns"
MOST_READINGS = 100
_NUMBER = re.compile(r"([-+−]?)(\d{1,3}(?:[.,]\d{1,6})?)", re.ASCII)
_WET = {"wet": True, "dry": False, "nass": True, "trocken": False, "yes": True, "no": False}


@dataclass(frozen=True, slots=True)
class ShadeList:
    """How a list was understood; no cards while a column is lacking."""

    match: ColumnMatch
    lacks: tuple[str, ...]
    cards: tuple[ShadeIn, ...] = ()
    troubles: tuple[RowTrouble, ...] = ()

    @property
    def bad_rows(self) -> int:
        """Rows that would be left out."""
        return len({trouble.row for trouble in self.troubles})


def see_shades(connection: Connection, path: Path, said: Said) -> ShadeList:
    """Read a list with what a person says of it; raises BadInput where it cannot be read at all."""
    data = bytes_of(path)
    came = "cgats" if is_cgats(data) else "csv"
    table = cgats_table(data) if came == "cgats" else read_table(data)
    match = match_columns(table, known_columns(setting(connection, SETTING)), said.columns, SHADES)
    given = {**stated_above(table, match),
             **{name: read_cell(words) for name, words in said.given.items()}}
    if lacks := match.lacks(given):
        return ShadeList(match, lacks)
    rows = [row for row in table.rows if row.number > match.row and any(row.cells)]
    codes = dict(connection.execute(
        select(DyeLot.code, DyeLot.id)
        .where(DyeLot.code.is_not(None), DyeLot.struck.is_(None))).all())
    reader = _Reader(match=match, given=given, lots={code: lot for code, lot in codes.items()
                                                     if code})
    read = [one for one in map(reader.read, rows) if one is not None]
    return ShadeList(match, (), _cards(read, came), tuple(reader.troubles))


def take_shades_in(deed: Deed, seen: ShadeList, leave_out: bool = False) -> list[int]:
    """All cards of a list and how its columns were matched, as one deed; the readings.

    Refused: rows in trouble, unless they are to be left out.
    """
    rows = "1 row" if seen.bad_rows == 1 else f"{seen.bad_rows} rows"
    if seen.troubles and not leave_out:
        raise Refused(f"{rows} of this list cannot be taken in as written; nothing was saved.",
                      "Put them right, or say that bad rows are to be left out.")
    if not seen.cards:
        raise Refused("Nothing of this list can be taken in; nothing was saved.",
                      "Put its rows right, or look whether it is the right file.")
    readings = read_shades(deed, seen.cards)
    said = deed.said
    if not seen.match.remembered:
        choose(deed, {SETTING: with_remembered(setting(deed.connection, SETTING), seen.match)})
    deed.say(said + (f"; {rows} left out" if seen.troubles else ""))
    return readings


@dataclass(frozen=True, slots=True)
class _OneRow:
    lot: int
    zone: str
    viewing: Viewing
    instrument: str
    lab: Lab
    mean_of: int | None


def _cards(rows: list[_OneRow], came: str) -> tuple[ShadeIn, ...]:
    """Single readings of a card become its mean; a row that is a mean is a card of its own."""
    single: dict[tuple[int, str, Viewing, str], list[Lab]] = {}
    cards = []
    for row in rows:
        if row.mean_of is None:
            single.setdefault((row.lot, row.zone, row.viewing, row.instrument), []).append(row.lab)
        else:
            cards.append(ShadeIn(Colour(*row.lab, row.viewing, row.mean_of), row.lot,
                                 zone=row.zone, came=came, instrument=row.instrument))
    cards += [ShadeIn(mean_of(labs, viewing), lot, zone=zone, came=came, instrument=instrument)
              for (lot, zone, viewing, instrument), labs in single.items()]
    return tuple(cards)


@dataclass(slots=True, kw_only=True)
class _Reader(RowReader):
    """Reads rows of readings; knows the lots of the book by their bare codes."""

    lots: Mapping[str, int] = field(default_factory=dict)

    def read(self, row: Row) -> _OneRow | None:
        """The reading of a row; none where anything is wrong with it."""
        before = len(self.troubles)
        lot, lamp, observer = self._lot(row), self._lamp(row), self._observer(row)
        lab = (self._number(row, "l", 0, 100), self._number(row, "a", -MOST_CHROMA, MOST_CHROMA),
               self._number(row, "b", -MOST_CHROMA, MOST_CHROMA))
        wet, times = self._wet(row), self._times(row)
        zone, instrument = self.words(row, "zone"), self.words(row, "instrument")
        if len(self.troubles) > before or lot is None or lamp is None or observer is None:
            return None
        return _OneRow(lot, zone, Viewing(lamp, observer, wet), instrument, lab, times)

    def _lot(self, row: Row) -> int | None:
        said = self.needed(row, "lot")
        found = self.lots.get(bare_characters(said))
        if said and found is None:
            self.trouble(row, "lot", "no lot of the book has this code.", said)
        return found

    def _lamp(self, row: Row) -> Lamp | None:
        said = self.needed(row, "lamp").partition("/")[0].strip()
        found = next((lamp for lamp in Lamp if lamp.casefold() == said.casefold()), None)
        if said and found is None:
            self.trouble(row, "lamp", f"it is none of {', '.join(Lamp)}.", said)
        return found

    def _observer(self, row: Row) -> Observer | None:
        said = self.needed(row, "observer")
        digits = re.match(r"\d+", said)
        if digits and int(digits[0][:3]) in (2, 10):
            return Observer(int(digits[0]))
        if said:
            self.trouble(row, "observer", "it is neither 2 nor 10 degrees.", said)
        return None

    def _wet(self, row: Row) -> bool:
        """Dry where nothing is said: so cards are read."""
        said = self.words(row, "state")
        if said and said.casefold() not in _WET:
            self.trouble(row, "state", "it is neither wet nor dry.", said)
        return _WET.get(said.casefold(), False)

    def _times(self, row: Row) -> int | None:
        said = self.words(row, "readings")
        if not said:
            return None
        if not (said.isascii() and said.isdigit() and 1 <= int(said[:9]) <= MOST_READINGS):
            self.trouble(row, "readings", f"it is no number from 1 to {MOST_READINGS}.", said)
            return None
        return int(said)

    def _number(self, row: Row, name: str, least: float, most: float) -> float:
        """A number with point or comma, and a sign: a minus is no formula here."""
        said = str(row[self.match.places[name]])
        match = _NUMBER.fullmatch(said)
        try:
            value = Decimal((match[1].replace("−", "-") + match[2].replace(",", "."))
                            if match else said)
        except InvalidOperation:
            self.trouble(row, name, "it is no number." if said else "nothing stands there.", said)
            return 0.0
        if not (value.is_finite() and least <= value <= most):
            self.trouble(row, name, f"it must be between {least:g} and {most:g}.", said)
            return 0.0
        return float(value)
