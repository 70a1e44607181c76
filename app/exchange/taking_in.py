"""A delivery note from file to book: read and looked at first, taken in as one deed or not at all.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from sqlalchemy import Connection, select

from app.exchange.cells import read_cell
from app.exchange.columns import (
    SETTING,
    ColumnMatch,
    known_columns,
    propose,
    stated_above,
    with_remembered,
)
from app.exchange.delivery_note import NOT_STATED, DeliveryNote, InBook, read_note
from app.exchange.reading import read_table
from app.lookups.studio import setting
from app.problems import Refused
from app.records import Base, BaseVersion, Cone, Delivery, Supplier
from app.store.deed import Deed
from app.work.receiving import receive
from app.work.studio import choose


@dataclass(frozen=True, slots=True)
class Said:
    """What a person says of a list: {field: heading}, and {field: words} for rows that lack it."""

    columns: Mapping[str, str] = field(default_factory=dict)
    given: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Arrival:
    """A list as it was understood; nothing of it is in the book yet."""

    match: ColumnMatch
    note: DeliveryNote


def look_at(connection: Connection, data: bytes, said: Said, now: datetime) -> Arrival:
    """Read a list with what the studio remembers of such lists; raises BadInput."""
    table = read_table(data)
    match = propose(table, known_columns(setting(connection, SETTING)), said.columns)
    given = {**stated_above(table, match),
             **{name: read_cell(words) for name, words in said.given.items()}}
    return Arrival(match, read_note(table, match, given, _in_book(connection), now))


def take_in(deed: Deed, arrival: Arrival, leave_bad_rows: bool = False) -> list[int]:
    """All deliveries of a list and how its columns were matched, as one deed; the cones.

    Refused: rows in trouble, unless they are to be left out; a note that was taken in before.
    """
    note = arrival.note
    for supplier, number, base in note.before:
        whose = "" if supplier == NOT_STATED else f" of {supplier}"
        raise Refused(f"Note {number}{whose} with {base} was taken in before; nothing was saved.",
                      f"If more cones came with it, number the second part, like {number}/2.")
    if note.troubles and not leave_bad_rows:
        raise Refused(f"{_rows(note.bad_rows)} of this list cannot be taken in as written; nothing "
                      "was saved.", "Put them right, or say that bad rows are to be left out.")
    if not note.cones:
        raise Refused("No row of this list is a cone; nothing was saved.",
                      "Look whether it is the right file.")
    cones = [cone for delivery in note.deliveries for cone in receive(deed, delivery)]
    remembered = setting(deed.connection, SETTING)
    if not arrival.match.remembered:
        choose(deed, {SETTING: with_remembered(remembered, arrival.match)})
    left_out = f"; {_rows(note.bad_rows)} left out" if note.bad_rows else ""
    deed.say(f"took in {told(note)}{left_out}")
    return cones


def told(note: DeliveryNote) -> str:
    """'24 cones of Tarnfield 4-ply, note 2241'."""
    return ", ".join(
        f"{len(d.cones)} cone{'' if len(d.cones) == 1 else 's'} of {d.base}, note {d.note_no}"
        for d in note.deliveries)


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count} rows"


def _in_book(connection: Connection) -> InBook:
    bases = connection.execute(select(Base.name).where(Base.struck.is_(None)).order_by(Base.name))
    codes = connection.execute(select(Cone.code)).scalars()
    notes = connection.execute(
        select(Supplier.name, Delivery.note_no, Base.name).distinct()
        .join(Delivery, Delivery.supplier == Supplier.id).join(Cone, Cone.delivery == Delivery.id)
        .join(BaseVersion, BaseVersion.id == Cone.base_version)
        .join(Base, Base.id == BaseVersion.base).where(Delivery.struck.is_(None)))
    return InBook(tuple(bases.scalars()), frozenset(int(code[1:-1]) for code in codes),
                  frozenset((supplier, number, base) for supplier, number, base in notes))
