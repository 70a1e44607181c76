"""The trace as paper."""

import pytest
from pypdfium2 import PdfDocument

from app.documents.proof import read_back
from app.documents.yarn import Certainty
from app.exchange.reports import trace_pdf, trace_report
from app.exchange.tracing import Traced, sentences, traced
from app.lookups.things import Found, by_code, lot_found
from app.work.holding import hold
from app.work.mixing import mix
from app.work.opening_stock import OldLot, open_lot
from app.work.studio import choose
from tests.makers import EACH_MG, Studio


def trace(studio: Studio, code: str) -> Traced:
    found = studio.book.ask(by_code, code)
    assert found is not None
    return studio.book.ask(traced, found, studio.clock.now)


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
    studio.finish(studio.do(mix, rows), red=12)
    studio.do(hold, "cone", one, "oil under the lamp")
    return studio


def test_the_report_says_what_the_trace_says_and_its_states_add_up(mixed: Studio) -> None:
    one = trace(mixed, "C00017")
    report = trace_report(one, "OW")
    assert report.answers == sentences(one)
    assert report.together is not None
    assert sum(row.skeins for row in report.states) == report.together.skeins == 12
    assert (report.states[0].least, report.states[0].most) == (6, 6)
    assert report.head.code == "C00017"
    assert report.foot.journal_head == one.journal_head
    assert report.foot.entry == one.entry


def test_each_station_follows_the_one_before_with_its_hold(mixed: Studio) -> None:
    stations = trace_report(trace(mixed, "C00017"), "OW").stations
    assert [station.after for station in stations] == [
        () if n == 0 else (n - 1,) for n in range(len(stations))]
    assert [station.hold for station in stations if station.in_hand] == ["placed"]
    assert {station.hold for station in stations if not station.in_hand} <= {"", "below"}
    assert "below" in {station.hold for station in stations}


def test_certainty_keeps_its_word_on_paper(mixed: Studio) -> None:
    report = trace_report(trace(mixed, mixed.book.ask(lot_found, 1).code), "OW")
    assert Certainty.POOL in {station.certainty for station in report.stations}
    assert [(row.least, row.most, row.of) for row in report.origins
            if row.thing.startswith("cone")] == [(6, 6, 12), (6, 6, 12)]


def test_the_paper_bears_its_code_the_answers_and_the_journals_head(mixed: Studio) -> None:
    one = trace(mixed, "C00017")
    pdf = trace_pdf(one, "OW")
    assert [code.code for page in read_back(pdf, 300) for code in page] == ["C00017"]
    text = text_of(pdf)
    for words in ("oil under the lamp", "Quernlow Dyeyard · printed", one.journal_head[:8]):
        assert words in text


def test_the_same_trace_gives_the_same_bytes(mixed: Studio) -> None:
    one = trace(mixed, "C00017")
    assert trace_pdf(one, "OW") == trace_pdf(one, "OW")


def test_an_old_lots_report_wears_no_code_of_ours(studio: Studio) -> None:
    studio.do(open_lot, OldLot("OLD77", studio.version, 1, 4), EACH_MG)
    one = trace(studio, "OLD77")
    assert trace_report(one, "OW").head.code == ""
    text = text_of(trace_pdf(one, "OW"))
    assert "OLD77" in text
    assert "not known" in text


def test_a_thing_without_any_thread_still_has_its_paper(studio: Studio) -> None:
    one = studio.book.ask(traced, Found("pot", studio.pot, "P001", ""), studio.clock.now)
    assert trace_pdf(one, "OW").startswith(b"%PDF")
