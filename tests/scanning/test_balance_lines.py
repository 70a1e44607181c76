"""What balances send, as plain text in many shapes. The shapes are invented."""

from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from app.calculations.codes import bare_characters, code_of
from app.scanning.balance_lines import LONGEST, NoWeight, Weight, cut, is_weight, read_line

D = Decimal


@pytest.mark.parametrize(("line", "grams", "steady"), [
    ("+   5.12 g", "5.12", None),
    ("  -0.03 g  ", "-0.03", None),
    ("5.10", "5.10", None),
    ("N   + 1.4620 kg ?", "1462.0", False),
    ("602.0mg", "0.602", None),
    ("5.12 g stable", "5.12", True),
    ("unstable 5.1 g", "5.1", False),
    ("28.11.2026 03:20:11 123.4 g", "123.4", None),
    ("ID 12  5.12 G S", "5.12", None),
    ("0,602 g", "0.602", None),
    ("1234.5678 g", "1234.568", None),
])
def test_a_weight_is_read_in_grams_with_its_sign_unit_and_mark(
    line: str, grams: str, steady: bool | None
) -> None:
    said = read_line(line)
    assert isinstance(said, Weight)
    assert (said.figures, said.g, said.steady) == (grams, D(grams), steady)


@pytest.mark.parametrize(("line", "words"), [
    ("2.41 ct", "carats"),
    ("0.180 oz", "ounces"),
    ("1 234.5 g", "two ways"),
    ("12,345 g", "two ways"),
    ("OL", "Too much"),
    ("^^^^^^", "Too much"),
    ("Overload", "Too much"),
    ("UNDER", "below its zero"),
    ("-------", "below its zero"),
])
def test_what_is_no_weight_in_grams_says_why(line: str, words: str) -> None:
    said = read_line(line)
    assert isinstance(said, NoWeight)
    assert words in said.sentence
    assert not said.is_noise


@pytest.mark.parametrize("line", ["1j.12 g", "\xfe5.12 g", "5.12 g 30.2 g", "3 5", "g", "5.1.2 g",
                                  "\x07\x1b[", "5.12\xb0g", ";1.2 g", "5.1; g",
                                  "N- 5.12 g", "5.1k g"])
def test_where_a_line_may_be_garbled_no_weight_is_made_of_it(line: str) -> None:
    said = read_line(line)
    assert isinstance(said, NoWeight)
    assert said.is_noise


def test_lines_end_by_either_mark_and_a_part_waits_for_its_rest() -> None:
    assert cut("5.12 g\r\n5.13 g\r5.14 g\n5.1") == (["5.12 g", "5.13 g", "5.14 g"], "5.1")
    assert cut("\x02 5.12 g\x03") == ([" 5.12 g"], "")
    assert cut("\r\n \r\n") == ([], "")
    assert cut("x" * (LONGEST + 1)) == (["x" * (LONGEST + 1)], "")


def test_a_weight_whose_figures_would_make_a_code_stays_a_weight() -> None:
    assert code_of(bare_characters("1001.005")) is not None
    assert is_weight("1001.005")
    assert not is_weight("26·15·R6F")
    assert not is_weight("2615R6F")


WEIGHTS = st.decimals("0.001", "6000", places=3)


@given(WEIGHTS, st.sampled_from(["{} g", "+ {} g", "N  {:>9} g", "{}g", "{} g ?"]))
def test_every_weight_comes_back_as_it_was_sent(grams: Decimal, shape: str) -> None:
    said = read_line(shape.format(grams))
    assert isinstance(said, Weight)
    assert said.g == grams


@given(WEIGHTS, st.integers(0, 8), st.characters(max_codepoint=255))
def test_one_wrong_byte_in_the_figures_is_never_a_weight(
    grams: Decimal, at: int, wrong: str
) -> None:
    """Where a byte that is no figure comes in the place of one, there is no weight at all."""
    sent = f"{grams:09} g"
    assume(not wrong.isdigit() and wrong not in "+- ,.gG?*;\r\n\x02\x03" and sent[at] != ".")
    lines, _ = cut(sent[:at] + wrong + sent[at + 1:] + "\r")
    assert all(isinstance(read_line(line), NoWeight) for line in lines)


@given(st.binary(max_size=300))
def test_any_bytes_at_all_are_answered(received: bytes) -> None:
    lines, rest = cut(received.decode("latin-1"))
    assert all(read_line(line) for line in lines)
    assert len(rest) <= LONGEST
