"""A tag read back: rows to choose from, whatever way it came, and how a choice is known."""

from itertools import count

from app.scanning.from_photo import SeveralPhotos, read_photos
from app.scanning.how_known import Came
from app.scanning.photo_codes import Seen, Sought
from app.scanning.read_back import ReadBack, read_from_photos, read_with_gaps
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import Printing, print_tags
from tests.documents.samples import LOT
from tests.makers import EACH_MG, Studio
from tests.scanning.photographed import MARKS


def from_photos(studio: Studio, *texts: str) -> ReadBack:
    sought = Sought(tuple(Seen(text, 0.5, 0.5) for text in texts))
    return studio.book.ask(read_from_photos, SeveralPhotos(sought, 1))


def with_a_tag(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot(LOT, studio.version, 1, 4), EACH_MG)
    studio.do(print_tags, Printing(pile, MARKS[:1], "{}", "swing-85x55", version=studio.version))


def test_each_code_is_a_row_with_its_lot_and_a_link_to_it_is_stated(studio: Studio) -> None:
    with_a_tag(studio)
    read = from_photos(studio, MARKS[0])
    (row,) = read.rows
    assert row.found is not None
    assert row.lot is not None
    assert (row.found.code, row.lot.code, row.said) == (
        MARKS[0], LOT, "a printed tag that hangs on no skein")
    assert (read.basis, read.reply) == ("stated", "")


def test_a_tag_that_was_never_printed_offers_its_lot_and_asks_for_a_better_picture(
    studio: Studio,
) -> None:
    with_a_tag(studio)
    read = from_photos(studio, MARKS[1])
    assert [row.found and row.found.code for row in read.rows] == [None, LOT]
    assert "was never printed" in read.rows[0].said
    assert read.reply


def test_files_that_are_no_pictures_are_told_beside_those_that_are(studio: Studio) -> None:
    told: list[tuple[int, int]] = []
    photos = read_photos([b"%PDF-1.7", b""], count().__next__, lambda *far: told.append(far))
    assert told == [(0, 2), (1, 2)]
    read = studio.book.ask(read_from_photos, photos)
    assert read.rows == ()
    assert read.sentence.startswith("This file is a PDF, whatever its name says, and no photograph")
    assert "The file is empty" in read.sentence
    assert read.next_step
    assert read.reply
    some = SeveralPhotos(Sought((Seen(LOT, 0.5, 0.5),)), 2, photos.problems[1:])
    assert studio.book.ask(read_from_photos, some).sentence.startswith("1 code was read. ")


def test_gaps_have_a_row_for_every_fit_and_keep_how_they_came(studio: Studio) -> None:
    with_a_tag(studio)
    read = studio.book.ask(read_with_gaps, "26?5R6?", "", Came.TOLD)
    assert [(row.text, row.said) for row in read.rows] == [("26·15·R6F", "a dye lot")]
    assert (read.came, read.basis) == (Came.TOLD, "stated")
