"""What is alike and many is folded; what leads back is met again."""

from hypothesis import given
from hypothesis import strategies as st

from app.calculations.graph_folding import AGAIN, depths, folds, led_past, merged, unwound
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
    into = {"a": "fold", "b": "fold"}
    assert merged(links, into, {7: 6, 8: 2}) == {("pile", "fold"): {7: 2, 8: 2}}
    assert merged(links, into, {7: 1, 8: 2}) == {("pile", "fold"): {7: 1, 8: 2}}


NUMBERS = st.integers(0, 7)
DOWN = st.lists(st.tuples(NUMBERS, NUMBERS).filter(lambda link: link[0] < link[1]), unique=True)


@given(DOWN, st.sets(st.integers(0, 7)))
def test_one_yarn_leads_past_what_is_gone_to_all_it_led_to_and_to_no_more(
    links: list[tuple[int, int]], gone: set[int]
) -> None:
    rows = {(str(start), str(end)): {1: 3} for start, end in links}
    starts, ends = ({link[n] for link in rows} for n in (0, 1))
    away = {str(one) for one in gone} & starts & ends
    found = led_past(rows, sorted(away), {})

    def after(one: str) -> set[str]:
        """All that is met next, on every way through what is gone."""
        met = [end for start, end in rows if start == one]
        return {there for end in met for there in (after(end) if end in away else {end})}

    stay = (starts | ends) - away
    assert {(start, end) for start, end in found} == {
        (start, end) for start in stay for end in after(start)}
    assert all(yarn == {1: 3} for yarn in found.values())


def test_yarn_that_only_passed_with_other_is_not_led_to_where_that_went() -> None:
    links = {("lot a", "wash"): {1: 6}, ("lot b", "wash"): {2: 6}, ("wash", "shelf"): {1: 6},
             ("wash", "pile"): {2: 2}, ("pile", "sold"): {3: 2}}
    assert led_past(links, ["wash", "pile"], {3: {2}}) == {
        ("lot a", "shelf"): {1: 6}, ("lot b", "sold"): {3: 2}}


def test_where_yarn_begins_or_ends_a_station_stays() -> None:
    links = {("pile", "shelf"): {1: 2}, ("lot", "pile of minis"): {2: 3}}
    assert led_past(links, ["pile", "pile of minis"], {}) == links
