"""The yarn: whole, opened, broken, a gap; and tags that hang from it."""

import pytest

from app.documents.paper import Paper
from app.documents.proof import printed_pages
from app.documents.yarn import (
    Certainty,
    Hanging,
    draw_question,
    draw_yarn,
    hang_tag,
    hanging_height,
    set_station,
)
from tests.documents.samples import ink_box, text_of


def ink_on_the_line(certainty: Certainty, length: float = 60) -> list[bool]:
    """Whether there is ink at each dot along the yarn."""
    paper = Paper("Test")
    draw_yarn(paper, [(20, 50), (20 + length, 50)], certainty)
    picture = printed_pages(paper.pdf(""), 300)[0].convert("L")
    left, right, dot = 20, 20 + length, 25.4 / 300
    band = picture.crop((int(left / dot), int(48 / dot), int(right / dot), int(52 / dot)))
    return [band.crop((x, 0, x + 1, band.height)).getextrema()[0] == 0 for x in range(band.width)]


def test_yarn_that_is_known_is_whole() -> None:
    assert all(ink_on_the_line(Certainty.KNOWN)[3:-3])


def test_yarn_that_is_partly_known_is_opened_but_whole() -> None:
    assert all(ink_on_the_line(Certainty.PARTLY)[3:-3])


def height(certainty: Certainty, length: float) -> float:
    paper = Paper("Test")
    draw_yarn(paper, [(20, 50), (20 + length, 50)], certainty)
    _, top, _, foot = ink_box(printed_pages(paper.pdf(""), 300)[0], 300)
    return foot - top


@pytest.mark.parametrize("length", [8, 11, 14, 18])
def test_short_yarn_that_is_partly_known_can_be_told_from_whole_yarn(length: float) -> None:
    assert height(Certainty.PARTLY, length) > 1.4 * height(Certainty.KNOWN, length)


@pytest.mark.parametrize("certainty", Certainty)
def test_yarn_from_crossing_to_crossing_and_longer_can_be_drawn(certainty: Certainty) -> None:
    assert all(height(certainty, length / 2) > 0 for length in range(10, 60))


def test_yarn_of_a_pool_is_broken_many_times() -> None:
    ink = ink_on_the_line(Certainty.POOL)
    breaks = sum(before and not after for before, after in zip(ink, ink[1:], strict=False))
    assert breaks >= 5


def test_yarn_that_is_not_known_is_a_gap() -> None:
    ink = ink_on_the_line(Certainty.UNKNOWN)
    assert not any(ink[len(ink) // 4 : -len(ink) // 4])


def test_a_question_mark_stands_in_the_middle_of_a_gap() -> None:
    paper = Paper("Test")
    draw_question(paper, (20, 50), (80, 50))
    pdf = paper.pdf("")
    assert text_of(pdf) == ["?"]
    left, top, right, foot = ink_box(printed_pages(pdf, 300)[0], 300)
    assert abs((left + right) / 2 - 50) < 0.3
    assert top < 50 < foot


def test_a_station_breaks_long_words_instead_of_cutting_them() -> None:
    lines = set_station(("dye lot", "26·15·R6F 7M", "12 counted before the scissors"), 20.5)
    said = "".join(line for line, _ in lines)
    assert "".join(said.split()) == "dyelot26·15·R6F7M12countedbeforethescissors"


def test_a_tag_hangs_under_its_yarn_as_deep_as_its_lines() -> None:
    paper = Paper("Test")
    lines = set_station(("dye lot", "26·15·R6F", "12 skeins"), 24)
    hang_tag(paper, (60, 40), Hanging(lines, False, "below"), (24, hanging_height(3)))
    pdf = paper.pdf("")
    left, _, right, foot = ink_box(printed_pages(pdf, 300)[0], 300)
    assert abs(left - 48) < 0.3
    assert abs(right - 72) < 0.3
    assert abs(foot - 40 - hanging_height(3)) < 0.3
    assert text_of(pdf) == ["dye lot 26·15·R6F 12 skeins HOLD"]
