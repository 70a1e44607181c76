"""A recall list as paper and workbook says the same as the list."""

import io

from openpyxl import load_workbook

from app.exchange.recall_papers import recall_pdf, recall_workbook
from app.exchange.recalls import recalled
from tests.deeds import customer, send
from tests.documents.samples import text_of
from tests.makers import Studio


def test_paper_and_workbook_have_the_sums_and_the_buyers(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 5)
    studio.do(send, skeins[:2], studio.do(customer, "Ada Nygård"))
    now = studio.clock.now
    one = studio.book.ask(recalled, "cone", cone, "cone 1", now, now)
    said = " ".join(text_of(recall_pdf(one, "OW"))).replace("\u00a0", " ")
    for words in ("Recall list", "All 5 come from it.", "Ada Nygård", "holds names", "in all"):
        assert words in said
    book = load_workbook(io.BytesIO(recall_workbook(one)))
    assert sum(row[3] for row in book["recall list"].iter_rows(min_row=2, values_only=True)) == 5
    assert [row[1] for row in book["sums"].iter_rows(min_row=2, values_only=True)] == [
        2, 0, 3, 0, 5]
