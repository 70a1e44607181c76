"""How many warnings each person got on a day: too many, and none is read."""

import json
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, select

from app.records import DeedRow

_AT_ONCE = 200


@dataclass(frozen=True, slots=True)
class Warned:
    """A person's deeds of a day, and the warnings that came with them."""

    person: str
    deeds: int
    warnings: int
    often: str
    """The warning that came most often; '' where none came twice."""


def warned(connection: Connection, since: datetime, until: datetime) -> tuple[Warned, ...]:
    """By what was written from this moment on and before that one, most warnings first."""
    deeds, told = Counter[str](), Counter[str]()
    words: dict[str, Counter[str]] = {}
    for row in _written(connection, since):
        if row.written < until:
            findings = json.loads(row.body)["findings"]
            deeds[row.person] += 1
            told[row.person] += len(findings)
            words.setdefault(row.person, Counter()).update(_kind(one) for one in findings)
    return tuple(sorted(
        (Warned(person, count, told[person], _often(words[person]))
         for person, count in deeds.items()), key=lambda one: (-one.warnings, one.person)))


def _written(connection: Connection, since: datetime) -> Iterator[Row[*tuple[Any, ...]]]:
    """The newest entries down to this moment: a day is at the end of the journal."""
    before = None
    while True:
        question = select(DeedRow.seq, DeedRow.person, DeedRow.written, DeedRow.body).order_by(
            DeedRow.seq.desc()).limit(_AT_ONCE)
        rows = connection.execute(
            question if before is None else question.where(DeedRow.seq < before)).all()
        for row in rows:
            if row.written >= since:
                yield row
        if len(rows) < _AT_ONCE or rows[-1].written < since:
            return
        before = rows[-1].seq


def _kind(sentence: str) -> str:
    """A warning without what it was about: its words and no numbers or codes."""
    return " ".join(word for word in sentence.split() if not any(c.isdigit() for c in word))


def _often(words: Counter[str]) -> str:
    most = words.most_common(1)
    return most[0][0] if most and most[0][1] > 1 else ""
