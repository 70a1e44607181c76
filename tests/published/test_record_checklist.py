"""The published checklist of a good record, held against the record of a lot with a long life."""

from collections import Counter

from app.exchange.batch_records import batch_pdf
from app.lookups.batch_record import batch_record
from tests.documents.samples import text_of
from tests.full_lot import FullLot
from tests.makers import Studio
from tests.published.published_values import rows_of

ROWS = rows_of("record_checklist")


def paper_of(studio: Studio, lot: int) -> str:
    pdf = batch_pdf(studio.book.ask(batch_record, lot, studio.clock.now), "OW")
    return " ".join(" ".join(text_of(pdf)).replace("\u00a0", " ").split())


def missing(row: dict[str, str], paper: str) -> list[str]:
    return [words for words in row["where"].split("|") if words not in paper]


def test_every_place_that_the_checklist_points_to_is_on_the_paper(studio: Studio) -> None:
    paper = paper_of(studio, FullLot(studio).lot)
    lacking = {row["clause"]: gone for row in ROWS if row["met"] in ("paper", "hand")
               if (gone := missing(row, paper))}
    assert lacking == {}


def test_a_lot_of_which_little_is_written_lacks_what_it_lacks(studio: Studio) -> None:
    paper = paper_of(studio, studio.dye(studio.wind(studio.cone(), 2)))
    lacking = {row["clause"] for row in ROWS if row["where"] and missing(row, paper)}
    assert {"21 CFR 211.188(b)(1)-(4)", "21 CFR 211.125(c)", "21 CFR 11.10(e)"} <= lacking
    assert "21 CFR 1.1320" not in lacking


def test_every_clause_is_met_somewhere_or_says_why_not() -> None:
    assert len({row["clause"] for row in ROWS}) == len(ROWS) == 47
    for row in ROWS:
        assert row["met"] in ("paper", "hand", "elsewhere", "not"), row
        assert bool(row["where"]) == (row["met"] in ("paper", "hand")), row
        assert bool(row["why"]) == (row["met"] in ("elsewhere", "not")), row
    assert Counter(row["met"] for row in ROWS)["not"] == 3
