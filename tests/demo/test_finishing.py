"""Wash, count and tags: half a lot in a wash, a half-used sheet, tags that add up."""

from pathlib import Path

from sqlalchemy import select

from app.demo.finishing import pile_of, seconds_among
from app.documents.proof import read_back
from app.lookups.things import by_code
from app.lookups.walks import below
from app.records import InLoad, Load, PrintSheet, Tag, TagOn
from app.store.book import Book


def id_of(book: Book, code: str) -> int:
    found = book.ask(by_code, code)
    assert found is not None
    return found.id


def washes_of(book: Book, lot: int) -> set[int]:
    with book.reading() as connection:
        rows = below(connection, "lot", lot)
        return set(connection.execute(
            select(InLoad.load).join(Load, Load.id == InLoad.load)
            .where(InLoad.yarn.in_(rows), Load.step == "wash")).scalars())


def test_half_of_a_pale_lot_was_washed_with_a_red_and_half_was_not(demo_book: Book) -> None:
    red, grey, blue = (washes_of(demo_book, id_of(demo_book, code))
                       for code in ("2610F81", "2610W76", "2610X4K"))
    assert red == grey
    assert red < blue
    assert len(blue) == 2


def test_the_small_sheet_begins_where_eight_were_used_and_every_code_is_read(
    demo_book: Book, demo_folder: Path
) -> None:
    with demo_book.reading() as connection:
        sheets = connection.execute(
            select(PrintSheet.stock, PrintSheet.first_cell).where(
                PrintSheet.id.in_(select(Tag.sheet).where(
                    Tag.lot == id_of(demo_book, "2608XKM"))))).all()
    assert ("small-63x38", 9) in [tuple(sheet) for sheet in sheets]
    (page,) = read_back((demo_folder / "tags-2615R6F.pdf").read_bytes(), 300)
    assert {found.code[:7] for found in page} == {"2615R6F"}
    assert len(page) == 7


def test_twenty_two_tags_were_printed_for_eleven_and_one_for_one_that_was_torn(
    demo_book: Book
) -> None:
    lot = id_of(demo_book, "2618F49")
    with demo_book.reading() as connection:
        tags = connection.execute(select(Tag.id, Tag.void, Tag.successor)
                                  .where(Tag.lot == lot)).all()
        worn = connection.execute(select(TagOn.id).join(Tag, Tag.id == TagOn.tag).where(
            Tag.lot == lot, TagOn.until.is_(None))).all()
    assert len(tags) == 11 + 11 + 1
    assert sum(1 for tag in tags if tag.successor) == 1
    assert sum(1 for tag in tags if tag.void) == 11 + 1 + 1  # second sheet, torn, another lot's
    assert len(worn) == 10


def test_seconds_are_what_is_left_of_a_pile_that_was_counted_whole(demo_book: Book) -> None:
    lot = id_of(demo_book, "2611T01")
    assert len(demo_book.ask(seconds_among, lot)) == 6
    assert demo_book.ask(pile_of, lot) in demo_book.ask(below, "lot", lot)
