"""A notebook of recipes as recipes: one row a dye or assistant, gathered by colourway.

A recipe with a single row in trouble stays out whole, and nothing is saved here.
"""

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Final

from app.exchange.cells import Cell, Row, Table
from app.exchange.columns import ColumnMatch
from app.exchange.rows import RowReader, RowTrouble
from app.exchange.written import Measure, amount, decimal_marks, readings
from app.problems import BadInput
from app.records.recipes import LOOKS
from app.work.recipes import ComponentIn, ZoneIn

MOST_ROWS = 60  # of one recipe; beyond it two colourways share a name
LONGEST_NAME = 80  # characters
SHARE_OF_ONE = Decimal(600)  # millionths: a notebook without more of any dye was kept as shares
_FIBRE = {"owf": Decimal(10_000), "% owf": Decimal(10_000), "%owf": Decimal(10_000)}
_PERCENT = {"%": Decimal(10_000), "percent": Decimal(10_000)}
_IN_VOLUME = {"% w/v": Decimal(10_000), "% w": Decimal(10_000)}
_LITRE = {"g": Decimal(1000), "gpl": Decimal(1000), "mg": Decimal(1)}
OF_FIBRE: Final = Measure("a share of the fibre", {**_FIBRE, **_PERCENT}, 1, 1_000_000,
                          said_in=(10_000, "%"))
OF_KILO: Final = Measure("a share of the fibre", {"g": Decimal(1000)}, 1, 1_000_000,
                         said_in=(10_000, "%"))
OF_BATH: Final = Measure("an amount in a litre of bath", _LITRE, 1, 1_000_000,
                         said_in=(1000, "g/L"))
OF_BOTTLE: Final = Measure("an amount in a bottle", {**_PERCENT, **_IN_VOLUME, **_LITRE},
                           1, 1_000_000, said_in=(10_000, "%"))
SHARE: Final = Measure("a share of the skein", {"%": Decimal(10)}, 1, 1000)
POUR: Final = Measure("what a zone takes for 100 g", {"ml": Decimal(1)}, 1, 500,
                      said_in=(1, "mL"))
_OF_LITRE = ("g/l", "gpl", "mg/l")
_RATIO = re.compile(r"(?:1\s*[:/]\s*)?(\d{1,3}(?:[.,]\d)?)(?:\s*[:/]\s*1)?", re.ASCII)
_A_LITRE = re.compile(r"(m?g)\s*/\s*(?:l|lt|ltr|litre|liter)", re.ASCII)
_A_KILO = re.compile(r"g\s*/\s*kg", re.ASCII)
_WITH_UNIT = re.compile(r"[\d.,\s\u00a0\u202f]*\d\s*([^\d\s.,].*)", re.ASCII)
_ASSISTANT = re.compile(
    r"acid\b|vinegar|acetic|citric|formic|sulphate|sulfate|salt\b|soda|ammoni|levelling|leveling|"
    r"wetting|saure|essig|salz|acide|vinaigre|azijn|zout", re.IGNORECASE)
_ROLES = {"dye": "dye", "d": "dye", "colour": "dye", "assistant": "assistant", "a": "assistant",
          "helper": "assistant", "auxiliary": "assistant"}
Heads = tuple[str, ...]
_HEADS: Heads = ("class", "look", "liquor")


@dataclass(frozen=True, slots=True)
class RecipeRead:
    """A whole recipe of a notebook, in its order of pouring."""

    colourway: str
    components: tuple[ComponentIn, ...]
    zones: tuple[ZoneIn, ...]
    look: str
    base_class: str | None
    liquor_tenths: int | None


@dataclass(frozen=True, slots=True)
class Notebook:
    """What a notebook gives: whole recipes, the names of those that stay out, and why."""

    recipes: tuple[RecipeRead, ...]
    out: tuple[str, ...]
    troubles: tuple[RowTrouble, ...]
    notes: tuple[str, ...] = ()


@dataclass(slots=True)
class _Gathered:
    """The rows of one colourway so far."""

    name: str
    said: dict[str, tuple[str, int]] = field(default_factory=dict)
    zones: dict[str, ZoneIn] = field(default_factory=dict)
    poured: dict[tuple[str, str | None], int] = field(default_factory=dict)
    lines: list[tuple[Decimal, int, ComponentIn]] = field(default_factory=list)
    out: bool = False


