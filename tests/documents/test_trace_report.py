"""The trace of one thing on paper: answers, trail, where from, where now, who holds."""

from dataclasses import replace
from decimal import Decimal

import pytest

from app.documents.proof import read_back
from app.documents.sheet import SheetFoot, SheetHead
from app.documents.trace_report import (
    ROOM,
    HolderRow,
    OriginRow,
    StateRow,
    TraceReport,
    trace_report_pdf,
)
from app.documents.trail_on_paper import LEAST_PT
from app.documents.trail_picture import SMALL, Picture, Tag, Way, set_picture
from app.documents.typesetting import MM
from app.documents.yarn import Certainty
from tests.documents.samples import text_of
from tests.documents.test_trail_picture import sample

JOURNAL = "d88940ac117fc14a195e88c24d0952867a295a0ec3bbaa0ee21c22fb099984c9"


@pytest.fixture
def cone() -> TraceReport:
    """A cone with a stain, wound into two lots, one of them with another cone's yarn."""
    return TraceReport(
        head=SheetHead(
            "Trace of a cone", "T-0114", "cone of Tarnfield 4-ply, 1,516 g", "Aske Mill", "C0114F"
        ),
        foot=SheetFoot("Quernlow Dyeyard · printed 12 May 2026, by OW", JOURNAL, 41207),
        answers=(
            ("Touched", "20 skeins in two lots. 14 are from this cone: 8 known, 6 among 12."),
            ("Look first", "318 m are left, on shelf C2: unwind them under the lamp."),
        ),
        picture=sample(),
        origins=(
            OriginRow("delivery of 12 March", "known", 14, 14, 14, None, "scanned"),
            OriginRow("cone T-0115", "one of a pool", 1, 6, 12, Decimal("3.5"), "counted"),
        ),
        passed=(OriginRow("wash, load 232", "known", 20, 20, 20, Decimal(20), "counted"),),
        states=(
            StateRow("on a shelf", 6, Decimal("618.6"), 1, 6, Decimal("3.5")),
            StateRow("sold, buyer known", 14, Decimal("1443.4"), 4, 14, Decimal("10.5")),
        ),
        together=StateRow("together", 20, Decimal("2062.0"), 14, 14, Decimal(14)),
        holders=(HolderRow("B. Treddle", "1201", 3, "26·14·Y51\u00a09Y", "likely 1 or 2 of 3"),),
    )


def said(report: TraceReport) -> str:
    return " ".join(text_of(trace_report_pdf(report))).replace("\u00a0", " ")


def test_a_trace_says_what_is_asked_first(cone: TraceReport) -> None:
    words = said(cone)
    for part in (
        "20 skeins in two lots. 14 are from this cone: 8 known, 6 among 12.",
        "delivery of 12 March known 14 of 14",
        "cone T-0115 one of a pool 1 to 6 of 12 3.5 counted",
        "on a shelf 6 618.6 1 6 3.5",
        "together 20 2,062.0 14 14 14.0",
        "Went through load how sure",
        "wash, load 232 known 20 of 20 20.0 counted",
        "B. Treddle 1201 3 26·14·Y51 9Y likely 1 or 2 of 3",
        "d88940ac 117fc14a",
        "412 skeins on a shelf",
        "one of a pool, with its counts",
    ):
        assert part in words


def test_a_trace_wears_the_code_of_its_thing(cone: TraceReport) -> None:
    assert [code.code for code in read_back(trace_report_pdf(cone), 203)[0]] == ["C0114F"]


def test_the_same_rows_make_the_same_bytes(cone: TraceReport) -> None:
    assert trace_report_pdf(cone) == trace_report_pdf(cone)


def test_rows_that_do_not_add_up_are_said_to_not_add_up(cone: TraceReport) -> None:
    assert "do not add up" not in said(cone)
    short = replace(cone, states=cone.states[:1])
    assert "do not add up" in said(short)


def test_bounds_are_left_out_where_all_is_known(cone: TraceReport) -> None:
    known = replace(
        cone,
        states=(StateRow("on a shelf", 12, Decimal("1237.0"), 12, 12, Decimal(12)),),
        together=StateRow("together", 12, Decimal("1237.0"), 12, 12, Decimal(12)),
    )
    words = said(known)
    assert "at least" not in words
    assert "together 12 1,237.0" in words


def test_a_thing_nothing_is_known_of_has_a_trace_too() -> None:
    find = TraceReport(
        head=SheetHead("Trace of a find", "Skein under shelf 3"),
        foot=SheetFoot("Quernlow Dyeyard"),
        answers=(("From", "Not known: it wears no tag."),),
    )
    assert "Not known: it wears no tag." in said(find)


def test_a_long_trace_runs_over_pages_and_every_page_bears_witness(cone: TraceReport) -> None:
    long = replace(cone, holders=cone.holders * 150, origins=cone.origins * 20)
    pages = text_of(trace_report_pdf(long))
    assert len(pages) >= 4
    for number, page in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in page
        assert "099984c9" in page


def row(count: int) -> Picture:
    """So many lots one after the other."""
    tags = [Tag(f"n{n}", "dye lot", "26·14·Y51", ("12 skeins",), code=True) for n in range(count)]
    return set_picture(tags, [Way(f"n{n}", f"n{n + 1}", Certainty.KNOWN)
                              for n in range(count - 1)], "n0", ROOM)


def test_a_long_trail_has_narrower_tags_and_no_code_is_broken(cone: TraceReport) -> None:
    long = row(7)
    assert long.width <= ROOM
    assert {line.words for one in long.tags for line in one.lines} == {
        "dye lot", "26·14·Y51", "12 skeins"}
    words = said(replace(cone, picture=long))
    assert words.count("26·14·Y51 ") >= 7
    assert "larger than this sheet" not in words


def test_a_trail_that_no_page_holds_is_not_made_too_small_to_read(cone: TraceReport) -> None:
    assert "larger than this sheet: the Desk draws it" in said(replace(cone, picture=row(14)))


def column(count: int) -> Picture:
    """So many lots of one cone, below each other."""
    tags = [Tag("c", "cone", "C·0114·F", here=True),
            *(Tag(f"n{n}", "dye lot", "26·14·Y51", ("12 skeins",), code=True)
              for n in range(count))]
    return set_picture(tags, [Way("c", f"n{n}", Certainty.KNOWN) for n in range(count)], "c", ROOM)


def test_a_tall_trail_stands_below_the_head_rather_a_little_smaller(cone: TraceReport) -> None:
    """A first page that is empty below its head is what nobody wants to hand out."""
    alone = replace(cone, answers=(), picture=column(10), origins=(), passed=(), states=(),
                    together=None, holders=())
    first, *more = text_of(trace_report_pdf(alone))
    assert more == []
    assert first.count("dye lot") == 10
    assert 205 < column(10).height * LEAST_PT / SMALL / MM < 225  # at its own size it would not
