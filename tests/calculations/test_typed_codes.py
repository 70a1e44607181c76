"""Forgiving entry: what was typed, half read or misheard leads to the codes it may have been."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.codes import CHARACTERS, Code, code_of, read
from app.calculations.typed_codes import fits, near, readings
from app.problems import BadInput
from tests.calculations.code_makers import all_codes, lot_codes

LOOKS_OR_SOUNDS_LIKE = {
    "0": "OQD",
    "1": "IL",
    "2": "Z",
    "5": "S",
    "6": "G",
    "8": "B",
    "F": "S",
    "K": "AJ",
    "M": "N",
    "W": "UV",
    "Y": "UV",
    "T": "CEPD",
}


def texts(codes: tuple[Code, ...]) -> set[str]:
    return set(map(str, codes))


@pytest.mark.parametrize("typed", ["2619H44", "2691K44", "2615K44"])
def test_a_slip_is_accepted_as_no_lot_and_the_one_meant_is_among_the_nearest(typed: str) -> None:
    in_the_book = {"2619K44", "2617M9K"}
    with pytest.raises(BadInput, match="check character"):
        read(typed)
    assert readings(typed) == ()
    assert texts(near(typed)) & in_the_book == {"2619K44"}


def test_a_photo_with_two_characters_lost_fits_one_lot_for_each_ten_of_weeks() -> None:
    found = fits("26?9 K4?")
    assert [code.text[2:4] for code in found] == ["09", "19", "29", "39", "49"]
    assert "2619K44" in texts(found)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("Z6I9K44", "2619K44"),
        ("2619A44", "2619K44"),
        ("26 19 j44", "2619K44"),
        ("26-15-RGF", "2615R6F"),
        ("26l2fs5", None),
        ("2612F5S", "2612F5F"),
        ("2612FSF", "2612F5F"),
        ("2612SSS", "2612F5F"),
        ("2GO6H3V", "2606H3W"),
        ("2606H3U", "2606H3W"),
        ("2617N9K", "2617M9K"),
        ("26I5R6F-7N", "2615R6F-7M"),
        ("CO114F", "C0114F"),
        ("PO1I4S", "C0114F"),
        ("DO31V", "D031W"),
        ("QO31W", "D031W"),
    ],
)
def test_look_alikes_and_sound_alikes_are_read_as_what_fits(typed: str, meant: str | None) -> None:
    assert texts(readings(typed)) == ({meant} if meant else set())


@given(all_codes)
def test_a_code_typed_rightly_has_one_reading(code: Code) -> None:
    assert readings(code.text) == readings(code.grouped.lower()) == (code,)


@given(lot_codes, st.data())
def test_a_code_misheard_in_any_number_of_places_is_among_its_readings(
    code: Code, data: st.DataObject
) -> None:
    heard = "".join(
        data.draw(st.sampled_from(character + LOOKS_OR_SOUNDS_LIKE.get(character, "")))
        for character in code.text
    )
    assert code in readings(heard)


@given(all_codes, st.data())
def test_a_code_with_one_wrong_character_is_near_what_was_typed(
    code: Code, data: st.DataObject
) -> None:
    bare = code.text.replace("-", "")
    place = data.draw(st.integers(0, len(bare) - 1))
    typed = bare[:place] + data.draw(st.sampled_from(CHARACTERS)) + bare[place + 1 :]
    assert code in {*near(typed), *readings(typed)}


@given(all_codes, st.data())
def test_a_code_with_two_characters_swapped_is_near_what_was_typed(
    code: Code, data: st.DataObject
) -> None:
    bare = list(code.text.replace("-", ""))
    places = st.integers(0, len(bare) - 1)
    a, b = data.draw(places), data.draw(places)
    bare[a], bare[b] = bare[b], bare[a]
    assert code in {*near("".join(bare)), *readings("".join(bare))}


@given(lot_codes, st.sets(st.integers(0, 6), max_size=3))
def test_a_lot_with_characters_lost_is_among_those_that_fit(code: Code, lost: set[int]) -> None:
    pattern = "".join("?" if place in lost else c for place, c in enumerate(code.text))
    found = fits(pattern)
    assert code in found
    assert len(found) == len(set(found))


@given(st.one_of(all_codes.map(str), st.text(max_size=12)))
def test_whatever_is_typed_only_whole_codes_are_offered(typed: str) -> None:
    for code in (*readings(typed), *near(typed)):
        assert read(code.text) == code


def test_a_mark_has_no_check_of_its_own_so_its_neighbours_are_listed() -> None:
    neighbours = texts(near("2619K44-7M"))
    assert len(neighbours) == 18 + 18 + 1
    assert {"2619K44-M7", "2619K44-7W", "2619K44-9M"} <= neighbours
    assert "2619K44-7M" not in neighbours


def test_one_slip_is_found_under_look_alikes_too() -> None:
    assert "2619K44" in texts(near("Z6I9H44"))


def test_a_slip_between_lot_and_mark_is_found() -> None:
    assert "2619K44-7M" in texts(near("2619K47-4M"))


def test_a_lost_mark_fits_all_361_of_its_lot() -> None:
    found = fits("2619K44-??")
    assert len(found) == 361
    assert {code.lot for code in found} == {"2619K44"}


def test_a_lot_typed_rightly_has_no_neighbour() -> None:
    assert near("2619K44") == ()


def test_letters_in_a_pattern_are_forgiven_too() -> None:
    assert fits("26?9 A4?") == fits("26?9 K4?")


def test_a_year_and_a_week_lost_can_still_be_listed() -> None:
    assert "2619K44" in texts(fits("????K44"))


def test_a_pattern_with_hardly_anything_left_is_refused_with_another_way() -> None:
    with pytest.raises(BadInput, match="Too much") as refusal:
        fits("26?????")
    assert "colourway" in refusal.value.next_step


def test_what_is_not_as_long_as_a_code_is_offered_nothing() -> None:
    assert (readings(""), near("wool"), fits("26?9")) == ((), (), ())
    assert code_of("") is None
