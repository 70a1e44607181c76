"""The weigh-out sheet: what is weighed, squares to write in, cautions."""

from dataclasses import replace

import pytest

from app.documents.proof import read_back
from app.documents.sheet import SheetFoot, SheetHead
from app.documents.weigh_sheet import WeighRow, WeighSheet, weigh_sheet_pdf
from app.problems import Refused
from tests.documents.samples import text_of

SHEET = WeighSheet(
    head=SheetHead("Weigh out", "Sluice Keeper’s Glove", "version 3", "weigh-out 1", "G0019"),
    foot=SheetFoot("Quernlow Dyeyard"),
    facts=(("dry, as wound", "1,237.5 g"), ("bath", "24.8 L")),
    balance_rule="Balance of 0.01 g: not under 0.5 g a line.",
    rows=(WeighRow("B1 turquoise", "jar 11, fill 4", "6.51", "g", "6.39 to 6.64"),
          WeighRow("citric acid (crystals)", "no jar", "", "", note="how much is not known")),
    steps=("heat up, 85 °C, 46 min",), first_caution="The makers’ sheets come first.",
    cautions=("Do not breathe dye powder.",),
)


def test_every_line_says_what_from_where_how_much_and_what_may_show() -> None:
    words = " ".join(text_of(weigh_sheet_pdf(SHEET))).replace("\u00a0", " ")
    for part in ("B1 turquoise", "jar 11, fill 4", "6.51 g", "6.39 to 6.64", "not known",
                 "citric acid (crystals)", "heat up, 85 °C, 46 min", "1,237.5 g",
                 "Do not breathe dye powder.", "lot, named at the pot"):
        assert part in words


def test_what_was_taken_stands_in_its_square() -> None:
    rows = (replace(SHEET.rows[0], taken="6.58 g  DA"),)
    assert "6.58 g" in text_of(weigh_sheet_pdf(replace(SHEET, rows=rows)))[0].replace("\u00a0", " ")


def test_thirty_long_names_go_on_to_the_next_pages_in_their_order() -> None:
    rows = tuple(replace(SHEET.rows[0], what=f"dye {n} of a maker with a very, very long name")
                 for n in range(30))
    pages = text_of(weigh_sheet_pdf(replace(SHEET, rows=rows)))
    assert len(pages) > 1
    words = " ".join(pages)
    places = [words.index(f"dye {n} of") for n in range(30)]
    assert places == sorted(places)
    assert [len(page) for page in read_back(weigh_sheet_pdf(replace(SHEET, rows=rows)), 203)] == [
        1] * len(pages)


def test_the_same_rows_make_the_same_bytes() -> None:
    assert weigh_sheet_pdf(SHEET) == weigh_sheet_pdf(SHEET)


def test_a_weight_that_does_not_fit_is_refused_with_its_digits() -> None:
    with pytest.raises(Refused, match="12345678901234.12"):
        weigh_sheet_pdf(replace(SHEET, rows=(replace(SHEET.rows[0], wanted="12345678901234.12"),)))
