"""Cards of two lots against each other: zone by zone, lamp by lamp; never wet against dry."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.cards import Cards, compared, plain_card, why_not
from app.calculations.shade import Colour
from app.calculations.shade_words import Word
from tests.calculations.shades import COLOURS, DRY, SHOP, TEAL, WET, colour

P, Q, V = TEAL["P"], TEAL["Q"], TEAL["V"]


def plain(one: Colour) -> Cards:
    return {(one.viewing, ""): one}


def test_what_was_looked_at_alike_is_compared_and_decided_in_daylight() -> None:
    shop = colour(48.3, -36.6, 3.3, at=SHOP)
    found = compared({(SHOP, ""): shop, **plain(P)}, {(SHOP, ""): shop, **plain(Q)})
    assert found
    assert str(found.decisive) == "0.5 ± 0.5"
    assert len(found.differences) == 2
    assert found.judged().shown is Word.SAME
    assert found.judged().at_worst is Word.TWO_ROWS


def test_others_are_ranked_by_the_dry_card_in_daylight_of_the_whole_skein() -> None:
    shop, wet = colour(48.3, -36.6, 3.3, at=SHOP), colour(48.3, -36.6, 3.3, at=WET)
    assert plain_card({(WET, ""): wet, (SHOP, ""): shop, **plain(Q)}) is Q
    assert plain_card({(WET, ""): wet, (SHOP, ""): shop}) is shop
    assert plain_card({(DRY, "A"): P}) is plain_card({}) is None


def test_a_multi_coloured_yarn_is_decided_by_its_worst_zone() -> None:
    one, other = {(DRY, "A"): P, (DRY, "B"): P}, {(DRY, "A"): Q, (DRY, "B"): V}
    found = compared(one, other)
    assert found
    assert set(found.usual) == {"A", "B"}
    assert found.decisive.other is V
    assert found.judged().shown is Word.SECOND


def test_two_lamps_that_disagree_by_more_than_0_7_are_told() -> None:
    one = {(DRY, ""): P, (SHOP, ""): colour(48.3, -36.6, 3.3, at=SHOP)}
    same = {(DRY, ""): P, (SHOP, ""): colour(48.6, -36.2, 3.8, at=SHOP)}
    off = {(DRY, ""): P, (SHOP, ""): colour(49.5, -35.5, 5.0, at=SHOP)}
    told = [found.by_lamp for found in (
        compared(one, same), compared(one, off), compared(plain(P), off)) if found]
    assert told == [False, True, False]


@pytest.mark.parametrize(("other", "why"), [
    ({}, "not read with an instrument"),
    (plain(colour(48, -36, 3, at=WET)), "read wet and one dry"),
    (plain(colour(48, -36, 3, at=SHOP)), "not read alike"),
    ({(DRY, "A"): P}, "not read alike"),
])
def test_what_was_not_looked_at_alike_is_not_compared_and_says_why(
    other: Cards, why: str
) -> None:
    assert compared(plain(P), other) is None
    assert why in why_not(plain(P), other)[0]


@given(COLOURS, COLOURS, st.sampled_from([DRY, SHOP, WET]))
def test_a_wet_card_never_meets_a_dry_one(one: Colour, other: Colour, at: object) -> None:
    found = compared({(DRY, ""): one}, {(at, ""): other})  # type: ignore[dict-item]
    assert (found is None) == (at != DRY)
