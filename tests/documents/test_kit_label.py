"""The label of a kit bag names every lot in it, or is not printed."""

from dataclasses import replace

import pytest

from app.calculations.codes import Kind, numbered
from app.documents.kit_label import KitLabel, KitLine, kit_label_pdf
from app.documents.proof import printed_pages, read_back
from app.documents.stocks import stock
from app.problems import Refused
from tests.documents.samples import BASES, COLOURWAYS, text_of

SWING = stock("swing-85x55")
LOTS = ("2615R6F", "2619K44", "2606H3W", "2607R9R", "2612F5F")
LINES = tuple(
    KitLine(count=1, colourway=name, base=base, fibre=BASES[base][0], lot=lot, place=place)
    for (name, base), lot, place in zip(list(COLOURWAYS.items())[:5], LOTS, "ABCDE", strict=True)
)
KIT = KitLabel(
    code=numbered(Kind.KIT, 123).text,
    name="Harbour Wall cowl",
    lines=LINES,
    studio="Quernlow Dyeyard",
    address="Staithe Row 3, Quernlow",
)


def test_every_lot_inside_stands_on_it_with_its_colourway() -> None:
    pdf = kit_label_pdf(KIT, SWING)
    [said] = text_of(pdf)
    for lot in ("26·15·R6F", "26·19·K44", "26·06·H3W", "26·07·R9R", "26·12·F5F"):
        assert lot in said
    assert all(line.colourway in said and line.base in said for line in LINES)
    assert "KIT N·123·F" in said
    assert "Harbour Wall cowl" in said
    assert "100 % wool" in said


@pytest.mark.parametrize("dpi", [203, 300, 600])
def test_its_code_is_read_back_in_its_cell(dpi: int) -> None:
    [[code]] = read_back(kit_label_pdf(KIT, SWING, first_cell=5), dpi)
    assert code.code == KIT.code
    assert SWING.cell(5).holds(code.x, code.y)


def test_two_lots_of_one_colour_are_two_lines_and_an_old_lot_stands_as_it_is() -> None:
    same = (LINES[0], replace(LINES[0], lot="OLD77", count=2, place=""))
    [said] = text_of(kit_label_pdf(replace(KIT, lines=same), SWING))
    assert "1 × Ferry Ledger" in said
    assert "2 × Ferry Ledger" in said
    assert "OLD77" in said


def test_ten_lots_fit_in_smaller_type_and_thirty_are_refused_whole() -> None:
    assert text_of(kit_label_pdf(replace(KIT, lines=LINES * 2), SWING))[0].count("26·15·R6F") == 2
    with pytest.raises(Refused, match="does not fit the space") as refused:
        kit_label_pdf(replace(KIT, lines=LINES * 6), SWING)
    assert "larger stock" in refused.value.next_step


def test_an_empty_bag_and_a_lot_that_is_not_written_are_refused() -> None:
    with pytest.raises(Refused, match=r"Nothing is in kit N·123·F"):
        kit_label_pdf(replace(KIT, lines=()), SWING)
    with pytest.raises(Refused, match="The lot of Ferry Ledger is not written"):
        kit_label_pdf(replace(KIT, lines=(replace(LINES[0], lot=""),)), SWING)


def test_the_same_kit_makes_the_same_bytes_in_one_ink() -> None:
    pdf = kit_label_pdf(KIT, SWING)
    assert pdf == kit_label_pdf(KIT, SWING)
    assert printed_pages(pdf, 150)[0].getextrema() == (0, 255)
