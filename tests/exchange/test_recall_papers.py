"""A recall list as paper and workbook says the same as the list."""

import csv
import io
from datetime import date

from openpyxl import load_workbook

from app.exchange.recall_papers import recall_pdf, recall_workbook
from app.exchange.recalls import as_csv, recalled
from tests.deeds import customer, put, send
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
    assert all(isinstance(row[2], date)
               for row in book["recall list"].iter_rows(min_row=2, values_only=True))
    assert [row[1] for row in book["sums"].iter_rows(min_row=2, values_only=True)] == [
        2, 0, 3, 0, 5]


def test_every_paper_parts_a_shelf_by_what_is_sure_as_the_list_does(studio: Studio) -> None:
    a, b = studio.cones(2)
    _, sure = studio.tagged(b, 2)
    pool = studio.mix(studio.wind(a, 3), studio.wind(b, 3))
    studio.dye(pool)
    perhaps = studio.tag(studio.finish(pool, red=6)[0], 6)
    studio.do(put, [*sure, *perhaps], "shelf", studio.pot)
    now = studio.clock.now
    one = studio.book.ask(recalled, "cone", b, "cone 2", now, now)
    parted = [(2, "all 2"), (6, "3 of the 6")]
    assert [(row.count, row.of_it) for row in one.found.rows] == parted
    rows = csv.DictReader(io.StringIO(as_csv(one.found.rows).decode("utf-8-sig")))
    assert [(int(row["how many"]), row["of it"]) for row in rows] == parted
    sheet = load_workbook(io.BytesIO(recall_workbook(one)))["recall list"]
    assert [row[3:5] for row in sheet.iter_rows(min_row=2, values_only=True)] == parted
    said = " ".join(text_of(recall_pdf(one, "OW")))
    assert said.index("all 2") < said.index("3 of the 6")
    assert [each.count for each in one.sums] == [0, 0, 8, 0, 8]
