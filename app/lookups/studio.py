"""The studio's own choices, each with its default."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from types import MappingProxyType

from sqlalchemy import Connection, bindparam, select

from app.records import DeedRow, Person, Personal, Setting

DEFAULTS: Mapping[str, str] = MappingProxyType({
    "name": "",
    "address": "",
    "origin": "",
    "differ": "Lots differ: use one lot, or alternate two rows.",
    "tie colours": json.dumps(
        ["red", "yellow", "blue", "green", "orange", "violet", "black", "white"]
    ),
    "delivery columns": "{}",
    "order columns": "{}",
    "old lot columns": "{}",
    "currency": "",
    "recipe columns": "{}",
    "shade columns": "{}",
    "balance step": "0.01",
    "balances": "{}",
    "weighing rule": "common practice",
    "market": "",
    "language": "",
    "reference skeins": "{}",
    "own stocks": "[]",
    "tag layouts": "{}",
    "stocks put away": "[]",
    "sheets in hand": "",
    "shade limits": "{}",
})


_CHOSEN = select(Setting.value).where(
    Setting.key == bindparam("key"), Setting.struck.is_(None)).order_by(Setting.id.desc()).limit(1)


def setting(connection: Connection, key: str) -> str:
    """What the studio chose, else the default; an unknown key is a fault of the program."""
    chosen = connection.execute(_CHOSEN, {"key": key}).scalar()
    return DEFAULTS[key] if chosen is None else chosen


def tag_words(connection: Connection) -> Mapping[str, str]:
    """What every tag says of the studio, by the name of the setting."""
    return {key: setting(connection, key) for key in ("name", "address", "origin", "differ")}


def tie_colours(connection: Connection) -> tuple[str, ...]:
    """The thread colours in their rotation."""
    return tuple(json.loads(setting(connection, "tie colours")))


def people(connection: Connection) -> tuple[str, ...]:
    """Initials of those who can sign, in order."""
    return tuple(connection.execute(
        select(Person.initials).where(Person.left.is_(None), Person.struck.is_(None))
        .order_by(Person.initials)
    ).scalars())


@dataclass(frozen=True, slots=True)
class PersonFacts:
    """One who works here or did; the name is none where it was not given or was removed."""

    initials: str
    name: str | None
    left: datetime | None


def everyone(connection: Connection) -> tuple[PersonFacts, ...]:
    """All who ever signed, those who still do first."""
    rows = connection.execute(
        select(Person.initials, Personal.value, DeedRow.happened)
        .outerjoin(Personal, (Personal.person == Person.id) & (Personal.field == "name")
                   & Personal.struck.is_(None))
        .outerjoin(DeedRow, DeedRow.seq == Person.left)
        .where(Person.struck.is_(None))
        .order_by(Person.left.is_not(None), Person.initials)
    )
    return tuple(PersonFacts(row.initials, row.value, row.happened) for row in rows)


def name_of(connection: Connection, initials: str) -> str | None:
    """The name behind the initials, if it was given and not removed."""
    return connection.execute(
        select(Personal.value).join(Person, Person.id == Personal.person)
        .where(Person.initials == initials, Personal.field == "name", Personal.struck.is_(None))
    ).scalar()
