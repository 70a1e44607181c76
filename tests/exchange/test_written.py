"""Numbers, days and cones' numbers as people write them."""

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.codes import Kind, numbered
from app.exchange.cells import Cell
from app.exchange.written import (
    COMMA,
    GROSS,
    MOISTURE,
    POINT,
    TARE,
    WRAP,
    Measure,
    amount,
    cone_number,
    day,
    decimal_marks,
    money,
    number_in,
    pieces,
    readings,
)
from app.problems import BadInput

NOW = datetime(2026, 4, 6, 8, tzinfo=UTC)
NEITHER: frozenset[str] = frozenset()


@pytest.mark.parametrize(("text", "unit", "mg"), [
    ("1.462,5", "g", 1_462_500), ("1,462.5", "g", 1_462_500), ("1 462 g", "", 1_462_000),
    ("1\u00a0462,5 g", "", 1_462_500), ("1'462.5", "g", 1_462_500), ("1’462,5g", "", 1_462_500),
    ("1.462 kg", "", 1_462_000), ("1,462 kg", "g", 1_462_000), ("1.46", "kg", 1_460_000),
    ("1462", "", 1_462_000), ("1462", "g", 1_462_000), ("1462.", "g", None),
    ("1,462", "", 1_462_000),
    ("1.462", "", 1_462_000), ("1,462", "g", 1_462_000), ("1.462", "kg", 1_462_000),
    (Decimal("1462.5"), "", 1_462_500), (Decimal("1.4625"), "", 1_462_500),
    (Decimal("1.4625"), "kg", 1_462_500),
])
def test_a_cones_weight_is_understood_in_every_usual_writing(
    text: Cell, unit: str, mg: int | None
) -> None:
    if mg is None:
        with pytest.raises(BadInput, match="no number"):
            amount(text, GROSS, unit, NEITHER)
    else:
        assert amount(text, GROSS, unit, NEITHER) == mg


@pytest.mark.parametrize(("text", "unit", "why"), [
    ("12x", "g", "“x” is no unit for the weight of a cone"), ("x12", "g", "no number"),
    ("1.4.62", "g", "no number"), ("1,46,2", "g", "no number"), ("1 46", "g", "no number"),
    ("12 lb", "", "“lb” is no unit"), ("1462", "kg", "1,462,000 g cannot be the weight"),
    ("1.462", "lb", "“lb” is no unit"), ("٣٤", "g", "no number"), ("1e3", "g", "“e3” is no unit"),
    ("9" * 60, "g", "no number"), (date(2026, 3, 13), "g", "no number"),
    (Decimal(-64), "g", "-64 g cannot be the weight"), ("NaN", "g", "no number"),
])
def test_what_is_no_weight_says_why(text: Cell, unit: str, why: str) -> None:
    with pytest.raises(BadInput) as refused:
        amount(text, GROSS, unit, NEITHER)
    assert why in refused.value.what


def test_a_number_of_two_meanings_is_taken_only_where_one_of_them_can_be() -> None:
    both_possible = Measure("a test", GROSS.units, 1_000, 10_000_000)
    with pytest.raises(BadInput, match=r"it may be 1.462 g or 1,462 g"):
        amount("1,462", both_possible, "g", NEITHER)
    assert amount("1,462", both_possible, "g", frozenset({POINT})) == 1_462_000
    assert amount("1,462", both_possible, "g", frozenset({COMMA})) == 1_462


def test_what_the_other_rows_prove_outweighs_what_would_be_likely() -> None:
    with pytest.raises(BadInput, match=r"1.462 g cannot be the weight of a cone"):
        amount("1,462", GROSS, "g", frozenset({COMMA}))


def test_an_empty_centre_may_weigh_nothing_but_a_cone_may_not() -> None:
    assert amount("0", TARE, "", NEITHER) == 0
    assert amount("0,064", TARE, "kg", NEITHER) == amount("64", TARE, "", NEITHER) == 64_000
    with pytest.raises(BadInput):
        amount("0", GROSS, "", NEITHER)


def test_moisture_is_a_percentage_or_a_share() -> None:
    for cell in ("13", "13,0 %", "13.0%", Decimal("0.13"), Decimal(13)):
        assert amount(cell, MOISTURE, "", NEITHER) == 130
    with pytest.raises(BadInput, match="cannot be the moisture"):
        amount("95 %", MOISTURE, "", NEITHER)


def test_the_weight_of_a_hundred_metres_may_name_them() -> None:
    assert amount("25.0 g/100 m", WRAP, "", NEITHER) == amount("25,0", WRAP, "g", NEITHER) == 25_000


def test_only_what_has_one_meaning_proves_the_decimal_mark() -> None:
    assert decimal_marks(["1462", "1,462", "1.462", "", Decimal(3), "knots"]) == NEITHER
    assert decimal_marks(["1,462", "63,5"]) == {COMMA}
    assert decimal_marks(["1,462.5"]) == {POINT}
    assert decimal_marks(["1.462.000"]) == {COMMA}
    assert decimal_marks(["0,064"]) == {COMMA}


def written(mg: int, mark: str, gap: str) -> str:
    """A weight in grams as a program of some country writes it."""
    text = f"{Decimal(mg) / 1000:,f}".replace(",", "T").replace(".", "D")
    return text.replace("T", gap).replace("D", mark)


@given(mg=st.integers(50_000, 19_999_999),
       style=st.sampled_from([(POINT, ""), (POINT, ","), (COMMA, ""), (COMMA, "."), (COMMA, " "),
                              (POINT, "'"), (COMMA, "\u202f"), (POINT, "\u00a0")]),
       unit=st.sampled_from(["", " g", "g", " gr"]))
