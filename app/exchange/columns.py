"""Which column of a list holds what: proposed from its headings, settled by a person, remembered.

A proposal is an offer: where two columns fit a field equally well, none is chosen.
"""

import json
from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher, get_close_matches
from itertools import pairwise

from app.exchange.cells import Cell, Row, Table
from app.exchange.headings import DELIVERY_NOTE, ListKind, bare, unit_of
from app.problems import BadInput

SETTING = "delivery columns"
_LOOKED_AT = 20  # rows above the table, at the most
_LEAST_COLUMNS = 3  # a row of fewer cells heads no table
_REMEMBERED = 60  # kinds of lists
_ALIKE, _SOMEWHAT_ALIKE = 0.87, 0.5

Known = Mapping[str, Mapping[str, str]]
"""What was settled for each set of headings: {headings: {field: heading}}."""


@dataclass(frozen=True, slots=True)
class ColumnMatch:
    """The headings' row, and for each field that was found the place of its column, from 0."""

    row: int
    headings: tuple[str, ...]
    places: Mapping[str, int]
    doubtful: Mapping[str, tuple[str, ...]]
    """Fields that several columns fit equally well."""
    remembered: bool = False
    kind: ListKind = DELIVERY_NOTE

    def unit(self, field: str) -> str:
        """The unit of weight in a field's heading."""
        return unit_of(self.headings[self.places[field]]) if field in self.places else ""

    def lacks(self, given: Collection[str]) -> tuple[str, ...]:
        """The fields that must still be named, or settled where several columns fit."""
        has = {*self.places, *given}
        lacking = [field for field in self.kind.needed if field not in has]
        if sum(field in has for field in self.kind.two_of) < 2:
            lacking += [field for field in self.kind.two_of[:2] if field not in has]
        return (*lacking, *(field for field in self.kind.settled
                            if field in self.doubtful and field not in has))

    def what_lacks(self, given: Collection[str]) -> str:
        """One sentence a lacking field, with the heading that comes nearest."""
        return " ".join(self._lack(field) for field in self.lacks(given))

    def _lack(self, field: str) -> str:
        if field in self.doubtful:
            fit = " and ".join(f"“{heading}”" for heading in self.doubtful[field])
            return f"{_capital(self.kind.fields[field])} may stand in {fit}."
        free = [heading for place, heading in enumerate(self.headings)
                if heading and place not in self.places.values()]
        wordings = self.kind.wordings[field]
        near = max(free, key=lambda heading: _likeness(wordings, heading), default="")
        nearest = f"; nearest is “{near}”" if near and _likeness(
            wordings, near) >= _SOMEWHAT_ALIKE else ""
        return f"No column is headed as {self.kind.fields[field]}{nearest}."


def propose(
    table: Table, known: Known, said: Mapping[str, str] | None = None,
    kind: ListKind = DELIVERY_NOTE,
) -> ColumnMatch:
    """The columns by their headings: as settled before, as a person says now, else by wording.

    `said` is {field: heading}; no heading means that it stands in no column. Raises BadInput where
    no row looks like headings.
    """
    row = max(table.rows[:_LOOKED_AT], key=lambda row: _fields_met(row, known, kind))
    if not _fields_met(row, known, kind) and not said:
        raise BadInput(f"No row of this file looks like headings of {kind.name}.",
                       f"It begins with: {_shown(table.rows[0])}.")
    headings = tuple(str(cell) for cell in row.cells)
    settled = known.get(_key(headings))
    places, doubtful = ((_as_settled(headings, settled), {}) if settled
                        else _by_wording(headings, kind.wordings))
    for field, heading in (said or {}).items():
        others = {other: place for other, place in places.items() if other != field}
        places = ({**others, field: _place_of(headings, field, heading, kind)} if heading
                  else others)
    return ColumnMatch(row.number, headings, places,
                       {f: fit for f, fit in doubtful.items() if f not in {*places, *(said or {})}},
                       bool(settled) and not said, kind)


def match_columns(
    table: Table, known: Known, said: Mapping[str, str], kind: ListKind = DELIVERY_NOTE
) -> ColumnMatch:
    """As proposed; where no heading is understood, a person may still say what stands where."""
    try:
        return propose(table, known, said, kind)
    except BadInput:
        first = table.rows[0]
        if said or len(first.cells) < _LEAST_COLUMNS:
            raise
        return ColumnMatch(first.number, tuple(map(str, first.cells)), {}, {}, kind=kind)


