"""The proof that no single slip turns one code into another.

A slip is one wrong character, or two unequal characters swapped. The check is linear: the proof
over differences covers every body there is. The runs beside it make the slips for real.
"""

from collections.abc import Iterator
from itertools import combinations, permutations, product
from string import ascii_uppercase

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.codes import (
    CHARACTERS,
    DIGITS,
    LETTER_OF_KIND,
    Kind,
    check_character,
    code_of,
    is_shop_bar_code,
    numbered,
)
from tests.calculations.code_makers import all_codes, lot, lots_of_week

ALL_CHARACTERS = DIGITS + ascii_uppercase
LOT_WEIGHTS = (1, 2, 3, 4, 5, 6, -1)


def slips(text: str, characters: str) -> Iterator[str]:
    for place, character in product(range(len(text)), characters):
        if text[place] != character:
            yield text[:place] + character + text[place + 1 :]
    for a, b in combinations(range(len(text)), 2):
        if text[a] != text[b]:
            yield text[:a] + text[b] + text[a + 1 : b] + text[a] + text[b + 1 :]


def check_fits(text: str) -> bool:
    return check_character(text[:-1]) == text[-1]


@given(st.text(CHARACTERS, min_size=6, max_size=6))
def test_the_check_is_linear_so_that_differences_prove_it(body: str) -> None:
    alone = [
        CHARACTERS.index(check_character("0" * place + c + "0" * (5 - place)))
        for place, c in enumerate(body)
    ]
    assert CHARACTERS.index(check_character(body)) == sum(alone) % 19
    assert alone == [w * CHARACTERS.index(c) % 19 for w, c in zip(LOT_WEIGHTS, body, strict=False)]


@pytest.mark.parametrize("places", [4, 5, 6, 7])
def test_by_differences_no_wrong_character_and_no_swap_is_missed(places: int) -> None:
    weights = (*range(1, places), -1)
    for weight, difference in product(weights, range(1, 19)):
        assert weight * difference % 19
    for (one, other), difference in product(permutations(weights, 2), range(1, 19)):
        assert (one - other) * difference % 19


def test_every_slip_in_every_lot_of_a_week_is_seen() -> None:
    tried = 0
    for code in lots_of_week("2619"):
        for slip in slips(code.text, CHARACTERS):
            assert not check_fits(slip)
            tried += 1
    assert tried > 361 * 7 * 18


def test_every_slip_in_the_lots_of_a_year_is_seen_whatever_the_wrong_character() -> None:
    for week in range(1, 54):
        for code in lots_of_week(f"26{week:02}")[week % 19 :: 19]:
            assert not any(map(code_of, slips(code.text, ALL_CHARACTERS)))


FORM = (DIGITS,) * 4 + (CHARACTERS,) * 2
SHAPE = tuple(map(len, FORM))


@pytest.fixture(scope="module")
def checks() -> np.ndarray:
    """The check of every body of four digits and two characters: 3,610,000 of them, each asked."""
    values = (CHARACTERS.index(check_character("".join(body))) for body in product(*FORM))
    return np.fromiter(values, dtype=np.int8).reshape(SHAPE)


@pytest.mark.long
@pytest.mark.parametrize("place", range(6))
def test_in_all_bodies_no_wrong_character_keeps_the_check(checks: np.ndarray, place: int) -> None:
    in_line = np.sort(checks, axis=place)
    assert (np.diff(in_line, axis=place) > 0).all()


@pytest.mark.long
@pytest.mark.parametrize(("a", "b"), list(combinations(range(6), 2)))
def test_in_all_bodies_no_swap_within_keeps_the_check(checks: np.ndarray, a: int, b: int) -> None:
    """A swap that would put a letter among the digits is seen by the form alone."""
    both = min(SHAPE[a], SHAPE[b])
    square = checks[tuple(slice(both if axis in (a, b) else None) for axis in range(6))]
    others = tuple({*range(6)} - {a, b})
    kept_anywhere = (square == square.swapaxes(a, b)).any(axis=others)
    assert (kept_anywhere == np.eye(both, dtype=bool)).all()


@pytest.mark.long
@pytest.mark.parametrize("place", range(6))
def test_in_all_bodies_no_swap_with_the_check_fits(checks: np.ndarray, place: int) -> None:
    swapped = [*np.broadcast_arrays(*np.indices(SHAPE, dtype=np.int8, sparse=True))]
    was = swapped[place]
    has_form = checks < SHAPE[place]
    swapped[place] = np.where(has_form, checks, 0)
    assert not (has_form & (was != checks) & (checks[tuple(swapped)] == was)).any()


@pytest.mark.parametrize("kind", sorted(LETTER_OF_KIND))
def test_no_slip_turns_a_numbered_code_into_any_code_of_any_kind(kind: Kind) -> None:
    for number in [*range(0, 1000, 83), *range(1000, 10_000, 997), 10_000, 114_114, 999_999]:
        code = numbered(kind, number)
        assert not any(map(code_of, slips(code.text, ALL_CHARACTERS)))


@pytest.mark.long
@pytest.mark.parametrize("kind", sorted(LETTER_OF_KIND))
def test_no_slip_is_missed_in_any_code_of_the_first_thousand_numbers(kind: Kind) -> None:
    for number in range(1000):
        code = numbered(kind, number)
        assert not any(map(code_of, slips(code.text, ALL_CHARACTERS)))


def test_a_number_never_makes_a_code_as_long_as_a_lot_or_a_mark() -> None:
    lengths = {
        len(numbered(kind, 10**digits).text) for kind in LETTER_OF_KIND for digits in range(6)
    }
    assert lengths == {5, 6, 8}


def test_no_two_kinds_share_a_code() -> None:
    codes = [numbered(kind, number).text for kind in LETTER_OF_KIND for number in range(1200)]
    codes += map(str, lots_of_week("2619"))
    assert len(set(codes)) == len(codes)


@given(all_codes)
def test_no_code_of_ours_is_a_shop_bar_code(code: object) -> None:
    assert not is_shop_bar_code(str(code))


@given(st.sampled_from((8, 12, 13, 14)).flatmap(lambda n: st.text(DIGITS, min_size=n, max_size=n)))
def test_no_row_of_digits_as_long_as_a_shop_bar_code_is_a_code_of_ours(digits: str) -> None:
    assert code_of(digits) is None


def test_a_lot_of_digits_alone_is_still_no_shop_bar_code() -> None:
    assert lot("261904").text.isdigit()
    assert not is_shop_bar_code(lot("261904").text)
