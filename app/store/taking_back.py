"""Undo: strike what a deed added, put back what it changed; the journal keeps both."""

import json
from datetime import datetime
from typing import Any

from sqlalchemy import Column, Table, and_, select

from app.problems import NotFound, Refused
from app.records import DeedRow, Part, Record, Stay, Touched, Yarn
from app.records.base import Moment
from app.store.deed import Deed, table_of

_NAMES = {
    "yarn": "this yarn", "cone": "this cone", "tag": "this tag", "dye_lot": "this lot",
    "plate": "this plate", "bundle": "this bundle", "whereabouts": "where it is",
}

_KINDS = {table_of(mapper.class_).name: mapper.class_ for mapper in Record.registry.mappers}
_STAY_OF = {name: kind.stay_of for name, kind in _KINDS.items() if issubclass(kind, Stay)}


def take_back(deed: Deed, seq: int) -> None:
    """Take deed `seq` back, unless something later stands on what it wrote."""
    row = deed.one(select(DeedRow.body, DeedRow.undoes).where(DeedRow.seq == seq))
    if row is None:
        raise NotFound(f"There is no entry {seq} in the journal.", "Choose one that is there.")
    if row.undoes or deed.value(select(DeedRow.seq).where(DeedRow.undoes == seq)):
        raise Refused("This was taken back before.", "Do it again instead.")
    entry = json.loads(row.body)
    tables = Record.metadata.tables
    for name, number, before, after in entry["rows"]:
        _may_be_restored(before, after)
        _nothing_stands_on(deed, seq, tables[name], number, added=before is None)
    for name, number, before, _ in reversed(entry["rows"]):
        values = {"struck": deed.seq} if before is None else _restored(tables[name], before)
        deed.change(_KINDS[name], number, **values)
    deed.say(f"took back: {entry['said'] or entry['name']}")


def _may_be_restored(before: dict[str, Any] | None, after: dict[str, Any]) -> None:
    if before is None:
        return
    if after.keys() - before.keys():
        raise Refused("What was removed on request cannot be brought back; nothing was saved.",
                      "Ask the person, and write it anew.")
    if "code" in before:
        raise Refused("A code that was given stays given; nothing was saved.",
                      "Write on its card what is wrong with it.")


def _restored(table: Table, before: dict[str, Any]) -> dict[str, Any]:
    return {
        name: datetime.fromisoformat(value) if value and isinstance(table.c[name].type, Moment)
        else value
        for name, value in before.items()
    }


def _nothing_stands_on(deed: Deed, seq: int, table: Table, number: int, added: bool) -> None:
    gone = select(DeedRow.undoes).where(DeedRow.undoes.is_not(None))
    undoing = select(DeedRow.seq).where(DeedRow.undoes.is_not(None))
    later = select(Touched.deed).where(
        Touched.tbl == table.name, Touched.row == number, Touched.deed > seq,
        Touched.deed.not_in(gone), Touched.deed.not_in(undoing),
    )
    stands = deed.value(later) or _another_stay(deed, seq, table, number)
    if stands or (added and (_pointed_at(deed, seq, table, number)
                             or _used_up_since(deed, seq, table, number))):
        thing = _NAMES.get(table.name, "it")
        raise Refused(f"It cannot be taken back: something was done with {thing} since.",
                      "Take that back first, or correct it with a new entry.")


def _another_stay(deed: Deed, seq: int, table: Table, number: int) -> bool:
    """Stays of one thing are fitted to each other: without this one a later one would not fit."""
    key = _STAY_OF.get(table.name)
    if key is None:
        return False
    thing = select(table.c[key]).where(table.c.id == number).scalar_subquery()
    return deed.value(select(table.c.id).where(
        table.c[key] == thing, table.c.deed > seq, table.c.struck.is_(None))) is not None


def _used_up_since(deed: Deed, seq: int, table: Table, number: int) -> bool:
    """A row that was closed since has no place for the member that would come back."""
    return table.name == Part.__tablename__ and deed.value(
        select(Yarn.id).join(Part, Part.parent == Yarn.id)
        .where(Part.id == number, Yarn.closed > seq)) is not None


def _pointed_at(deed: Deed, seq: int, table: Table, number: int) -> bool:
    for column in _columns_that_point_at(table):
        other = column.table
        stands = and_(column == number, other.c.struck.is_(None), other.c.deed > seq)
        if deed.value(select(other.c.id).where(stands).limit(1)) is not None:
            return True
    return False


def _columns_that_point_at(table: Table) -> list[Column[Any]]:
    facts = [other for other in Record.metadata.tables.values() if "struck" in other.c]
    return [
        column for other in facts for column in other.columns
        if any(key.column.table is table for key in column.foreign_keys)
    ]