def test_every_weight_comes_back_as_it_was_written(
    mg: int, style: tuple[str, str], unit: str
) -> None:
    mark, gap = style
    text = written(mg, mark, gap) + unit
    assert amount(text, GROSS, "g", frozenset({mark})) == mg


@given(st.text(max_size=50), st.sampled_from(["", "g", "kg"]))
def test_any_text_is_a_possible_weight_or_a_reason(text: str, unit: str) -> None:
    try:
        found = amount(text, GROSS, unit, NEITHER)
    except BadInput:
        return
    assert GROSS.least <= found <= GROSS.most


@given(st.decimals(allow_nan=False, allow_infinity=False, min_value=0, max_value=10**9, places=3))
def test_plain_digits_with_one_mark_have_that_reading(number: Decimal) -> None:
    assert readings(f"{number:f}")[POINT] == number
    assert readings(f"{number:f}".replace(".", ","))[COMMA] == number


@pytest.mark.parametrize(("cell", "number"), [
    ("114", 114), (Decimal(114), 114), ("T-0114", 114), ("C·0114·F", 114), ("c0114f", 114),
    ("T 114", 114), ("", None), ("0114", 114),
])
def test_a_cones_number_is_read_from_code_or_card(cell: Cell, number: int | None) -> None:
    assert cone_number(cell) == number


@pytest.mark.parametrize("cell", ["C·0114·K", "0", "T-0", "cone", Decimal("1.5"), "1234567", "-3",
                                  numbered(Kind.DISC, 31).text, date(2026, 3, 13)])
def test_what_is_no_cones_number_is_told(cell: Cell) -> None:
    with pytest.raises(BadInput, match="no cone's number"):
        cone_number(cell)


@pytest.mark.parametrize("cell", [
    "2026-03-13", "13.03.2026", "13.3.26", "2026/03/13", "13 Mar 2026", "13 March 2026",
    "13/03/2026", "03/13/2026", "13-03-2026", "20260313", date(2026, 3, 13),
    datetime(2026, 3, 13, 9, 30, tzinfo=UTC),
])
def test_a_day_is_read_in_every_usual_writing_and_means_its_noon(cell: Cell) -> None:
    assert day(cell, NOW) == datetime(2026, 3, 13, 12, tzinfo=UTC)


def test_a_day_of_long_ago_is_refused() -> None:
    for cell in ("0001-01-01", "1904-01-01", datetime(1900, 1, 1, tzinfo=UTC)):
        with pytest.raises(BadInput, match="too long ago"):
            day(cell, NOW)


def test_today_is_now_and_tomorrow_is_refused() -> None:
    assert day("2026-04-06", NOW) == NOW
    with pytest.raises(BadInput, match="has not come yet"):
        day("2026-04-07", NOW)


@pytest.mark.parametrize(("cell", "why"), [
    ("3/4/2026", "may be two days"), ("31/31/2026", "may be two days, or none"),
    ("yesterday", "no day"), (Decimal(46094), "no day"), ("32.1.2026", "no day"),
])
def test_a_day_of_two_meanings_is_refused(cell: Cell, why: str) -> None:
    with pytest.raises(BadInput, match=why):
        day(cell, NOW)


def test_a_day_that_reads_alike_both_ways_is_no_question() -> None:
    assert day("3/3/2026", NOW).day == 3


@pytest.mark.parametrize(("written", "hundredths", "currency"), [
    ("24.00", 2400, ""), ("24,00 €", 2400, "€"), ("€ 24.00", 2400, "€"), ("EUR24", 2400, "eur"),
    ("1.024,50", 102450, ""), ("24.5", 2450, ""), (Decimal("24.5"), 2450, ""), ("0", 0, ""),
])
def test_a_price_is_read_in_hundredths_with_its_currency(
    written: Cell, hundredths: int, currency: str
) -> None:
    assert money(written, frozenset()) == (hundredths, currency)


@pytest.mark.parametrize(("written", "why"), [
    ("free", "it is no price"), ("24.000", "it may be two prices"), ("1000000", "no price of yarn"),
    (Decimal("24.005"), "no price of yarn"), ("-", "it is no price"), ("9" * 50, "it is no price"),
])
def test_what_may_be_two_prices_or_none_is_not_taken(written: Cell, why: str) -> None:
    with pytest.raises(BadInput, match=why):
        money(written, frozenset())


def test_the_mark_that_a_list_proves_settles_a_price() -> None:
    assert money("24.000", frozenset({COMMA})) == (2_400_000, "")
    assert number_in("€ 1.024,50") == "1.024,50"
    assert number_in("free") == ""


@pytest.mark.parametrize(("written", "count"), [("2", 2), ("2.0", 2), (Decimal(3), 3), ("12", 12)])
def test_a_count_is_whole(written: Cell, count: int) -> None:
    assert pieces(written, 500) == count


@pytest.mark.parametrize(("written", "why"), [
    ("2,5", "no whole number"), ("1.000", "no whole number"), ("two", "no whole number"),
    ("0", "0 cannot be wanted"), ("501", "501 cannot be wanted: from 1 to 500 can"),
    (Decimal("0.5"), "no whole number"),
])
def test_what_is_no_count_is_not_taken(written: Cell, why: str) -> None:
    with pytest.raises(BadInput, match=why):
        pieces(written, 500)


@pytest.mark.parametrize("written", [
    "2026-03-10 09:12", "2026-03-10T09:12:33Z", "10.03.2026 9:12", "2026-03-10 09:12:33 +0200",
    "2026-03-10 09:12:33.123+02:00", "2026-03-10 09:12:33 UTC",
])
def test_the_hour_beside_a_day_is_left_aside(written: str) -> None:
    assert day(written, datetime(2026, 5, 1, tzinfo=UTC)) == datetime(2026, 3, 10, 12, tzinfo=UTC)
