"""How a little dye is measured out. The worked figures are common practice, no source."""

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from app.calculations.balances import LINE_TOLERANCE, Balance, Rule
from app.calculations.measuring import (
    Dilution,
    Glass,
    MakeUp,
    Pouring,
    Weighing,
    how_to_measure,
    pour_from,
)
from app.calculations.stock import Bottle
from app.problems import BadInput, Refused

D = Decimal
ALL = D(1)
KITCHEN, BENCH = Balance(D("0.1")), Balance(D("0.01"))
SYRINGE, SMALL, CYLINDER, LITRE = (
    Glass(D(10), D("0.1")),
    Glass(D(50), D("0.5")),
    Glass(D(100), D("0.5")),
    Glass(D(1000), D(5)),
)
SHELF = (SYRINGE, CYLINDER, LITRE)
ONE_PERCENT = Bottle(D(1), D(800))


def poured(dye: str, balance: Balance, *bottles: Bottle, strength: Decimal = ALL) -> Pouring:
    way = how_to_measure(D(dye), strength, balance, SHELF, bottles)
    assert isinstance(way, Pouring)
    return way


def test_what_the_balance_can_weigh_is_weighed() -> None:
    assert how_to_measure(D("0.602"), ALL, BENCH, SHELF) == Weighing(
        D("0.60"), D("0.60"), D("0.01") / D("0.60")
    )


def test_weaker_powder_is_weighed_heavier() -> None:
    way = how_to_measure(D("5.117"), D("0.92"), BENCH, SHELF)
    assert isinstance(way, Weighing)
    assert way.powder_g == D("5.56")
    assert way.given_g == D("5.1152")


def test_0_602_g_on_the_kitchen_balance_become_60_ml_of_the_1_percent_bottle() -> None:
    """60.2 mL; the cylinder has a mark at 60.0."""
    way = poured("0.602", KITCHEN, ONE_PERCENT)
    assert (way.take_ml, way.make_up, way.dilutions) == (D("60.0"), None, ())
    assert way.given_g == D("0.6")


def test_4_ml_of_1_percent_are_too_little_and_become_40_ml_of_one_in_ten() -> None:
    way = poured("0.04", BENCH, ONE_PERCENT)
    assert way.dilutions == (Dilution(D(5), D(50), D("0.1")),)
    assert (way.take_ml, way.given_g) == (40, D("0.04"))
    assert way.from_bottle_ml == 5


def test_the_doubt_is_that_of_every_reading_a_mark_off_the_wrong_way() -> None:
    """5 mL by tenths, made up to 50 by halves, of which 40 by halves; and 5.4 g by tenths before,
    made up to 500 mL by fives, of which 60.5 by halves."""
    diluted = poured("0.04", BENCH, ONE_PERCENT)
    assert float(diluted.doubt) == pytest.approx(5.1 / 5 * 50 / 49.5 * 40.5 / 40 - 1)
    made = poured("0.602", KITCHEN, strength=D("0.92"))
    assert float(made.doubt) == pytest.approx(5.5 / 5.4 * 500 / 495 * 61 / 60.5 - 1)


def test_a_trace_is_diluted_once_by_a_hundred_and_a_lesser_one_twice() -> None:
    way = poured("0.0005", BENCH, ONE_PERCENT)
    assert way.dilutions == (Dilution(D(5), D(500), D("0.01")),)
    way = poured("0.00005", BENCH, ONE_PERCENT)
    assert [step.percent for step in way.dilutions] == [D("0.1"), D("0.001")]
    assert (way.take_ml, way.given_g) == (5, D("0.00005"))


def test_without_a_bottle_the_smallest_stock_the_balance_can_make_is_made_up() -> None:
    way = poured("0.602", KITCHEN, strength=D("0.92"))
    assert way.make_up == MakeUp(D("5.4"), D(500), D("0.9936"))
    assert way.take_ml == D("60.5")
    assert abs(way.given_g / D("0.602") - 1) < D("0.005")


def test_an_almost_empty_bottle_is_left_standing() -> None:
    way = poured("0.602", KITCHEN, Bottle(D(1), D(50)))
    assert way.make_up is not None


def test_of_two_bottles_the_one_that_needs_no_dilution_is_taken() -> None:
    way = poured("0.04", BENCH, ONE_PERCENT, Bottle(D("0.1"), D(300)))
    assert (way.stock_percent, way.take_ml, way.dilutions) == (D("0.1"), 40, ())


def test_who_works_from_stock_takes_510_ml_of_the_1_percent_bottle_for_5_117_g() -> None:
    """511.7 mL; the litre cylinder has a mark every 5 mL."""
    way = pour_from(ONE_PERCENT, D("5.117"), SHELF)
    assert way is not None
    assert (way.take_ml, way.given_g) == (510, D("5.1"))
    assert pour_from(Bottle(D(1), D(500)), D("5.117"), SHELF) is None
    with pytest.raises(BadInput, match="dye"):
        pour_from(ONE_PERCENT, D(-1), SHELF)


def test_where_nothing_can_measure_it_it_is_refused_and_said_what_to_fetch() -> None:
    with pytest.raises(Refused) as refused:
        how_to_measure(D("0.04"), ALL, KITCHEN, (), (ONE_PERCENT,))
    assert refused.value.what == (
        "0.04 g of dye cannot be measured with this balance and these glasses; nothing was weighed."
    )
    assert "syringe" in refused.value.next_step


