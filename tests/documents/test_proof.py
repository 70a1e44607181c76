"""A sheet that does not read as it should is refused, with the reason."""

from concurrent.futures import ThreadPoolExecutor

import pytest
from PIL import ImageDraw

from app.documents.boxes import Box
from app.documents.paper import Paper
from app.documents.proof import Due, printed_pages, prove, read_back
from app.documents.stocks import stock
from app.documents.tags import tag_sheets
from app.problems import Refused
from tests.documents.samples import LOT, pasted, tags

SWING = stock("swing-85x55")
DPI = 300


def due_for(marks: list[str]) -> list[list[Due]]:
    """One sheet with these marks in its first cells."""
    cells = (SWING.cell(number) for number in range(1, len(marks) + 1))
    return [[Due(f"{LOT}-{mark}", box) for mark, box in zip(marks, cells, strict=True)]]


def sheet_of_three() -> tuple[bytes, list[str]]:
    three = tags(3)
    return tag_sheets(three, SWING).pdf, [tag.mark for tag in three]


def test_a_sheet_that_reads_as_it_should_passes() -> None:
    pdf, marks = sheet_of_three()
    prove(pdf, due_for(marks), DPI)


def test_a_white_patch_over_a_code_is_refused_with_the_mark() -> None:
    pdf, marks = sheet_of_three()
    [picture] = printed_pages(pdf, DPI)
    dot = DPI / 25.4
    foot, right = SWING.cell(2).bottom, SWING.cell(2).right
    patch = [(right - 12) * dot, (foot - 12) * dot, (right - 8) * dot, (foot - 5) * dot]
    ImageDraw.Draw(picture).rectangle(patch, fill=255)
    with pytest.raises(Refused, match=f"page 1: {LOT}-{marks[1]} cannot be read") as refused:
        prove(pasted([picture], SWING.page), due_for(marks), DPI)
    assert "Nothing was printed" in refused.value.next_step


def test_two_marks_that_changed_places_are_refused() -> None:
    pdf, marks = sheet_of_three()
    swapped = [marks[1], marks[0], marks[2]]
    with pytest.raises(Refused, match=f"{LOT}-{marks[0]} is read where {LOT}-{marks[1]} is due"):
        prove(pdf, due_for(swapped), DPI)


def test_codes_that_changed_places_while_their_words_stayed_are_refused() -> None:
    pdf, marks = sheet_of_three()
    [picture] = printed_pages(pdf, DPI)
    dot = DPI / 25.4
    boxes = [
        tuple(
            round(side * dot)
            for side in (cell.right - 17, cell.bottom - 18, cell.right, cell.bottom)
        )
        for cell in (SWING.cell(1), SWING.cell(2))
    ]
    first, second = (picture.crop(box) for box in boxes)
    picture.paste(second, boxes[0][:2])
    picture.paste(first, boxes[1][:2])
    with pytest.raises(Refused, match="is read where"):
        prove(pasted([picture], SWING.page), due_for(marks), DPI)


def test_words_that_do_not_stand_beside_their_code_are_refused() -> None:
    pdf, marks = sheet_of_three()
    right = Due(f"{LOT}-{marks[0]}", SWING.cell(1), f"26·15·R6F {marks[0]}")
    wrong = Due(f"{LOT}-{marks[0]}", SWING.cell(1), f"26·15·R6F {marks[1]}")
    others = due_for(marks)[0][1:]
    prove(pdf, [[right, *others]], DPI)
    with pytest.raises(Refused, match="does not stand beside its code"):
        prove(pdf, [[wrong, *others]], DPI)


def test_a_code_too_many_is_refused() -> None:
    pdf, marks = sheet_of_three()
    with pytest.raises(Refused, match=f"{LOT}-{marks[2]} is read where no code is due"):
        prove(pdf, due_for(marks[:2]), DPI)


def test_a_page_too_many_is_refused() -> None:
    pdf, marks = sheet_of_three()
    with pytest.raises(Refused, match="it has 1 pages, not 2"):
        prove(pdf, [*due_for(marks), []], DPI)


def test_a_code_too_fine_for_its_printer_is_refused() -> None:
    paper = Paper("Test", dpi=600)
    paper.code((100, 80), "2615R6F-7M", least_mm=0.1)
    pdf = paper.pdf("")
    due = [[Due("2615R6F-7M", Box(0, 0, 210, 297))]]
    prove(pdf, due, 600)
    with pytest.raises(Refused, match="cannot be read"):
        prove(pdf, due, 150)


def test_many_faults_are_counted_and_the_first_are_named() -> None:
    pdf, _ = sheet_of_three()
    with pytest.raises(Refused, match="and 2 more"):
        prove(pdf, due_for([f"0{letter}" for letter in "FHKMRTW"]), DPI)


def test_each_code_is_found_where_it_lies() -> None:
    paper = Paper("Test")
    dark = paper.code((100, 80), "2615R6F-7M")
    [[found]] = read_back(paper.pdf(""), 203)
    middle = (dark.left + dark.right) / 2, (dark.top + dark.bottom) / 2
    assert (found.x, found.y) == pytest.approx(middle, abs=0.3)


def test_pages_are_shown_as_printed_in_black_and_white() -> None:
    pdf, _ = sheet_of_three()
    [picture] = printed_pages(pdf, 203)
    assert picture.mode == "1"
    assert abs(picture.width - 210 / 25.4 * 203) < 2


def test_two_proofs_at_once_do_not_disturb_each_other() -> None:
    pdf, marks = sheet_of_three()
    with ThreadPoolExecutor(4) as pool:
        proofs = [pool.submit(prove, pdf, due_for(marks), DPI) for _ in range(12)]
    assert [proof.result() for proof in proofs] == [None] * 12
