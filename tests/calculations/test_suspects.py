"""The worked example of suspects to its printed per cents, and what a ranking says beside them."""

from fractions import Fraction
from time import process_time

import pytest

from app.calculations.evidence import NONE, Evidence, Pool, Seen, Skein, Suspect
from app.calculations.fault_settings import Settings
from app.calculations.suspects import Ranking, Word, rank, word_for
from tests.calculations.suspect_cases import (
    CONE_A,
    CONE_B,
    DAY_1,
    EARLIER,
    FINAL,
    LOT_1,
    LOT_2,
    RAILS,
    WASH_1,
    WASH_2,
    thirty_two,
)


def chance(ranking: Ranking, suspect: Suspect) -> float:
    return next(one.chance for one in ranking.ranked if one.suspect == suspect)


def percents(ranking: Ranking, *suspects: Suspect) -> list[int]:
    return [round(100 * chance(ranking, suspect)) for suspect in suspects]


def test_cone_a_spoiled_the_32_skeins_with_97_percent_lot_2_1_6_and_the_day_0_9() -> None:
    ranking = rank(thirty_two(FINAL))
    assert [one.suspect for one in ranking.ranked[:3]] == [CONE_A, LOT_2, DAY_1]
    assert [round(100 * one.chance, 1) for one in ranking.ranked[:3]] == [97.4, 1.6, 0.9]
    assert ranking.ranked[0].word is Word.LIKELY
    assert ranking.decided
    assert ranking.unexplained == 0


def test_earlier_the_same_cone_has_41_percent_and_nothing_is_decided() -> None:
    ranking = rank(thirty_two(EARLIER))
    assert [one.suspect for one in ranking.ranked[:4]] == [CONE_A, WASH_1, LOT_1, CONE_B]
    assert percents(ranking, CONE_A, WASH_1, LOT_1, CONE_B) == [41, 26, 19, 7]
    assert {one.word for one in ranking.ranked[:4]} == {Word.POSSIBLE}
    assert not ranking.decided


@pytest.mark.parametrize(
    ("inspected", "suspects", "printed"),
    [
        ("gggs", (WASH_1, LOT_1, CONE_A), [39, 29, 12]),
        ("gfgs", (CONE_A,), [83]),
        ("ffgs", (CONE_A,), [96]),
    ],
)
def test_three_more_skeins_are_inspected(
    inspected: str, suspects: tuple[Suspect, ...], printed: list[int]
) -> None:
    ranking = rank(thirty_two(EARLIER | {"L2 W2": inspected}))
    assert ranking.ranked[0].suspect == suspects[0]
    assert percents(ranking, *suspects) == printed


def test_the_one_faulty_skein_moves_its_cone_by_less_than_a_percent_from_rail_to_rail() -> None:
    """84 on the first rail, 83 on the second: the handbook's number is that of the second."""
    assert percents(rank(thirty_two(EARLIER | {"L2 W2": "fggs"})), CONE_A) == [84]


def test_all_chances_make_one_and_none_of_them_stays_among_them() -> None:
    ranking = rank(thirty_two(EARLIER))
    assert sum(one.chance for one in ranking.ranked) == pytest.approx(1, abs=1e-12)
    assert NONE in [one.suspect for one in ranking.ranked]


def test_plain_rates_cannot_tell_the_lot_from_the_cone_nor_hardly_the_wash_loads() -> None:
    exposures = thirty_two(FINAL).exposures()
    rates = {one: Fraction(e.sure.faulty, e.sure.total or 1) for one, e in exposures.items()}
    assert [one for one, rate in rates.items() if rate == max(rates.values())] == [CONE_A, LOT_2]
    assert (rates[LOT_2], rates[WASH_1], rates[WASH_2]) == (
        Fraction(3, 8), Fraction(3, 16), Fraction(2, 16)
    )


@pytest.mark.parametrize(
    ("fault", "kind"),
    [("stain", "wash load"), ("streak", "cone"), ("thin place", "cone"), ("off shade", "lot"),
     ("off shade", "jar fill"), ("tie mark", "winder-day")],
)
def test_the_kind_of_fault_shifts_what_is_believed_of_a_kind(fault: str, kind: str) -> None:
    def believed(ranking: Ranking) -> float:
        return sum(one.chance for one in ranking.ranked if one.suspect.kind == kind)

    evidence = thirty_two(EARLIER)
    assert believed(rank(evidence, fault=fault)) > believed(rank(evidence)) + 0.001


def test_a_stain_makes_the_wash_load_the_first_suspect() -> None:
    assert rank(thirty_two(EARLIER), fault="stain").ranked[0].suspect == WASH_1


