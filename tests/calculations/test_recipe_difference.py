"""The line that says what a new version of a recipe changed."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from app.calculations.recipe_difference import difference_line
from app.calculations.scaling import Component, Per

D = Decimal
BLUE, YELLOW, BLACK = (
    Component("blue", D("0.85")),
    Component("yellow", D("0.22")),
    Component("black", D("0.10")),
)


def test_a_bit_more_yellow_is_one_short_line() -> None:
    more = Component("yellow", D("0.25"))
    assert difference_line([BLUE, YELLOW], [BLUE, more]) == "yellow 0.22 → 0.25 %"


def test_what_came_and_what_went_is_said_with_its_amount() -> None:
    assert (
        difference_line([BLUE, YELLOW], [BLUE, BLACK])
        == "black 0.10 % added; yellow 0.22 % taken out"
    )


def test_another_way_of_counting_is_said_with_both() -> None:
    before, after = Component("salt", D(5)), Component("salt", D(5), Per.LITRE)
    assert difference_line([before], [after]) == "salt 5 % owf → 5 g/L"


def test_another_order_of_pouring_is_a_change_too() -> None:
    assert (
        difference_line([BLUE, YELLOW], [YELLOW, BLUE]) == "poured in another order: yellow, blue"
    )


def test_two_lines_of_one_name_are_told_apart_by_their_order() -> None:
    first, second = Component("acid", D(1)), Component("acid", D("0.5"))
    assert difference_line([first, second], [first]) == "acid 0.5 % taken out"
    assert difference_line([first], [first, second]) == "acid 0.5 % added"


def test_the_same_recipe_has_no_difference() -> None:
    assert difference_line([BLUE, YELLOW], [BLUE, YELLOW]) == ""
    assert difference_line([], []) == ""


RECIPES = st.lists(
    st.builds(
        Component,
        st.sampled_from(["blue", "yellow", "acid"]),
        st.decimals("0.01", "5", places=2),
        st.sampled_from(Per),
    ),
    max_size=5,
)


@given(RECIPES, RECIPES)
def test_a_line_is_there_exactly_when_something_changed(
    before: list[Component], after: list[Component]
) -> None:
    assert bool(difference_line(before, after)) == (before != after)
