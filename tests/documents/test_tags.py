"""Sheets of tags: any cell, any mix of lots, proven, and nothing on them that should not be."""

from dataclasses import replace
from random import Random

import pytest

from app.documents import square_codes
from app.documents.proof import printed_pages, read_back
from app.documents.square_codes import Symbol
from app.documents.stocks import Stock, stock, stocks
from app.documents.tags import Tag, tag_sheets
from app.problems import BadInput, Refused
from tests.documents.samples import COLOURWAYS, LOT, MARKS, ink_box, tag_words, tags, text_of

SWING, SMALL, ROLL = stock("swing-85x55"), stock("small-63x38"), stock("roll-62x40")
SEVENTY = {"page": (210.0, 297.0), "tag": (70.0, 50.0), "across": 3, "down": 5}
SEVENTY |= {"first": (0.0, 23.5), "step": (70.0, 50.0), "title": "Tags 70 × 50, fifteen on A4"}


def test_the_same_rows_make_the_same_bytes() -> None:
    assert tag_sheets(tags(3), SWING).pdf == tag_sheets(tags(3), SWING).pdf


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
@pytest.mark.parametrize("colourway", COLOURWAYS)
def test_every_colourway_of_the_studio_fits_every_stock(one: Stock, colourway: str) -> None:
    words = tag_words(colourway)
    sheets = tag_sheets([Tag(words, "7M")], one)
    said = text_of(sheets.pdf)[0]
    assert all(part in said for part in (colourway, words.base, words.fibre, "26·15·R6F 7M"))


@pytest.mark.parametrize("dpi", [150, 203, 300, 600])
@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_every_code_is_read_back_at_every_printers_dots(one: Stock, dpi: int) -> None:
    sheets = tag_sheets(tags(23), one)
    read = [code.code for page in read_back(sheets.pdf, dpi) for code in page]
    assert sorted(read) == sorted(place.code for place in sheets.places)


def test_a_half_used_sheet_is_begun_at_its_ninth_cell() -> None:
    sheets = tag_sheets(tags(11), SMALL, first_cell=9)
    assert [place.cell for place in sheets.places] == list(range(9, 20))
    assert (sheets.pages, sheets.left_on_last) == (1, 2)
    left, top, right, bottom = ink_box(printed_pages(sheets.pdf, 150)[0], 150)
    assert top > SMALL.cell(9).top
    assert bottom < SMALL.cell(19).bottom
    assert (left > SMALL.cell(10).left, right < SMALL.cell(9).right) == (True, True)


def test_cells_that_are_used_anywhere_on_the_first_sheet_are_passed_over() -> None:
    sheets = tag_sheets(tags(22), SMALL, first_cell=2, used=(3, 4, 9), slug="Tags")
    assert [place.cell for place in sheets.places if place.page == 1] == [
        cell for cell in range(2, 22) if cell not in (3, 4, 9)
    ]
    assert [(place.page, place.cell) for place in sheets.places][-5:] == [
        (2, 1), (2, 2), (2, 3), (2, 4), (2, 5)
    ]  # fmt: skip
    assert sheets.left_on_last == 16
    assert "sheet 1 of 2 · cells 2, 5 to 8, 10 to 21 of 21" in text_of(sheets.pdf)[0]
    assert "Tags · sheet 2 of 2 · cells 1 to 5 of 21, 16 left" in text_of(sheets.pdf)[1]


def test_a_sheet_with_gaps_knows_how_many_cells_are_left() -> None:
    sheets = tag_sheets(tags(2), SWING, used=(1, 3), slug="Tags")
    assert sheets.left_on_last == 6
    assert "cells 2, 4 of 10, 6 left" in text_of(sheets.pdf)[0]


def test_a_sheet_whose_cells_are_all_used_is_refused() -> None:
    with pytest.raises(Refused, match="Every cell of this sheet is used"):
        tag_sheets(tags(1), SWING, first_cell=9, used=(9, 10))
    with pytest.raises(Refused, match="no cell 11"):
        tag_sheets(tags(1), SWING, used=(11,))


