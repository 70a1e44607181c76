"""The page: room that is claimed once, words that do not fit, the same bytes every time."""

import pytest

from app.documents.boxes import Box
from app.documents.paper import SOLID, Paper
from app.documents.proof import printed_pages, read_back
from app.documents.square_codes import Symbol
from app.documents.typesetting import Type
from app.problems import Refused
from tests.documents.samples import ink_box, text_of

CURE = "Shorten them."


def test_what_fits_is_printed() -> None:
    paper = Paper("Test")
    paper.text(20, 30, "Seventh Buoy", Type(12))
    assert text_of(paper.pdf(CURE)) == ["Seventh Buoy"]


def test_words_that_meet_are_refused_by_name() -> None:
    paper = Paper("Test")
    paper.text(20, 30, "Seventh Buoy", Type(12))
    paper.text(25, 31, "Coal Hatch", Type(12))
    with pytest.raises(Refused, match="“Coal Hatch” meets “Seventh Buoy”") as refused:
        paper.pdf(CURE)
    assert refused.value.next_step == CURE


def test_words_longer_than_their_room_are_refused_with_the_excess() -> None:
    paper = Paper("Test")
    paper.text(20, 30, "Plum Stone in a Pocket", Type(12), room=20)
    with pytest.raises(Refused, match="“Plum Stone in a Pocket” is 2[0-9.]+ mm too long"):
        paper.pdf(CURE)


def test_words_outside_their_cell_are_refused() -> None:
    paper = Paper("Test")
    with paper.cell(Box(50, 50, 80, 70)):
        paper.text(1, 10, "Ferry Ledger", Type(8))
    with pytest.raises(Refused, match="“Ferry Ledger” does not fit the space"):
        paper.pdf(CURE)


def test_words_the_printer_cannot_reach_are_refused() -> None:
    paper = Paper("Test", edge=6)
    with paper.cell(Box(0, 0, 80, 70)):
        paper.text(3, 10, "Ferry Ledger", Type(8))
    with pytest.raises(Refused, match="“Ferry Ledger” lies where the printer cannot reach"):
        paper.pdf(CURE)


def test_letters_without_type_are_refused_with_the_letters() -> None:
    paper = Paper("Test")
    paper.text(20, 30, "Snow 雪 Lantern", Type(12))
    with pytest.raises(Refused, match="“Snow 雪 Lantern” has signs that no bundled type has: 雪"):
        paper.pdf(CURE)


def test_type_under_the_least_size_is_a_fault_of_the_program() -> None:
    with pytest.raises(ValueError, match="too small"):
        Paper("Test").text(20, 30, "care", Type(6))


def test_a_cell_has_room_of_its_own() -> None:
    paper = Paper("Test")
    for left in (20, 100):
        with paper.cell(Box(left, 20, left + 60, 60)):
            paper.text(5, 10, "Whey Blue", Type(8))
    assert text_of(paper.pdf(CURE)) == ["Whey Blue Whey Blue"]


def test_the_same_paper_has_the_same_bytes() -> None:
    def make() -> bytes:
        paper = Paper("Test")
        paper.text(20, 30, "Half-Tide Steps Жёлтый", Type(12))
        paper.code((80, 80), "2615R6F-7M")
        return paper.pdf(CURE)

    assert make() == make()


@pytest.mark.parametrize("symbol", list(Symbol))
def test_a_code_stands_where_its_corner_was_put(symbol: Symbol) -> None:
    paper = Paper("Test")
    paper.code((100, 80), "D0315", symbol)
    pdf = paper.pdf(CURE)
    dot = 25.4 / 300
    assert ink_box(printed_pages(pdf, 300)[0], 300)[2:] == pytest.approx((100, 80), abs=2 * dot)
    assert [code.code for code in read_back(pdf, 300)[0]] == ["D0315"]


def test_every_module_of_a_code_is_the_same_number_of_dots() -> None:
    paper = Paper("Test", dpi=203)
    paper.code((100, 80), "2615R6F-7M")
    picture = printed_pages(paper.pdf(CURE), 203)[0].convert("L")
    picture = picture.crop(picture.point(lambda level: 255 - level).getbbox())
    assert picture.size == (84, 84)  # 21 modules of 4 dots
    for row in range(21):
        for column in range(21):
            module = picture.crop((column * 4, row * 4, column * 4 + 4, row * 4 + 4))
            assert len(module.getcolors()) == 1


def test_a_page_can_be_marked_without_words() -> None:
    paper = Paper("Test")
    paper.box(Box(30, 40, 50, 45), SOLID)
    box = ink_box(printed_pages(paper.pdf(CURE), 300)[0], 300)
    assert box == pytest.approx((30, 40, 50, 45), abs=0.1)


def test_a_stamp_is_drawn_once_and_claims_its_room_in_every_cell() -> None:
    drawn: list[str] = []
    paper = Paper("Test", (100, 60))
    for cell in (Box(0, 0, 50, 30), Box(50, 0, 100, 30), Box(0, 30, 50, 60)):
        with paper.cell(cell):
            paper.stamp("lot", lambda: drawn.append("once") or paper.text(6, 10, "Lot", Type(8)))
            if cell.left:
                paper.text(7, 10, "mark", Type(8))
    assert drawn == ["once"]
    assert paper.misfits == ("“mark” meets “Lot”",)


def test_a_stamp_stands_in_each_cell_where_it_was_drawn_in_the_first() -> None:
    paper = Paper("Test", (100, 60))
    for cell in (Box(0, 0, 50, 30), Box(50, 0, 100, 30)):
        with paper.cell(cell):
            paper.stamp("lot", lambda: paper.box(Box(10, 10, 20, 20), SOLID))
    page = printed_pages(paper.pdf(""), 300)[0].convert("L")
    half = page.width // 2
    for side in (page.crop((0, 0, half, page.height)), page.crop((half, 0, 2 * half, page.height))):
        assert ink_box(side, 300) == pytest.approx((10, 10, 20, 20), abs=0.1)


def test_a_stamp_out_of_the_printers_reach_is_noted_where_it_lies() -> None:
    paper = Paper("Test", (100, 60))
    for cell in (Box(10, 10, 50, 50), Box(60, 10, 100, 50)):
        with paper.cell(cell):
            paper.stamp("lot", lambda: paper.text(37.5, 20, "Lot", Type(6), "right"))
    assert paper.misfits == ("“Lot” lies where the printer cannot reach",)
