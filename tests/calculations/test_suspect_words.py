"""A ranking in sentences: never a bare number, and right plurals."""

from dataclasses import replace
from fractions import Fraction

import pytest

from app.calculations.evidence import NONE, Evidence, Pool, Seen, Skein, Suspect, Tally
from app.calculations.fault_settings import Settings
from app.calculations.next_looks import next_looks
from app.calculations.suspect_words import (
    assumed,
    counts,
    headline,
    if_so,
    look_at,
    percent,
    reasons,
)
from app.calculations.suspects import rank
from tests.calculations.suspect_cases import (
    CONE_A,
    CONE_B,
    EARLIER,
    FINAL,
    LOT_1,
    LOT_2,
    WASH_1,
    thirty_two,
)


def test_the_headline_is_a_word_and_a_thing() -> None:
    assert headline(rank(thirty_two(FINAL))) == "Likely cone A."
    assert headline(rank(thirty_two(EARLIER))) == (
        "Not decided: possible are cone A, wash load W1 and lot L1."
    )


def test_with_nothing_but_none_of_these_nothing_is_claimed() -> None:
    assert headline(rank(Evidence([]))) == "Not decided: possible is none of these."
    many = [Skein(str(n), Seen.GOOD, frozenset({Suspect("cone", str(n))})) for n in range(30)]
    assert headline(rank(Evidence(many), Settings(possible=0.6))) == (
        "Not decided: no suspect stands out."
    )


def test_faulty_skeins_that_share_nothing_are_likely_spoiled_by_something_else() -> None:
    skeins = [Skein(str(n), Seen.FAULTY) for n in range(4)]
    skeins += [Skein(f"a{n}", Seen.GOOD, frozenset({CONE_A})) for n in range(20)]
    assert headline(rank(Evidence(skeins))).startswith("Likely none of these: something else")


def test_twins_are_named_together_with_the_way_out() -> None:
    skeins = [
        Skein(str(n), Seen.FAULTY if n < 4 else Seen.GOOD,
              frozenset({LOT_1, Suspect("bath", "P2")} if n < 5 else {LOT_2}))
        for n in range(12)
    ]
    settings = Settings(priors={"lot": Fraction(1, 10), "none": Fraction(1, 20)})
    assert headline(rank(Evidence(skeins), settings)) == (
        "Likely bath P2 or lot L1: they touched the same skeins, so look at the things themselves."
    )


def test_the_assumption_of_one_cause_is_always_said_and_what_speaks_against_it() -> None:
    ranking = rank(thirty_two(FINAL))
    assert assumed(ranking) == (
        "This takes it that one thing spoiled them; tell two kinds of fault as two."
    )
    assert assumed(replace(ranking, unexplained=1)).endswith(
        " 1 faulty skein never went through cone A."
    )
    assert assumed(replace(ranking, unexplained=2)).endswith(
        " 2 faulty skeins never went through cone A."
    )


def test_the_reasons_are_counts_on_either_side_and_in_the_pool() -> None:
    assert reasons(rank(thirty_two(FINAL)).ranked[0]) == (
        "8 skeins surely share cone A: 3 faulty, 1 good, 4 silent.",
        "Of a pool of 12, 6 of cone A, not known which: 2 faulty, 5 good, 5 silent.",
        "12 skeins without it: 0 faulty, 7 good, 5 silent.",
    )


def test_a_join_and_one_skein_are_said_rightly() -> None:
    skeins = [
        Skein("1", Seen.FAULTY, shares={CONE_A: Fraction(3, 5), CONE_B: Fraction(2, 5)}),
        Skein("2", Seen.UNSEEN, frozenset({CONE_A})), Skein("3", Seen.GOOD),
    ]
    of_cone_a = next(one for one in rank(Evidence(skeins)).ranked if one.suspect == CONE_A)
    assert reasons(of_cone_a) == (
        "1 skein surely shares cone A: 0 faulty, 0 good, 0 silent, 1 not seen.",
        "1 skein of cone A in part: 1 faulty, 0 good, 0 silent.",
        "1 skein without it: 0 faulty, 1 good, 0 silent.",
    )


def test_none_of_these_has_a_reason_too() -> None:
    none = next(one for one in rank(thirty_two(FINAL)).ranked if one.suspect == NONE)
    assert reasons(none) == (
        "Every skein would be faulty by chance or by a cause that is not listed.",
    )


def test_what_nobody_has_looked_at_is_told_only_where_there_is_some() -> None:
    assert counts(Tally(1, 2, 3)) == "1 faulty, 2 good, 3 silent"
    assert counts(Tally(1, 2, 3, 4)) == "1 faulty, 2 good, 3 silent, 4 not seen"


def test_the_next_look_is_said_as_a_group_with_what_each_outcome_makes_of_it() -> None:
    look = next_looks(thirty_two(EARLIER))[0]
    assert look_at(look) == (
        "Look at 3 of the 4 skeins of lot L2 that went through wash load W2 "
        "(sold, nobody said anything)."
    )
    assert [if_so(outcome, look) for outcome in look.outcomes[:2]] == [
        "0 of 3 faulty: not decided (wash load W1 39 %, lot L1 29 %, cone A 12 %).",
        "1 of 3 faulty: likely cone A (cone A 84 %, wash load W1 5 %, lot L1 4 %).",
    ]


def test_a_group_that_nothing_sets_apart_is_told_by_its_names() -> None:
    skeins = [Skein(str(n), Seen.UNSEEN, frozenset({WASH_1, CONE_A})) for n in range(3)]
    (look,) = next_looks(Evidence(skeins))
    assert look_at(look) == "Look at 3 skeins (not sold)."
    named = replace(look, shared=(WASH_1, CONE_A), only=False, skeins=("1",), count=1)
    assert look_at(named) == (
        "Look at 1 skein that went through wash load W1 and wound from cone A (not sold): 1."
    )


def test_a_pool_of_which_nothing_is_sure_begins_with_the_pool() -> None:
    pool = Pool(frozenset("1"), {CONE_A: 1}, 2)
    ranked = rank(Evidence([Skein("1", Seen.FAULTY)], [pool])).ranked
    of_cone_a = next(one for one in ranked if one.suspect == CONE_A)
    assert reasons(of_cone_a)[0] == (
        "Of a pool of 2, 1 of cone A, not known which: 1 faulty, 0 good, 0 silent, 1 not seen."
    )


@pytest.mark.parametrize(
    ("chance", "said"),
    [(0.4079, "41 %"), (0.999, "over 99 %"), (0.001, "under 1 %"), (0.99, "99 %"),
     (1.0, "over 99 %")],
)
def test_no_chance_is_ever_called_nothing_or_all(chance: float, said: str) -> None:
    assert percent(chance) == said
