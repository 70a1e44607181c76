"""The fewest lots for a quantity, the closest of them, held against trying every set."""

from collections.abc import Sequence
from itertools import combinations
from random import Random
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.fewest_lots import LotSet, Offered, Pair, fewest_lots
from app.calculations.shade import Colour
from app.calculations.shade_difference import ciede2000
from app.problems import BadInput
from tests.calculations.shades import CLOSE, TEAL, WET, colour


def offered(**free: int) -> list[Offered]:
    return [Offered(lot, left, TEAL[lot]) for lot, left in free.items()]


def test_one_lot_that_is_enough_is_taken_alone_and_has_no_worst_pair() -> None:
    assert fewest_lots(offered(P=3, Q=6, V=5), 5) == LotSet(("Q",), 6, None, True)


def test_of_two_lots_the_closest_pair_is_taken_and_named() -> None:
    found = fewest_lots(offered(P=3, Q=3, T=3, V=3, W=3), 6)
    assert found is not None
    assert (found.lots, found.free, found.closest) == (("T", "V"), 6, True)
    assert found.worst == Pair("T", "V", ciede2000(TEAL["T"].lab, TEAL["V"].lab))
    assert f"{found.worst.ciede2000:.2f}" == "0.38"


def test_fewer_lots_win_over_closer_ones() -> None:
    found = fewest_lots(offered(P=2, Q=2, U=2, V=4, W=3), 6)
    assert found is not None
    assert len(found.lots) == 2
    assert "V" in found.lots


def test_what_the_customer_has_in_hand_is_matched_too() -> None:
    lots = offered(P=3, Q=3, T=3, V=3)
    assert (fewest_lots(lots, 3, {"U": TEAL["U"]}) or lots[0]) == LotSet(
        ("P",), 3, Pair("P", "U", ciede2000(TEAL["P"].lab, TEAL["U"].lab)), True
    )
    found = fewest_lots(lots, 6, {"U": TEAL["U"]})
    assert found is not None
    assert found.lots == ("P", "Q")


def test_a_short_reorder_finds_the_old_lot_a_tenth_away() -> None:
    """One is free of the lot itself, the customer needs two; four of an older lot are left."""
    own, older = colour(48.3, -36.6, 3.3), colour(48.2, -36.6, 3.3)
    weak = Offered("weak", 6, colour(50.0, -34.9, 5.9))
    lots = [Offered("own", 1, own), Offered("older", 4, older), weak]
    found = fewest_lots(lots, 2, {"own": own})
    assert found is not None
    assert found.lots == ("older",)
    assert found.worst is not None
    assert f"{found.worst.ciede2000:.2f}" == "0.10"
    with_kit = fewest_lots([Offered("own", 2, own), *lots[1:]], 2, {"own": own})
    assert with_kit is not None
    assert (with_kit.lots, with_kit.worst) == (("own",), Pair("own", "own", 0.0))


def test_of_sets_as_close_the_one_with_more_skeins_left_wins() -> None:
    same = [Offered(lot, free, TEAL["P"]) for lot, free in {"a": 3, "b": 5, "c": 4}.items()]
    found = fewest_lots(same, 7)
    assert found is not None
    assert (sorted(found.lots), found.free) == (["b", "c"], 9)


def test_when_all_lots_are_too_few_there_is_no_set() -> None:
    assert fewest_lots(offered(P=3, Q=2), 6) is None
    assert fewest_lots([], 1) is None
    assert fewest_lots(offered(P=0), 1) is None


def test_lots_with_nothing_left_are_not_offered_nor_looked_at() -> None:
    gone = Offered("gone", 0, colour(42, -36, 3, at=WET))
    found = fewest_lots([gone, *offered(P=2)], 2)
    assert found is not None
    assert found.lots == ("P",)


def test_bad_numbers_and_a_wet_card_are_refused() -> None:
    with pytest.raises(BadInput, match="number of skeins wanted"):
        fewest_lots(offered(P=3), 0)
    with pytest.raises(BadInput, match="skeins left of P is given as -1"):
        offered(P=-1)
    with pytest.raises(BadInput, match="one dry"):
        fewest_lots([*offered(P=3), Offered("X", 3, colour(42, -36, 3, at=WET))], 5)


def cloud(lots: int, most_free: int, seed: int) -> list[Offered]:
    chance = Random(seed)
    return [
        Offered(f"{lot:02}", chance.randint(2, most_free),
                colour(*(middle + chance.gauss(0, 1.2) for middle in (48, -36, 4))))
        for lot in range(lots)
    ]


@pytest.mark.parametrize("most_free", [2, 3, 8, 14])
@pytest.mark.parametrize("skeins", [6, 20])
def test_forty_lots_are_searched_to_the_end_and_at_once(most_free: int, skeins: int) -> None:
    for seed in range(4):
        lots = cloud(40, most_free, seed)
        begun = perf_counter()
        found = fewest_lots(lots, skeins, {"hand": TEAL["P"]} if seed % 2 else None)
        assert perf_counter() - begun < 5  # usually a tenth of a second
        assert found is not None
        assert found.closest
        assert found.free >= skeins


def test_when_the_search_is_cut_short_the_set_is_enough_and_says_it_is_not_proven() -> None:
    found = fewest_lots(cloud(40, 3, seed=1), 20, most_steps=2)
    assert found is not None
    assert not found.closest
    assert found.free >= 20
    proven = fewest_lots(cloud(40, 3, seed=1), 20)
    assert proven is not None
    assert len(proven.lots) == len(found.lots)


def test_the_order_in_which_lots_are_given_is_nothing_to_the_set() -> None:
    lots = cloud(12, 4, seed=3)
    expected = fewest_lots(lots, 11)
    for seed in range(10):
        Random(seed).shuffle(lots)
        assert fewest_lots(lots, 11) == expected


@given(
    st.lists(st.tuples(st.integers(0, 5), CLOSE), min_size=1, max_size=7),
    st.integers(1, 12),
    st.lists(CLOSE, max_size=2),
)
def test_no_set_is_better_than_the_best_of_all_sets(
    lots: list[tuple[int, Colour]], skeins: int, in_hand: list[Colour]
) -> None:
    offers = [Offered(f"{place}", *lot) for place, lot in enumerate(lots)]
    hand = {f"hand {place}": one for place, one in enumerate(in_hand)}
    found = fewest_lots(offers, skeins, hand)
    sets = [
        one for size in range(1, len(offers) + 1) for one in combinations(offers, size)
        if sum(lot.free for lot in one) >= skeins and all(lot.free for lot in one)
    ]
    if not sets:
        assert found is None
        return
    best = min((len(one), worst_of(one, in_hand), -sum(lot.free for lot in one)) for one in sets)
    assert found is not None
    assert found.closest
    taken = [lot for lot in offers if lot.lot in found.lots]
    assert (len(taken), worst_of(taken, in_hand), -found.free) == best
    assert (found.worst.ciede2000 if found.worst else 0) == pytest.approx(best[1], abs=1e-9)


def worst_of(lots: Sequence[Offered], in_hand: Sequence[Colour]) -> float:
    colours = [*(lot.colour for lot in lots), *in_hand]
    pairs = combinations(colours, 2)
    return round(max((ciede2000(one.lab, other.lab) for one, other in pairs), default=0.0), 12)
