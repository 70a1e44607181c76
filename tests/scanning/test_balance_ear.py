"""A balance listened to: live, standing, printed, silent and garbled."""

from decimal import Decimal

import pytest

from app.problems import BadInput
from app.scanning.balance_ear import BalanceEar, Sends, Wiring, read_frame


def ear(**more) -> BalanceEar:
    return BalanceEar(Wiring("wire", **more))


def grams(one: BalanceEar) -> Decimal | None:
    return one.heard.weight.g if one.heard.weight else None


def test_the_same_figure_for_a_while_stands_where_the_balance_does_not_say() -> None:
    it = ear()
    it.hear(b"5.10 g\r\n", 1.0)
    it.hear(b"5.12 g\r\n", 1.2)
    assert (grams(it), it.heard.stands) == (Decimal("5.12"), False)
    it.hear(b"5.12 g\r\n", 1.9)
    assert not it.heard.stands
    it.hear(b"", 2.1)
    assert it.heard.stands
    it.hear(b"5.13 g\r\n", 2.2)
    assert not it.heard.stands


def test_its_own_marks_count_before_the_clock() -> None:
    it = ear()
    it.hear(b"5.12 g stable\r", 1.0)
    assert it.heard.stands
    it.hear(b"5.12 g ?\r", 5.0)
    assert not it.heard.stands
    marked = ear(moving_mark="*")
    marked.hear(b"5.12 g *\r", 1.0)
    marked.hear(b"5.12 g *\r", 3.0)
    assert not marked.heard.stands
    marked.hear(b"5.12 g\r", 3.1)
    assert marked.heard.stands


def test_a_unit_that_is_left_out_meanwhile_means_that_it_moves() -> None:
    it = ear()
    it.hear(b"5.12 g\r", 1.0)
    it.hear(b"5.12\r", 2.5)
    assert not it.heard.stands


def test_a_line_may_come_in_parts_and_is_read_when_it_is_whole() -> None:
    it = ear()
    it.hear(b"+ 5.", 1.0)
    assert grams(it) is None
    it.hear(b"12 g", 1.1)
    it.hear(b"\r\n", 1.2)
    assert grams(it) == Decimal("5.12")


def test_its_print_key_prints_once_and_a_stream_is_no_printing() -> None:
    it = ear(sends=Sends.PRINTED)
    it.hear(b"5.12 g\r\n", 1.0)
    assert it.heard.printed is not None
    it.hear(b"", 1.1)
    assert it.heard.printed is None
    it.hear(b"5.12 g\r\n", 9.0)
    assert it.heard.printed is not None
    for n in range(50):
        it.hear(b"5.14 g\r\n", 9.02 + n / 50)
        assert it.heard.printed is None
    assert "sends all the time" in it.heard.sentence


def test_silence_and_overload_leave_no_old_weight_behind() -> None:
    it = ear()
    it.hear(b"5.12 g\r\n", 1.0)
    it.hear(b"OL\r\n", 1.1)
    assert (grams(it), it.heard.sentence[:8]) == (None, "Too much")
    it.hear(b"5.12 g\r\n", 1.2)
    assert it.heard.sentence == ""
    it.hear(b"", 4.3)
    assert grams(it) is None
    assert "said nothing for 3 seconds" in it.heard.sentence


def test_one_garbled_line_is_passed_over_and_many_say_what_to_look_at() -> None:
    it = ear()
    it.hear(b"5.12 g\r\n", 1.0)
    it.hear(b"\xfe\x82\r\n", 1.1)
    assert grams(it) == Decimal("5.12")
    it.hear(b"\xfe\x82\r\n\x91\x91\r\n", 1.2)
    assert "speed, bits and parity" in it.heard.sentence
    assert it.heard.lines[0] == "5.12 g"


def test_how_it_is_asked_and_framed_is_written_as_in_its_booklet() -> None:
    assert Wiring(asks_with="P\\r\\n").question == b"P\r\n"
    assert read_frame(" 7e1 ") == "7E1"
    with pytest.raises(BadInput, match="bits and parity"):
        read_frame("9X1")
