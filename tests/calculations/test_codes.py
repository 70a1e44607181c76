"""The grammar of the codes: what is read, what is refused, what is drawn, what is said."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.codes import (
    CHARACTERS,
    KIND_OF_LETTER,
    LETTER_OF_KIND,
    Code,
    Kind,
    check_character,
    is_shop_bar_code,
    numbered,
    read,
    shown,
)
from app.problems import BadInput
from tests.calculations.code_makers import all_codes, lots_of_week


@pytest.mark.parametrize(
    ("body", "check"),
    [
        ("2619K4", "4"),
        ("2606H3", "W"),
        ("2607R9", "R"),
        ("2612F5", "F"),
        ("D031", "W"),
        ("D033", "5"),
        ("D044", "K"),
        ("D096", "W"),
        ("C0114", "F"),
    ],
)
def test_the_check_is_the_weighted_sum_of_the_places_modulo_nineteen(body: str, check: str) -> None:
    assert check_character(body) == check


def test_the_check_of_2619k4_worked_by_hand() -> None:
    values = (2, 6, 1, 9, 12, 4)
    total = sum(place * value for place, value in enumerate(values, 1))
    assert total == 137
    assert check_character("2619K4") == CHARACTERS[total % 19] == "4"


def test_the_nineteen_characters_hold_no_vowel_and_none_that_is_alike_or_rhymes() -> None:
    assert len(CHARACTERS) == len(set(CHARACTERS)) == 19
    assert not set(CHARACTERS) & set("OILSBZGQDUV" + "ACEJPN")
    assert not set(CHARACTERS) & set(KIND_OF_LETTER)
    assert set(KIND_OF_LETTER.values()) == set(Kind) - {Kind.LOT, Kind.SKEIN}


@given(all_codes)
def test_every_code_reads_back_as_stored_as_printed_and_in_small_letters(code: Code) -> None:
    for text in (code.text, code.grouped, code.text.lower(), f" {code.grouped}\n"):
        assert read(text) == code


@pytest.mark.parametrize(
    "text", ["2619K44", "26·19·K44", "26 19 K44", "26-19-k44", "26.19.K44", "26–19–K44\r\n"]
)
def test_separators_and_case_do_not_matter(text: str) -> None:
    assert read(text) == Code(Kind.LOT, "2619K44")


@pytest.mark.parametrize(
    ("text", "kind", "grouped", "spoken", "lot", "mark", "number"),
    [
        ("2619K44", "lot", "26·19·K44", "two six, one nine, K four four", "2619K44", None, None),
        (
            "2615R6F-7M",
            "skein",
            "26·15·R6F 7M",
            "two six, one five, R six F, seven M",
            "2615R6F",
            "7M",
            None,
        ),
        ("C0114F", "cone", "C·0114·F", "C, zero one one four, F", None, None, 114),
        ("D031W", "disc", "D·031·W", "D, zero three one, W", None, None, 31),
    ],
)
def test_a_code_says_what_it_is(
    text: str,
    kind: str,
    grouped: str,
    spoken: str,
    lot: str | None,
    mark: str | None,
    number: int | None,
) -> None:
    code = read(text)
    assert (code.kind, code.grouped, code.spoken) == (kind, grouped, spoken)
    assert (code.lot, code.mark, code.number) == (lot, mark, number)
    assert str(code) == text


@pytest.mark.parametrize(
    ("kind", "number", "body"),
    [
        (Kind.DISC, 31, "D031"),
        (Kind.CONE, 114, "C0114"),
        (Kind.CONE, 9_999, "C9999"),
        (Kind.CONE, 10_000, "C010000"),
        (Kind.SHEET, 999, "G999"),
        (Kind.SHEET, 1_000, "G1000"),
        (Kind.HOLD, 21, "Q021"),
    ],
)
def test_numbers_take_more_digits_as_they_grow(kind: Kind, number: int, body: str) -> None:
    assert numbered(kind, number).text == body + check_character(body)


@given(st.sampled_from(sorted(LETTER_OF_KIND)), st.integers(0, 999_999))
def test_a_numbered_thing_keeps_its_kind_and_number(kind: Kind, number: int) -> None:
    code = read(numbered(kind, number).text)
    assert (code.kind, code.number, code.lot, code.mark) == (kind, number, None, None)


def test_a_stored_code_is_shown_in_groups_and_an_old_one_from_before_the_book_as_it_is() -> None:
    assert shown("2615R6F-7M") == "26·15·R6F 7M"
    assert shown("moss, spring 2019") == "moss, spring 2019"


@pytest.mark.parametrize("number", [-1, 1_000_000])
def test_a_number_no_plate_can_wear_is_a_fault_of_the_program(number: int) -> None:
    with pytest.raises(ValueError, match="disc"):
        numbered(Kind.DISC, number)


@pytest.mark.parametrize("typed", ["2619H44", "2691K44", "2615K44", "C0141F"])
def test_a_code_with_a_slip_is_refused_because_its_check_does_not_fit(typed: str) -> None:
    with pytest.raises(BadInput, match="check character of .* does not fit"):
        read(typed)


@pytest.mark.parametrize("article", ["4006381333931", "73513537", "0 36000 29145 2"])
def test_a_shop_bar_code_is_named_as_what_it_is(article: str) -> None:
    assert is_shop_bar_code(article)
    with pytest.raises(BadInput, match="shop's bar code"):
        read(article)


@pytest.mark.parametrize(
    "text", ["", "  ", "wool", "2619K4", "http://y.ex/2619K44", "²619K44", "ﬀ" * 4]
)
def test_what_has_no_form_of_ours_is_refused_and_shown(text: str) -> None:
    with pytest.raises(BadInput, match="not one of the studio's codes") as refusal:
        read(text)
    assert text.strip() in refusal.value.what
    assert refusal.value.next_step


def test_a_page_pasted_by_mistake_is_not_shown_whole() -> None:
    with pytest.raises(BadInput) as refusal:
        read("word " * 500)
    assert len(refusal.value.what) < 100


@pytest.mark.parametrize("start", ["2600", "2654", "2753"])
def test_a_lot_of_a_week_that_never_was_is_refused(start: str) -> None:
    body = f"{start}K4"
    with pytest.raises(BadInput, match=rf"year 20{start[:2]} has no week {start[2:]}\."):
        read(body + check_character(body))


def test_the_fifty_third_week_of_a_long_year_is_a_week() -> None:
    assert date(2026, 12, 31).isocalendar().week == 53
    assert read("2653K4" + check_character("2653K4")).lot == "2653K4" + check_character("2653K4")


@pytest.mark.parametrize("body", ["D0031", "C000114", "C114"])
def test_one_thing_has_one_code_however_many_noughts_one_writes(body: str) -> None:
    with pytest.raises(BadInput, match="its number is not written like that"):
        read(body + check_character(body))


def test_the_lots_of_a_week_sort_after_those_of_the_week_before() -> None:
    assert max(map(str, lots_of_week("2619"))) < min(map(str, lots_of_week("2620")))
