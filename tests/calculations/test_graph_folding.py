"""What is alike and many is folded; what leads back is met again."""

from hypothesis import given
from hypothesis import strategies as st

from app.calculations.graph_folding import AGAIN, depths, folds, merged, unwound
from app.calculations.graph_layout import in_order

LINKS = st.lists(st.tuples(st.sampled_from("abcdef"), st.sampled_from("abcdef")), unique=True)


@given(LINKS)
def test_unwound_links_never_go_round_and_none_is_lost(links: list[tuple[str, str]]) -> None:
    found = unwound(links)
    assert sorted((start, end.removesuffix(AGAIN)) for start, end in found) == sorted(links)
    things = {one for link in found for one in link}
    assert set(in_order(sorted(things), found)) == things


def test_a_load_that_leads_back_to_an_earlier_one_is_drawn_again() -> None:
    assert unwound([("wash", "rail"), ("rail", "wash")]) == (
        ("wash", "rail"), ("rail", f"wash{AGAIN}"))


def test_how_deep_a_station_lies_is_its_longest_way() -> None:
    assert depths("abc", [("a", "b"), ("b", "c"), ("a", "c")]) == {"a": 0, "b": 1, "c": 2}


def test_more_than_may_stand_singly_are_folded_until_they_are_opened() -> None:
    stages = {f"lot:{n}": "lots" for n in range(8)} | {"cone:1": "cones"}
    most = {"lots": 6, "cones": 6}
    (fold,) = folds(stages, most, (), 3)
    assert (fold.key, fold.of, len(fold.left), fold.opened) == ("lots", 8, 8, False)
    (fold,) = folds(stages, most, {"lots"}, 3)
    assert (fold.of, fold.left, fold.opened) == (8, tuple(f"lot:{n}" for n in range(3, 8)), True)
    assert folds(stages, most, {"lots"}, 8) == ()


def test_links_of_what_is_folded_carry_all_the_yarn_of_theirs() -> None:
    links = {("pile", "a"): {7: 1}, ("pile", "b"): {7: 1, 8: 2}}
    assert merged(links, {"a": "fold", "b": "fold"}) == {("pile", "fold"): {7: 2, 8: 2}}
