"""What the finishing table expects, by tie colour, before the scissors destroy the ties."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor

from sqlalchemy import Connection, select

from app.lookups.certainty import NOTHING, Said, tally, ways
from app.lookups.present import leaves
from app.lookups.thread import Thread, thread
from app.records import Base, Yarn
from app.store.dialect import among, listed

NO_TIE = "no tie"
TRIMMED = ""
"""The tie of a skein that wears a tag, or wore one: it was cut after the count."""

Told = tuple[tuple[int, int], ...]
"""What a tie tells: at each (pool), the one (parent) that its skeins came from."""


@dataclass(frozen=True, slots=True)
class Expected:
    """So many skeins with this tie; `most` is more where a mixed row was split since."""

    tie: str
    """The colour; with put-up or base where others on the cord wear the same."""
    count: int
    most: int
    rows: tuple[int, ...]
    told: Told
    worn: str | None


@dataclass(frozen=True, slots=True)
class _Worn:
    """A row that wears a tie, and the pools on the way down to the one that is counted."""

    row: int
    tie: str | None
    way: Told


_ROWS = (
    select(Yarn.id, Yarn.kind, Yarn.tie, Yarn.put_up, Base.name).join(Base, Base.id == Yarn.base)
    .where(among(Yarn.id, "ids")).order_by(Yarn.id)
)


def expected_by_tie(connection: Connection, rows: Sequence[int]) -> tuple[Expected, ...]:
    """Skeins by tie colour, in the order of the rows."""
    found = thread(connection, rows)
    left = {leaf.yarn: leaf.count for leaf in leaves(connection, rows)}
    words = {row.id: row for row in connection.execute(_ROWS, {"ids": listed(found.count)})}
    ties = {row: TRIMMED if words[row].kind == "skein" else words[row].tie for row in words}
    alike = {(words[row].put_up, words[row].name) for row in left}
    groups: dict[str, list[tuple[int, _Worn]]] = defaultdict(list)
    for row in left:
        for worn in _worn(found, ties, row, (), {}):
            apart = _apart(alike, (words[row].put_up, words[row].name))
            groups[" ".join([worn.tie or NO_TIE, *apart])].append((row, worn))
    return tuple(_expected(found, left, tie, group) for tie, group in groups.items())


def _apart(alike: set[tuple[str, str]], own: tuple[str, str]) -> list[str]:
    """The words that tell put-ups or bases on one cord apart."""
    return [word for place, word in enumerate(own) if len({one[place] for one in alike}) > 1]


def _worn(
    found: Thread, ties: Mapping[int, str | None], row: int, way: Told, said: Said
) -> Iterator[_Worn]:
    parents = list(ways(found, row, said))
    if ties[row] is not None or not parents:
        yield _Worn(row, ties[row], way)
        return
    for parent, _, told in parents:
        step = ((row, parent),) if len(parents) > 1 else ()
        yield from _worn(found, ties, parent, (*way, *step), told)


def _expected(
    found: Thread, left: Mapping[int, int], tie: str, group: Sequence[tuple[int, _Worn]]
) -> Expected:
    sums = NOTHING
    for row, worn in dict.fromkeys((row, worn.row) for row, worn in group):
        sums += tally(found, {row: left[row]}, ("yarn", worn))
    rows = tuple(dict.fromkeys(row for row, _ in group))
    room = sum(left[row] for row in rows)
    return Expected(tie, floor(sums.least), min(ceil(sums.most), room), rows,
                    _common(group) if len(rows) == 1 else (), group[0][1].tie or None)


def _common(group: Sequence[tuple[int, _Worn]]) -> Told:
    """The steps that all ways of a tie share: as much as it tells."""
    told: list[tuple[int, int]] = []
    for steps in zip(*(worn.way for _, worn in group), strict=False):
        if len(set(steps)) > 1:
            break
        told.append(steps[0])
    return tuple(told)