@dataclass(slots=True, kw_only=True)
class _Reader(RowReader):
    """Reads components; what is said of a whole recipe may stand in one of its rows alone."""

    dyes: Mapping[str, str]
    """The dyes in the studio's jars, by their plain name."""
    marks: frozenset[str]
    recipes: dict[str, _Gathered] = field(default_factory=dict)
    last: str = ""

    def read(self, row: Row) -> None:
        before = len(self.troubles)
        name = self.words(row, "colourway") or self.last
        if not name or len(name) > LONGEST_NAME:
            self.trouble(row, "colourway", "no colourway has so long a name." if name
                         else "nothing stands there.", name)
            self.last = ""  # what follows without a name belongs to nobody either
            return
        self.last = name
        recipe = self.recipes.setdefault(plain(name), _Gathered(name))
        self._look_beside(row)
        self._heads(row, recipe)
        zone = self._zone(row, recipe)
        component = self._component(row, zone)
        if component is not None:
            self._look_for_twins(row, recipe, component)
            recipe.lines.append((self._place(row), row.number, component))
        recipe.out = recipe.out or len(self.troubles) > before

    def _look_beside(self, row: Row) -> None:
        """Past the last heading nothing is read: a comma within a number makes such cells."""
        beyond = [cell for cell in row.cells[len(self.match.headings):] if cell != ""]
        if beyond:
            self.trouble(row, "amount", "this row has more cells than there are headings. Was a "
                                        "number cut at its comma?", beyond[0])

    def _look_for_twins(self, row: Row, recipe: _Gathered, one: ComponentIn) -> None:
        """A dye twice in one recipe is most often two recipes of one name, unless an order is said.
        """
        key = plain(one.substance), one.zone
        first = recipe.poured.setdefault(key, row.number)
        if first != row.number and one.role == "dye" and not self.words(row, "place"):
            self.trouble(row, "substance",
                         f"row {first} has this dye already for {recipe.name}. Two recipes of one "
                         "name? Poured twice, it needs its order.", one.substance)

    def _heads(self, row: Row, recipe: _Gathered) -> None:
        for name in _HEADS:
            words = " ".join(self.words(row, name).split())
            said, first = recipe.said.setdefault(name, (words, row.number)) if words else ("", 0)
            if words and plain(words) != plain(said):
                self.trouble(row, name, f"row {first} says it otherwise for this colourway.",
                             words)
            elif name == "look" and words and words.casefold() not in LOOKS:
                self.trouble(row, name, f"it is none of {', '.join(LOOKS)}.", words)
            elif name == "liquor" and words and not _RATIO.fullmatch(words):
                self.trouble(row, name, "it is no ratio. Write it like 20:1.", words)

    def _zone(self, row: Row, recipe: _Gathered) -> str | None:
        letter = self.words(row, "zone").strip().upper()
        if not letter:
            return None
        share, pour = self._amount(row, "share", SHARE) or 0, self._amount(row, "pour", POUR) or 0
        known = recipe.zones.get(letter, ZoneIn(letter, 0, 0))
        for name, said, now in (("share", known.share_permille, share),
                                ("pour", known.ml_per_100_g, pour)):
            if said and now and said != now:
                self.trouble(row, name, "another row says it otherwise for this zone.")
        recipe.zones[letter] = ZoneIn(letter, share or known.share_permille,
                                      pour or known.ml_per_100_g)
        return letter

    def _component(self, row: Row, zone: str | None) -> ComponentIn | None:
        before = len(self.troubles)
        said = " ".join(self.needed(row, "substance").split())
        substance = self.dyes.get(plain(said), said)
        unit, kept = self._how_much(row, zone)
        role = self._role(row, substance)
        if len(self.troubles) > before:
            return None
        return ComponentIn(substance, unit, kept, role, self.words(row, "form"),
                           zone if unit == "bottle" else None)

    def _how_much(self, row: Row, zone: str | None) -> tuple[str, int]:
        """The unit as it is kept, and the amount in it: of the fibre, the bath, or the bottle."""
        unit = self._unit(row)
        if not unit:
            self.trouble(row, "unit", "nobody says whether it is % of the fibre or g/L.")
            return "owf", 0
        if unit in _FIBRE or (unit in _PERCENT and zone is None):
            kind, measure = "owf", OF_FIBRE
        elif unit == "g/kg":
            kind, measure = "owf", OF_KILO
        elif zone is not None and unit in (*_PERCENT, *_IN_VOLUME, *_OF_LITRE):
            kind, measure = "bottle", OF_BOTTLE
        elif unit in _OF_LITRE:
            kind, measure = "bath", OF_BATH
        else:
            self.trouble(row, "unit", "it is neither % of the fibre nor g/L; what is in a bottle "
                                      "needs its zone.", unit)
            return "owf", 0
        said = unit if unit in measure.units else unit.partition("/")[0]
        return kind, self._amount(row, "amount", measure, said) or 0

    def _unit(self, row: Row) -> str:
        """The unit in its cell, else in its column, else in the heading."""
        number = _WITH_UNIT.fullmatch(self.words(row, "amount"))
        own = number[1] if number else ""
        place = self.match.places.get("amount")
        heading = "" if place is None else self.match.headings[place]
        in_heading = "owf" if "owf" in heading.casefold() else (
            "%" if "%" in heading else "g/l" if re.search(r"\bg\s*/\s*l", heading, re.I) else "")
        unit = (own or self.words(row, "unit") or in_heading).casefold().strip(" .")
        of_litre = _A_LITRE.fullmatch(unit)
        return f"{of_litre[1]}/l" if of_litre else "g/kg" if _A_KILO.fullmatch(unit) else unit

    def _amount(
        self, row: Row, name: str, measure: Measure, unit: str = ""
    ) -> int | None:
        cell = self.cell(row, name)
        if cell == "" and name == "amount":
            self.needed(row, name)
        if cell == "":
            return None
        try:
            return amount(cell, measure, unit or next(iter(measure.units)), self.marks)
        except BadInput as why:
            self.trouble(row, name, why.what, cell)
            return None

    def _role(self, row: Row, substance: str) -> str:
        said = self.words(row, "role").strip().casefold()
        if said and said not in _ROLES:
            self.trouble(row, "role", "it is neither dye nor assistant.", said)
        if said:
            return _ROLES.get(said, "dye")
        return role_of(substance, self.dyes)

    def _place(self, row: Row) -> Decimal:
        cell = self.words(row, "place")
        found = set(readings(cell).values())
        if cell and len(found) != 1:
            self.trouble(row, "place", "it is no number.", cell)
        return found.pop() if len(found) == 1 else Decimal(row.number)


