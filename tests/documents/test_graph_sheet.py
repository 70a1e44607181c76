"""The picture of a trail on paper: on the smallest sheet where it can be read."""

import pytest
from pypdfium2 import PdfDocument

from app.documents.graph_sheet import GraphSheet, graph_sheet_pdf
from app.documents.trail_picture import Picture, Tag, Way, set_picture
from app.documents.yarn import Certainty
from app.problems import Refused
from tests.documents.samples import text_of
from tests.documents.test_trail_picture import LONG, sample

A4_LYING, A3_LYING = (842, 595), (1191, 842)


def sheet(
    picture: Picture, title: str = "dye lot 26·14·Y51", studio: str = "Quernlow Dyeyard"
) -> bytes:
    return graph_sheet_pdf(GraphSheet(f"The trail of {title}", "12 skeins came of it.", picture,
                                      studio, "0ff97b6c" * 8, 6167))


def row(count: int) -> Picture:
    tags = [Tag(f"n{n}", "dye lot", "26·14·Y51", (LONG,), code=True) for n in range(count)]
    return set_picture(tags, [Way(f"n{n}", f"n{n + 1}", Certainty.KNOWN)
                              for n in range(count - 1)], "n0")


def size(pdf: bytes) -> tuple[int, int]:
    width, height = PdfDocument(pdf)[0].get_size()
    return round(width), round(height)


def test_every_word_of_the_picture_is_on_the_paper_with_its_key() -> None:
    pdf = sheet(sample())
    (said,) = text_of(pdf)
    bare = said.replace(" ", "").replace("\u00a0", "")
    assert all(word.replace(" ", "") in bare for word in (
        "cone", "26·14·Y51", LONG, "412 skeins", "3 places", "HOLD", "one of a pool", "not known",
        "journal head", "12 skeins came of it."))
    assert size(pdf) == A4_LYING
    assert pdf == sheet(sample())


def test_a_longer_trail_gets_a_larger_sheet_and_never_smaller_type() -> None:
    assert size(sheet(row(7))) == A3_LYING


def test_a_trail_longer_than_any_sheet_is_refused_with_the_way_out() -> None:
    with pytest.raises(Refused) as refused:
        sheet(row(60))
    assert "Fold together" in refused.value.next_step


def test_a_long_title_and_a_long_name_are_broken_not_cut() -> None:
    (said,) = text_of(sheet(sample(), "X" * 250, "M" * 250))
    assert (said.count("X"), said.count("M")) == (250, 250)
