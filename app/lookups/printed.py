"""Printed tags one by one, where each stands on its sheet, and how far every stock is used."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, select
from sqlalchemy.orm import aliased

from app.records import PrintSheet, Tag, TagOn

WAITING, TIED_ON, VOID = "waiting", "tied on", "void"
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
    """Counted from the first cell of the sheet it began on, over as many sheets as it took."""
    state: str
    skein: int | None
    successor: str | None


_AFTER = aliased(Tag)
_TAGS = (
    select(Tag.id, Tag.mark, Tag.pile, Tag.void, Tag.sheet, PrintSheet.stock,
           PrintSheet.first_cell, TagOn.yarn, _AFTER.mark.label("successor"))
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
        place = row.first_cell + on_sheet[row.sheet]
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


def sheets_used(connection: Connection) -> Mapping[str, int]:
    """{stock: the place after its last tag}, the stock that was printed on last first."""
    rows = connection.execute(
        select(Tag.sheet, PrintSheet.stock, PrintSheet.first_cell)
        .join(PrintSheet, PrintSheet.id == Tag.sheet).where(Tag.struck.is_(None))
        .order_by(Tag.id.desc()).limit(_REMEMBERED)
    ).all()
    tags = Counter(row.sheet for row in rows)
    used: dict[str, int] = {}
    for row in rows:
        used.setdefault(row.stock, row.first_cell + tags[row.sheet])
    return used


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