def role_of(substance: str, dyes: Collection[str]) -> str:
    """'dye' or 'assistant', where nobody says; `dyes` are the plain names of those in jars."""
    is_dye = plain(substance) in dyes or not _ASSISTANT.search(substance)
    return "dye" if is_dye else "assistant"


def read_notebook(
    table: Table, match: ColumnMatch, dyes: Mapping[str, str],
    given: Mapping[str, Cell] | None = None,
) -> Notebook:
    """All recipes of a notebook; `given` is said once, for every row that does not say it itself.

    Raises BadInput where a column that must be there is not.
    """
    if match.lacks(()):
        raise BadInput(match.what_lacks(()), "Say which column holds it.")
    rows = [row for row in table.rows if row.number > match.row]
    amounts = [row[match.places[name]] for row in rows for name in ("amount", "share", "pour")
               if name in match.places]
    reader = _Reader(match=match, given=given or {}, dyes=dyes, marks=decimal_marks(amounts))
    for row in rows:
        reader.read(row)
    whole = [one for one in reader.recipes.values() if not one.out and one.lines]
    long = {one.name for one in whole if len(one.lines) > MOST_ROWS}
    return Notebook(
        tuple(_recipe(one) for one in whole if one.name not in long),
        tuple(one.name for one in reader.recipes.values() if one.out or one.name in long),
        tuple(dict.fromkeys(reader.troubles)),
        (*table.notes, *_as_shares(whole), *(
            f"{name} has more than {MOST_ROWS} rows: it is left out." for name in sorted(long))))


def _as_shares(recipes: Sequence[_Gathered]) -> tuple[str, ...]:
    """Said where no dye of a whole notebook comes to more than a trace."""
    dyes = [line.amount for one in recipes for _, _, line in one.lines
            if line.role == "dye" and line.unit == "owf"]
    if not dyes or max(dyes) > SHARE_OF_ONE:
        return ()
    return ("No dye of this notebook comes to more than 0.06 %. If 0.0085 means 0.85 % there, put "
            "the numbers right before you take it in.",)


def plain(name: str) -> str:
    """By what two written names are compared."""
    return " ".join(name.casefold().split())


def _recipe(one: _Gathered) -> RecipeRead:
    look = one.said.get("look", ("", 0))[0].casefold()
    ratio = _RATIO.fullmatch(one.said.get("liquor", ("", 0))[0])
    return RecipeRead(
        one.name, tuple(line for _, _, line in sorted(one.lines, key=lambda line: line[:2])),
        tuple(one.zones.values()), look or ("zones" if one.zones else "solid"),
        one.said.get("class", ("", 0))[0] or None,
        int(Decimal(ratio[1].replace(",", ".")) * 10) if ratio else None)
