"""A recall list on paper: sums first, then what is here, then who has some."""

from app.documents.recall_sheet import RecallRow, RecallSheet, recall_sheet_pdf
from app.documents.sheet import SheetFoot, SheetHead
from tests.documents.samples import text_of

ROW = RecallRow("B. Treddle", "1201", 3, "26·14·Y51 H3 26·14·Y51 7K", "likely 1 to 2 of the 3")


def sheet(rows: int) -> RecallSheet:
    return RecallSheet(
        SheetHead("Recall list", "Cone T-0114"), SheetFoot("Quernlow Dyeyard"),
        (("How sure", "14 of the 20 come from it."),),
        (("still here", 9, "927.0"), ("in all", 9 + rows * 3, "2,000.0")),
        (RecallRow("shelf 4", "", 9, "", "all 9"),), (ROW,) * rows, (("To say", "Please look."),))


def test_the_list_says_who_has_how_many_and_leaves_room_to_tick() -> None:
    said = " ".join(text_of(recall_sheet_pdf(sheet(1)))).replace("\u00a0", " ")
    assert "B. Treddle" in said
    assert "likely 1 to 2" in said
    assert all(word in said for word in ("fetched", "told", "heard", "Please look."))


def test_a_long_list_goes_on_over_pages_and_loses_nobody() -> None:
    pages = text_of(recall_sheet_pdf(sheet(60)))
    assert len(pages) > 1
    assert " ".join(pages).count("Treddle") == 60
