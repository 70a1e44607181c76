"""What one deed writes: every row passes here, so the journal cannot miss one."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from functools import cache
from random import Random
from typing import Any, TypeVar, cast

from sqlalchemy import (
    Connection,
    Executable,
    Select,
    Table,
    bindparam,
    func,
    insert,
    or_,
    select,
    update,
)

from app.calculations.moments import moment_words
from app.problems import Refused
from app.records import Fact, Record, Stay

JOURNALLED = "conetrail_journalled"
"""Execution option of the only statements that may change the book."""

R = TypeVar("R", bound=Fact)


@dataclass(frozen=True, slots=True)
class By:
    """Who does it, and at which station."""

    person: str
    station: str


@dataclass(frozen=True, slots=True)
class Change:
    """One row that a deed added (`before` is none) or changed."""

    table: str
    row: int
    before: dict[str, Any] | None
    after: dict[str, Any]


def table_of(kind: type[Record]) -> Table:
    """The table behind a record."""
    return cast(Table, kind.__table__)


@cache
def _by_id(table: Table) -> Select[Any]:
    return select(table).where(table.c.id == bindparam("row"))


@cache
def _highest(table: Table) -> Select[Any]:
    return select(func.max(table.c.id))


@cache
def open_names(table: Table) -> list[str]:
    """The columns that may be told: all but the erasable ones."""
    return [column.name for column in table.columns if not column.info.get("secret")]


@dataclass(slots=True)
class Deed:
    """The writing hand of one deed; work functions get it as their first argument."""

    connection: Connection
    seq: int
    happened: datetime
    written: datetime
    by: By
    chance: Random
    """Draws what nobody may guess."""
    clock_in_doubt: bool = False
    late: bool = False
    changes: list[Change] = field(default_factory=list)
    findings: list[str] = field(default_factory=list)
    said: str = ""
    _next: dict[str, int] = field(default_factory=lambda: defaultdict(int))

    def say(self, sentence: str) -> None:
        """What the person did, in one sentence, for the foot of the window and the journal."""
        self.said = sentence

    def note(self, finding: str) -> None:
        """Something is off: it has happened all the same, and stays marked."""
        self.findings.append(finding)

    def refuse(self, what: str, next_step: str = "") -> None:
        """At the desk: refuse. Entered late it has already happened: record it, marked."""
        if not self.late:
            raise Refused(what, next_step)
        self.note(what.replace("; nothing was saved", ""))

    def all(self, question: Executable, **values: object) -> list[Any]:
        """All rows of a question."""
        return list(self.connection.execute(question, values).all())

    def one(self, question: Executable, **values: object) -> Any:
        """The first row of a question, or none."""
        return self.connection.execute(question, values).first()

    def value(self, question: Executable, **values: object) -> Any:
        """The first column of the first row of a question, or none."""
        return self.connection.execute(question, values).scalar()

    def add(self, row: Fact) -> int:
        """Add one row; its number."""
        return self.add_all([row])[0]

    def add_all(self, rows: Sequence[R]) -> list[int]:
        """Add rows of one kind in one go; their numbers."""
        if not rows:
            return []
        table = table_of(cast(type[Record], type(rows[0])))
        names, told, first = table.columns.keys(), open_names(table), self._first_free(table)
        written = []
        for number, row in enumerate(rows, first):
            row.id, row.deed = number, self.seq
            values = {name: getattr(row, name) for name in names}
            written.append(values)
            told_values = {name: values[name] for name in told if name != "id"}
            self.changes.append(Change(table.name, number, None, told_values))
        self._write(insert(table), written)
        self._next[table.name] = first + len(rows)
        return [row.id for row in rows]

    def change(self, kind: type[Record], row: int, /, **values: object) -> None:
        """Change columns of one row; the journal keeps what stood there.

        Of an erasable column it keeps only that it was emptied.
        """
        table = table_of(kind)
        told = [name for name in values if name in open_names(table)]
        row_before = self.one(_by_id(table), row=row)
        if row_before is None:
            raise LookupError(f"{table.name} {row} is not in the book")
        self._write(update(table).where(table.c.id == row).values(**values))
        before = {name: getattr(row_before, name) for name in told}
        after = {name: value for name, value in values.items() if name in told or value is None}
        self.changes.append(Change(table.name, row, before, after))

    def begin(self, stay: Stay) -> int:
        """Begin a stay at the moment it happened; a late one is fitted between its neighbours."""
        kind, thing = type(stay), getattr(stay, stay.stay_of)
        stays = self._not_over(kind, thing)
        self._end(kind, stays)
        stay.since = self.happened
        after = _goes_on(stays, self.happened)
        if after is not None:
            stay.until, stay.ended_by = after
            self.note(f"Entered late: it had gone on already on {moment_words(after[0])}.")
        return self.add(stay)

    def end(self, kind: type[Stay], thing: int) -> None:
        """End the stay that this thing has at the moment of the deed."""
        self._end(kind, self._not_over(kind, thing))

    def _not_over(self, kind: type[Stay], thing: int) -> list[Any]:
        """The stays of a thing that are not over at the moment of the deed, as they began."""
        return self.all(_not_over(kind), thing=thing, moment=self.happened)

    def _end(self, kind: type[Stay], stays: Sequence[Any]) -> None:
        for stay in stays:
            if stay.since <= self.happened:
                self.change(cast(type[Record], kind), stay.id, until=self.happened,
                            ended_by=self.seq)

    def _first_free(self, table: Table) -> int:
        if not self._next[table.name]:
            self._next[table.name] = (self.value(_highest(table)) or 0) + 1
        return self._next[table.name]

    def _write(self, statement: Executable, rows: list[dict[str, Any]] | None = None) -> None:
        self.connection.execute(statement, rows or None, execution_options={JOURNALLED: True})


@cache
def _not_over(kind: type[Stay]) -> Select[Any]:
    table = table_of(cast(type[Record], kind))
    return (
        select(table.c.id, table.c.since, table.c.until, table.c.deed, table.c.ended_by)
        .where(table.c[kind.stay_of] == bindparam("thing"), table.c.struck.is_(None),
               or_(table.c.until.is_(None), table.c.until > bindparam("moment")))
        .order_by(table.c.since, table.c.id)
    )


def _goes_on(stays: Sequence[Any], moment: datetime) -> tuple[datetime, int] | None:
    """The end of the stay that the moment falls into, else the beginning of the next one."""
    for stay in stays:
        if stay.since > moment:
            return stay.since, stay.deed
        if stay.until is not None:
            return stay.until, stay.ended_by
    return None
