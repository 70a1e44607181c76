"""Tags on paper: drawn and proven first, and only then a deed, so that no mark is a promise."""

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from itertools import islice
from random import Random

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.label_words import LabelWords
from app.calculations.listing import listing
from app.calculations.moments import clock_words, day_words
from app.documents.stocks import Correction, Stock, stock
from app.documents.tag_words import TagWords
from app.documents.tags import Place, Sheets, Tag, tag_sheets
from app.lookups.market_words import for_market
from app.lookups.now import NOW
from app.lookups.tagging import TagText, marks_for, pile_facts, piles_waiting, tag_text
from app.problems import NotFound, Refused
from app.records import Tag as TagRow
from app.store.book import Book
from app.store.deed import By, Deed
from app.store.dialect import among, listed
from app.work.tagging import Printing, keep_sheet, may_print, print_tags


@dataclass(frozen=True, slots=True)
class OnStock:
    """What tags are printed on: the stock, its cells to be had, and the printer's correction.

    Cells before the first and those that are `used` are passed over on the first sheet.
    `as_studio` is the stock as the studio describes or lays it out; without it, as it came.
    """

    stock: str
    first_cell: int = 1
    correction: Correction = (0.0, 0.0)
    used: tuple[int, ...] = ()
    as_studio: Stock | None = None

    @property
    def described(self) -> Stock:
        """The stock itself."""
        return self.as_studio or stock(self.stock)


@dataclass(frozen=True, slots=True)
class PrintOrder:
    """So many tags for a pile; `version` where a pile holds two, `why` for more than it needs."""

    pile: int
    count: int
    on: OnStock
    version: int | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class LotOrder:
    """Tags for all skeins of a lot that wait for one, or for so many of them."""

    lot: int
    on: OnStock
    count: int | None = None


@dataclass(frozen=True, slots=True)
class Printed:
    """Proven sheets that are in the book: the PDF, the tags, and where each stands."""

    pdf: bytes
    tags: tuple[int, ...]
    places: tuple[Place, ...]
    left_on_last: int
    left_out: tuple[str, ...]
    """Words that gave way, because the stock has no room for them."""
    said: str
    seq: int
    warnings: tuple[str, ...] = ()
    """What the market's rules ask somebody to look at, each with its clause."""


@dataclass(frozen=True, slots=True)
class _Ready:
    """A pile's order that may be printed, with the words of its tags."""

    order: PrintOrder
    version: int
    words: TagWords
    warnings: tuple[str, ...] = ()


def print_for_pile(
    book: Book, by: By, order: PrintOrder, random: Random, token: str | None = None
) -> Printed:
    """Tags for one pile. Refused before anything is drawn where the pile may not be tagged."""
    return _print(book, by, [order], random, token)


def print_for_lot(
    book: Book, by: By, order: LotOrder, random: Random, token: str | None = None
) -> Printed:
    """Tags for the piles of a lot that lack them, on one set of sheets.

    Raises NotFound where none of its skeins waits for a tag.
    """
    piles = [pile for pile in book.ask(piles_waiting)
             if pile.lots == (order.lot,) and pile.to_print]
    if not piles:
        raise NotFound("No skein of this lot waits for a tag; nothing was printed.",
                       "Count its bundle at the finishing table first; spoiled tags are printed "
                       "anew at the tag table.")
    orders: list[PrintOrder] = []
    left = sum(pile.to_print for pile in piles) if order.count is None else order.count
    for pile in piles:
        number = left if pile is piles[-1] else min(left, pile.to_print)
        orders += [PrintOrder(pile.id, number, order.on)] if number or not orders else []
        left -= number
    return _print(book, by, orders, random, token)


def print_sheets(deed: Deed, printings: Sequence[Printing], used: Sequence[int]) -> list[int]:
    """All tags of one printing leave the printer together; the tags.

    `used` are the cells of its last sheet that are used after it.
    """
    tags = [tag for printing in printings for tag in print_tags(deed, printing)]
    keep_sheet(deed, printings[0].stock, used)
    marks = {printing.marks[0].rpartition("-")[0] for printing in printings}
    lots = listing(sorted(shown(lot) for lot in marks))
    deed.say(f"printed {len(tags)} tag{'' if len(tags) == 1 else 's'} for {lots}")
    return tags


