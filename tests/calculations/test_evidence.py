"""The counts that suspects rest on: who went through what, and what cannot be."""

from fractions import Fraction

import pytest

from app.calculations.evidence import (
    Evidence,
    Exposure,
    Pool,
    Pooled,
    Seen,
    Skein,
    Suspect,
    Tally,
    kept_apart,
    tally,
)
from app.problems import BadInput
from tests.calculations.suspect_cases import CONE_A, CONE_B, CONE_C, FINAL, LOT_2, thirty_two


def test_a_cone_has_its_sure_skeins_and_its_half_of_the_mixed_pot() -> None:
    exposures = thirty_two(FINAL).exposures()
    mixed = Tally(faulty=2, good=5, silent=5)
    assert exposures[CONE_A] == Exposure(
        Tally(3, 1, 4), Tally(0, 7, 5), (Pooled(mixed, 6),)
    )
    assert exposures[CONE_B].sure == Tally(0, 4, 2)
    assert exposures[CONE_B].others == Tally(3, 4, 7)
    assert exposures[LOT_2] == Exposure(Tally(3, 1, 4), Tally(2, 12, 10))


def test_every_skein_is_on_exactly_one_side_of_every_suspect() -> None:
    for exposure in thirty_two(FINAL).exposures().values():
        parts = [exposure.sure, exposure.others, *(pool.seen for pool in exposure.pools)]
        assert sum(part.total for part in parts) + len(exposure.shared) == 32


def test_members_of_a_pool_that_are_gone_still_count_in_it_as_not_seen() -> None:
    pool = Pool(frozenset({"1"}), {CONE_A: 3}, 7)
    exposure = Evidence([Skein("1", Seen.FAULTY)], [pool]).exposures()[CONE_A]
    assert exposure.pools == (Pooled(Tally(faulty=1, unseen=6), 3),)
    assert exposure.others == Tally()


def test_a_join_stands_by_its_shares() -> None:
    shares = {CONE_A: Fraction(62, 100), CONE_B: Fraction(38, 100)}
    join = Skein("1", Seen.GOOD, frozenset(), shares)
    exposures = Evidence([join, Skein("2", Seen.SILENT)]).exposures()
    assert exposures[CONE_A] == Exposure(
        Tally(), Tally(silent=1), (), ((Seen.GOOD, Fraction(62, 100)),)
    )


def test_what_may_be_its_faulty_skeins_counts_sure_pooled_and_shared_ones() -> None:
    exposures = thirty_two(FINAL).exposures()
    assert [exposures[one].may_be_its_faulty for one in (CONE_A, CONE_B, LOT_2)] == [5, 2, 3]
    pool = Pooled(Tally(faulty=4, good=1), 2)
    shared = ((Seen.FAULTY, Fraction(1, 2)), (Seen.GOOD, Fraction(1, 2)))
    assert Exposure(Tally(faulty=1), Tally(faulty=9), (pool,), shared).may_be_its_faulty == 4


def test_a_tally_is_added_and_taken_away_part_by_part() -> None:
    assert tally([Seen.FAULTY, Seen.SILENT, Seen.SILENT]) == Tally(1, 0, 2)
    assert Tally(1, 2, 3, 4) + Tally(1, 1, 1, 1) - Tally(0, 0, 4) == Tally(2, 3, 0, 5)
    assert Tally(1, 2, 3, 4).total == 10


def test_two_kinds_of_fault_are_kept_apart_and_one_is_no_proof_against_the_other() -> None:
    skeins = [
        Skein("1", Seen.FAULTY, frozenset({CONE_A}), faults=frozenset({"stain"})),
        Skein("2", Seen.FAULTY, frozenset({CONE_A}), faults=frozenset({"stain", "streak"})),
        Skein("3", Seen.GOOD, frozenset({CONE_A})),
        Skein("4", Seen.SILENT, frozenset({CONE_A})),
    ]
    apart = kept_apart(Evidence(skeins))
    assert list(apart) == ["stain", "streak"]
    assert [one.seen for one in apart["stain"].skeins] == [
        Seen.FAULTY, Seen.FAULTY, Seen.GOOD, Seen.SILENT
    ]
    assert [one.seen for one in apart["streak"].skeins] == [
        Seen.UNSEEN, Seen.FAULTY, Seen.GOOD, Seen.SILENT
    ]


def one_skein(*through: Suspect) -> Skein:
    return Skein("1", Seen.GOOD, frozenset(through))


def test_a_pool_cannot_hold_more_than_it_is() -> None:
    with pytest.raises(BadInput, match="a pool of 1 lists 2 skeins"):
        Pool(frozenset("12"), {}, 1)
    with pytest.raises(BadInput, match="8 of a pool of 7 went through cone A"):
        Pool(frozenset(), {CONE_A: 8}, 7)


def test_facts_that_contradict_are_refused_by_name() -> None:
    pool = Pool(frozenset("1"), {CONE_A: 1}, 2)
    with pytest.raises(BadInput, match="a pool holds 1, which is not among the skeins"):
        Evidence([], [pool])
    with pytest.raises(BadInput, match="one skein is listed twice"):
        Evidence([one_skein(), one_skein()])
    with pytest.raises(BadInput, match="1 is tied to cone A in two ways"):
        Evidence([one_skein(CONE_A)], [pool])
    with pytest.raises(BadInput, match="1 is tied to cone A in two ways"):
        Evidence([Skein("1", Seen.GOOD, shares={CONE_A: Fraction(1, 2)})], [pool])
    with pytest.raises(BadInput, match="1 is tied to cone A in two ways"):
        Evidence([one_skein()], [pool, pool])
    assert Evidence([one_skein(CONE_C)], [pool]).exposures()[CONE_C].sure == Tally(good=1)


@pytest.mark.parametrize("share", [Fraction(-1, 2), Fraction(3, 2)])
def test_a_share_is_between_nothing_and_all(share: Fraction) -> None:
    with pytest.raises(BadInput) as refused:
        Skein("1", Seen.GOOD, shares={CONE_A: share})
    assert refused.value.next_step


def test_nobody_has_a_share_in_what_it_went_through_whole() -> None:
    with pytest.raises(BadInput, match="1 has a share of 1/2 in cone A"):
        Skein("1", Seen.GOOD, frozenset({CONE_A}), {CONE_A: Fraction(1, 2)})