def test_wrong_figures_are_refused() -> None:
    with pytest.raises(BadInput, match="dye"):
        how_to_measure(D(0), ALL, BENCH, SHELF)
    with pytest.raises(BadInput, match="strength"):
        how_to_measure(D(1), D(0), BENCH, SHELF)
    with pytest.raises(BadInput, match="volume of the glass"):
        Glass(D(0), D(1))
    with pytest.raises(BadInput, match="marks"):
        Glass(D(10), D(0))


def test_a_syringe_of_10_ml_by_tenths_gives_5_ml_and_more() -> None:
    assert SYRINGE.least_ml == 5
    assert not SYRINGE.can_measure(D("4.99"))
    assert SYRINGE.can_measure(D(5))
    assert not SYRINGE.can_measure(D("10.01"))


DYES = st.decimals("0.0002", "20", places=4)
STRENGTHS = st.sampled_from([D("0.5"), D("0.78"), D("0.92"), ALL, D("1.07")])
BALANCES = st.builds(
    Balance,
    st.sampled_from([D("1"), D("0.1"), D("0.01"), D("0.001")]),
    st.sampled_from(Rule),
    st.sampled_from([None, D("0.03")]),
)
GLASSES = st.lists(st.sampled_from([SYRINGE, SMALL, CYLINDER, LITRE]), unique=True)
BOTTLES = st.lists(
    st.builds(
        Bottle, st.sampled_from([D(1), D(2), D("0.5"), D("0.1")]), st.integers(0, 900).map(D)
    ),
    max_size=2,
)


@given(DYES, STRENGTHS, BALANCES, GLASSES, BOTTLES)
def test_nobody_is_told_to_weigh_or_pour_less_than_can_be_read(
    dye: Decimal,
    strength: Decimal,
    balance: Balance,
    glasses: list[Glass],
    bottles: list[Bottle],
) -> None:
    try:
        way = how_to_measure(dye, strength, balance, glasses, bottles)
    except Refused:
        assert dye / strength < balance.minimum_g + balance.step_g  # never what can be weighed
        return
    weighed = way.powder_g if isinstance(way, Weighing) else way.make_up and way.make_up.powder_g
    if weighed is not None:
        assert weighed >= balance.minimum_g
        assert weighed % balance.step_g == 0
    for ml in volumes_of(way):
        assert any(g.least_ml <= ml <= g.holds_ml and ml % g.mark_ml == 0 for g in glasses)


@given(DYES, STRENGTHS, BALANCES, GLASSES, BOTTLES)
@example(D("2.4556"), D("0.78"), Balance(D("0.1"), Rule.USP_41, D("0.03")), [], [])
def test_what_is_given_is_what_was_wanted_within_the_steps_of_balance_and_glass(
    dye: Decimal,
    strength: Decimal,
    balance: Balance,
    glasses: list[Glass],
    bottles: list[Bottle],
) -> None:
    try:
        way = how_to_measure(dye, strength, balance, glasses, bottles)
    except Refused:
        assume(False)
    followed = follow(way, strength, Fraction(0))
    assert abs(followed / Fraction(way.given_g) - 1) < Fraction(1, 10**20)
    step = balance.step_g / balance.minimum_g  # USP 41 allows 1.2 times its tolerance here
    largest = max(LINE_TOLERANCE, step)
    assert abs(way.given_g / dye - 1) <= largest / 2 * D("1.02")  # to half a step of the last


@given(DYES, STRENGTHS, BALANCES, GLASSES, BOTTLES, st.integers(-100, 100))
def test_readings_a_step_off_stay_within_the_doubt_that_is_told(
    dye: Decimal,
    strength: Decimal,
    balance: Balance,
    glasses: list[Glass],
    bottles: list[Bottle],
    percent_of_a_step: int,
) -> None:
    try:
        way = how_to_measure(dye, strength, balance, glasses, bottles)
    except Refused:
        assume(False)
    off = Fraction(percent_of_a_step, 100)
    followed = follow(way, strength, off, balance.step_g, glasses)
    assert abs(followed / Fraction(way.given_g) - 1) <= Fraction(way.doubt) + Fraction(1, 10**20)


def volumes_of(way: Weighing | Pouring) -> list[Decimal]:
    if isinstance(way, Weighing):
        return []
    steps = [ml for step in way.dilutions for ml in (step.take_ml, step.to_ml)]
    return [*([way.make_up.to_ml] if way.make_up else []), *steps, way.take_ml]


def follow(
    way: Weighing | Pouring,
    strength: Decimal,
    off: Fraction,
    step_g: Decimal | None = None,
    glasses: Sequence[Glass] = (),
) -> Fraction:
    """The dye that comes of doing what is said, every part read too high and every whole too low
    by this fraction of a step."""

    def read(value: Decimal, by: Fraction) -> Fraction:
        marks = [g.mark_ml for g in glasses if g.can_measure(value) and value % g.mark_ml == 0]
        return Fraction(value) + by * Fraction(min(marks, default=D(0)))

    if isinstance(way, Weighing):
        return (Fraction(way.powder_g) + off * Fraction(step_g or 0)) * Fraction(strength)
    grams_a_ml = Fraction(way.stock_percent) / 100
    if way.make_up is not None:
        powder = Fraction(way.make_up.powder_g) + off * Fraction(step_g or 0)
        grams_a_ml = powder * Fraction(strength) / read(way.make_up.to_ml, -off)
    for step in way.dilutions:
        grams_a_ml *= read(step.take_ml, off) / read(step.to_ml, -off)
    return grams_a_ml * read(way.take_ml, off)
