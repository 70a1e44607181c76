"""The mass balance of a cone. The worked figures are common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.cone_balance import ConeBalance, Drawn, Gap
from app.calculations.winding import fibre_g, grams_in, metres_in, winding_yield

D = Decimal
TEX, SKEIN_M, MINI_M, END_WASTE_M = D(250), D("412.5"), D("82.5"), D(8)
FIBRE_G = fibre_g(D(1398), D("0.02"), D("0.13"), D("0.16"))
SKEIN_G, MINI_G = grams_in(SKEIN_M, TEX), grams_in(MINI_M, TEX)


def cone_with(skeins: int, lost_g: str = "0") -> ConeBalance:
    tail_m = winding_yield(metres_in(FIBRE_G, TEX), SKEIN_M, MINI_M, END_WASTE_M).tail_m
    return ConeBalance(
        FIBRE_G - D(lost_g),
        (
            Drawn("skeins", skeins, SKEIN_G),
            Drawn("minis", 3, MINI_G),
            Drawn("end waste", 1, grams_in(END_WASTE_M, TEX)),
            Drawn("tail", 1, grams_in(tail_m, TEX)),
        ),
        SKEIN_G,
    )


def test_13_skeins_3_minis_waste_and_tail_leave_nothing_of_the_cone() -> None:
    balance = cone_with(13)
    assert [part.each_g for part in balance.drawn[:2]] == [D("103.125"), D("20.625")]
    assert [round(part.total_g, 1) for part in balance.drawn[2:]] == [D("2.0"), D("1.9")]
    assert abs(balance.unexplained_g) < D("1e-18")
    assert balance.gap is Gap.NONE


@pytest.mark.parametrize(
    ("skeins", "amiss", "gap"),
    [(12, 1, Gap.NOT_BOOKED), (11, 2, Gap.NOT_BOOKED), (14, -1, Gap.BOOKED_TWICE)],
)
def test_a_gap_of_whole_skeins_is_told_as_such(skeins: int, amiss: int, gap: Gap) -> None:
    balance = cone_with(skeins)
    assert abs(balance.unexplained_g - amiss * SKEIN_G) < D("1e-18")
    assert (balance.skeins_amiss, balance.gap) == (amiss, gap)


@pytest.mark.parametrize(
    ("lost_g", "gap"), [("13.9", Gap.NONE), ("14.1", Gap.NOT_KNOWN), ("-50", Gap.NOT_KNOWN)]
)
def test_less_than_a_hundredth_is_nothing_and_half_a_skein_is_not_known(
    lost_g: str, gap: Gap
) -> None:
    assert cone_with(13, lost_g).gap is gap


@given(st.integers(0, 20), st.decimals("-60", "60", places=2))
def test_booked_and_unexplained_make_the_cone(skeins: int, lost_g: Decimal) -> None:
    balance = cone_with(skeins, str(lost_g))
    booked_g = sum(part.total_g for part in balance.drawn)
    assert abs(booked_g + balance.unexplained_g - balance.fibre_g) < D("1e-18")
