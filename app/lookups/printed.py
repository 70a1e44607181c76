"""Printed tags one by one, where each stands on its sheet, and which cells of a sheet are used."""

import json
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, select
from sqlalchemy.orm import aliased

from app.lookups.studio import setting
from app.records import PrintSheet, Tag, TagOn

WAITING, TIED_ON, VOID = "waiting", "tied on", "void"
SHEETS = "sheets in hand"
"""The used cells of each stock's sheet are kept as data: whoever taps a cell knows what no sum of
tags can tell."""
_REMEMBERED = 2_000  # tags back to where a half-used sheet is looked for


@dataclass(frozen=True, slots=True)
class PrintedTag:
    """A tag that left the printer: waiting for its skein, tied on, or void."""

    id: int
    mark: str
    pile: int | None
    sheet: int
    stock: str
    place: int
    """Its cell, counted row by row from 1 over all sheets of its printing."""
    state: str
    skein: int | None
    successor: str | None


_AFTER = aliased(Tag)
_TAGS = (
    select(Tag.id, Tag.mark, Tag.pile, Tag.void, Tag.sheet, PrintSheet.stock,
           Tag.cell, PrintSheet.first_cell, TagOn.yarn, _AFTER.mark.label("successor"))
    .join(PrintSheet, PrintSheet.id == Tag.sheet)
    .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .outerjoin(_AFTER, _AFTER.id == Tag.successor)
    .where(Tag.struck.is_(None)).order_by(Tag.id)
)


def tags_of(connection: Connection, pile: int) -> tuple[PrintedTag, ...]:
    """All tags ever printed for a pile, in the order of their printing."""
    on_sheet: Counter[int] = Counter()
    found = []
    for row in connection.execute(_TAGS.where(Tag.pile == pile)):
        state = VOID if row.void else TIED_ON if row.yarn else WAITING
        place = row.cell or row.first_cell + on_sheet[row.sheet]
        on_sheet[row.sheet] += 1
        found.append(PrintedTag(row.id, row.mark, row.pile, row.sheet, row.stock, place, state,
                                row.yarn, row.successor))
    return tuple(found)


def tag_with(connection: Connection, mark: str) -> PrintedTag | None:
    """The tag with this mark, or none."""
    pile = connection.execute(
        select(Tag.pile).where(Tag.mark == mark, Tag.struck.is_(None))).scalar()
    tags = tags_of(connection, pile) if pile is not None else ()
    return next((tag for tag in tags if tag.mark == mark), None)


def sheets_used(connection: Connection) -> Mapping[str, frozenset[int]]:
    """{stock: the used cells of its sheet in hand}, the stock that was printed on last first.

    In a book that keeps none yet they are all up to the last tag, counted over as many sheets as
    its printing took.
    """
    kept = setting(connection, SHEETS)
    if kept:
        return {stock: frozenset(cells) for stock, cells in json.loads(kept).items()}
    return {stock: frozenset(range(1, last + 1))
            for stock, last in _last_tags(connection).items()}


def _last_tags(connection: Connection) -> Mapping[str, int]:
    """{stock: the place of the last tag on it}, by the tags of its last printing."""
    rows = connection.execute(
        select(Tag.sheet, PrintSheet.stock, PrintSheet.first_cell)
        .join(PrintSheet, PrintSheet.id == Tag.sheet).where(Tag.struck.is_(None))
        .order_by(Tag.id.desc()).limit(_REMEMBERED)
    ).all()
    tags = Counter(row.sheet for row in rows)
    last: dict[str, int] = {}
    for row in rows:
        last.setdefault(row.stock, row.first_cell + tags[row.sheet] - 1)
    return last


@dataclass(frozen=True, slots=True)
class Worn:
    """The tag that a skein wears, with its words as they were printed."""

    mark: str
    words: str


def worn_by(connection: Connection, skein: int) -> Worn | None:
    """The tag on this skein, or none."""
    row = connection.execute(
        select(Tag.mark, Tag.words).join(TagOn, TagOn.tag == Tag.id)
        .where(TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None))
    ).first()
    return None if row is None else Worn(row.mark, row.words)
