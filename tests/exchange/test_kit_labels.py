"""A kit's label out of the book."""

import pytest

from app.calculations.codes import Kind, shown
from app.documents.stocks import stock
from app.exchange.kit_labels import kit_label_of, kit_label_sheet
from app.lookups.tagging import marks_for, pile_facts
from app.problems import Refused
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.kit_patterns import PatternIn, PlaceIn, make_by_pattern, write_pattern
from app.work.kits import make_kit, open_kit
from app.work.moving import To, move
from app.work.tagging import Printing, apply_tag, print_tags
from tests.documents.samples import text_of
from tests.makers import Studio

SWING = stock("swing-85x55")


def shelved(studio: Studio, count: int, words: str = "{}") -> tuple[int, list[int]]:
    """A lot on the shelf, its tags printed with these words."""
    group = studio.wind(studio.cone(), count)
    lot, (pile,) = studio.dye(group), studio.finish(group, red=count)
    marks = studio.book.ask(marks_for, studio.book.ask(pile_facts, pile).lot, count, studio.random)
    tags = studio.do(print_tags, Printing(pile, marks, words, "swing tag"))
    skeins = [studio.do(apply_tag, tag) for tag in tags]
    studio.do(move, skeins, To("shelf", place=studio.shelf))  # type: ignore[attr-defined]
    return lot, skeins


@pytest.fixture
def shop(studio: Studio) -> Studio:
    (studio.shelf,) = studio.do(make_plates, Kind.SHELF, [3])  # type: ignore[attr-defined]
    return studio


def test_every_lot_stands_on_it_with_its_letter_and_the_fibre_of_its_tags(shop: Studio) -> None:
    studio = shop
    glove, skeins = shelved(studio, 2, '{"fibre": "100 % wool"}')
    studio.recipe = studio.do(name_colourway, "Ferry Ledger", "#223344")
    ferry, others = shelved(studio, 1)  # which stands in for the moth
    studio.do(name_colourway, "Moth at the Window", "#A89C97")
    pattern = studio.do(write_pattern, PatternIn("Cowl", (
        PlaceIn("A", 2, 1, 1), PlaceIn("B", 1, 3, 1, stand_ins=(2,)))))
    kit = studio.do(make_by_pattern, pattern, [*skeins, *others])
    label = studio.book.ask(kit_label_of, kit)
    assert [(one.count, one.place, one.lot, one.fibre) for one in label.lines] == [
        (2, "A", studio.code(glove), "100 % wool"), (1, "B", studio.code(ferry), "")]
    (said,) = text_of(studio.book.ask(kit_label_sheet, kit, SWING, 3))
    assert shown(studio.code(glove)) in said
    assert shown(studio.code(ferry)) in said


def test_by_hand_there_are_no_letters_and_an_opened_bag_has_no_label(shop: Studio) -> None:
    _, skeins = shelved(shop, 2)
    kit = shop.do(make_kit, "Cap", skeins)
    assert [one.place for one in shop.book.ask(kit_label_of, kit).lines] == [""]
    shop.do(open_kit, kit, shop.shelf)  # type: ignore[attr-defined]
    with pytest.raises(Refused, match="Nothing is in kit"):
        shop.book.ask(kit_label_sheet, kit, SWING)
