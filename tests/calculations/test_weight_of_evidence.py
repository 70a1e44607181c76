"""The belief in each suspect against the same reckoned the long way, placement by placement."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.calculations.evidence import NONE, Evidence, Seen, Skein
from app.calculations.fault_settings import Rates, Settings
from app.calculations.weight_of_evidence import beliefs, cases, shared_rate
from tests.calculations.suspect_cases import CONE_A, CONE_B, FINAL, thirty_two
from tests.calculations.suspects_one_by_one import beliefs_by_hand, small_evidence


@pytest.mark.long
@settings(max_examples=500, deadline=None)
@given(small_evidence())
def test_the_beliefs_are_those_reckoned_one_by_one(evidence: Evidence) -> None:
    ours = {one: sum(row) for one, row in beliefs(evidence, Settings()).items()}
    assert ours == pytest.approx(beliefs_by_hand(evidence), rel=1e-9)


def test_there_are_twenty_cases_and_their_weights_make_one() -> None:
    assert len(cases(Rates())) == 20
    assert sum(case.weight for case in cases(Rates())) == 1


def test_a_share_is_a_rate_between_both() -> None:
    case = cases(Rates())[0]
    assert shared_rate(case, Fraction(0)) == case.others == Fraction(1, 200)
    assert shared_rate(case, Fraction(1)) == case.touched == Fraction(3, 10)
    assert shared_rate(case, Fraction(1, 2)) == Fraction(305, 2000)


def test_a_skein_that_says_nothing_changes_nothing_but_how_the_priors_are_shared() -> None:
    evidence = thirty_two(FINAL)
    more = [Skein(f"unsold {n}", Seen.UNSEEN, frozenset({CONE_A})) for n in range(9)]
    with_them = Evidence([*evidence.skeins, *more], evidence.pools)
    assert beliefs(with_them, Settings()) == beliefs(evidence, Settings())


def test_the_order_of_the_skeins_is_nothing_to_it() -> None:
    evidence = thirty_two(FINAL)
    turned = Evidence(evidence.skeins[::-1], evidence.pools)
    assert beliefs(turned, Settings()) == beliefs(evidence, Settings())


def test_five_thousand_skeins_neither_underflow_nor_lose_the_belief() -> None:
    skeins = [Skein(f"a{n}", Seen.FAULTY, frozenset({CONE_A})) for n in range(2500)]
    skeins += [Skein(f"b{n}", Seen.GOOD, frozenset({CONE_B})) for n in range(2500)]
    believed = beliefs(Evidence(skeins), Settings())
    assert sum(believed[CONE_A]) == pytest.approx(1)
    assert sum(map(sum, believed.values())) == pytest.approx(1)


@given(st.integers(0, 30))
def test_the_more_good_skeins_of_a_cone_the_less_it_is_believed(count: int) -> None:
    def of_cone_a(good: int) -> float:
        skeins = [Skein("f", Seen.FAULTY, frozenset({CONE_A}))]
        skeins += [Skein(str(n), Seen.GOOD, frozenset({CONE_A})) for n in range(good)]
        return sum(beliefs(Evidence(skeins), Settings())[CONE_A])

    assert of_cone_a(count) > of_cone_a(count + 1)


def test_none_of_these_is_believed_where_faulty_skeins_share_nothing() -> None:
    skeins = [Skein(str(n), Seen.FAULTY) for n in range(4)]
    skeins += [Skein(f"a{n}", Seen.GOOD, frozenset({CONE_A})) for n in range(20)]
    believed = beliefs(Evidence(skeins), Settings())
    assert max(believed, key=lambda one: sum(believed[one])) == NONE
