"""Parts rounded so that they add up."""

from hypothesis import given
from hypothesis import strategies as st

from app.calculations.adding_up import adding_up


def test_three_weights_that_round_down_together_get_their_tenth_back() -> None:
    assert adding_up((206_240, 413_740, 722_020, 0), 100) == (2063, 4137, 7220, 0)
    assert adding_up((), 100) == ()


@given(st.lists(st.integers(0, 10**7), max_size=6))
def test_no_part_is_off_by_a_step_and_the_sum_is_the_rounded_sum(parts: list[int]) -> None:
    made = adding_up(parts, 100)
    assert all(abs(100 * tenth - part) < 100 for tenth, part in zip(made, parts, strict=True))
    assert abs(100 * sum(made) - sum(parts)) <= 50
