"""The journal's chain: how an entry is written, and how the whole book is checked against it."""

import hashlib
import json
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, NoReturn

from sqlalchemy import Connection, Row, Table, bindparam, insert, select, update

from app.problems import BookUnusable
from app.records import DeedRow, Head, Personal, Photo, Record, Touched, moment_text
from app.store.deed import JOURNALLED, Deed, open_names, table_of
from app.store.dialect import locks_rows

_OWN = {"deed", "touched", "head", "alembic_version"}
_JOURNALLED = {JOURNALLED: True}
_NEVER = moment_text(datetime(1970, 1, 1, tzinfo=UTC))
_GO_ON = "Keep this file as it is, and go on from the last good copy."


@dataclass(frozen=True, slots=True)
class Entry:
    """What an entry says beside its rows."""

    name: str
    token: str
    reason: str | None
    undoes: int | None


def plain(value: Any) -> Any:
    """A column's value as it stands in the journal."""
    return moment_text(value) if isinstance(value, datetime) else value


def _plain_row(row: dict[str, Any] | None) -> dict[str, Any] | None:
    return None if row is None else {name: plain(value) for name, value in row.items()}


def body_of(deed: Deed, entry: Entry, answer: Any) -> bytes:
    """The text of an entry: keys in order, no spaces, one way to write each value."""
    said = {
        "seq": deed.seq, "happened": plain(deed.happened), "written": plain(deed.written),
        "person": deed.by.person, "station": deed.by.station, "name": entry.name,
        "token": entry.token, "reason": entry.reason, "undoes": entry.undoes, "said": deed.said,
        "findings": deed.findings, "doubt": deed.clock_in_doubt, "answer": answer,
        "rows": [
            [change.table, change.row, _plain_row(change.before), _plain_row(change.after)]
            for change in deed.changes
        ],
    }
    text = json.dumps(said, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return text.encode()


def begin_entry(deed: Deed, entry: Entry) -> None:
    """Take the entry's place in the journal, so that the deed's rows can point at it.

    Were it added last, the database would look through every table for rows that wait for it.
    """
    deed.connection.execute(
        insert(table_of(DeedRow)),
        {
            "seq": deed.seq, "happened": deed.happened, "written": deed.written,
            "person": deed.by.person, "station": deed.by.station, "name": entry.name,
            "token": entry.token, "undoes": None, "body": b"", "hash": b"",
        },
        execution_options=_JOURNALLED,
    )


_FILLED = update(table_of(DeedRow)).where(DeedRow.seq == bindparam("at"))


def write_entry(deed: Deed, entry: Entry, answer: Any, before: bytes) -> None:
    """Write what the deed did into its entry, chain it to the one before, and move the head."""
    body = body_of(deed, entry, answer)
    digest = hashlib.sha256(before + body).digest()
    connection = deed.connection
    connection.execute(
        _FILLED, {"at": deed.seq, "undoes": entry.undoes, "body": body, "hash": digest},
        execution_options=_JOURNALLED,
    )
    touched = sorted({(change.table, change.row) for change in deed.changes})
    if touched:
        connection.execute(
            insert(table_of(Touched)),
            [{"deed": deed.seq, "tbl": table, "row": row} for table, row in touched],
            execution_options=_JOURNALLED,
        )
    sure = {} if deed.clock_in_doubt else {"written": deed.written}
    connection.execute(
        update(table_of(Head)).values(seq=deed.seq, hash=digest, **sure),
        execution_options=_JOURNALLED,
    )


@dataclass(frozen=True, slots=True)
class Verdict:
    """The book agrees with its journal: so many entries, and what was removed on request."""

    entries: int
    rows: int
    removed: tuple[str, ...]
    head: str


def verify(connection: Connection) -> Verdict:
    """Recompute the chain and replay it against every row of every table.

    Raises BookUnusable with the first thing that does not agree.
    """
    try:
        if not locks_rows(connection.dialect):
            (sound,) = connection.exec_driver_sql("PRAGMA integrity_check(1)").one()
            if sound != "ok":
                _disagree(f"The file of the book is damaged: {sound}.")
        return _replayed(connection)
    except ValueError as error:
        raise BookUnusable(f"Something in the book cannot be read: {error}.", _GO_ON) from error


def _replayed(connection: Connection) -> Verdict:
    state: dict[tuple[str, int], dict[str, Any]] = {}
    last, digest, sure = 0, b"", _NEVER
    touched = _touched(connection)
    for row, said in _chain(connection):
        last, digest = row.seq, row.hash
        sure = sure if said["doubt"] else plain(row.written)
        for table, number, _, after in said["rows"]:
            state.setdefault((table, number), {}).update(after)
        if {(table, number) for table, number, *_ in said["rows"]} != touched.pop(last, set()):
            _disagree(f"What entry {last} touched was changed.")
    head = connection.execute(select(Head.seq, Head.hash, Head.written)).one()
    if touched or (head.seq, head.hash, plain(head.written)) != (last, digest, sure):
        _disagree("The head of the journal is not its last entry.")
    total, removed = len(state), []
    for table in Record.metadata.sorted_tables:
        if table.name not in _OWN:
            removed += _compare(connection, table, state)
    if state:
        _disagree(f"Rows are gone: {', '.join(f'{t} {r}' for t, r in list(state)[:3])}.")
    return Verdict(last, total, tuple(removed), digest.hex())


def _chain(connection: Connection) -> Iterator[tuple[Row[Any], dict[str, Any]]]:
    before, expected = b"", 0
    entries = connection.execution_options(yield_per=500).execute(
        select(table_of(DeedRow)).order_by(DeedRow.seq)
    )
    for row in entries:
        if hashlib.sha256(before + row.body).digest() != row.hash:
            _disagree(f"Entry {row.seq} of the journal does not fit the chain.")
        said, expected, before = json.loads(row.body), expected + 1, row.hash
        columns = {name: plain(getattr(row, name)) for name in _COLUMNS}
        if row.seq != expected or columns != {name: said[name] for name in _COLUMNS}:
            _disagree(f"Entry {row.seq} of the journal was changed.")
        yield row, said


def _touched(connection: Connection) -> dict[int, set[tuple[str, int]]]:
    rows: dict[int, set[tuple[str, int]]] = defaultdict(set)
    for deed, table, number in connection.execute(select(Touched.deed, Touched.tbl, Touched.row)):
        rows[deed].add((table, number))
    return rows


_COLUMNS = ("seq", "happened", "written", "person", "station", "name", "token", "undoes")


def _compare(
    connection: Connection, table: Table, state: dict[tuple[str, int], dict[str, Any]]
) -> list[str]:
    names, removed = [name for name in open_names(table) if name != "id"], []
    for row in connection.execution_options(yield_per=500).execute(select(table)):
        told = state.pop((table.name, row.id), None)
        if told is None:
            _disagree(f"{table.name} {row.id} was written by no deed.")
        if any(plain(getattr(row, name)) != told.get(name) for name in names):
            _disagree(f"{table.name} {row.id} is not what its deeds say.")
        if erasable := _ERASABLE.get(table.name):
            what, value, fits = erasable(row)
            if value is None and told.keys() - names - {"id"}:
                removed.append(f"{what} was removed")
            elif value is None or not fits:
                _disagree(f"{table.name} {row.id} is not what its deeds say.")
    return removed


def _personal(row: Row[Any]) -> tuple[str, str | None, bool]:
    """What it is, the value that may be erased, and whether that fits its digest."""
    fits = row.value is not None and row.digest == hashlib.sha256(
        (row.salt + row.value).encode()).hexdigest()
    return f"{row.field} of {_whose(row.customer, row.person)}", row.value, fits


def _photo(row: Row[Any]) -> tuple[str, bytes | None, bool]:
    fits = row.picture is not None and row.sha256 == hashlib.sha256(row.picture).hexdigest()
    return f"a picture of report {row.report}", row.picture, fits


_ERASABLE = {Personal.__tablename__: _personal, Photo.__tablename__: _photo}
"""Tables with a value that never enters the journal, and how it is held against its digest."""


def _whose(customer: int | None, person: int | None) -> str:
    return f"customer {customer}" if customer else f"person {person}"


def _disagree(what: str) -> NoReturn:
    raise BookUnusable(what, _GO_ON)
