"""A list of what lay here before the book began: old lots with the codes on their tags.

A row in trouble never hides the good ones, and nothing is saved here until it is taken in.
"""

from dataclasses import dataclass, field
from difflib import get_close_matches
from pathlib import Path

from sqlalchemy import Connection

from app.calculations.codes import bare_characters
from app.calculations.old_lot_codes import no_old_lot
from app.exchange.cells import Cell, Row
from app.exchange.columns import (
    ColumnMatch,
    known_columns,
    match_columns,
    stated_above,
    with_remembered,
)
from app.exchange.headings import WORDINGS, ListKind
from app.exchange.reading import bytes_of, read_table
from app.exchange.rows import RowReader, RowTrouble
from app.exchange.taking_in import Said
from app.exchange.written import pieces
from app.lookups.old_lots import CanBeOld, can_be_old
from app.lookups.studio import setting
from app.problems import BadInput, Refused
from app.store.deed import Deed
from app.work.opening_stock import LayHere, open_lots
from app.work.studio import choose

SETTING = "old lot columns"
MOST = 5_000  # skeins of one old lot

OLD_LOTS = ListKind(
    "a list of old lots",
    {"code": "the code on its tags", "colourway": "the colourway", "base": "the base",
     "count": "how many lie here", "put up": "the put-up"},
    {"code": ("code", "lot", "lot no", "lot code", "dye lot", "old code", "tag", "partie",
              "farbpartie", "bain", "bain de teinture", "verfbad", "lote", "lotto", "farvebad"),
     "colourway": ("colourway", "colour", "color", "colorway", "shade", "name", "farbe", "couleur",
                   "coloris", "kleur", "color nombre", "colore", "farve", "farg", "farge"),
     "base": WORDINGS["base"],
     "count": ("count", "number", "skeins", "quantity", "qty", "pieces", "stock", "on hand",
               "anzahl", "menge", "bestand", "strange", "quantite", "nombre", "aantal", "cantidad",
               "quantita", "antal", "antall"),
     "put up": ("put up", "form", "size", "weight", "sold as", "aufmachung", "format", "formaat")},
    needed=("code", "colourway", "base", "count"),
    above=("base",),
    for_all=("base", "put up"),
)
"""As delivery notes are headed: the words of the trade, from memory."""


@dataclass(frozen=True, slots=True)
class OldLots:
    """How a list was understood; none of its lots while a column is lacking."""

    match: ColumnMatch
    lacks: tuple[str, ...]
    lots: tuple[LayHere, ...] = ()
    troubles: tuple[RowTrouble, ...] = ()
    new_colourways: tuple[str, ...] = ()

    @property
    def bad_rows(self) -> int:
        """Rows that would be left out."""
        return len({trouble.row for trouble in self.troubles})

    @property
    def in_all(self) -> int:
        """Skeins, minis and balls of all lots."""
        return sum(one.count for one in self.lots)


def see_old_lots(connection: Connection, path: Path, said: Said) -> OldLots:
    """Read a list with what a person says of it; raises BadInput where it cannot be read at all."""
    table = read_table(bytes_of(path))
    known = known_columns(setting(connection, SETTING))
    match = match_columns(table, known, said.columns, OLD_LOTS)
    given = {**stated_above(table, match), **said.given}
    lacks = match.lacks(given)
    if lacks:
        return OldLots(match, lacks)
    now = can_be_old(connection)
    reader = _Reader(match=match, given=given, now=now)
    rows = [row for row in table.rows if row.number > match.row and any(row.cells)]
    lots = tuple(lot for lot in map(reader.read, rows) if lot is not None)
    new = dict.fromkeys(lot.colourway for lot in lots if lot.colourway not in now.colourways)
    return OldLots(match, (), lots, tuple(reader.troubles), tuple(new))


def open_from_list(deed: Deed, seen: OldLots, leave_out: bool = False) -> list[int]:
    """All old lots of a list and how its columns were matched, as one deed; the piles.

    Refused: rows in trouble, unless they are to be left out.
    """
    if seen.troubles and not leave_out:
        raise Refused(f"{_rows(seen.bad_rows)} of this list cannot be taken in as written; nothing "
                      "was saved.", "Put them right, or say that bad rows are to be left out.")
    if seen.troubles and not seen.lots:
        raise Refused("Nothing of this list can be taken in; nothing was saved.",
                      "Put its rows right, or look whether it is the right file.")
    piles = open_lots(deed, seen.lots)
    said = deed.said
    if not seen.match.remembered:
        remembered = setting(deed.connection, SETTING)
        choose(deed, {SETTING: with_remembered(remembered, seen.match)})
    deed.say(said + (f"; {_rows(seen.bad_rows)} left out" if seen.bad_rows else ""))
    return piles


@dataclass(slots=True, kw_only=True)
class _Reader(RowReader):
    """Reads old lots; remembers which codes it met."""

    now: CanBeOld
    met: dict[str, int] = field(default_factory=dict)

    def read(self, row: Row) -> LayHere | None:
        """The lot of a row; none where anything is wrong with it."""
        before = len(self.troubles)
        code, colourway = self._code(row), self._colourway(row)
        base, count = self._base(row), self._count(row)
        put_up = self._put_up(row, base)
        if len(self.troubles) > before:
            return None
        self.met[bare_characters(code)] = row.number
        return LayHere(code, base, colourway, count, put_up)

    def _code(self, row: Row) -> str:
        said = self.needed(row, "code")
        bare = bare_characters(said)
        if bare in self.now.codes:
            self.trouble(row, "code", "this lot is in the book already.", said)
        elif bare in self.met:
            self.trouble(row, "code", f"row {self.met[bare]} has it too.", said)
        elif said and (why := no_old_lot(bare)) is not None:
            self.trouble(row, "code", f"it {why[0]}. {why[1]}", said)
        return said

    def _colourway(self, row: Row) -> str:
        said = " ".join(self.needed(row, "colourway").split())
        names = {name.casefold(): name for name in self.now.colourways}
        return names.get(said.casefold(), said)

    def _base(self, row: Row) -> str:
        said = self.needed(row, "base")
        names = {name.casefold(): name for name in self.now.put_ups}
        found = names.get(" ".join(said.split()).casefold(), "")
        if said and not found:
            near = get_close_matches(said.casefold(), names, 1)
            nearest = f"; nearest is {names[near[0]]}." if near else "."
            self.trouble(row, "base", f"no base is called so in the book{nearest}", said)
        return found

    def _count(self, row: Row) -> int:
        cell: Cell = self.cell(row, "count")
        try:
            return pieces(cell, MOST)
        except BadInput:
            self.trouble(row, "count", f"it is no number of skeins from 1 to {MOST:,}.", cell)
            return 0

    def _put_up(self, row: Row, base: str) -> str:
        forms = self.now.put_ups.get(base, ())
        said = self.words(row, "put up") or (forms[0] if forms else "")
        one = said.casefold().removesuffix("s")
        found = next((form for form in forms if form.casefold().removesuffix("s") == one), "")
        if base and not found:
            self.trouble(row, "put up", f"{base} is sold as {' or '.join(forms) or 'nothing yet'}.",
                         said)
        return found


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count} rows"
