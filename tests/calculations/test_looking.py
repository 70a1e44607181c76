"""What a look may show: skeins by themselves, of a pool, by a share."""

from fractions import Fraction

import pytest

from app.calculations.evidence import Evidence, Pool, Pooled, Seen, Skein, Tally
from app.calculations.fault_settings import Rates
from app.calculations.looking import Picked, may_show, picked
from tests.calculations.suspect_cases import CONE_A, CONE_B, EARLIER, LOT_1, WASH_1, thirty_two

HALF = Fraction(1, 2)
ONE = Rates(((HALF, Fraction(1)),), ((Fraction(1, 10), Fraction(1)),), Fraction(1, 4))
"""A single rate on either side, so that a result can be reckoned on paper."""


def shown(what: Picked) -> list[float]:
    return [of_so_many[0] for of_so_many in may_show(what, ONE)]


def test_skeins_that_nobody_asked_about_are_faulty_at_the_rate() -> None:
    what = Picked(Seen.UNSEEN, ((Fraction(1), 2),), ())
    assert shown(what) == pytest.approx([0.25, 0.5, 0.25])


def test_a_silent_skein_is_less_likely_faulty_as_one_in_four_would_have_told() -> None:
    what = Picked(Seen.SILENT, ((Fraction(1), 1),), ())
    assert shown(what) == pytest.approx([0.5 / 0.875, 0.375 / 0.875])


def test_touched_and_others_are_looked_at_together() -> None:
    what = Picked(Seen.UNSEEN, ((Fraction(0), 1), (Fraction(1), 1)), ())
    assert shown(what) == pytest.approx([0.45, 0.5, 0.05])


def test_of_a_pool_the_one_that_is_not_faulty_makes_the_other_the_touched_one() -> None:
    """One of two is touched: both faulty 0.5 x 0.1, none 0.5 x 0.9, one is what is left."""
    pool = Pooled(Tally(unseen=2), 1)
    what = Picked(Seen.UNSEEN, (), ((pool, 2),))
    assert shown(what) == pytest.approx([0.45, 0.5, 0.05])


def test_a_pool_that_was_looked_at_already_is_reckoned_on() -> None:
    """One of two is touched and one was faulty: with 5 to 1 that was it, so the other is not."""
    pool = Pooled(Tally(faulty=1, unseen=1), 1)
    faulty = 5 / 6 * 0.1 + 1 / 6 * 0.5
    assert shown(Picked(Seen.UNSEEN, (), ((pool, 1),))) == pytest.approx([1 - faulty, faulty])


def test_in_every_case_of_the_rates_all_numbers_make_one() -> None:
    pool = Pooled(Tally(2, 1, 4, 2), 5)
    rows = may_show(Picked(Seen.SILENT, ((HALF, 1),), ((pool, 3),)), Rates())
    assert [sum(case) for case in zip(*rows, strict=True)] == pytest.approx([1.0] * 20)


def test_what_each_suspect_has_to_do_with_the_picked_skeins() -> None:
    evidence = thirty_two(EARLIER)
    chosen = [skein for skein in evidence.skeins if skein.name in ("L1 8", "L2 W1 0", "L2 W2 0")]
    what = picked(evidence, chosen)
    pool = Pooled(Tally(2, 5, 5), 6)
    assert what[CONE_A] == Picked(Seen.SILENT, ((Fraction(1), 2),), ((pool, 1),))
    assert what[CONE_B] == Picked(Seen.SILENT, ((Fraction(0), 2),), ((pool, 1),))
    assert what[WASH_1] == Picked(Seen.SILENT, ((Fraction(0), 1), (Fraction(1), 2)), ())
    assert what[LOT_1] == Picked(Seen.SILENT, ((Fraction(0), 2), (Fraction(1), 1)), ())
    assert what[None] == Picked(Seen.SILENT, ((Fraction(0), 3),), ())


def test_a_join_is_picked_by_its_share_and_a_gone_member_stays_in_the_pool() -> None:
    skeins = [Skein("1", Seen.UNSEEN, shares={CONE_A: HALF}), Skein("2", Seen.UNSEEN)]
    what = picked(Evidence(skeins, [Pool(frozenset("2"), {CONE_B: 2}, 3)]), skeins)
    assert what[CONE_A] == Picked(Seen.UNSEEN, ((Fraction(0), 1), (HALF, 1)), ())
    assert what[CONE_B] == Picked(
        Seen.UNSEEN, ((Fraction(0), 1),), ((Pooled(Tally(unseen=3), 2), 1),)
    )
    assert shown(what[CONE_A])[2] == pytest.approx(0.3 * 0.1)
