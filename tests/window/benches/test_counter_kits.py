"""The counter: a kit's bag is sold whole, or opened."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.lookups.skeins import now_of
from app.work.holding import hold
from app.work.kits import make_kit
from tests.window.benches.at_work import DONE, UNDO
from tests.window.benches.counter_hands import open_counter, shelf

BAG = numbered(Kind.KIT, 1).text


@pytest.fixture
def counter(qtbot, settings, studio):
    """Two of four skeins of one lot are in a bag."""
    for at in open_counter(qtbot, settings, studio):
        at.lot, at.code, at.skeins, at.marks = at.shelved(4, studio.shelves[0])
        studio.do(make_kit, "Weir Cap", at.skeins[:2])
        yield at


def states(counter):
    return [counter.studio.book.ask(now_of, skein).state for skein in counter.skeins[:2]]


def test_a_bag_says_what_is_in_it_and_done_sells_it_whole(counter):
    counter.scan(BAG)
    assert counter.question == f"Kit {shown(BAG)}, Weir Cap: 2 skeins"
    first, second = sorted(shown(mark) for mark in counter.marks[:2])
    assert f"Sluice Keeper's Glove, Tarnfield 4-ply: {first} and {second}." in counter.words()
    counter.scan(DONE)
    assert counter.said == f"sold kit {shown(BAG)}, 2 skeins, buyer not known"
    assert states(counter) == ["sent", "sent"]
    counter.scan(BAG)
    assert f"Kit {shown(BAG)}, Weir Cap, was sold with order T1." in counter.trouble
    counter.scan(UNDO)
    assert states(counter) == ["kit", "kit"]


def test_a_bag_is_sold_to_somebody_by_name(counter):
    counter.scan(BAG)
    counter.press("2")
    counter.type("Bo")
    counter.press("Enter")
    assert counter.said == f"sold kit {shown(BAG)}, 2 skeins"
    counter.ask("bo")
    assert counter.hand.listed.title.text() == "Bo"
    assert "2 skeins" in counter.rows[0]


def test_the_plate_of_a_shelf_opens_it_and_its_skeins_are_left_to_sell(counter):
    counter.scan(counter.code)
    assert counter.left.startswith("2 skeins left to sell")
    counter.scan(BAG, shelf(7))
    assert counter.said == f"opened kit {shown(BAG)}: 2 skeins on the shelf"
    assert counter.left.startswith("4 skeins left to sell")
    counter.scan(BAG)
    assert "was opened: nothing is in it. Scan the tags of its skeins." in counter.trouble


def test_a_bag_is_found_by_its_name_and_by_a_tag_in_it_is_said(counter):
    counter.ask("cap")
    counter.press("Enter")
    assert counter.question.startswith(f"Kit {shown(BAG)}")
    counter.press("F8")
    counter.scan(counter.marks[0])
    assert "in a kit: scan its bag to sell or open it" in counter.basket[0]


def test_a_bag_with_a_hold_in_it_is_not_sold(counter):
    counter.studio.do(hold, "lot", counter.lot, "oil in the yarn")
    counter.scan(BAG)
    asked = counter.hand.question
    assert not any(key.isEnabled() for key in asked.keys)
    assert "oil in the yarn. Ask OW, Osk Wray." in counter.words(asked)
    counter.scan(DONE)
    assert states(counter) == ["kit", "kit"]
