"""The counter: a skein with a fault that was told, and one on hold that comes back."""

import pytest

from app.calculations.codes import shown
from app.lookups.recent import entries
from app.lookups.skeins import now_of
from app.work.holding import hold
from app.work.selling import sell
from tests.window.benches.at_work import DONE, GOOD, plate
from tests.window.benches.counter_hands import open_counter, shelf


@pytest.fixture
def counter(qtbot, settings, studio):
    for at in open_counter(qtbot, settings, studio):
        at.lot, at.code, at.skeins, at.marks = at.shelved(4, studio.shelves[0])
        yield at


def test_a_skein_told_faulty_at_the_desk_is_sold_with_the_warning_said_and_kept(counter):
    mark, other = counter.marks[:2]
    counter.enter(0)
    counter.scan(mark)
    counter.press("F")
    counter.scan(plate(1), DONE)
    assert counter.said == "streak on 1 skein"
    counter.enter(9)
    counter.scan(other)
    assert not counter.card.faults.isVisible()
    counter.scan(mark)
    words = "“streak” was told of this skein on 6 Apr 2026; nobody closed it."
    assert counter.card.faults.text() == words
    assert counter.basket == [shown(other), f"{shown(mark)}, {words}"]
    assert counter.hand.basket_card.sell_key.isEnabled()
    counter.press("F5")
    assert counter.said == "sold 2 skeins, buyer not known"
    (kept,) = counter.studio.book.ask(entries, 1)[0].findings
    assert kept == words.replace("this skein", shown(mark))
    assert counter.found == [kept]


def test_seen_good_ends_the_warning_and_says_that_the_fault_counts_on(counter):
    counter.scan(counter.marks[0])
    counter.press("F1")
    counter.scan(plate(1), DONE)
    assert counter.card.faults.isVisible()
    counter.scan(GOOD)
    (said,) = counter.found
    assert said.startswith(f"“streak” was told of {shown(counter.marks[0])} on 6 Apr 2026, and "
                           "seen good does not take that back")
    assert not counter.card.faults.isVisible()
    counter.scan(DONE)
    assert counter.said == "sold 1 skein, buyer not known"
    assert counter.studio.book.ask(entries, 1)[0].findings == ()


def test_one_on_hold_that_comes_back_says_so_and_its_first_answer_keeps_it_from_sale(counter):
    studio, mark = counter.studio, counter.marks[0]
    studio.do(sell, counter.skeins[:2])
    studio.do(hold, "lot", counter.lot, "oil in the yarn")
    counter.scan(mark)
    (line,) = counter.card.holds
    assert "oil in the yarn. Ask OW" in counter.words(line)
    assert "on HOLD" not in counter.rest.split("; ")[-1]  # of the two that are sold
    counter.press("F10")
    asked = counter.hand.question
    assert f"Lot {shown(counter.code)}: oil in the yarn. Ask OW" in counter.words(asked)
    assert "may not be sold again while the hold stands" in counter.words(asked)
    assert [key.accessibleName() for key in asked.keys] == [
        "Keep it apart, look at it later", "As it left", "Was wound: a second",
        "It smells: report it"]
    assert (asked.keys[0].key, asked.keys[0].hasFocus()) == ("1", True)
    counter.press("1")
    assert counter.said == "1 skein came back of order T1: not looked at yet"
    assert counter.found == [f"HOLD: {shown(mark)} may not be sold again: lay it apart, and ask "
                             "who placed the hold."]
    assert studio.book.ask(now_of, counter.skeins[0]).state == "table"
    counter.press("F8")
    counter.scan(counter.marks[1])
    counter.press("F10", "2")  # as it left: no shelf is asked for
    assert counter.question == ""
    assert studio.book.ask(now_of, counter.skeins[1]).state == "table"
    studio.check()


def test_the_plate_of_a_shelf_still_says_where_a_held_one_lies(counter):
    counter.studio.do(sell, counter.skeins[:1])
    counter.studio.do(hold, "lot", counter.lot, "oil in the yarn")
    counter.scan(counter.marks[0])
    counter.press("F10")
    counter.scan(shelf(4))
    assert counter.said.endswith("as it left, on a shelf again")
    assert counter.found[0].startswith("HOLD: ")
