"""What stands on a tag, and where."""

import pytest

from app.calculations.codes import read
from app.documents.boxes import Box
from app.documents.paper import Paper
from app.documents.stocks import Stock, stock, stocks
from app.documents.tag_layouts import draw_tag
from app.documents.typesetting import Type
from tests.documents.samples import tag_words, text_of


def drawn(one: Stock, **changes: object) -> Paper:
    """One tag in the first cell."""
    paper = Paper("Test", one.page, dpi=one.dpi, edge=one.edge)
    with paper.cell(one.cell(1)):
        draw_tag(paper, one, tag_words(**changes), read("2615R6F-7M"))
    return paper


def test_a_swing_tag_says_all_in_its_order() -> None:
    said = text_of(drawn(stock("swing-85x55")).pdf(""))[0]
    for words in (
        "QUERNLOW DYEYARD",
        "Staithe Row 3, Quernlow",
        "100 g 388 m",
        "3.53 oz 424 yd",
        "Sluice Keeper’s Glove",
        "Tarnfield 4-ply",
        "100 % wool",
        "3.25 mm needles, 28 stitches × 36 rows = 10 cm.",
        "Hand wash 30 °C, dry flat, do not tumble.",
        "Spun in the Aske valley, dyed by hand at Quernlow.",
        "Lots differ: use one, or alternate two rows.",
        "26·15·R6F 7M",
    ):
        assert words in said


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_a_shift_of_two_millimetres_leaves_the_codes_white_edge_on_the_tag(one: Stock) -> None:
    paper = drawn(one, knit="", differ="")
    [(_, code_with_edge)] = paper.codes[0]
    assert code_with_edge.within(one.cell(1).shrunk(2))
    assert not paper.misfits


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_the_codes_modules_are_never_under_half_a_millimetre(one: Stock) -> None:
    [(_, box)] = drawn(one).codes[0]
    assert (box.right - box.left) / 29 >= 0.4999


def test_the_hole_is_kept_free() -> None:
    paper = Paper("Test", (85, 55))
    with paper.cell(Box(0, 0, 85, 55)):
        draw_tag(paper, stock("swing-85x55"), tag_words(), read("2615R6F-7M"))
        paper.text(40, 7, "here", Type(7))
    assert "“here” meets “the hole”" in paper.misfits


def test_a_long_maker_takes_lines_and_moves_the_colourway_down() -> None:
    paper = drawn(
        stock("swing-85x55"),
        studio="Osk & Treddle Dyers of Long Staithe",
        address="Staithe Row 3, Quernlow under Aske",
        knit="",
    )
    assert paper.misfits == ()


def test_a_small_tag_prefers_to_break_between_maker_and_address() -> None:
    said = text_of(drawn(stock("roll-62x40"), knit="", differ="").pdf(""))[0]
    assert "Quernlow Dyeyard, Staithe Row 3, Quernlow" in said
