"""The frame of a sheet: head, foot, answers, tables that run over pages; no words are refused."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.documents.proof import read_back
from app.documents.sheet import Column, Sheet, SheetFoot, SheetHead
from tests.documents.samples import text_of

HEAD = SheetHead("Trace of a cone", "T-0114", "cone of Tarnfield 4-ply", "Aske Mill", "C0114F")
JOURNAL = "d88940ac117fc14a195e88c24d0952867a295a0ec3bbaa0ee21c22fb099984c9"
FOOT = SheetFoot("Quernlow Dyeyard · printed 12 May 2026, 16:40 +02:00, by OW", JOURNAL, 41207)
COLUMNS = (Column("state", 0, 60), Column("skeins", 90, 20, "right"))


def test_the_head_names_the_thing_and_wears_its_code() -> None:
    pdf = Sheet(HEAD, FOOT, 1).finish()
    said = text_of(pdf)[0]
    for words in ("Trace of a cone", "T-0114", "cone of Tarnfield 4-ply", "C·0114·F"):
        assert words in said
    assert [code.code for code in read_back(pdf, 300)[0]] == ["C0114F"]


def test_the_foot_bears_the_journals_head_in_groups_of_eight() -> None:
    said = text_of(Sheet(HEAD, FOOT, 1).finish())[0]
    assert "journal head at entry 41,207" in said
    assert "d88940ac 117fc14a 195e88c2" in said
    assert "page 1 of 1" in said


def test_a_thing_without_a_code_has_a_sheet_too() -> None:
    pdf = Sheet(SheetHead("Trace of a find", "Skein under shelf 3"), FOOT, 1).finish()
    assert read_back(pdf, 300) == ((),)


def test_a_table_runs_over_pages_under_its_headings() -> None:
    sheet = Sheet(HEAD, FOOT, 3)
    sheet.table("Where", COLUMNS, [(f"shelf {n}", "1") for n in range(120)], ("together", "120"))
    pages = text_of(sheet.finish())
    assert len(pages) == sheet.page == 3
    assert all("state skeins" in page for page in pages)
    assert "Where, continued" in pages[1]
    assert "Trace of a cone, T-0114" in pages[1]
    assert all(f"shelf {n} 1" in " ".join(pages) for n in range(120))
    assert "together 120" in pages[2]


def pages_of(above: float, rows: list[tuple[str, str]], total: tuple[str, ...] = ()) -> list[str]:
    """A table that begins so far above the foot of a page."""
    sheet = Sheet(HEAD, FOOT, 9)
    sheet.y += sheet.room_below - above
    sheet.table("Where", COLUMNS, rows, total)
    return text_of(sheet.finish())


def test_a_short_table_is_not_parted() -> None:
    first, second = pages_of(30, [(f"shelf {n}", "1") for n in range(8)], ("together", "8"))
    assert "state" not in first
    assert "shelf 0" in second
    assert "continued" not in second


def test_a_total_stands_under_its_last_row() -> None:
    """However much room there is, and no headings stand alone at the foot of a page."""
    rows = [(f"shelf {n}", "1") for n in range(20)]
    for above in range(4, 100, 8):
        pages = pages_of(above, rows, ("together", "20"))
        assert any("shelf 19" in page and "together" in page for page in pages)
        assert all(("state" in page) == ("shelf" in page) for page in pages)


def test_a_row_longer_than_a_page_goes_on_over_pages() -> None:
    marks = [f"26·14·Y51 {n}" for n in range(400)]
    pages = pages_of(100, [(", ".join(marks), "400"), ("on a shelf", "1")])
    assert len(pages) > 3
    assert all(mark.rpartition(" ")[2] in " ".join(pages) for mark in marks)
    assert " ".join(pages).count(" 400 ") == 1


def test_every_page_bears_witness() -> None:
    sheet = Sheet(HEAD, FOOT, 2)
    sheet.table("Where", COLUMNS, [("on a shelf", "1")] * 80)
    for number, page in enumerate(text_of(sheet.finish()), 1):
        assert "099984c9" in page
        assert f"page {number} of 2" in page


def test_answers_are_broken_not_cut() -> None:
    sheet = Sheet(HEAD, FOOT, 1)
    sentence = "14 are from this cone: 8 known, 6 among 12 that cannot be told apart. " * 4
    sheet.answers([("Touched", sentence)])
    assert sentence.strip() in text_of(sheet.finish())[0].replace("\u00a0", " ")


def test_a_letter_that_cannot_be_printed_stands_as_its_number() -> None:
    sheet = Sheet(HEAD, FOOT, 1)
    sheet.words("Buyer", "雪 Treddle")
    assert "[96EA] Treddle" in text_of(sheet.finish())[0]


any_words = st.text(st.characters(exclude_categories=["Cs"]), max_size=120)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(any_words, any_words, st.lists(st.tuples(any_words, any_words), max_size=4))
def test_no_words_ever_stop_a_sheet(title: str, sentence: str, rows: list[tuple[str, str]]) -> None:
    sheet = Sheet(SheetHead("Trace", title, sentence, sentence, "C0114F"), FOOT, 1)
    sheet.answers([(sentence[:30], sentence)])
    sheet.table("Where", COLUMNS, rows)
    sheet.words(title[:20], sentence)
    assert sheet.finish().startswith(b"%PDF")


@pytest.mark.parametrize("lines", [1, 2, 4])
def test_a_long_foot_takes_room_from_the_page(lines: int) -> None:
    printed = "Quernlow Dyeyard, printed by OW, holds names, shred it later. " * (2 * lines - 1)
    sheet = Sheet(HEAD, SheetFoot(printed, JOURNAL, 1), 2)
    sheet.table("Where", COLUMNS, [("on a shelf", "1")] * 60)
    assert "099984c9" in text_of(sheet.finish())[0]
