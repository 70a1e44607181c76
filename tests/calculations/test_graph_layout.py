"""A branching trail laid out: nothing over another, from left to right, the same every time."""

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.calculations.graph_layout import Gaps, Layout, Place, Size, in_order, lay_out

GAPS = Gaps(across=40, down=12, beside=6)


@st.composite
def trails(draw: st.DrawFn) -> tuple[dict[str, Size], list[tuple[str, str]]]:
    """Up to 14 stations of any size; links lead only from an earlier one to a later."""
    count = draw(st.integers(1, 14))
    sizes = {f"n{one}": Size(draw(st.integers(10, 200)), draw(st.integers(10, 90)))
             for one in range(count)}
    pairs = [(f"n{one}", f"n{other}") for one, other in combinations(range(count), 2)]
    links = draw(st.lists(st.sampled_from(pairs), unique=True, max_size=30)) if pairs else []
    return sizes, links


def meet(one: Place, other: Place) -> bool:
    return (one.x < other.x + other.width and other.x < one.x + one.width
            and one.y < other.y + other.height - 1e-6 and other.y < one.y + one.height - 1e-6)


def crosses(start: tuple[float, float], end: tuple[float, float], place: Place) -> bool:
    """Whether a level stretch of a line goes through a place; bends lie between columns."""
    return (start[1] == end[1] and start[0] < place.x + place.width and end[0] > place.x
            and place.y + 1e-6 < start[1] < place.y + place.height - 1e-6)


def laid(sizes: dict[str, Size], links: list[tuple[str, str]]) -> Layout:
    return lay_out(sizes, links, "n0", GAPS)


@settings(max_examples=60)
@given(trails())
def test_every_station_is_drawn_once_and_none_lies_over_another(
    trail: tuple[dict[str, Size], list[tuple[str, str]]]
) -> None:
    sizes, links = trail
    found = laid(sizes, links)
    assert found.places.keys() == sizes.keys()
    assert not any(meet(one, other) for one, other in combinations(found.places.values(), 2))
    assert all(place.width >= sizes[name].width and place.height == sizes[name].height
               and place.x >= 0 and place.x + place.width <= found.width + 1e-6
               and place.y >= -1e-6 and place.y + place.height <= found.height + 1e-6
               for name, place in found.places.items())


@settings(max_examples=60)
@given(trails())
def test_every_line_goes_from_left_to_right_and_through_no_station(
    trail: tuple[dict[str, Size], list[tuple[str, str]]]
) -> None:
    sizes, links = trail
    found = laid(sizes, links)
    assert set(found.lines) == set(links)
    for (start, end), points in found.lines.items():
        one, other = found.places[start], found.places[end]
        assert points[0] == (one.x + one.width, one.middle)
        assert points[-1] == (other.x, other.middle)
        assert all(before[0] < after[0] for before, after in pairwise(points))
        assert not any(crosses(before, after, place) for before, after in pairwise(points)
                       for place in found.places.values())


@settings(max_examples=20)
@given(trails())
def test_the_same_trail_lies_the_same_way(
    trail: tuple[dict[str, Size], list[tuple[str, str]]]
) -> None:
    assert laid(*trail) == laid(*trail)


def test_two_threads_that_were_given_crossed_are_drawn_apart() -> None:
    names = ("n0", "a", "b", "c", "d")
    found = lay_out(dict.fromkeys(names, Size(10, 10)),
                    [("n0", "a"), ("n0", "b"), ("b", "c"), ("a", "d")], "n0", GAPS)
    above = {name: place.middle for name, place in found.places.items()}
    assert (above["a"] < above["b"]) == (above["d"] < above["c"])


def test_what_leads_to_the_middle_is_drawn_to_it() -> None:
    found = lay_out(dict.fromkeys(("mill", "cone", "jar", "n0"), Size(10, 10)),
                    [("mill", "cone"), ("cone", "n0"), ("jar", "n0")], "n0", GAPS)
    assert {name: place.column for name, place in found.places.items()} == {
        "mill": 0, "cone": 1, "jar": 1, "n0": 2}


def test_links_that_go_round_are_no_trail() -> None:
    with pytest.raises(ValueError, match="round"):
        in_order(["a", "b"], [("a", "b"), ("b", "a")])
