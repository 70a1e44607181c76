"""A picture is kept with its report, checked with the book, and erased on request."""

import sqlite3
from contextlib import closing

import pytest
from sqlalchemy import select

from app.problems import BookUnusable, NotFound, Refused
from app.records import Photo
from app.store.journal import verify
from app.work.photos import MOST_BYTES, erase_photo, keep_photo
from app.work.reporting import FaultIn, report_fault
from app.work.selling import forget_customer
from tests.deeds import customer
from tests.makers import Studio

JPEG = b"\xff\xd8\xff\xe0 a pale stripe"


def told(studio: Studio, who: int | None = None) -> int:
    _, skeins = studio.tagged(studio.cone(), 1)
    report: int = studio.do(report_fault, FaultIn("streak", "customer", customer=who), skeins)
    return report


def pictures(studio: Studio) -> list[bytes | None]:
    return list(studio.book.ask(lambda c: c.execute(select(Photo.picture)).scalars()))


def test_a_picture_is_kept_byte_for_byte_and_the_book_still_verifies(studio: Studio) -> None:
    assert studio.done(keep_photo, told(studio), JPEG).said == "kept a picture of a fault"
    assert pictures(studio) == [JPEG]
    studio.check()


def test_erased_it_is_gone_and_the_chain_holds(studio: Studio) -> None:
    photo = studio.do(keep_photo, report := told(studio), JPEG)
    studio.do(erase_photo, photo)
    assert pictures(studio) == [None]
    assert studio.book.ask(verify).removed == (f"a picture of report {report} was removed",)
    with pytest.raises(Refused, match="cannot be brought back"):
        studio.undo()
    with pytest.raises(NotFound, match="nothing was removed"):
        studio.do(erase_photo, photo)


def test_with_the_customer_go_their_pictures(studio: Studio) -> None:
    ada = studio.do(customer, "Ada Nygård")
    studio.do(keep_photo, told(studio, ada), JPEG)
    studio.do(keep_photo, told(studio), JPEG)
    studio.do(forget_customer, ada)
    assert pictures(studio) == [None, JPEG]
    studio.check()


def test_a_picture_that_was_changed_behind_the_books_back_is_seen(studio: Studio) -> None:
    studio.do(keep_photo, told(studio), JPEG)
    with closing(sqlite3.connect(studio.book.path, isolation_level=None)) as behind:
        behind.execute("UPDATE photo SET picture = x'ffd8ff00'")
    with pytest.raises(BookUnusable, match="is not what its deeds say"):
        studio.book.ask(verify)


@pytest.mark.parametrize(("picture", "words"), [
    (b"%PDF-1.7", "no JPEG or PNG"), (b"", "no JPEG or PNG"),
    (b"\xff\xd8\xff" + bytes(MOST_BYTES), "larger than 20 MB"),
])
def test_what_is_no_picture_or_too_large_is_refused(
    studio: Studio, picture: bytes, words: str
) -> None:
    with pytest.raises(Refused, match=words):
        studio.do(keep_photo, told(studio), picture)
    with pytest.raises(NotFound, match="This report is not in the book"):
        studio.do(keep_photo, 99, JPEG)
