"""Pictures of a report, in the order they were kept; a removed one leaves its place."""

from app.lookups.photos import photos_of, picture_of
from app.work.photos import erase_photo, keep_photo
from app.work.reporting import FaultIn, report_fault
from tests.makers import Studio

ONE, TWO = b"\xff\xd8\xff\xe0 a pale stripe", b"\x89PNG\r\n\x1a\n another"


def test_a_picture_is_given_back_byte_for_byte_until_it_is_removed(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 1)
    report = studio.do(report_fault, FaultIn("streak", "customer"), skeins)
    first, second = (studio.do(keep_photo, report, picture) for picture in (ONE, TWO))
    assert studio.book.ask(picture_of, second) == TWO
    studio.do(erase_photo, first)
    kept = studio.book.ask(photos_of, report)
    assert [(one.id, one.picture) for one in kept] == [(first, None), (second, TWO)]
    assert studio.book.ask(picture_of, first) is None
    assert studio.book.ask(photos_of, report + 1) == ()
