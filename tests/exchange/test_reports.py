"""The trace as paper."""

import pytest
from pypdfium2 import PdfDocument

from app.documents.proof import read_back
from app.documents.trace_report import TraceReport
from app.documents.yarn import Certainty
from app.exchange.reports import trace_pdf, trace_report
from app.exchange.tracing import sentences, traced
from app.lookups.tagging import piles_waiting
from app.lookups.things import Found, by_code, lot_found
from app.work.holding import hold, lift_hold
from app.work.matching import find, is_one_of
from app.work.mixing import mix
from app.work.opening_stock import OldLot, open_lot
from app.work.studio import choose
from tests.deeds import customer, into_load, send
from tests.makers import EACH_MG, Studio


def named(studio: Studio, code: str) -> Found:
    found = studio.book.ask(by_code, code)
    assert found is not None
    return found


def report_of(studio: Studio, code: str) -> TraceReport:
    return studio.book.ask(trace_report, named(studio, code), studio.clock.now, "OW")


def pdf_of(studio: Studio, code: str) -> bytes:
    return studio.book.ask(trace_pdf, named(studio, code), studio.clock.now, "OW")


def text_of(pdf: bytes) -> str:
    document = PdfDocument(pdf)
    try:
        return "\n".join(page.get_textpage().get_text_bounded() for page in document)
    finally:
        document.close()


@pytest.fixture
def mixed(studio: Studio) -> Studio:
    studio.do(choose, {"name": "Quernlow Dyeyard"})
    one, other = studio.cones(2)
    rows = [studio.wind(one, 6), studio.wind(other, 6)]
    studio.dye(*rows)
    pool = studio.do(mix, rows)
    studio.do(into_load, "wash", [pool])
    studio.finish(pool, red=12)
    studio.do(hold, "cone", one, "oil under the lamp")
    return studio


def test_the_report_says_what_the_trace_says_and_its_states_add_up(mixed: Studio) -> None:
    one = mixed.book.ask(traced, named(mixed, "C00017"), mixed.clock.now)
    report = report_of(mixed, "C00017")
    assert report.answers == sentences(one)
    assert report.together is not None
    assert sum(row.skeins for row in report.states) == report.together.skeins == 12
    assert (report.states[0].least, report.states[0].most) == (6, 6)
    assert report.head.code == "C00017"
    assert report.foot.journal_head == one.journal_head
    assert report.foot.entry == one.entry


def test_its_yarn_parts_and_the_hold_hangs_where_it_was_put(mixed: Studio) -> None:
    picture = report_of(mixed, "C00017").picture
    assert picture is not None
    held = {one.tag.what: one.tag.held for one in picture.tags}
    assert held == {"maker's batch": "", "cone": "here", "wound": "below", "dye lot": "below",
                    "mixed on a cord": "below", "counted and not tagged": "below"}
    assert [one.tag.what for one in picture.tags if one.tag.here] == ["cone"]


def test_what_is_not_drawn_is_in_the_tables(mixed: Studio) -> None:
    report = report_of(mixed, "C00017")
    assert [(row.thing, row.least, row.of) for row in report.passed] == [("wash, load 1", 12, 12)]
    assert report_of(mixed, mixed.book.ask(lot_found, 1).code).passed == report.passed


def test_what_is_known_of_each_skein_is_no_pool_on_paper(studio: Studio) -> None:
    """Two cords of two cones in one bath, their ties kept: the tables say it as the picture does.
    """
    rows = [studio.wind(cone, count) for cone, count in zip(studio.cones(2), (4, 6), strict=True)]
    lot = studio.dye(*rows)
    studio.do(into_load, "wash", rows[:1])
    report = report_of(studio, studio.book.ask(lot_found, lot).code)
    assert [(row.certainty, row.least, row.of) for row in (*report.origins, *report.passed)] == [
        ("known", 6, 10), ("known", 4, 10), ("known", 10, 10), ("known", 4, 10)]


def test_a_find_is_named_beside_all_it_may_be_and_the_paper_says_so(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 4)
    studio.do(send, skeins[:3])
    studio.do(is_one_of, studio.do(find, 1, EACH_MG), skeins[:3])
    report = report_of(studio, "C00017")
    assert report.together is not None
    assert sum(row.skeins for row in report.states) == report.together.skeins == 4
    assert sum(row.skeins for row in report.holders) == 5
    assert "the list names 5, and there are 4" in " ".join(
        text_of(pdf_of(studio, "C00017")).split())


def test_certainty_keeps_its_word_on_paper(mixed: Studio) -> None:
    report = report_of(mixed, mixed.book.ask(lot_found, 1).code)
    assert report.picture is not None
    assert Certainty.POOL in {one.way.certainty for one in report.picture.ways}
    assert [(row.certainty, row.least, row.most, row.of) for row in report.origins
            if row.thing.startswith("cone")] == [("one of a pool", 6, 6, 12)] * 2


def test_who_holds_what_is_named_and_the_foot_says_to_shred_it(mixed: Studio) -> None:
    mixed.do(lift_hold, 1, "wound off under the lamp: nothing found")
    (pile,) = [one.id for one in mixed.book.ask(piles_waiting)]
    skeins = mixed.tag(pile, 12)
    assert "shred" not in report_of(mixed, "C00017").foot.printed
    mixed.do(send, skeins[:4], mixed.do(customer, "Bea Lonsdale"))
    report = report_of(mixed, "C00017")
    held = {row.holder: (row.skeins, row.of_it) for row in report.holders}
    assert held["Bea Lonsdale"] == (
        4, "likely 2 of the 4 (at least one: 97 %, expected 2.00)")
    assert sum(row.skeins for row in report.holders) == 12
    assert "holds names: shred it" in report.foot.printed


def test_the_paper_bears_its_code_the_answers_and_the_journals_head(mixed: Studio) -> None:
    pdf = pdf_of(mixed, "C00017")
    assert [code.code for page in read_back(pdf, 300) for code in page] == ["C00017"]
    text = text_of(pdf)
    head = report_of(mixed, "C00017").foot.journal_head
    for words in ("oil under the lamp", "Quernlow Dyeyard · printed", head[:8]):
        assert words in text


def test_the_same_trace_gives_the_same_bytes(mixed: Studio) -> None:
    assert pdf_of(mixed, "C00017") == pdf_of(mixed, "C00017")


def test_an_old_lots_report_wears_no_code_of_ours(studio: Studio) -> None:
    studio.do(open_lot, OldLot("OLD77", studio.version, 1, 4), EACH_MG)
    assert report_of(studio, "OLD77").head.code == ""
    text = text_of(pdf_of(studio, "OLD77"))
    assert "OLD77" in text
    assert "not known" in text


def test_a_studio_without_a_name_says_so(studio: Studio) -> None:
    studio.wind(studio.cone(), 2)
    assert report_of(studio, "C00017").foot.printed.startswith("studio not named · printed")


def test_a_thing_without_any_thread_still_has_its_paper(studio: Studio) -> None:
    pot = Found("pot", studio.pot, "P001", "")
    assert studio.book.ask(trace_pdf, pot, studio.clock.now, "OW").startswith(b"%PDF")
