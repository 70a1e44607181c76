"""The words said of two lots. The limits are common practice, no source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.grey_scales import CHANGE, Step
from app.calculations.shade import Colour
from app.calculations.shade_difference import Difference, difference
from app.calculations.shade_words import USUAL, Bands, Judged, Word, judge, judge_by_zone
from app.problems import BadInput
from tests.calculations.shades import TEAL, colour

STRONG, GREY = colour(48, -36, 3), colour(60, 6, 4)


def apart_by(ciede2000: float, uncertainty: float = 0, other: Colour = STRONG) -> Difference:
    return Difference(STRONG, other, ciede2000, ciede2000, uncertainty)


@pytest.mark.parametrize(
    ("ciede2000", "word"),
    [
        (0, Word.SAME), (0.8, Word.SAME), (0.81, Word.TWO_ROWS), (1.5, Word.TWO_ROWS),
        (1.51, Word.THROUGHOUT), (2.5, Word.THROUGHOUT), (2.51, Word.SECOND), (4, Word.SECOND),
        (4.01, Word.OTHER), (30, Word.OTHER),
    ],
)
def test_each_word_holds_up_to_its_limit(ciede2000: float, word: Word) -> None:
    assert judge(apart_by(ciede2000)) == Judged(word, word)


def test_a_shown_half_may_be_a_whole_and_is_decided_as_that() -> None:
    judged = judge(difference(TEAL["P"], TEAL["Q"]))
    assert judged == Judged(shown=Word.SAME, at_worst=Word.TWO_ROWS)


def test_greys_are_judged_harder_if_either_of_the_two_is_one() -> None:
    assert GREY.chroma < 10 < STRONG.chroma
    assert judge(apart_by(0.7)).shown == Word.SAME
    assert judge(apart_by(0.7, other=GREY)).shown == Word.TWO_ROWS
    assert judge(apart_by(0.6, other=GREY)).shown == Word.SAME
    assert judge(apart_by(1.6, other=GREY)).shown == Word.THROUGHOUT


def test_a_multi_coloured_yarn_is_judged_by_its_worst_zone_and_more_kindly() -> None:
    zones = {"steps": apart_by(1.4), "speckle": apart_by(1.0), "ground": apart_by(0.2, other=GREY)}
    judged = judge_by_zone(zones)
    assert (judged.zone, judged.judged.shown) == ("steps", Word.SAME)
    worse = judge_by_zone({**zones, "speckle": apart_by(1.3, uncertainty=0.5)})
    assert (worse.zone, worse.judged) == ("speckle", Judged(Word.SAME, Word.THROUGHOUT))


def test_a_yarn_without_zones_is_not_judged_by_zone() -> None:
    with pytest.raises(BadInput, match="No zone"):
        judge_by_zone({})


def test_without_an_instrument_a_grey_scale_step_has_its_word_too() -> None:
    assert [USUAL.word(CHANGE[step]) for step in Step] == [
        Word.SAME, Word.SAME, Word.THROUGHOUT, Word.THROUGHOUT, Word.SECOND, *[Word.OTHER] * 4
    ]


@pytest.mark.parametrize(
    "bands",
    [
        {"same": 1.6}, {"two_rows": 2.5}, {"throughout": 5}, {"same_in_greys": 0},
        {"same_by_zone": 2.6}, {"grey_below": -1}, {"second": float("nan")},
    ],
)
def test_limits_that_do_not_rise_are_refused(bands: dict[str, float]) -> None:
    with pytest.raises(BadInput, match="do not rise"):
        Bands(**bands)


def test_the_studio_may_set_its_own_limits() -> None:
    strict = Bands(same=0.3, same_in_greys=0.2)
    assert judge(apart_by(0.4), strict).shown == Word.TWO_ROWS


@given(st.floats(0, 20), st.floats(0, 20), st.sampled_from([STRONG, GREY]), st.floats(0, 2))
def test_a_greater_difference_never_gets_a_better_word(
    one: float, other: float, beside: Colour, unsure: float
) -> None:
    words = list(Word)
    less, more = (judge(apart_by(far, unsure, beside)) for far in sorted((one, other)))
    assert words.index(less.shown) <= words.index(more.shown)
    assert words.index(less.at_worst) <= words.index(more.at_worst)
    assert words.index(less.shown) <= words.index(less.at_worst)
