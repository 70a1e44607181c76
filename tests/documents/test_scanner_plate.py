"""The scanner check: one page that holds every character, and a verdict on what was typed."""

import pytest

from app.calculations.codes import CHARACTERS, KIND_OF_LETTER
from app.documents.proof import read_back
from app.documents.scanner_plate import SCANNER_TEST_TEXTS, judge_scan, scanner_test_plate
from tests.documents.samples import text_of

GERMAN = str.maketrans("YZ-", "ZYß")
FRENCH = str.maketrans("AQWZ-", "QAZW)")


def test_the_codes_together_hold_every_character_of_the_grammar() -> None:
    held = set("".join(SCANNER_TEST_TEXTS))
    assert held >= set(CHARACTERS) | set(KIND_OF_LETTER) | {"-"}


def test_all_codes_are_read_back_and_stand_in_words() -> None:
    pdf = scanner_test_plate()
    for dpi in (150, 203, 300, 600):
        assert sorted(code.code for code in read_back(pdf, dpi)[0]) == sorted(SCANNER_TEST_TEXTS)
    said = text_of(pdf)[0]
    assert all(text in said for text in SCANNER_TEST_TEXTS)
    assert "Caps Lock" in said
    assert "keyboard layout" in said


def test_the_page_has_the_same_bytes_every_time() -> None:
    assert scanner_test_plate() == scanner_test_plate()


@pytest.mark.parametrize("text", SCANNER_TEST_TEXTS)
def test_a_scan_that_came_through_is_right(text: str) -> None:
    verdict = judge_scan(text)
    assert (verdict.right, verdict.expected) == (True, text)


@pytest.mark.parametrize("text", SCANNER_TEST_TEXTS)
@pytest.mark.parametrize("layout", [GERMAN, FRENCH], ids=["German", "French"])
def test_another_keyboard_layout_is_told_by_the_letters_it_changed(
    text: str, layout: dict[int, int]
) -> None:
    verdict = judge_scan(text.translate(layout))
    assert (verdict.right, verdict.expected) == (False, text)
    assert f"{'-'.translate(layout)} for -" in verdict.says
    assert "keyboard layout" in verdict.says


def test_small_letters_point_to_caps_lock() -> None:
    assert "Caps Lock" in judge_scan("abcdefghi-012").says


def test_a_prefix_and_a_suffix_are_shown() -> None:
    says = judge_scan("~JKLMNOPQR-345#").says
    assert "“~” in front and “#” behind" in says


def test_lost_letters_point_to_the_speed() -> None:
    assert "pause between keys" in judge_scan("STUWXYZ-6789").says
    assert "typed nothing" in judge_scan("").says
