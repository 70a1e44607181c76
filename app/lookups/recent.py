"""The journal as people read it: what was done, by whom, and what was off."""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, func, select

from app.records import DeedRow, Head, Touched
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class EntryRow:
    """One entry of the journal."""

    seq: int
    happened: datetime
    written: datetime
    person: str
    station: str
    said: str
    findings: tuple[str, ...]
    reason: str | None
    undone: bool


_COLUMNS = (DeedRow.seq, DeedRow.happened, DeedRow.written, DeedRow.person, DeedRow.station,
            DeedRow.body)


def entries(connection: Connection, limit: int = 50) -> tuple[EntryRow, ...]:
    """The newest entries, the newest first."""
    return _rows(connection, connection.execute(
        select(*_COLUMNS).order_by(DeedRow.seq.desc()).limit(limit)).all())


def entries_that_wrote(
    connection: Connection, rows: Mapping[str, Iterable[int]]
) -> tuple[EntryRow, ...]:
    """All entries that wrote any of these rows, {table: rows}, the oldest first."""
    seqs = {seq for table, numbers in rows.items() for seq in connection.execute(
        select(Touched.deed).where(Touched.tbl == table, among(Touched.row, "ids")),
        {"ids": listed(numbers)}).scalars()}
    return _rows(connection, connection.execute(
        select(*_COLUMNS).where(among(DeedRow.seq, "ids")).order_by(DeedRow.seq),
        {"ids": listed(seqs)}).all())


def _rows(connection: Connection, rows: Sequence[Row[*tuple[Any, ...]]]) -> tuple[EntryRow, ...]:
    undone = set(connection.execute(
        select(DeedRow.undoes).where(DeedRow.undoes.in_([row.seq for row in rows]))).scalars())
    return tuple(_entry(row, row.seq in undone) for row in rows)


def _entry(row: Row[*tuple[Any, ...]], undone: bool) -> EntryRow:
    body = json.loads(row.body)
    return EntryRow(row.seq, row.happened, row.written, row.person, row.station,
                    body["said"] or body["name"].replace("_", " "), tuple(body["findings"]),
                    body["reason"], undone)


def head(connection: Connection) -> tuple[int, str]:
    """The number and digest of the last entry: paper that carries it bears witness."""
    seq, digest = connection.execute(select(Head.seq, Head.hash)).one()
    return seq, digest.hex()


def book_began(connection: Connection) -> datetime | None:
    """When the first thing that is in the book happened; none while nothing is in it."""
    return connection.execute(select(func.min(DeedRow.happened))).scalar()
