"""What the words of an order name."""

import pytest

from app.lookups.order_words import ReadAs, StudioNames, read_words, studio_names
from app.work.dyeing import name_colourway
from tests.makers import Studio

NAMES = StudioNames({"Whey Blue": 1, "Whey Blue Deep": 2, "Sluice Keeper's Glove": 3},
                    {"Tarnfield 4-ply": 5, "Downholm Sock": 6}, ("mini", "skein"))


@pytest.mark.parametrize(("words", "read"), [
    ("Whey Blue", ReadAs(1)),
    ("WHEY BLUE DEEP – Downholm Sock (minis)", ReadAs(2, 6, "mini")),
    ("sluice keeper’s glove / tarnfield 4 ply, skein", ReadAs(3, 5, "skein")),
    ("Tarnfield 4-ply in Whey Blue: 3 skeins or minis", ReadAs(1, 5)),
])
def test_a_name_is_read_whatever_its_case_signs_and_place(words: str, read: ReadAs) -> None:
    assert read_words(words, NAMES) == read


@pytest.mark.parametrize(("words", "doubt"), [
    ("Gift card", "“Gift card” names no colourway of the studio."),
    ("Wheyblue", "“Wheyblue” names no colourway of the studio."),
    ("Whey Blue Deep or Whey Blue", "“Whey Blue Deep or Whey Blue” names 2 colourways: Whey Blue "
                                    "Deep and Whey Blue."),
    ("", "“” names no colourway of the studio."),
])
def test_what_names_none_or_two_is_no_guess(words: str, doubt: str) -> None:
    assert read_words(words, NAMES) == ReadAs(doubt=doubt)


def test_two_bases_leave_the_base_open_and_say_so() -> None:
    read = read_words("Whey Blue on Downholm Sock or Tarnfield 4-ply", NAMES)
    assert (read.colourway, read.base) == (1, None)
    assert read.doubt.endswith("names 2 bases: Tarnfield 4-ply and Downholm Sock.")


def test_the_names_are_those_of_the_book(studio: Studio) -> None:
    moth = studio.do(name_colourway, "Moth at the Window", "#A89C97")
    studio.undo()
    names = studio.book.ask(studio_names)
    assert dict(names.colourways) == {"Sluice Keeper's Glove": 1}
    assert dict(names.bases) == {"Tarnfield 4-ply": 1}
    assert names.put_ups == ("mini", "skein")
    assert moth
