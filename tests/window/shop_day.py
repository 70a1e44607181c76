"""A morning in the shop, for pictures: stock on shelves, some put by, some sold, a hold."""

from contextlib import suppress
from datetime import timedelta

from sqlalchemy import select

from app.calculations.codes import Kind, numbered
from app.lookups.things import by_code
from app.problems import Refused
from app.records import Tag, TagOn, Whereabouts, Yarn
from app.store.book import Book
from app.store.deed import By
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.selling import know_customer, sell, set_price
from app.work.serving import Buyer, keep_for

SK = By("SK", "till")
NAMES = ("Rosa Osk", "Hanne Tallow", "Bo Treddle", "Ilse Marn", "Per Quist", "Una Fell")


def stock_the_shop(book: Book) -> dict[str, list[str]]:
    """Shelve what is tagged, and serve three customers; {lot: its marks}."""
    tagged = _on_the_table(book)
    shelves = [thing.id for number in (1, 2)
               if (thing := book.ask(by_code, numbered(Kind.SHELF, number).text))]
    shelves += book.do(make_plates, Kind.SHELF, [12], "the window", by=SK).answer
    for base in range(1, 4):
        book.do(set_price, base, "skein", 2450 + 150 * base, by=SK)
    for place, (_, skeins) in enumerate(tagged.items()):
        book.do(move, [yarn for yarn, _ in skeins], To("shelf", place=shelves[0]), by=SK)
        if len(skeins) > 3:
            book.do(move, [skeins[0][0]], To("shelf", place=shelves[-1]), by=SK)
            _serve(book, place, [yarn for yarn, _ in skeins[1:]])
    return {code: [mark for _, mark in skeins] for code, skeins in tagged.items()}


def _serve(book: Book, place: int, skeins: list[int]) -> None:
    customer = book.do(know_customer, NAMES[place % len(NAMES)], by=SK).answer
    with suppress(Refused):  # what is on hold is not sold
        book.do(sell, skeins[:1], customer, by=SK)
        if len(skeins) > 4:
            book.do(keep_for, skeins[1:2], book.clock() + timedelta(days=5), Buyer(customer),
                    by=SK)
            book.do(sell, skeins[2:3], by=SK)


def _on_the_table(book: Book) -> dict[str, list[tuple[int, str]]]:
    rows = book.ask(lambda c: c.execute(
        select(Tag.mark, TagOn.yarn).join(TagOn, TagOn.tag == Tag.id)
        .join(Yarn, Yarn.id == TagOn.yarn).join(Whereabouts, Whereabouts.yarn == Yarn.id)
        .where(Whereabouts.state == "table", Whereabouts.until.is_(None),
               TagOn.until.is_(None)).order_by(Tag.mark)).all())
    lots: dict[str, list[tuple[int, str]]] = {}
    for mark, yarn in rows:
        lots.setdefault(mark[:7], []).append((yarn, mark))
    return lots
