"""Kits and substitutes, invented; the limit of contrast is common practice, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.kit_making import (
    Candidate,
    Contrast,
    Short,
    kits,
    short_for,
    substitutes,
)
from app.problems import BadInput
from tests.calculations.shades import WET, colour

CARD = {"A": 2, "B": 1, "C": 1, "D": 1, "E": 1}
STOCK = {"A": [31], "B": [22], "C": [9], "D": [17], "E": [14]}
COLOURS = {
    "A": colour(25.1, 8.0, -20.5), "B": colour(65.5, 6.6, 4.0), "C": colour(33.8, 15.0, 16.4),
    "D": colour(74.1, -15.5, -12.8), "E": colour(42.3, 59.8, 35.0),
}
PLUM = Candidate("Plum Stone", colour(28.4, 36.6, -12.0), [8])
NETTLE = Candidate("Nettle Cellar", colour(34.8, -9.4, 7.1), [5, 7])
TICKET = Candidate("Paper Ticket", colour(70.1, 32.4, 10.3), [9])
GLOVE = Candidate("Sluice Glove", colour(48.3, -36.6, 3.3), [20])


def test_the_shortest_colour_allows_nine_kits() -> None:
    made = kits(CARD, STOCK)
    assert (made.possible, made.shortest) == (9, ("C",))
    assert made.by_role == {"A": 15, "B": 22, "C": 9, "D": 17, "E": 14}


def test_for_twelve_kits_one_colour_is_short_by_three() -> None:
    assert short_for(12, CARD, STOCK) == (Short("C", 3),)
    assert short_for(9, CARD, STOCK) == ()
    assert short_for(16, CARD, STOCK) == (Short("A", 2), Short("C", 7), Short("E", 2))


def test_no_kit_takes_a_colour_from_two_lots() -> None:
    assert kits({"A": 2}, {"A": [1, 1, 1]}).possible == 0
    assert kits({"A": 2}, {"A": [3, 3, 1]}).possible == 2


def test_a_colour_that_is_not_in_stock_allows_no_kit() -> None:
    made = kits(CARD, {**STOCK, "D": []})
    assert (made.possible, made.shortest) == (0, ("D",))
    assert kits(CARD, {}).shortest == tuple(CARD)


def test_substitutes_that_keep_the_contrast_come_first_and_the_others_are_warned_of() -> None:
    found = substitutes("C", CARD, COLOURS, [TICKET, GLOVE, PLUM, NETTLE])
    assert [one.name for one in found] == [
        "Plum Stone", "Nettle Cellar", "Paper Ticket", "Sluice Glove"
    ]
    assert [bool(one.warning) for one in found] == [False, False, True, True]
    assert [one.kits for one in found] == [8, 12, 9, 20]
    assert found[0].ciede2000 < found[1].ciede2000
    assert found[2].ciede2000 < found[3].ciede2000
    assert found[3].warning == (
        "Sluice Glove leaves too little contrast or turns it round: 17 L* to B."
    )


def test_a_pattern_turned_round_has_lost_its_contrast_too() -> None:
    assert Contrast("B", before=-31.7, after=25.0).is_lost()
    assert not Contrast("B", before=31.7, after=20.0).is_lost()
    assert Contrast("B", before=31.7, after=19.9).is_lost()
    assert not Contrast("B", before=31.7, after=19.9).is_lost(least=15)


def test_where_there_was_no_contrast_none_can_be_lost() -> None:
    assert not Contrast("A", before=8.7, after=3.0).is_lost()
    assert not Contrast("A", before=8.7, after=-30.0).is_lost()


def test_an_allowed_colour_without_skeins_for_a_kit_is_left_out() -> None:
    gone, halves = (Candidate("Gone", GLOVE.colour, []), Candidate("Halves", GLOVE.colour, [1, 1]))
    assert [one.name for one in substitutes("A", CARD, COLOURS, [gone, halves, PLUM])] == [
        "Plum Stone"
    ]
    assert substitutes("C", CARD, COLOURS, []) == ()


@given(
    st.dictionaries(st.sampled_from("ABCDE"), st.integers(1, 4), min_size=1),
    st.dictionaries(st.sampled_from("ABCDE"), st.lists(st.integers(0, 20), max_size=4)),
    st.integers(0, 40),
)
def test_with_what_is_short_bought_in_the_kits_can_be_made_and_no_sooner(
    card: dict[str, int], stock: dict[str, list[int]], asked: int
) -> None:
    missing = {one.role: one.skeins for one in short_for(asked, card, stock)}
    filled = {role: [*stock.get(role, []), missing.get(role, 0)] for role in card}
    assert kits(card, filled).possible >= asked
    for role in missing:
        too_few = {**filled, role: [*stock.get(role, []), missing[role] - 1]}
        assert kits(card, too_few).possible < asked


def test_bad_numbers_and_colours_that_do_not_fit_are_refused() -> None:
    with pytest.raises(BadInput, match="names no colour"):
        kits({}, STOCK)
    with pytest.raises(BadInput, match="number of skeins of A is given as 0"):
        kits({"A": 0}, STOCK)
    with pytest.raises(BadInput, match="skeins left of A is given as -1"):
        kits({"A": 1}, {"A": [-1]})
    with pytest.raises(BadInput, match="number of kits"):
        short_for(-1, CARD, STOCK)
    with pytest.raises(BadInput, match="do not fit the kit card"):
        substitutes("F", CARD, COLOURS, [PLUM])
    with pytest.raises(BadInput, match="one dry"):
        substitutes("C", CARD, COLOURS, [Candidate("Wet", colour(40, 0, 0, at=WET), [9])])