def test_the_rest_of_the_cone_on_the_shelf_is_to_be_looked_at_before_all_arithmetic() -> None:
    ranking = rank(thirty_two(EARLIER), still_there=[CONE_B, CONE_A, RAILS[0]])
    assert ranking.to_look_at == (CONE_A, CONE_B)


def test_suspects_that_touched_the_same_skeins_are_named_together() -> None:
    bath = Suspect("bath", "P2")
    skeins = [
        Skein(str(n), Seen.FAULTY if n < 4 else Seen.GOOD,
              frozenset({bath, LOT_1} if n < 5 else {LOT_2}))
        for n in range(12)
    ]
    even = Settings(priors={"lot": Fraction(1, 10), "none": Fraction(1, 20)})
    ranking = rank(Evidence(skeins), even)
    assert ranking.ranked[0].alike == (ranking.ranked[1].suspect,)
    assert not ranking.decided
    assert ranking.only_the_things_can_tell
    assert not rank(thirty_two(EARLIER)).only_the_things_can_tell


def test_pools_of_other_counts_are_not_the_same_skeins() -> None:
    """Three of one cone and two of the other: the pool sets the cones apart."""
    skeins = [Skein(str(n), Seen.FAULTY) for n in range(5)]
    pool = Pool(frozenset("01234"), {CONE_A: 3, CONE_B: 2}, 5)
    ranking = rank(Evidence(skeins, [pool]))
    assert {one.suspect: one.alike for one in ranking.ranked} == dict.fromkeys(
        (CONE_A, CONE_B, NONE), ()
    )


def test_faulty_skeins_that_the_first_never_touched_are_counted() -> None:
    skeins = [Skein(f"a{n}", Seen.FAULTY, frozenset({CONE_A})) for n in range(6)]
    skeins += [Skein(f"b{n}", Seen.GOOD, frozenset({CONE_B})) for n in range(20)]
    skeins += [Skein(f"c{n}", Seen.FAULTY, frozenset({LOT_1})) for n in range(2)]
    ranking = rank(Evidence(skeins))
    assert ranking.ranked[0].suspect == CONE_A
    assert ranking.unexplained == 2


def test_with_nothing_faulty_no_suspect_is_likely() -> None:
    ranking = rank(Evidence([Skein("1", Seen.GOOD, frozenset({LOT_1}))]))
    assert not ranking.decided


def test_without_any_skein_there_is_only_none_of_these() -> None:
    ranking = rank(Evidence([]))
    assert [one.suspect for one in ranking.ranked] == [NONE]
    assert not ranking.decided


def test_silence_of_buyers_speaks_less_for_a_thing_than_good_skeins_do() -> None:
    def of_cone_a(letters: str) -> float:
        return chance(rank(thirty_two(EARLIER | {"L2 W2": letters})), CONE_A)

    assert of_cone_a("uuuu") > of_cone_a("ssss") > of_cone_a("gggg")


@pytest.mark.parametrize(
    ("chance", "faulty", "word"),
    [(0.80, 3, Word.LIKELY), (0.799, 3, Word.POSSIBLE), (0.99, 2, Word.POSSIBLE),
     (0.05, 3, Word.POSSIBLE), (0.049, 3, Word.HARDLY)],
)
def test_the_word_goes_by_the_limits_of_the_settings(
    chance: float, faulty: int, word: Word
) -> None:
    assert word_for(chance, faulty, Settings()) is word


def test_two_faulty_skeins_may_be_chance_whatever_the_arithmetic_says() -> None:
    skeins = [Skein(f"a{n}", Seen.FAULTY, frozenset({CONE_A})) for n in range(2)]
    skeins += [Skein(f"b{n}", Seen.GOOD, frozenset({CONE_B})) for n in range(40)]
    ranking = rank(Evidence(skeins))
    assert chance(ranking, CONE_A) > Settings().likely
    assert not ranking.decided
    assert rank(Evidence(skeins), Settings(least_faulty=2)).decided


def test_two_hundred_suspects_and_two_thousand_skeins_take_less_than_a_second() -> None:
    kinds = ("cone", "lot", "wash load", "jar fill", "rail")
    skeins = [
        Skein(str(n), list(Seen)[n * n % 31 % 4], frozenset(
            Suspect(kind, str(n * (place + 3) // (13 + place) % 38))
            for place, kind in enumerate(kinds)
        ))
        for n in range(2000)
    ]
    pools = [
        Pool(frozenset(str(n) for n in range(first, first + 12)),
             {Suspect("spin load", str(first)): 5 + first % 3}, 12)
        for first in range(0, 1200, 120)
    ]
    evidence = Evidence(skeins, pools)
    assert len(evidence.exposures()) >= 200
    start = process_time()
    rank(evidence)
    assert process_time() - start < 1
