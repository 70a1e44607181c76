"""The next look of the worked example, and what looks may show against every way one by one."""

from collections.abc import Sequence

import pytest
from hypothesis import assume, given, settings

from app.calculations.evidence import NONE, Evidence, Seen, Skein
from app.calculations.fault_settings import Settings
from app.calculations.next_looks import Look, next_looks, set_apart, uncertainty
from app.calculations.suspects import rank
from tests.calculations.suspect_cases import (
    CONE_A,
    EARLIER,
    LOT_1,
    LOT_2,
    WASH_1,
    WASH_2,
    thirty_two,
)
from tests.calculations.suspects_one_by_one import after_a_look, small_evidence


def first_look() -> Look:
    return next_looks(thirty_two(EARLIER))[0]


def test_the_best_next_look_is_at_skeins_of_lot_2_that_went_through_wash_2() -> None:
    """They share cone A but neither wash load W1 nor lot L1."""
    look = first_look()
    assert look.shared == (LOT_2, WASH_2)
    assert look.only
    assert (look.count, look.seen) == (3, Seen.SILENT)
    assert look.skeins == tuple(f"L2 W2 {n}" for n in range(4))


def test_its_outcomes_make_of_the_ranking_what_the_example_says() -> None:
    """None faulty: W1 39, L1 29, A 12; one: A 83 or 84 by the rail it hung on; two: A 96."""
    none, one, two, three = first_look().outcomes
    assert [(s, round(100 * chance)) for s, chance in none.first()] == [
        (WASH_1, 39), (LOT_1, 29), (CONE_A, 12)
    ]
    assert [83.1 < 100 * one.chances[CONE_A] < 83.8, round(100 * two.chances[CONE_A])] == [True, 96]
    assert [each.likely for each in (none, one, two, three)] == [None, CONE_A, CONE_A, CONE_A]


def test_other_looks_decide_less() -> None:
    decides = [look.decides for look in next_looks(thirty_two(EARLIER))]
    assert decides == sorted(decides, reverse=True)
    assert decides[0] > 1.2 * decides[1]
    assert min(decides) >= 0


@pytest.mark.long
@settings(max_examples=120, deadline=None)
@given(small_evidence())
def test_each_outcome_is_what_every_way_one_by_one_makes_it(evidence: Evidence) -> None:
    looks = next_looks(evidence, Settings(looks=2))
    assume(looks)
    for look in looks[:2]:
        names = look.skeins[: look.count]
        for outcome in look.outcomes:
            chance, chances = after_a_look(evidence, names, outcome.faulty)
            assert outcome.chance == pytest.approx(chance, rel=1e-9)
            assert outcome.chances == pytest.approx(chances, rel=1e-9)


@pytest.mark.long
@settings(max_examples=150, deadline=None)
@given(small_evidence())
def test_looks_are_expected_to_leave_the_chances_as_they_are_and_never_to_confuse(
    evidence: Evidence,
) -> None:
    now = {one.suspect: one.chance for one in rank(evidence).ranked}
    for look in next_looks(evidence):
        assert sum(one.chance for one in look.outcomes) == pytest.approx(1)
        for suspect, chance in now.items():
            then = sum(one.chance * one.chances[suspect] for one in look.outcomes)
            assert then == pytest.approx(chance, abs=1e-12)
        assert look.decides >= -1e-12


def names_of(looks: Sequence[Look]) -> set[str]:
    return {name for look in looks for name in look.skeins}


def test_only_skeins_that_can_be_looked_at_are_offered() -> None:
    evidence = thirty_two(EARLIER)
    assert len(names_of(next_looks(evidence))) == 5 + 8 + 2 + 3
    some = next_looks(evidence, can_be_seen=["L2 W1 0", "L2 W1 3", "L1 0"])
    assert names_of(some) == {"L2 W1 0", "L2 W1 3"}
    assert some[0].count == 2
    assert next_looks(evidence, can_be_seen=[]) == ()


def test_skeins_that_are_not_sold_are_a_group_of_their_own_and_tell_more_than_silent_ones() -> None:
    looks = next_looks(thirty_two(EARLIER | {"L2 W2": "ssuu"}), Settings(looks=2))
    first, second = (look for look in looks if look.skeins[0].startswith("L2 W2"))
    assert (first.seen, second.seen) == (Seen.UNSEEN, Seen.SILENT)
    assert first.decides > second.decides


def test_an_outcome_on_too_few_faulty_skeins_is_not_called_likely() -> None:
    skeins = [Skein("1", Seen.FAULTY, frozenset({CONE_A}))]
    skeins += [Skein(str(n), Seen.UNSEEN, frozenset({CONE_A})) for n in range(2, 5)]
    skeins += [Skein(f"g{n}", Seen.GOOD) for n in range(30)]
    (look,) = next_looks(Evidence(skeins))
    assert look.outcomes[1].chances[CONE_A] > 0.75
    assert [one.likely for one in look.outcomes] == [None, None, CONE_A, CONE_A]


def test_uncertainty_is_counted_in_bits() -> None:
    assert uncertainty([0.5, 0.5]) == 1
    assert uncertainty([1.0, 0.0]) == 0
    assert uncertainty([0.25] * 4) == 2


def test_a_group_is_named_by_the_fewest_things_that_set_it_apart() -> None:
    skeins = {skein.name: skein for skein in thirty_two(EARLIER).skeins}
    silent = [skein for skein in skeins.values() if skein.seen is Seen.SILENT]
    of_lot_2 = [skein for skein in silent if LOT_2 in skein.through]
    assert set_apart(of_lot_2, silent) == ((LOT_2,), True)
    assert set_apart(of_lot_2[:1], silent)[0][0] == LOT_2
    assert set_apart(of_lot_2[:1], silent)[1] is False
    everything = set_apart(silent, silent)
    assert everything == ((), True)
    assert NONE not in everything[0]


def test_a_faulty_skein_elsewhere_adds_nothing_to_what_the_first_suspect_rests_on() -> None:
    skeins = [Skein(f"a{n}", Seen.FAULTY, frozenset({CONE_A})) for n in range(2)]
    skeins += [Skein(f"g{n}", Seen.GOOD) for n in range(40)]
    (look,) = next_looks(Evidence([*skeins, Skein("elsewhere", Seen.UNSEEN)]))
    assert [one.first()[0][0] for one in look.outcomes] == [CONE_A, CONE_A]
    assert look.outcomes[1].chances[CONE_A] > 0.75
    assert [one.likely for one in look.outcomes] == [None, None]