def test_tags_run_over_to_the_first_cell_of_the_next_sheet() -> None:
    sheets = tag_sheets(tags(4), SWING, first_cell=9)
    assert [(place.page, place.cell) for place in sheets.places] == [
        (1, 9),
        (1, 10),
        (2, 1),
        (2, 2),
    ]
    assert sheets.left_on_last == 8


def test_a_roll_has_one_tag_a_page() -> None:
    sheets = tag_sheets(tags(3), ROLL)
    assert (sheets.pages, sheets.left_on_last) == (3, 0)


def test_a_days_sheet_may_mix_lots_and_bases() -> None:
    pair = [Tag(tag_words(), "7M"), Tag(tag_words("Whey Blue", lot="2618F49"), "7M")]
    said = text_of(tag_sheets(pair, SWING).pdf)[0]
    assert "Sluice Keeper’s Glove" in said
    assert "26·18·F49 7M" in said


def test_a_correction_moves_all_print_by_these_two_numbers() -> None:
    plain, moved = (
        ink_box(printed_pages(tag_sheets(tags(10), SMALL, correction=by).pdf, 600)[0], 600)
        for by in ((0.0, 0.0), (-2.1, 1.4))
    )
    shift = [after - before for before, after in zip(plain, moved, strict=True)]
    assert shift == pytest.approx([-2.1, 1.4, -2.1, 1.4], abs=0.1)


def test_a_correction_that_pushes_a_tag_out_of_reach_is_refused() -> None:
    edge_to_edge = Stock(name="seventy", layout="small", edge=4, **SEVENTY)
    tag_sheets(tags(1), edge_to_edge)
    with pytest.raises(Refused, match="printer cannot reach") as refused:
        tag_sheets(tags(1), edge_to_edge, correction=(-4.5, 0))
    assert "correction" in refused.value.next_step


def test_another_stock_is_judged_by_what_fits_it() -> None:
    plum = tags(1, tag_words("Plum Stone in a Pocket"))
    with pytest.raises(Refused, match="“Plum Stone in a Pocket” is [0-9.]+ mm too long"):
        tag_sheets(plum, Stock(name="seventy", layout="swing", **SEVENTY))
    assert tag_sheets(plum, Stock(name="seventy", layout="small", **SEVENTY)).pages == 1


def test_a_name_too_long_is_refused_with_its_words() -> None:
    long_name = "The Lamp in the Window of the House by the Third Lock"
    with pytest.raises(Refused, match=f"“{long_name}” is [0-9.]+ mm too long"):
        tag_sheets(tags(1, tag_words(long_name)), SWING)


def test_a_name_with_letters_no_type_has_is_refused_with_the_letters() -> None:
    with pytest.raises(Refused, match="“Snow 雪 Lantern” has signs .*: 雪"):
        tag_sheets(tags(1, tag_words("Snow 雪 Lantern")), SWING)


def test_what_gave_way_is_told() -> None:
    assert tag_sheets(tags(1), SWING).left_out == ()
    assert tag_sheets(tags(1), SMALL).left_out == (
        "needles and gauge are left out",
        "the line that lots differ is left out",
    )


def test_a_blend_of_three_with_lawful_ounces_does_not_fit_the_small_tag() -> None:
    words = tag_words(fibre="55 % wool, 25 % alpaca, 20 % polyamide", ounces_by_law=True)
    with pytest.raises(Refused, match="not all words fit"):
        tag_sheets(tags(1, words), SMALL)
    assert tag_sheets(tags(1, words), SWING).left_out == ()


def test_a_lot_whose_check_is_wrong_is_refused() -> None:
    with pytest.raises(BadInput):
        tag_sheets(tags(1, tag_words(lot="2615R6H")), SWING)


def test_the_same_mark_is_not_printed_twice() -> None:
    with pytest.raises(Refused, match="2615R6F-7M would be printed twice"):
        tag_sheets([Tag(tag_words(), "7M")] * 2, SWING)


