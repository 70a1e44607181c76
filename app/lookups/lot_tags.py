"""The tags of a lot, every one accounted for: printed, tied on, waiting, void, and their words."""

from collections import Counter
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select
from sqlalchemy.orm import aliased

from app.lookups.tag_counts import CountedInHand, counted_in_hand
from app.records import DeedRow, PrintSheet, Tag, TagOn


@dataclass(frozen=True, slots=True)
class TagThen:
    """One tag of the lot; a tag that came off its skein is void and was tied on before."""

    mark: str
    printed: datetime
    printed_by: str
    stock: str
    why: str
    tied_on: datetime | None
    tied_on_by: str | None
    hangs: bool
    void: datetime | None
    void_by: str | None
    successor: str | None

    @property
    def state(self) -> str:
        """hangs, void, waiting: what it is now; every tag is exactly one of them."""
        return "void" if self.void else "hangs" if self.hangs else "waiting"


@dataclass(frozen=True, slots=True)
class LotTags:
    """All tags of a lot, the different words that were printed on them, as data, and each count
    of what was in hand."""

    tags: tuple[TagThen, ...]
    words: tuple[str, ...]
    in_hand: tuple[CountedInHand, ...]

    @property
    def counts(self) -> Counter[str]:
        """How many hang, wait and are void: they add up to those printed."""
        return Counter(tag.state for tag in self.tags)


_PRINTED, _VOID, _ON = aliased(DeedRow), aliased(DeedRow), aliased(DeedRow)
_AFTER = aliased(Tag)
_TAGS = (
    select(Tag.id, Tag.mark, Tag.words, PrintSheet.stock, PrintSheet.why,
           _PRINTED.happened.label("printed"), _PRINTED.person.label("printed_by"),
           _ON.happened.label("tied_on"), _ON.person.label("tied_on_by"), TagOn.until,
           _VOID.happened.label("void_at"), _VOID.person.label("void_by"),
           _AFTER.mark.label("successor"))
    .join(PrintSheet, PrintSheet.id == Tag.sheet).join(_PRINTED, _PRINTED.seq == Tag.deed)
    .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.struck.is_(None))
    .outerjoin(_ON, _ON.seq == TagOn.deed).outerjoin(_VOID, _VOID.seq == Tag.void)
    .outerjoin(_AFTER, _AFTER.id == Tag.successor)
    .where(Tag.struck.is_(None)).order_by(Tag.id, TagOn.id)
)


def lot_tags(connection: Connection, lot: int) -> LotTags:
    """All tags that were ever printed for a lot, in the order of their printing."""
    rows = connection.execute(_TAGS.where(Tag.lot == lot)).all()
    newest = {row.id: row for row in rows}
    return LotTags(
        tuple(TagThen(row.mark, row.printed, row.printed_by, row.stock, row.why, row.tied_on,
                      row.tied_on_by, row.tied_on is not None and row.until is None, row.void_at,
                      row.void_by, row.successor) for row in newest.values()),
        tuple(dict.fromkeys(row.words for row in rows)), counted_in_hand(connection, lot))
