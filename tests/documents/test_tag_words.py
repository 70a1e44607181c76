"""Which words a tag must have, and in which order the others give way."""

import pytest

from app.documents.tag_words import check_words, ways_to_shorten
from app.problems import Refused
from tests.documents.samples import tag_words


def test_the_whole_tag_is_tried_first() -> None:
    words = tag_words()
    first = next(ways_to_shorten(words))
    assert (first.words, first.left_out) == (words, ())


def test_the_gauge_gives_way_before_ounces_before_lots_differ_before_the_base() -> None:
    alone = [way.left_out[0] for way in ways_to_shorten(tag_words()) if len(way.left_out) == 1]
    assert alone == [
        "needles and gauge are left out",
        "ounces and yards are left out",
        "the line that lots differ is left out",
        "the base's name takes two lines",
    ]


def test_ounces_the_law_asks_for_never_give_way() -> None:
    ways = ways_to_shorten(tag_words(ounces_by_law=True))
    assert all(way.words.ounces for way in ways)


def test_the_origin_gives_way_after_lots_differ_where_no_law_asks_for_it() -> None:
    ways = list(ways_to_shorten(tag_words(origin_by_law=False)))
    alone = [way.left_out[0] for way in ways if len(way.left_out) == 1]
    assert alone.index("where it was spun and dyed is left out") == 3
    assert {way.words.origin for way in ways} == {tag_words().origin, ""}


def test_what_the_law_asks_for_is_in_every_way() -> None:
    words = tag_words()
    for way in ways_to_shorten(words):
        for field in ("studio", "address", "colourway", "fibre", "net", "care", "origin", "lot"):
            assert getattr(way.words, field) == getattr(words, field)


def test_the_base_breaks_at_the_space_nearest_its_middle() -> None:
    last = list(ways_to_shorten(tag_words(base="Very Old Downholm Sock")))[-1]
    assert last.words.base == "Very Old|Downholm Sock"


def test_a_tag_without_composition_or_address_is_refused_by_name() -> None:
    with pytest.raises(Refused, match="lacks the maker's address, the fibre content"):
        check_words(tag_words(fibre=" ", address=""))