def _print(
    book: Book, by: By, orders: Sequence[PrintOrder], random: Random, token: str | None
) -> Printed:
    on = orders[0].on
    ready = [_ready(book, order) for order in orders]
    tags = _drawn(book, ready, random)
    sheets = sheets_on(on, [tag for pile in tags for tag in pile], _slug(book, by, ready))
    cells = iter(cells_of(sheets, on))
    printings = [
        Printing(one.order.pile, tuple(tag.code.text for tag in drawn), _as_printed(one.words),
                 on.stock, tuple(next(cells) for _ in drawn), one.version, one.order.why)
        for one, drawn in zip(ready, tags, strict=True)
    ]
    done = book.do(print_sheets, printings, used_after(sheets, on), by=by, token=token)
    if not book.ask(_hold_these, done.answer, [place.code for place in sheets.places]):
        raise Refused("These tags are in the book already, with other marks; nothing was printed.",
                      "Look at the sheet that was printed first, or spoil its tags.")
    return Printed(sheets.pdf, tuple(done.answer), sheets.places, sheets.left_on_last,
                   sheets.left_out, done.said, done.seq,
                   tuple(dict.fromkeys(said for one in ready for said in one.warnings)))


def sheets_on(on: OnStock, tags: Sequence[Tag], slug: str) -> Sheets:
    """The tags drawn and proven on this stock."""
    return tag_sheets(tags, on.described, first_cell=on.first_cell, used=on.used,
                      correction=on.correction, slug=slug)


def cells_of(sheets: Sheets, on: OnStock) -> tuple[int, ...]:
    """Where each tag stands, counted over all sheets of the printing."""
    on_each = on.described.cells
    return tuple((place.page - 1) * on_each + place.cell for place in sheets.places)


def used_after(sheets: Sheets, on: OnStock) -> tuple[int, ...]:
    """The cells of the last sheet that are used once it is printed."""
    free = set(sheets.free_on_last)
    return tuple(cell for cell in range(1, on.described.cells + 1) if cell not in free)


def _hold_these(connection: Connection, tags: Sequence[int], marks: Sequence[str]) -> bool:
    """Whether the tags have the marks that are on the paper; a retry has those of the first try."""
    held = connection.execute(select(TagRow.mark).where(among(TagRow.id, "ids")),
                              {"ids": listed(tags)}).scalars()
    return set(held) == set(marks)


def _ready(book: Book, order: PrintOrder) -> _Ready:
    if order.count < 1:
        raise Refused("No tag was asked for; nothing was printed.", "Say how many.")
    version = may_print(book.ask(pile_facts, order.pile), order.count, order.version, order.why)
    text = book.ask(tag_text, order.pile, version)
    label = book.ask(for_market, text, NOW)
    if label is None:
        return _Ready(order, version, tag_words(text, None))
    if label.refusals:
        raise Refused(f"{' '.join(said.words for said in label.refusals)} Nothing was printed.",
                      " ".join(said.next_step for said in label.refusals))
    warnings = tuple(said.told for said in label.warnings)
    return _Ready(order, version, tag_words(text, label), warnings)


def tag_words(text: TagText, label: LabelWords | None) -> TagWords:
    """The words as a tag is printed with, as its market reads them, if one was chosen."""
    if label is None:
        return TagWords(**asdict(text))
    return TagWords(**asdict(text) | {
        "fibre": label.fibre, "net": label.net, "ounces": label.ounces, "care": label.care,
        "origin": label.origin, "ounces_by_law": label.ounces_by_law,
        "origin_by_law": label.origin_by_law})


def _drawn(book: Book, ready: Sequence[_Ready], random: Random) -> list[list[Tag]]:
    """The tags of each pile; the piles of one lot share its marks, so they are drawn together."""
    wanted = Counter[str]()
    for one in ready:
        wanted[one.words.lot] += one.order.count
    marks = {lot: iter(book.ask(marks_for, lot, count, random)) for lot, count in wanted.items()}
    return [[Tag(one.words, mark.rpartition("-")[2])
             for mark in islice(marks[one.words.lot], one.order.count)] for one in ready]


def _as_printed(words: TagWords) -> str:
    """The words of a tag as kept, so that it can be printed again as it was."""
    return json.dumps(asdict(words), ensure_ascii=False, sort_keys=True)


def _slug(book: Book, by: By, ready: Sequence[_Ready]) -> str:
    lots = listing(dict.fromkeys(shown(one.words.lot) for one in ready))
    now = book.clock()
    return f"Tags of {lots} · printed {day_words(now)}, {clock_words(now)}, by {by.person}"
