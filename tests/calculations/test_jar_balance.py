"""Jars against their book. The worked figures are common practice, no source."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from app.calculations.jar_balance import JarGap, Use, wrong_jars

D = Decimal


def test_the_jar_with_the_opposite_gap_and_a_use_of_that_size_names_the_lot() -> None:
    gaps = [JarGap("N1", D("-7.7")), JarGap("N2", D("7.6")), JarGap("B1", D("0.2"))]
    uses = [
        Use("N2", "Ferry Ledger", D("7.65")),
        Use("N2", "Coal Hatch", D("12.0")),
        Use("B1", "Whey Blue", D("7.7")),
    ]
    (wrong,) = wrong_jars(gaps, uses)
    assert (wrong.taken_from, wrong.booked_on) == ("N1", "N2")
    assert wrong.about_g == D("7.65")
    assert [use.lot for use in wrong.uses] == ["Ferry Ledger"]


def test_gaps_that_differ_by_more_than_0_3_g_are_no_pair() -> None:
    assert wrong_jars([JarGap("N1", D("-7.7")), JarGap("N2", D("8.0"))], [])
    assert wrong_jars([JarGap("N1", D("-7.7")), JarGap("N2", D("8.01"))], []) == ()


def test_small_gaps_are_weighing_and_accuse_nobody() -> None:
    assert wrong_jars([JarGap("N1", D("-0.3")), JarGap("N2", D("0.5"))], []) == ()
    assert wrong_jars([JarGap("N1", D("-0.5")), JarGap("N2", D("0.3"))], []) == ()
    assert wrong_jars([JarGap("N1", D("-0.4")), JarGap("N2", D("0.4"))], []) != ()


def test_a_jar_that_is_short_alone_names_no_other() -> None:
    assert wrong_jars([JarGap("N1", D("-7.7")), JarGap("N2", D("-7.7"))], []) == ()


def test_two_jars_that_fit_are_both_told_the_closer_first() -> None:
    gaps = [JarGap("N1", D("-7.7")), JarGap("N2", D("7.5")), JarGap("K1", D("7.7"))]
    assert [wrong.booked_on for wrong in wrong_jars(gaps, [])] == ["K1", "N2"]


def test_a_pair_without_a_use_of_that_size_is_told_with_none() -> None:
    gaps = [JarGap("N1", D("-7.7")), JarGap("N2", D("7.7"))]
    (wrong,) = wrong_jars(gaps, [Use("N2", "Ferry Ledger", D("3.0"))])
    assert wrong.uses == ()


def test_uses_within_0_3_g_are_told_the_nearest_first() -> None:
    gaps = [JarGap("N1", D("-7.7")), JarGap("N2", D("7.7"))]
    uses = [
        Use("N2", "third", D("8.0")),
        Use("N2", "first", D("7.7")),
        Use("N2", "second", D("7.5")),
        Use("N2", "too small", D("7.39")),
    ]
    (wrong,) = wrong_jars(gaps, uses)
    assert [use.lot for use in wrong.uses] == ["first", "second", "third"]


@given(
    st.lists(st.decimals("0.5", "30", places=2), min_size=1, max_size=8),
    st.data(),
)
def test_a_use_booked_on_the_wrong_jar_is_always_found(
    used: list[Decimal], data: st.DataObject
) -> None:
    """All uses are booked on N2, one of them was tipped out of N1."""
    wrong = data.draw(st.sampled_from(range(len(used))))
    gaps = [JarGap("N1", -used[wrong]), JarGap("N2", used[wrong])]
    uses = [Use("N2", f"lot {place}", g) for place, g in enumerate(used)]
    (found,) = wrong_jars(gaps, uses)
    assert (found.taken_from, found.booked_on, found.about_g) == ("N1", "N2", used[wrong])
    assert f"lot {wrong}" in [use.lot for use in found.uses]
