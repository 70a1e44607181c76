"""A mill's list as a file: how it was understood, what it lacks; nothing of it is saved."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection

from app.exchange.cells import Cell
from app.exchange.columns import (
    SETTING,
    ColumnMatch,
    known_columns,
    match_columns,
    stated_above,
)
from app.exchange.reading import bytes_of, read_table
from app.exchange.rows import RowTrouble
from app.exchange.taking_in import Arrival, Said, look_at
from app.lookups.door import BaseNow, CameBefore, bases_now, came_before
from app.lookups.studio import setting


@dataclass(frozen=True, slots=True)
class Seen:
    """How a list was understood; no arrival while a column is lacking."""

    match: ColumnMatch
    above: Mapping[str, Cell]
    lacks: tuple[str, ...]
    arrival: Arrival | None
    bases: tuple[BaseNow, ...]
    before: Mapping[str, tuple[CameBefore, ...]]
    """For each note, cones of its bases that came in on a note of this number before."""


def see(connection: Connection, path: Path, said: Said, now: datetime) -> Seen:
    """Read a list with what a person says of it; raises BadInput where it cannot be read at all."""
    data = bytes_of(path)
    table = read_table(data)
    match = match_columns(table, known_columns(setting(connection, SETTING)), said.columns)
    above = stated_above(table, match)
    lacks = match.lacks({**above, **said.given})
    arrival = None if lacks else look_at(connection, data, said, now)
    return Seen(match, above, lacks, arrival, bases_now(connection),
                _before(connection, arrival))


def lack(seen: Seen, field: str, given: Collection[str]) -> str:
    """The sentence for one field that a list lacks."""
    others = {other for other in seen.lacks if other != field}
    return seen.match.what_lacks({*seen.above, *given, *others})


def _before(
    connection: Connection, arrival: Arrival | None
) -> Mapping[str, tuple[CameBefore, ...]]:
    deliveries = arrival.note.deliveries if arrival else ()
    found = ((one.note_no, came_before(connection, one.note_no, one.base)) for one in deliveries)
    return {note_no: before for note_no, before in found if before}


def gathered(troubles: Sequence[RowTrouble]) -> tuple[str, ...]:
    """A sentence a trouble; what is wrong in the same way in many rows is said once."""
    rows: dict[tuple[str, str, str], list[int]] = {}
    for trouble in troubles:
        rows.setdefault((trouble.column, trouble.what, trouble.kept), []).append(trouble.row)
    return tuple(
        RowTrouble(numbers[0], *why).sentence.replace(f"Row {numbers[0]}", _rows(numbers), 1)
        for why, numbers in rows.items())


def in_trouble(seen: Seen, field: str) -> str:
    """The first of what stands in a field's column and cannot be taken in; '' where all can."""
    place = seen.match.places.get(field)
    if seen.arrival is None or place is None:
        return ""
    heading = seen.match.headings[place]
    return next((trouble.kept for trouble in seen.arrival.note.troubles
                 if trouble.column == heading and trouble.kept), "")


def _rows(numbers: Sequence[int]) -> str:
    if len(numbers) == 1:
        return f"Row {numbers[0]}"
    whole = numbers[-1] - numbers[0] == len(numbers) - 1
    if whole and len(numbers) > 2:
        return f"Rows {numbers[0]} to {numbers[-1]}"
    some = ", ".join(map(str, numbers[:6]))
    return f"Rows {some} and {len(numbers) - 6} more" if len(numbers) > 6 else f"Rows {some}"