def stated_above(table: Table, match: ColumnMatch) -> Mapping[str, Cell]:
    """What a list says once above its table: a label, and its value in the next cell."""
    said: dict[str, Cell] = {}
    for row in (row for row in table.rows if row.number < match.row):
        for label, value in pairwise(row.cells):
            fields = [field for field in match.kind.above
                      if bare(str(label)) in match.kind.wordings[field]]
            if len(fields) == 1 and value != "" and fields[0] not in match.places:
                said.setdefault(fields[0], value)
    return said


def known_columns(stored: str) -> Known:
    """What the studio remembers, from its setting."""
    known: Known = json.loads(stored)
    return known


def with_remembered(stored: str, match: ColumnMatch) -> str:
    """The setting with this match in it; the oldest is forgotten where there are very many."""
    known = dict(known_columns(stored))
    key = _key(match.headings)
    known.pop(key, None)
    known[key] = {field: bare(match.headings[at]) for field, at in sorted(match.places.items())}
    return json.dumps(dict(list(known.items())[-_REMEMBERED:]), ensure_ascii=False)


def _key(headings: Sequence[str]) -> str:
    return " | ".join(sorted(bare(heading) for heading in headings if heading))


def _fields_met(row: Row, known: Known, kind: ListKind) -> int:
    headings = [str(cell) for cell in row.cells]
    if _key(headings) in known:
        return len(kind.fields) + 1
    places, doubtful = _by_wording(headings, kind.wordings)
    met = len(places) + len(doubtful)
    return met if met > 1 else 0


def _as_settled(headings: Sequence[str], settled: Mapping[str, str]) -> dict[str, int]:
    names = [bare(heading) for heading in headings]
    return {field: names.index(heading) for field, heading in settled.items()}


def _by_wording(
    headings: Sequence[str], wordings: Mapping[str, tuple[str, ...]]
) -> tuple[dict[str, int], dict[str, tuple[str, ...]]]:
    """Each heading speaks for the field it fits best; the best of a field's headings is taken."""
    fitting: dict[str, list[tuple[tuple[int, int], int]]] = defaultdict(list)
    for place, heading in enumerate(headings):
        name = bare(heading)
        fits = {field: fit for field, words in wordings.items()
                if (fit := _fit(words, name)) > (0, 0)}
        best = max(fits.values(), default=(0, 0))
        for field in (field for field, fit in fits.items() if fit == best):
            fitting[field].append((best, place))
    places, doubtful = {}, {}
    for field, found in fitting.items():
        best = max(found)[0]
        at = [place for fit, place in found if fit == best]
        if len(at) == 1:
            places[field] = at[0]
        else:
            doubtful[field] = tuple(headings[place] for place in at)
    return places, doubtful


def _fit(wordings: tuple[str, ...], name: str) -> tuple[int, int]:
    """How well a heading fits: the very words, words among others, or nearly the words."""
    if name in wordings:
        return 3, len(name)
    among = [words for words in wordings if f" {words} " in f" {name} "]
    if among:
        return 2, max(map(len, among))
    nearly = len(name) > 3 and get_close_matches(name, wordings, 1, _ALIKE)
    return (1, 0) if nearly else (0, 0)


def _likeness(wordings: tuple[str, ...], heading: str) -> float:
    return max(SequenceMatcher(None, bare(heading), words).ratio() for words in wordings)


def _place_of(headings: Sequence[str], field: str, said: str, kind: ListKind) -> int:
    names = [bare(heading) for heading in headings]
    if field not in kind.fields:
        raise BadInput(f"“{field}” is nothing that {kind.name} says.",
                       f"Choose one of: {', '.join(kind.fields)}.")
    if names.count(bare(said)) != 1:
        raise BadInput(f"No single column is headed “{said}”.",
                       f"The headings are: {', '.join(h for h in headings if h)}.")
    return names.index(bare(said))


def _shown(row: Row) -> str:
    return ", ".join(str(cell) for cell in row.cells if cell != "")[:200]


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
