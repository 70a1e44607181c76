from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.code_drawing import draw_lot_code, draw_mark
from app.calculations.codes import (
    Kind,
    bare_characters,
    code_of,
    numbered,
)
from app.scanning.keystrokes import Again, Garbled, Keystrokes, Scanned, Typed, pasted_codes

LOT, OTHER_LOT, SKEIN, DISC = "2615R6F", "2619K44", "2615R6F-7M", numbered(Kind.DISC, 44).text
FOREVER = 10**9


def hear(keys, strokes, start=1000, gap=5):
    """Feed the keys, each after its gap, and wait for the silence."""
    heard, at = [], start
    for stroke in strokes:
        character, after = stroke if isinstance(stroke, tuple) else (stroke, gap)
        at += after
        heard += keys.press(character, at)
    return heard + list(keys.silence(at + FOREVER)), at


def said(heard):
    return "".join(one.text for one in heard if isinstance(one, Typed))


@pytest.mark.parametrize("end", ["\r", "\n", "\t", "\r\n", ""])
def test_a_burst_is_a_scan_whatever_ends_it(end):
    assert hear(Keystrokes(), LOT + end)[0] == [Scanned(LOT)]


def test_a_scan_is_answered_by_the_silence_after_it():
    keys = Keystrokes()
    for n, character in enumerate(LOT + "\r"):
        assert keys.press(character, 1000 + 5 * n) == ()
    assert keys.silence(1035 + 35) == ()
    assert keys.silence(1035 + 36) == (Scanned(LOT),)
    assert not keys.holds()


def test_slow_keys_are_typed_each_for_itself():
    heard, _ = hear(Keystrokes(), "Osk\r", gap=200)
    assert heard == [Typed("O"), Typed("s"), Typed("k"), Typed("\r")]


def test_a_few_quick_keys_are_still_a_persons():
    heard, _ = hear(Keystrokes(), "the\r", gap=20)
    assert said(heard) == "the\r"


def test_quick_letters_without_a_figure_or_an_enter_are_a_persons():
    assert said(hear(Keystrokes(), "there", gap=20)[0]) == "there"


def test_a_prefix_makes_a_scan_of_a_slow_scanner_and_names_it():
    keys = Keystrokes({"~": "pots"})
    assert hear(keys, "~" + LOT + "\r", gap=90)[0] == [Scanned(LOT, "pots")]


def test_a_prefix_alone_was_typed():
    assert hear(Keystrokes({"~": "pots"}), "~")[0] == [Typed("~")]


def test_a_scanner_that_pauses_in_a_code_is_waited_for():
    strokes = [*"2615", ("R", 90), *"6F\r"]
    assert hear(Keystrokes(), strokes)[0] == [Scanned(LOT)]


def test_a_bouncing_trigger_is_told_softly():
    keys = Keystrokes()
    first, at = hear(keys, LOT + "\r")
    second, at = hear(keys, LOT + "\r", start=at + 500)
    third, _ = hear(keys, LOT + "\r", start=at + 5000)
    assert (first, second, third) == ([Scanned(LOT)], [Again(LOT)], [Scanned(LOT)])


def test_two_scanners_may_scan_the_same_plate_one_after_the_other():
    keys = Keystrokes({"~": "pots", "#": "wash"})
    heard, _ = hear(keys, f"~{LOT}\r#{LOT}\r")
    assert heard == [Scanned(LOT, "pots"), Scanned(LOT, "wash")]


def test_a_scanners_memory_is_read_code_by_code():
    heard, _ = hear(Keystrokes(), f"{LOT}\r{SKEIN}\r{DISC}\r")
    assert heard == [Scanned(LOT), Scanned(SKEIN), Scanned(DISC)]


def test_a_second_prefix_within_a_scan_is_two_scanners_at_once():
    heard, _ = hear(Keystrokes({"~": "pots", "#": "wash"}), "~26#261915R6F\rK44\r")
    assert [type(one) for one in heard] == [Garbled]
    assert "one after the other" in heard[0].sentence


def test_what_comes_between_gives_back_what_was_held():
    keys = Keystrokes()
    keys.press("O", 1000)
    assert keys.give_back() == (Typed("O"),)
    assert keys.give_back() == ()


def test_a_clock_that_runs_backwards_only_ends_the_burst():
    keys = Keystrokes()
    keys.press("O", 1000)
    assert keys.press("s", 10) == (Typed("O"),)
    assert keys.silence(FOREVER) == (Typed("s"),)


def test_forty_pasted_codes_are_a_list():
    codes = [draw_lot_code(2026, 19, (), Random(n)).text for n in range(40)]
    for between in ("\n", ", ", ";", " ", "\r\n", "\t"):
        assert pasted_codes(between.join(codes)) == codes


def test_a_wrong_code_stays_in_its_pasted_list():
    assert pasted_codes(f"{LOT}\n2615R6X\n") == [LOT, "2615R6X"]


@pytest.mark.parametrize("text", ["R. Osk, Tallow", "Ferry Ledger May 2026", "26 15 R6F", LOT, ""])
def test_words_and_a_single_code_are_no_list(text):
    assert pasted_codes(text) == []


characters = st.sampled_from("abcxyzOsk 0123456789FHKMRTWXY-\r\t")


@given(st.lists(st.tuples(characters, st.integers(101, 2000)), max_size=60))
def test_whatever_fingers_type_comes_back_whole_and_in_order(strokes):
    heard, _ = hear(Keystrokes({"~": "pots"}), strokes)
    assert said(heard) == "".join(character for character, _ in strokes)
    assert all(isinstance(one, Typed) for one in heard)


@given(st.lists(st.tuples(characters, st.integers(0, 200)), max_size=60))
def test_no_key_is_lost_or_moved_whoever_typed_it(strokes):
    heard, _ = hear(Keystrokes(), strokes)
    kept = "".join(one.text for one in heard)
    expected = "".join(character for character, _ in strokes)
    ends = str.maketrans("", "", "\r\t")
    assert kept.translate(ends) == expected.translate(ends)


def codes(seed):
    random = Random(seed)
    lot = draw_lot_code(2026, random.randint(1, 52), (), random).text
    kind = random.choice([kind for kind in Kind if kind not in (Kind.LOT, Kind.SKEIN)])
    thing = numbered(kind, random.randint(0, 9999))
    return random.choice([lot, draw_mark(lot, (), random).text, thing.text])


@given(
    st.integers(),
    st.integers(),
    st.lists(st.booleans(), min_size=24, max_size=24),
    st.lists(st.integers(0, 35), min_size=24, max_size=24),
)
def test_two_scanners_at_once_never_make_a_third_code(one, other, turns, gaps):
    texts = [codes(one) + "\r", codes(other) + "\r"]
    left, strokes = [*map(list, texts)], []
    for turn, gap in zip(turns, gaps, strict=True):
        side = left[turn] or left[not turn]
        if side:
            strokes.append((side.pop(0), gap))
    heard, _ = hear(Keystrokes(), strokes)
    scans = [scan.text for scan in heard if isinstance(scan, Scanned | Again)]
    taken = {text for text in scans if code_of(bare_characters(text))}
    assert taken <= {text.rstrip() for text in texts}
    assert said(heard) == ""


def test_the_same_code_is_meant_twice_where_another_came_between():
    keys, heard, at = Keystrokes(), [], 1000
    for code in (LOT, DISC, LOT):
        some, at = hear(keys, code + "\r", at)
        heard += some
    assert heard == [Scanned(LOT), Scanned(DISC), Scanned(LOT)]
