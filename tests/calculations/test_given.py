"""What cannot be so is refused in a sentence."""

from decimal import Decimal

import pytest

from app.calculations.given import a_share, more_than_nothing, not_below_nothing
from app.problems import BadInput

D = Decimal


@pytest.mark.parametrize("value", ["0", "-3", "NaN", "Infinity"])
def test_a_weight_of_nothing_or_less_or_no_number_is_refused(value: str) -> None:
    with pytest.raises(BadInput):
        more_than_nothing("dry weight", D(value), "g")


def test_the_refusal_says_what_was_given_and_what_to_do() -> None:
    with pytest.raises(BadInput) as refused:
        more_than_nothing("dry weight", D(-3), "g")
    assert refused.value.what == "The dry weight is given as -3 g, and it must be more than 0."
    assert refused.value.next_step == "Look at the dry weight again; nothing was reckoned from it."


def test_nothing_may_be_where_nothing_is_an_answer() -> None:
    not_below_nothing("pick-up", D(0))
    with pytest.raises(BadInput, match="0 or more"):
        not_below_nothing("pick-up", D("-0.1"))


def test_a_share_lies_between_none_and_all() -> None:
    a_share("humidity", D(0))
    a_share("humidity", D(1))
    for value in (D("1.01"), D("-0.01"), D("NaN")):
        with pytest.raises(BadInput, match="between 0 and 1"):
            a_share("humidity", value)
