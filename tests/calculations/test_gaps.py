"""Gaps by what they cost, and what is known of no price."""

from app.calculations.gaps import JAR, STOCK, Gap, jar_gap_counts, ranked, worth


def gap(name: str, price: int | None = None, mg: int | None = None) -> Gap:
    return Gap(STOCK if price else JAR, name, "", mg, None, "", price)


def test_the_dearest_come_first_then_the_heaviest_without_a_price() -> None:
    some = [gap("light", mg=6_000), gap("cheap", 900), gap("heavy", mg=-7_000), gap("dear", 2_600)]
    assert [one.name for one in ranked(some)] == ["dear", "cheap", "heavy", "light"]


def test_what_is_found_takes_nothing_off_what_is_missing() -> None:
    assert worth([gap("lost", 2_600), gap("found", -2_600), gap("jar", mg=6_000)]) == (2_600, 1)
    assert worth([]) == (0, 0)


def test_a_jar_counts_from_two_grams_and_a_hundredth_of_what_it_should_hold() -> None:
    assert not jar_gap_counts(-3_000, 100_000)
    assert jar_gap_counts(-3_001, 100_000)
    assert jar_gap_counts(3_001, 100_000)
