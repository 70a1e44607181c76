"""How words are set: width, breaks, letters that are lacking."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.documents.typesetting import (
    Face,
    Type,
    break_lines,
    set_line,
    spelled_out,
    strangers,
    width_mm,
)

SMALL = Type(8)
words_of_a_sentence = st.lists(
    st.text("abcdefghijklmnopqrstuvwxyz0123456789", min_size=1, max_size=12),
    min_size=1,
    max_size=30,
).map(" ".join)


def test_type_of_twice_the_size_runs_twice_as_wide() -> None:
    assert width_mm("Ferry Ledger", Type(16)) == pytest.approx(2 * width_mm("Ferry Ledger", SMALL))


def test_a_number_never_parts_from_its_unit() -> None:
    lines = break_lines("water to add 23.5 L and 9 Apr", SMALL, 24)
    assert all(not line.endswith(("23.5", "9")) for line in lines)


def test_a_bar_breaks_where_it_stands() -> None:
    assert break_lines("Hand wash,|dry flat", SMALL, 200) == ["Hand wash,", "dry flat"]


def test_a_word_too_wide_stays_whole_unless_it_may_be_broken() -> None:
    assert break_lines("Sluicekeepersglove", SMALL, 10) == ["Sluicekeepersglove"]
    assert "".join(break_lines("Sluicekeepersglove", SMALL, 10, anywhere=True)) == (
        "Sluicekeepersglove"
    )


@given(words_of_a_sentence, st.floats(5, 80))
def test_lines_keep_every_word_and_stay_in_the_room(sentence: str, room: float) -> None:
    lines = break_lines(sentence, SMALL, room, anywhere=True)
    assert "".join("".join(lines).split()) == "".join(sentence.split())
    assert all(width_mm(line, SMALL) <= room for line in lines if len(line) > 1)


def test_points_of_a_code_are_set_closer_on_both_sides() -> None:
    grouped, bare = Type(18, Face.CODE_BOLD), set_line("2615R6F", 18, Face.CODE_BOLD).width_mm
    full = bare * 9 / 7
    assert width_mm("26·15·R6F", grouped) == pytest.approx(full - 4 * 0.14 * 18 / (72 / 25.4))


def test_greek_and_cyrillic_are_taken_from_the_wider_face() -> None:
    setting = set_line("Blåhav Жёлтый", 10, Face.BOLD)
    assert [piece.face for piece in setting.pieces] == [Face.BOLD, Face.WIDE_BOLD]
    assert strangers("Blåhav Жёлтый Ωμέγα") == ""


def test_letters_no_face_has_are_named_once() -> None:
    assert strangers("雪 and 雪 and ☃") == "雪☃"


def test_an_accent_apart_from_its_letter_is_joined_first() -> None:
    assert strangers("e\u0301") == ""
    assert strangers("x\u0301") == "\u0301"


def test_a_letter_that_cannot_be_printed_stands_as_its_number() -> None:
    assert spelled_out("Frau 雪 Treddle") == "Frau [96EA] Treddle"
