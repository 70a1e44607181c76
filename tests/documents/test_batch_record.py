"""The batch record as paper: parts, places to sign, codes that read back."""

from dataclasses import replace

from app.documents.batch_record import (
    DID,
    WHEN,
    BatchPaper,
    Listed,
    Part,
    Said,
    batch_record_pdf,
    journal_code,
)
from app.documents.proof import read_back
from app.documents.sheet import Column, SheetFoot, SheetHead
from app.documents.trail import Station
from tests.documents.samples import text_of

HEAD = "d88940ac117fc14a195e88c24d0952867a295a0ec3bbaa0ee21c22fb099984c9"
PAPER = BatchPaper(
    head=SheetHead("Batch record", "26·15·R6F", "Sluice Keeper’s Glove", "Tarnfield", "2615R6F"),
    foot=SheetFoot("Quernlow Dyeyard", HEAD, 41_207),
    answers=(("Made", "12 in the bath, 11 tagged."),),
    stations=(Station("dye lot", "26·15·R6F", "12 skeins", in_hand=True),),
    parts=(
        Part("Weighed", (Listed((Column("what", 0, 60), WHEN, DID),
                                (("B1 turquoise", "9 Apr 08:44", "DA"),)),
                         Said("Balance: not written.", "9 Apr 08:02", "DA"))),
        Part("Shade", (Said("Not written."),), card=True),
    ),
    done_by=("DA",),
)


def words_of(paper: BatchPaper) -> str:
    return " ".join(text_of(batch_record_pdf(paper))).replace("\u00a0", " ")


def test_parts_are_numbered_and_who_and_when_stand_with_each_line() -> None:
    words = words_of(PAPER)
    for part in ("1 Weighed", "B1 turquoise 9 Apr 08:44 DA", "2 Shade", "wound card here",
                 "3 Signed", "checked by", "compared with the book and found the same"):
        assert part in words


def test_the_lot_and_the_journals_head_are_read_back() -> None:
    (page,) = read_back(batch_record_pdf(PAPER), 203)
    assert sorted(code.code for code in page) == sorted(["2615R6F", journal_code(41_207, HEAD)])


def test_the_same_rows_make_the_same_bytes() -> None:
    assert batch_record_pdf(PAPER) == batch_record_pdf(PAPER)


def test_a_record_of_many_lines_runs_over_pages_that_all_bear_witness() -> None:
    listed = PAPER.parts[0].blocks[0]
    assert isinstance(listed, Listed)
    long = ("citric acid of a maker with a very long name " * 4, *listed.rows[0][1:])
    parts = (replace(PAPER.parts[0], blocks=(
        replace(listed, rows=(long,) * 40), *(Said("A sentence. " * 30),) * 20)), PAPER.parts[1])
    pages = text_of(batch_record_pdf(replace(PAPER, parts=parts)))
    assert len(pages) >= 4
    for number, page in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in page
        assert "099984c9" in page


def test_without_a_journal_no_head_is_claimed() -> None:
    bare = replace(PAPER, foot=SheetFoot("Quernlow Dyeyard"), stations=(), parts=())
    assert [code.code for page in read_back(batch_record_pdf(bare), 300) for code in page] == [
        "2615R6F"]