def test_no_tags_and_cells_that_are_not_there_are_refused() -> None:
    with pytest.raises(Refused, match="no tag"):
        tag_sheets([], SWING)
    with pytest.raises(Refused, match="no cell 11"):
        tag_sheets(tags(1), SWING, first_cell=11)


def test_the_slug_stands_in_the_waste_margin_with_its_cells() -> None:
    sheets = tag_sheets(tags(3), SMALL, first_cell=20, slug="Tags of 26·15·R6F")
    first, second = text_of(sheets.pdf)
    assert "Tags of 26·15·R6F · sheet 1 of 2 · cells 20 to 21 of 21" in first
    assert "Tags of 26·15·R6F · sheet 2 of 2 · cell 1 of 21, 20 left" in second


@pytest.mark.parametrize("one", [SMALL, replace(SWING, cut=False)], ids=["small", "swing"])
def test_a_second_printing_on_a_sheet_writes_its_slug_on_another_line(one: Stock) -> None:
    rows = []
    for used in ((), (1, 2, 3)):
        page = printed_pages(tag_sheets(tags(1), one, used=used, slug="Tags").pdf, 150)[0]
        for number in range(1, one.cells + 1):  # what is left is the waste margin
            box = one.cell(number)
            page.paste(255, tuple(round(mm / 25.4 * 150) for mm in box))
        _, top, _, foot = ink_box(page.crop((0, 0, round(100 / 25.4 * 150), page.height)), 150)
        rows.append((top, foot))
    assert rows[0][1] < rows[1][0] or rows[1][1] < rows[0][0]


def test_a_wider_edge_that_is_not_printed_moves_the_slug_in() -> None:
    wider = replace(SMALL, edge=5)
    assert "Tags · sheet 1" in text_of(tag_sheets(tags(1), wider, slug="Tags").pdf)[0]


def test_a_roll_has_no_waste_margin_and_no_slug() -> None:
    assert "by LP" not in text_of(tag_sheets(tags(1), ROLL, slug="printed by LP").pdf)[0]


def test_a_full_random_order_of_marks_keeps_each_in_its_cell() -> None:
    marks = list(MARKS)
    Random(7).shuffle(marks)
    sheets = tag_sheets([Tag(tag_words(), mark) for mark in marks], SWING)
    assert [place.code for place in sheets.places] == [f"{LOT}-{mark}" for mark in marks]
    for page, found in enumerate(read_back(sheets.pdf, 300), 1):
        for place in (one for one in sheets.places if one.page == page):
            here = [code.code for code in found if SWING.cell(place.cell).holds(code.x, code.y)]
            assert here == [place.code]


def test_a_fault_in_drawing_is_caught_before_a_sheet_is_handed_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    another = square_codes.matrix(f"{LOT}-XX", Symbol.QR)
    monkeypatch.setattr(square_codes, "matrix", lambda text, symbol: another)
    with pytest.raises(Refused, match=f"{LOT}-XX is read where {LOT}-{MARKS[0]} is due"):
        tag_sheets(tags(1), SWING)


@pytest.mark.parametrize("one", stocks(), ids=lambda one: one.name)
def test_a_lot_from_before_the_book_is_printed_with_its_code_as_it_stands(one: Stock) -> None:
    sheets = tag_sheets(tags(3, tag_words(lot="OLD77")), one)
    read = {code.code for page in read_back(sheets.pdf, one.dpi) for code in page}
    assert read == {f"OLD77-{mark}" for mark in MARKS[:3]}
    assert f"OLD77 {MARKS[0]}" in text_of(sheets.pdf)[0]


@pytest.mark.parametrize("lot", ["CELADON2019NO14", "GRÜN7", "lot_7"])
def test_an_old_code_that_no_square_code_holds_is_refused_with_its_reason(lot: str) -> None:
    with pytest.raises(Refused, match=f"{lot} does not fit the square code") as refused:
        tag_sheets(tags(1, tag_words(lot=lot)), SWING)
    assert "by hand" in refused.value.next_step
