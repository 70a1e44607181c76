"""The first hour of a new studio, in the real window by scanner and keys, no manual in hand.

Unpack a cone, wind six, pot, wash, hang, trim, tag, shelve, sell two, and take a reorder for
three. Every number is read off the screen; scans, keys and machine seconds are counted.
"""

import pytest

from app.calculations.codes import Kind, numbered
from app.store.journal import verify
from app.work.bundling import make_plates
from tests.window.benches.at_work import DONE, disc
from tests.window.day import count, dye, open_day, receive_one_cone, tag, wind_six

TUB, MACHINE = (numbered(Kind.VESSEL, number).text for number in (1, 2))
RAIL, SHELF = numbered(Kind.RAIL, 1).text, numbered(Kind.SHELF, 4).text


@pytest.fixture
def day(qtbot, settings, studio, monkeypatch):
    """The first morning; the plates hang on the walls."""
    for kind, number, words in ((Kind.VESSEL, 1, "soak tub"), (Kind.VESSEL, 2, "wash basin"),
                                (Kind.RAIL, 1, ""), (Kind.SHELF, 4, "")):
        studio.do(make_plates, kind, [number], words)
    yield from open_day(qtbot, settings, studio, monkeypatch)


def wash_and_hang(day):
    day.enter(5)
    day.scan(MACHINE, disc(31))
    day.sees("6 skeins in 1 bundle")
    day.scan(DONE)
    assert day.said == "wash 1 in wash basin 2: 6 skeins"
    day.scan(RAIL, disc(31), DONE)
    assert day.said == "rail 2 on rail 1: 6 skeins"
    day.sees("rail 1; 6 skeins; since")


def shelve(day):
    """What was just tied on lies on a shelf with one scan of its plate."""
    day.scan(SHELF)
    assert day.said == "6 skeins on shelf 004"


def sell_two(day, code, marks):
    day.enter(9)
    day.scan(marks[0])
    day.sees(code, "6 skeins left to sell", "This skein")
    day.scan(marks[1])
    day.sees("2 skeins of 1 lot")
    day.press("F5")
    assert day.said == "sold 2 skeins, buyer not known"


def reorder_three(day, code, mark):
    """The buyer comes back with the tag of one of the two, and wants three more."""
    day.scan(mark)
    day.sees(code, "4 skeins left to sell",
             "6 were made: 4 on shelf 004; 2 sold (buyer not known).")
    day.press("F4")
    day.press("3", "Enter")
    day.type("Una Fell")
    day.press("Enter")
    assert day.said == f"promised 3 skeins of {code}, order T2"
    day.sees("1 skein left to sell", "3 are promised to order T2, and not counted as left.")


def test_the_first_hour_up_to_a_reorder_for_three(day, capsys):
    receive_one_cone(day)
    wind_six(day)
    code = dye(day)
    wash_and_hang(day)
    count(day)
    marks = tag(day, code)
    shelve(day)
    sell_two(day, code, marks)
    before = day.hands.copy()
    reorder_three(day, code, marks[0])
    assert (day.hands - before) == {"scans": 1, "keys": 12}
    assert day.hands == {"scans": 35, "keys": 52}
    assert day.seconds < 60  # of the machine, the pauses between two scans among them
    with capsys.disabled():
        print(f"\nThe first hour: {day.hands['scans']} scans, "  # noqa: T201
              f"{day.hands['keys']} keys, {day.seconds:.1f} s of the machine")
    assert day.studio.book.ask(verify).entries > 20
