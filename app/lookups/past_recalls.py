"""Recall lists that were kept: when, of what, in earnest or for practice, and how long they took.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Select, select

from app.lookups.source_names import source_names
from app.lookups.thread import Thing
from app.records import DeedRow, Recall

MOST_OF_IT, MOST_OTHERS = 8, 5
"""How many are shown: of one thing, and of all others."""


@dataclass(frozen=True, slots=True)
class PastRecall:
    """One list as it was kept: how many it held, and of how many it could say where they are."""

    id: int
    at: datetime
    on: str
    practice: bool
    count: int
    accounted: int
    seconds: int
    """From the question to the list that lay there."""
    person: str


_KEPT = (
    select(Recall.id, Recall.kind, Recall.thing, Recall.practice, Recall.skeins, Recall.accounted,
           Recall.began, DeedRow.happened, DeedRow.person)
    .join(DeedRow, DeedRow.seq == Recall.deed)
    .where(Recall.struck.is_(None)).order_by(Recall.id.desc())
)


def past_recalls(
    connection: Connection, kind: str | None = None, thing: int | None = None
) -> tuple[PastRecall, ...]:
    """Those of this thing first, then the last for practice of others; of none, the last of all."""
    if thing is None:
        return tuple(_past(connection, _KEPT.limit(MOST_OF_IT)))
    of_it = (Recall.kind == kind) & (Recall.thing == thing)
    return (*_past(connection, _KEPT.where(of_it).limit(MOST_OF_IT)),
            *_past(connection, _KEPT.where(~of_it, Recall.practice == 1).limit(MOST_OTHERS)))


def seconds_between(began: datetime, kept: datetime) -> int:
    """How long a list took, in whole seconds; one written in later took no time that is known."""
    return max(0, int((kept - began).total_seconds()))


def _past(
    connection: Connection, question: Select[*tuple[Any, ...]]
) -> Iterator[PastRecall]:
    rows = connection.execute(question).all()
    things: dict[int, Thing] = {row.id: (row.kind, row.thing) for row in rows}
    names = source_names(connection, set(things.values()))
    for row in rows:
        yield PastRecall(
            row.id, row.happened, names[things[row.id]], bool(row.practice), row.skeins,
            row.accounted, seconds_between(row.began, row.happened), row.person)
