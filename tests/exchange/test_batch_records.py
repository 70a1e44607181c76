"""The batch record set out: parts in the order of the work, answers, who did what."""

from app.documents.batch_record import Said, journal_code
from app.documents.proof import read_back
from app.exchange.batch_records import answers, batch_paper, batch_pdf, done_by
from app.lookups.batch_record import BatchRecord, batch_record
from app.work.opening_stock import OldLot, open_lot
from tests.documents.samples import text_of
from tests.full_lot import FullLot
from tests.makers import EACH_MG, Studio


def record_of(studio: Studio, lot: int) -> BatchRecord:
    return studio.book.ask(batch_record, lot, studio.clock.now)


def test_the_parts_follow_the_work_and_the_shade_has_its_card(studio: Studio) -> None:
    paper = batch_paper(record_of(studio, FullLot(studio).lot), "OW")
    assert [part.title for part in paper.parts] == [
        "Yarn in", "Recipe as it was", "Weighed", "Bath", "Washed, dried", "Yield",
        "Count by tie", "Shade", "Tags", "Holds", "Where now", "Marked"]
    assert [part.title for part in paper.parts if part.card] == ["Shade"]


def test_the_answers_come_first_and_off_the_recipe_is_said(studio: Studio) -> None:
    said = dict(answers(record_of(studio, FullLot(studio).lot)))
    assert said["Made"] == "12 in the bath, 11 tagged."
    assert said["Recipe"] == "OFF RECIPE: dye was added at the pot."
    assert said["Open"] == "No hold stands."


def test_who_did_it_stands_where_it_is_signed(studio: Studio) -> None:
    assert done_by(record_of(studio, FullLot(studio).lot)) == ("DA", "DA, WS", "WS", "TW", "LP")


def test_the_paper_wears_its_lot_and_the_journals_head_and_names_no_buyer(studio: Studio) -> None:
    full = FullLot(studio)
    one = record_of(studio, full.lot)
    pdf = batch_pdf(one, "OW")
    pages = read_back(pdf, 203)
    assert {code.code for page in pages for code in page} == {
        full.code, journal_code(one.entry, one.journal_head)}
    words = " ".join(text_of(pdf))
    assert "customer 1" in words
    assert "Treddle" not in words
    assert batch_pdf(one, "OW") == pdf


def test_an_old_lot_has_its_record_that_says_what_is_not_known(studio: Studio) -> None:
    studio.do(open_lot, OldLot("OLD77", studio.version, 1, 4), EACH_MG)
    one = record_of(studio, 1)
    paper = batch_paper(one, "OW")
    assert paper.head.code == ""
    assert paper.parts[1].blocks == (Said("Not known: the lot is older than the book."),)
    assert dict(paper.answers)["Recipe"] == "not known."
    assert batch_pdf(one, "OW").startswith(b"%PDF")
