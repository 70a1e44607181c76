"""Tags on paper first, in the book afterwards."""

import json
from random import Random
from typing import Any

import pytest
from sqlalchemy import select

from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.tag_printing import (
    LotOrder,
    OnStock,
    PrintOrder,
    print_for_lot,
    print_for_pile,
)
from app.lookups.printed import sheets_used, tags_of
from app.lookups.tagging import pile_facts
from app.problems import NotFound, Refused
from app.records import Tag
from app.store.deed import By
from app.work.holding import hold
from app.work.studio import choose
from app.work.tagging import spoil_tags
from tests.documents.samples import text_of
from tests.makers import Studio

LP = By("LP", "tagging")
SWING, SMALL = OnStock("swing-85x55"), OnStock("small-63x38", 9)


@pytest.fixture
def piled(studio: Studio) -> tuple[Studio, int, int]:
    """A named studio with one lot of two piles: 6 with red ties, 5 with yellow ones."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    red, yellow = (studio.wind(studio.cone(), n, tie) for n, tie in ((6, "red"), (5, "yellow")))
    studio.dye(red, yellow)
    (one,), (other,) = studio.finish(red, red=6), studio.finish(yellow, yellow=5)
    return studio, one, other


def lot_of(studio: Studio, pile: int) -> int:
    (lot,) = studio.book.ask(pile_facts, pile).lots
    assert lot is not None
    return lot


def marks_in_book(studio: Studio) -> list[str]:
    return studio.book.ask(lambda c: list(c.execute(select(Tag.mark)).scalars()))


def test_what_is_in_the_book_is_what_can_be_read_from_the_paper(
    piled: tuple[Studio, int, int]
) -> None:
    studio, pile, _ = piled
    printed = print_for_pile(studio.book, LP, PrintOrder(pile, 6, SMALL), Random(3))
    found = [code.code for page in read_back(printed.pdf, stock("small-63x38").dpi)
             for code in page]
    assert sorted(found) == sorted(marks_in_book(studio))
    assert [place.cell for place in printed.places] == list(range(9, 15))
    assert printed.left_on_last == 7
    assert printed.said == f"printed 6 tags for {studio.book.ask(pile_facts, pile).lot[:2]}" \
                           f"·15·{studio.book.ask(pile_facts, pile).lot[4:]}"
    assert studio.book.ask(pile_facts, pile).waiting == 6
    assert studio.book.ask(sheets_used) == {"small-63x38": set(range(1, 15))}


def test_the_words_are_kept_as_they_were_printed(piled: tuple[Studio, int, int]) -> None:
    studio, pile, _ = piled
    print_for_pile(studio.book, LP, PrintOrder(pile, 1, SWING), Random(3))
    kept = studio.book.ask(lambda c: c.execute(select(Tag.words)).scalar_one())
    words = json.loads(kept)
    assert words["studio"] == "Quernlow Dyeyard"
    assert words["colourway"] == "Sluice Keeper's Glove"
    assert words["net"].split() == ["100", "g", "388", "m"]


def test_a_lot_of_two_piles_is_printed_on_one_set_of_sheets(
    piled: tuple[Studio, int, int]
) -> None:
    studio, red, yellow = piled
    printed = print_for_lot(studio.book, LP, LotOrder(lot_of(studio, red), SWING), Random(3))
    assert len(printed.tags) == len({place.code for place in printed.places}) == 11
    assert [len(studio.book.ask(tags_of, pile)) for pile in (red, yellow)] == [6, 5]
    assert printed.places[-1].page == 2
    assert [tag.place for tag in studio.book.ask(tags_of, yellow)] == [7, 8, 9, 10, 11]
    assert studio.book.ask(sheets_used) == {"swing-85x55": {1}}


def test_cells_that_are_used_are_passed_over_and_kept_as_used(
    piled: tuple[Studio, int, int]
) -> None:
    studio, pile, _ = piled
    on = OnStock("small-63x38", used=(1, 2, 3, 5, 21))
    print_for_pile(studio.book, LP, PrintOrder(pile, 3, on), Random(3))
    assert [tag.place for tag in studio.book.ask(tags_of, pile)] == [4, 6, 7]
    assert studio.book.ask(sheets_used) == {"small-63x38": {1, 2, 3, 4, 5, 6, 7, 21}}


def test_so_many_of_a_lot_begin_with_its_first_pile(piled: tuple[Studio, int, int]) -> None:
    studio, red, yellow = piled
    lot = lot_of(studio, red)
    print_for_lot(studio.book, LP, LotOrder(lot, SWING, 7), Random(3))
    assert [len(studio.book.ask(tags_of, pile)) for pile in (red, yellow)] == [6, 1]
    with pytest.raises(Refused, match="1 of 5 printed: why 9 more"):
        print_for_lot(studio.book, LP, LotOrder(lot, SWING, 9), Random(3))


def test_a_lot_whose_skeins_all_have_tags_needs_none(piled: tuple[Studio, int, int]) -> None:
    studio, red, _ = piled
    order = LotOrder(lot_of(studio, red), SWING)
    tags = print_for_lot(studio.book, LP, order, Random(3)).tags
    with pytest.raises(NotFound, match="No skein of this lot waits for a tag"):
        print_for_lot(studio.book, LP, order, Random(3))
    studio.do(spoil_tags, tags[:2], "jammed")
    assert len(print_for_lot(studio.book, LP, order, Random(4)).tags) == 2


@pytest.mark.parametrize(("change", "why"), [
    ({"count": 7}, "0 of 6 printed: why 7 more"), ({"count": 0}, "No tag was asked for"),
    ({"on": OnStock("swing-85x55", 11)}, "no cell 11"), ({"version": 99}, "not of this yarn"),
    ({"on": OnStock("swing-85x55", 1, (9.0, 0.0))}, "wrong stock or a scaled page"),
])
def test_what_may_not_be_printed_leaves_nothing_in_the_book(
    piled: tuple[Studio, int, int], change: dict[str, Any], why: str
) -> None:
    studio, pile, _ = piled
    with pytest.raises(Refused, match=why):
        print_for_pile(studio.book, LP,
                       PrintOrder(**{"pile": pile, "count": 6, "on": SWING, **change}), Random(3))
    assert marks_in_book(studio) == []


def test_more_than_the_count_is_printed_with_its_reason(piled: tuple[Studio, int, int]) -> None:
    studio, pile, _ = piled
    order = PrintOrder(pile, 7, SWING, why="one extra skein was found")
    assert len(print_for_pile(studio.book, LP, order, Random(3)).tags) == 7


def test_a_stock_that_nobody_described_is_not_found(piled: tuple[Studio, int, int]) -> None:
    studio, pile, _ = piled
    with pytest.raises(NotFound, match="No stock is called"):
        print_for_pile(studio.book, LP, PrintOrder(pile, 1, OnStock("plain")), Random(3))
    assert marks_in_book(studio) == []


def test_a_pile_on_hold_gets_no_tags(piled: tuple[Studio, int, int]) -> None:
    studio, pile, _ = piled
    studio.do(hold, "lot", lot_of(studio, pile), "stained")
    with pytest.raises(Refused, match="HOLD"):
        print_for_pile(studio.book, LP, PrintOrder(pile, 1, SWING), Random(3))
    assert marks_in_book(studio) == []


def test_words_that_do_not_fit_are_refused_before_the_book_knows_of_any_tag(
    piled: tuple[Studio, int, int]
) -> None:
    studio, pile, _ = piled
    studio.do(choose, {"address": "far away " * 60})
    with pytest.raises(Refused):
        print_for_pile(studio.book, LP, PrintOrder(pile, 6, SWING), Random(3))
    assert marks_in_book(studio) == []


def test_a_retry_never_hands_out_marks_that_are_not_in_the_book(
    piled: tuple[Studio, int, int]
) -> None:
    studio, pile, _ = piled
    print_for_pile(studio.book, LP, PrintOrder(pile, 3, SWING), Random(3), "t-1")
    first = marks_in_book(studio)
    with pytest.raises(Refused, match="with other marks; nothing was printed"):
        print_for_pile(studio.book, LP, PrintOrder(pile, 3, SWING), Random(4), "t-1")
    assert marks_in_book(studio) == first


def test_tags_are_printed_in_the_words_of_the_market(piled: tuple[Studio, int, int]) -> None:
    studio, pile, _ = piled
    studio.do(choose, {"market": "EU", "language": "de", "origin": "From the hill."})
    printed = print_for_pile(studio.book, LP, PrintOrder(pile, 1, SWING), Random(3))
    kept = json.loads(studio.book.ask(lambda c: c.execute(select(Tag.words)).scalar_one()))
    assert (kept["fibre"], kept["ounces_by_law"]) == ("100 % Wolle", False)
    assert kept["care"].startswith("Handwäsche 30 °C")
    assert "100 % Wolle" in text_of(printed.pdf)[0].replace("\u00a0", " ")
    assert printed.warnings == (
        "“From the hill.” has no words in German here and stands as written (common practice, no "
        "source). Write it in that language in the base, if buyers must read it.",)


def test_what_the_market_refuses_is_not_printed(piled: tuple[Studio, int, int]) -> None:
    studio, pile, _ = piled
    studio.do(choose, {"market": "US"})
    with pytest.raises(Refused, match="no country where it was made or dyed .16 CFR 303.33") as no:
        print_for_pile(studio.book, LP, PrintOrder(pile, 1, SWING), Random(3))
    assert no.value.next_step.startswith("Write the origin")
    assert marks_in_book(studio) == []
