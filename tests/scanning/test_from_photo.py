"""From a photograph to things of the book, with what to do where nothing can be read."""

from io import BytesIO
from itertools import count

import pytest
import qrcode

from app.problems import BadInput
from app.scanning.from_photo import PhotoAnswer, read_photo, what_it_shows
from app.scanning.photo_codes import Seen, Sought
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import Printing, print_tags
from tests.documents.samples import LOT
from tests.makers import EACH_MG, Studio
from tests.scanning.photographed import MARKS, as_file, blurred, photo


def asked(studio: Studio, content: bytes, *wanted: str) -> PhotoAnswer:
    sought = read_photo(content, count().__next__)
    return studio.book.ask(what_it_shows, sought, frozenset(wanted))


@pytest.fixture
def tagged(studio: Studio) -> Studio:
    """The first two tags of the photographs are in the book, tied to nothing yet."""
    pile = studio.do(open_lot, OldLot(LOT, studio.version, 1, 4), EACH_MG)
    studio.do(print_tags, Printing(pile, MARKS[:2], "{}", "swing-85x55", version=studio.version))
    return studio


def test_a_photographed_tag_is_the_thing_of_the_book_and_as_stated(tagged: Studio) -> None:
    answer = asked(tagged, as_file(photo(0)))
    (one,) = answer.shown
    assert one.answer.found is not None
    assert (one.answer.found.code, one.basis) == (MARKS[0], "stated")
    assert answer.sentence.startswith("1 code was read. 26·15·R6F 73 is a printed tag that")
    assert "as stated" in answer.next_step


def test_several_tags_are_each_looked_up(tagged: Studio) -> None:
    answer = asked(tagged, as_file(photo(0, 1, 2, share=0.4)))
    assert [one.answer.found is not None for one in answer.shown] == [True, True, False]
    assert answer.sentence == "3 codes were read, 2 of them in this book."
    assert answer.shown[2].answer.sentence.startswith("Lot 26·15·R6F has no tag")


def test_a_photograph_without_a_code_says_what_to_ask_for(tagged: Studio) -> None:
    answer = asked(tagged, as_file(blurred(photo(0), 9)))
    assert answer.shown == ()
    assert answer.sentence == "No code could be read on this photograph."
    for words in ("flat", "in daylight", "closer", "type what is readable"):
        assert words in answer.next_step


def test_a_strange_code_is_told_and_not_taken(tagged: Studio) -> None:
    picture = qrcode.make("https://example.org/26·15·R6F").get_image().convert("RGB")
    picture.save(out := BytesIO(), "PNG")
    answer = asked(tagged, out.getvalue())
    assert answer.shown[0].answer.found is None
    assert "not one of the studio's codes" in answer.sentence


def test_a_code_of_blanks_says_nothing(studio: Studio) -> None:
    answer = studio.book.ask(what_it_shows, Sought((Seen(" ", 0.5, 0.5),)))
    assert answer.sentence == "No code could be read on this photograph."


def test_a_bench_that_wants_another_kind_is_told(tagged: Studio) -> None:
    (one,) = asked(tagged, as_file(photo(0)), "cone").shown
    assert one.answer.found is None
    assert one.answer.next_step == "Wanted here: a cone."


def test_what_was_read_in_haste_says_so(tagged: Studio) -> None:
    hurried = tagged.book.ask(what_it_shows, Sought((), hurried=True))
    assert hurried.sentence.endswith("The time was up before every way to look was tried.")
    found = tagged.book.ask(what_it_shows, Sought((Seen(LOT, 0.5, 0.5),), hurried=True))
    assert found.sentence.endswith("was tried.")


def test_a_file_that_is_no_photograph_is_told_before_any_book_is_asked() -> None:
    with pytest.raises(BadInput, match="is a PDF"):
        read_photo(b"%PDF-1.7", count().__next__)
