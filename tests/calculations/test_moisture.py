"""Moisture: regain and content, weights at another regain, composition on a label."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.moisture import (
    at_regain,
    composition,
    content_of_regain,
    regain_at_humidity,
    regain_of_content,
    regain_of_reading,
    whole_percents,
)

regains = st.decimals("0", "0.4", places=4)
TENTH = Decimal("0.1")
TABLE = tuple(
    (Decimal(h), Decimal(r)) for h, r in [("0.4", "0.10"), ("0.6", "0.15"), ("0.8", "0.22")]
)


@given(regains)
def test_regain_and_content_turn_into_each_other(regain: Decimal) -> None:
    assert abs(regain_of_content(content_of_regain(regain)) - regain) < Decimal("1e-20")


@given(st.decimals("1", "2000", places=3), regains, regains)
def test_a_weight_brought_to_another_regain_and_back_is_the_same(
    mass: Decimal, now: Decimal, then: Decimal
) -> None:
    assert abs(at_regain(at_regain(mass, now, then), then, now) - mass) < Decimal("1e-18")


@pytest.mark.parametrize(
    ("room", "reads"), [("0.10", "94.8"), ("0.16", "100.0"), ("0.18", "101.7")]
)
def test_100_g_at_16_percent_reads_by_the_weather(room: str, reads: str) -> None:
    """Common practice, no source."""
    reading = at_regain(Decimal(100), Decimal("0.16"), Decimal(room))
    assert reading.quantize(TENTH) == Decimal(reads)


def test_a_conditioned_skein_reads_100_9_g_in_a_room_of_13_5_percent_regain() -> None:
    """Common practice, no source."""
    reading = at_regain(Decimal("103.1"), Decimal("0.16"), Decimal("0.135"))
    assert reading.quantize(TENTH) == Decimal("100.9")


def test_the_reference_skein_tells_the_regain() -> None:
    assert regain_of_reading(Decimal("113"), Decimal("100")) == Decimal("0.13")


@pytest.mark.parametrize(
    ("humidity", "regain"),
    [
        ("0.4", "0.10"),
        ("0.5", "0.125"),
        ("0.6", "0.15"),
        ("0.1", "0.10"),
        ("0.75", "0.2025"),
        ("0.95", "0.22"),
    ],
)
def test_between_two_entries_of_the_table_the_line_is_straight(humidity: str, regain: str) -> None:
    assert regain_at_humidity(Decimal(humidity), TABLE) == Decimal(regain)


@given(st.decimals("0", "1", places=3), st.decimals("0", "1", places=3))
def test_a_damper_room_never_makes_drier_yarn(one: Decimal, other: Decimal) -> None:
    drier, damper = sorted((one, other))
    assert regain_at_humidity(drier, TABLE) <= regain_at_humidity(damper, TABLE)


@given(
    st.dictionaries(
        st.sampled_from(["wool", "polyamide", "silk", "linen"]),
        st.decimals("1", "100", places=2),
        min_size=1,
    )
)
def test_a_composition_makes_100_in_full_and_in_whole_numbers(dry: dict[str, Decimal]) -> None:
    percents = composition(dry, dict.fromkeys(dry, Decimal("0.17")))
    assert abs(sum(percents.values()) - 100) < Decimal("1e-20")
    whole = whole_percents(percents)
    assert sum(whole.values()) == 100
    assert all(abs(whole[fibre] - percents[fibre]) < 1 for fibre in dry)


def test_equal_allowances_leave_the_dry_percentages_as_they_are() -> None:
    dry = {"wool": Decimal(75), "linen": Decimal(25)}
    assert composition(dry, dict.fromkeys(dry, Decimal("0.12"))) == dry
