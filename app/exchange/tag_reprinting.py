"""Tags in place of lost or spoiled ones: the words as they were printed, and a new mark."""

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice
from random import Random

from app.documents.tag_words import TagWords
from app.documents.tags import Tag
from app.exchange.tag_printing import OnStock, Printed, cells_of, sheets_on, used_after
from app.lookups.printed import Worn, worn_by
from app.lookups.tagging import marks_for
from app.problems import NotFound
from app.store.book import Book
from app.store.deed import By, Deed
from app.work.tagging import keep_sheet, reprint


@dataclass(frozen=True, slots=True)
class Replacement:
    """A new mark for a skein, where it stands on its sheet, and its words."""

    skein: int
    mark: str
    words: str
    sheet: tuple[str, int]


def print_in_place(
    book: Book, by: By, skeins: Sequence[int], on: OnStock, random: Random
) -> Printed:
    """New tags for skeins that wear one: the old ones are void, and each names its successor.

    Raises NotFound where a skein wears none.
    """
    worn = [_worn(book, skein) for skein in skeins]
    marks = _marks(book, worn, random)
    tags = [Tag(TagWords(**json.loads(old.words)), mark.rpartition("-")[2])
            for old, mark in zip(worn, marks, strict=True)]
    sheets = sheets_on(on, tags, f"In place of others · by {by.person}")
    replacements = [
        Replacement(skein, mark, old.words, (on.stock, cell))
        for skein, old, mark, cell in zip(skeins, worn, marks, cells_of(sheets, on), strict=True)
    ]
    done = book.do(replace_tags, replacements, used_after(sheets, on), by=by)
    return Printed(sheets.pdf, tuple(done.answer), sheets.places, sheets.left_on_last,
                   sheets.left_out, done.said, done.seq)


def replace_tags(
    deed: Deed, replacements: Sequence[Replacement], used: Sequence[int]
) -> list[int]:
    """All of one printing leave the printer together; the new tags.

    `used` are the cells of its last sheet that are used after it.
    """
    tags = [reprint(deed, one.skein, one.mark, one.words, one.sheet) for one in replacements]
    keep_sheet(deed, replacements[0].sheet[0], used)
    if len(tags) > 1:
        deed.say(f"printed {len(tags)} tags in place of others")
    return tags


def _worn(book: Book, skein: int) -> Worn:
    worn = book.ask(worn_by, skein)
    if worn is None:
        raise NotFound("No tag hangs on this skein; nothing was printed.",
                       "Scan the tag that it wears.")
    return worn


def _marks(book: Book, worn: Sequence[Worn], random: Random) -> list[str]:
    """A new mark for each; those of one lot are drawn together."""
    lots = [old.mark.rpartition("-")[0] for old in worn]
    drawn = {lot: iter(book.ask(marks_for, lot, count, random))
             for lot, count in Counter(lots).items()}
    return [mark for lot in lots for mark in islice(drawn[lot], 1)]
