"""The counter: what comes back, what was bought before, shelves, put-bys that are over."""

from datetime import timedelta

import pytest

from app.calculations.codes import shown
from app.lookups.skeins import now_of
from app.lookups.tagging import marks_for
from app.window.parts.offer_rows import AT_ONCE, Offer, OfferRows
from app.work.dyeing import name_colourway
from app.work.moving import To, move, put_by
from app.work.selling import OrderIn, Wanted, know_customer, place_order, sell
from app.work.tagging import reprint
from tests.window.benches.at_work import DONE, plate
from tests.window.benches.counter_hands import open_counter, shelf


@pytest.fixture
def counter(qtbot, settings, studio):
    """Two lots of one colourway, two skeins of each sold to Ada, one of the first to nobody."""
    for at in open_counter(qtbot, settings, studio):
        studio.ada = studio.do(know_customer, "Ada Nygård")
        at.one, at.two = (at.shelved(4, studio.shelves[0]) for _ in range(2))
        studio.do(sell, at.one[2][:2], studio.ada)
        studio.do(sell, at.two[2][:2], studio.ada)
        studio.do(sell, at.one[2][2:3])
        at.press("F8")
        yield at


def test_same_as_last_time_shows_every_lot_and_chooses_none(counter):
    counter.ask("nyg")
    assert counter.hand.listed.title.text() == "Ada Nygård"
    assert [row.split(", ")[0] for row in counter.rows] == [
        shown(counter.two[1]), shown(counter.one[1])]
    assert "2 skeins, 6 Apr 2026, order T2" in counter.rows[0]
    assert counter.rows[0].endswith("2 left")
    assert counter.rows[1].endswith("1 left")
    assert "2 m of the yarn or the tag" in counter.hand.listed.hint.text()
    counter.press("Down", "Enter")
    assert counter.card.code.accessibleName() == shown(counter.one[1])
    assert counter.card.put_by_key.accessibleName() == "Put by for Ada Nygård"


def test_a_name_with_words_of_the_colourway_leaves_what_fits(counter):
    counter.ask("ada glove")
    assert len(counter.rows) == 2
    counter.ask("ada plum")
    assert "Nothing in the book is called" in counter.trouble


def test_a_walk_in_is_looked_for_by_month_and_colourway(counter):
    counter.ask("april glove")
    assert counter.hand.listed.title.text() == "Sold without a name in April 2026, “glove”"
    (row,) = counter.rows
    assert row.startswith(f"{shown(counter.one[1])}, 1 skein, 6 Apr 2026, order T3")
    counter.ask("nyg april")
    assert counter.hand.listed.title.text() == "Ada Nygård, in April 2026"
    assert len(counter.rows) == 2
    counter.ask("ada march")
    assert counter.hand.listed.title.text() == (
        "Ada Nygård, in March 2026: nothing is in the book.")
    counter.ask("march glove")
    assert counter.hand.listed.title.text().endswith("nothing is in the book.")


def test_the_number_on_a_slip_is_an_order_scanned_or_typed(counter):
    studio = counter.studio
    studio.do(place_order, OrderIn("1187", studio.clock.now, "web", (Wanted("glove", 1),),
                                   studio.ada))
    counter.scan("1187")
    assert counter.hand.listed.title.text() == "Order 1187, Ada Nygård"
    counter.ask("#T1")
    assert counter.hand.listed.title.text() == "Order T1, Ada Nygård"
    counter.scan("4006381333931")
    assert "a shop's bar code" in counter.trouble


def test_a_sold_tag_comes_back_with_one_key(counter):
    counter.scan(counter.one[3][0])
    counter.press("F10", "4")
    assert counter.said == "1 skein came back of order T1: not looked at yet"
    assert "1 on the table, not on a shelf yet" in counter.rest
    assert not counter.card.back_key.isVisible()
    counter.scan(counter.one[3][0], shelf(7))
    assert counter.left.startswith("2 skeins left")


def test_two_of_five_come_back_after_forty_days_one_of_them_without_its_label(counter):
    studio, (_, code, skeins, marks) = counter.studio, counter.one
    studio.recipe = studio.do(name_colourway, "Ferry Ledger", "#223344")
    _, _, ferry, _ = counter.shelved(2, studio.shelves[1])
    studio.do(sell, [skeins[3], *counter.two[2][2:], *ferry], studio.ada)
    studio.clock.now += timedelta(days=40)
    counter.scan(marks[3])
    counter.press("F10")
    assert counter.question == f"{shown(marks[3])} came back: look at it first"
    assert "Does it smell of smoke, scent or damp?" in counter.words(counter.hand.question)
    counter.scan(shelf(4))  # it is as it left, and lies there
    assert counter.said == "1 skein came back of order T4: as it left, on a shelf again"
    assert counter.left.startswith("1 skein left to sell")
    assert counter.card.code.accessibleName() == shown(code)
    counter.ask("T4")
    counter.press("F10")
    asked = counter.hand.question
    assert asked.base.line.text() == "Tarnfield 4-ply"
    asked.grams.line.setText("101.5")
    counter.fill(asked.looks, "plum")
    assert "Which is it: " in asked.looks.wrong.text()
    counter.fill(asked.looks, "ferry")
    assert counter.said == (
        "1 skein without a tag came back: one of 2 skeins of order T4, as stated")
    (found,) = studio.book.ask(_on_the_table)
    lots = studio.origins(found, "lot")
    assert [(link.word, link.basis) for link in lots] == [("known", "stated")]
    studio.check()


def test_one_comes_back_without_its_tag_and_stays_one_of_those_of_its_order(counter):
    counter.ask("T2")
    counter.press("F10")
    assert counter.hand.question.base.line.text() == "Tarnfield 4-ply"  # all of T2 is
    counter.fill(counter.hand.question.base, "tarn")
    counter.fill(counter.hand.question.grams, "101.5")
    assert counter.said == (
        "1 skein without a tag came back: one of 2 skeins of order T2, as stated")


def test_a_find_asks_its_base_and_weight_and_nothing_more(counter):
    counter.press("F9")
    counter.fill(counter.hand.question.base, "chunky")
    assert "Which base is it: Tarnfield 4-ply?" in counter.hand.question.base.wrong.text()
    counter.fill(counter.hand.question.base, "tarn")
    counter.fill(counter.hand.question.grams, "98")
    assert counter.said == "found a skein of Tarnfield 4-ply without a tag"
    assert counter.question == ""


def test_of_many_rows_all_come_and_the_first_at_once(counter):
    rows = OfferRows()
    counter.window.floor.bench().layout().addWidget(rows)
    rows.show_offers([Offer(str(n), "", "", None) for n in range(50)])
    assert len(rows.rows) == AT_ONCE
    counter.quiet()
    counter._qtbot.waitUntil(lambda: len(rows.rows) == 50)
    assert [row.offer.head for row in rows.rows] == [str(n) for n in range(50)]


def test_a_shelf_alone_says_what_lies_there_and_with_tags_takes_them(counter):
    counter.scan(shelf(4))
    assert counter.hand.listed.title.text() == "Shelf 004: 3 pieces"
    assert sorted(row.rpartition(", ")[2] for row in counter.rows) == ["1 skein", "2 skeins"]
    counter.scan(counter.two[3][2], shelf(7))
    assert counter.basket == []
    counter.scan(shelf(7))
    assert counter.hand.listed.title.text() == "Shelf 007, the window: 1 piece"


def test_lost_given_away_and_thrown_away_sit_behind_one_key(counter):
    counter.scan(counter.two[3][2])
    counter.press("F7")
    counter.scan(DONE)
    assert "DONE answers nothing here. Press 1, 2 or 3" in counter.trouble
    counter.scan(plate(9))
    assert "COUNT 9 answers nothing here. Press 1, 2 or 3" in counter.trouble
    counter.scan(plate(2))
    assert counter.said == "1 skein given away"
    assert "1 given away" in counter.rest
    counter.scan(counter.two[3][3])
    counter.press("F7", "1")
    assert counter.said == "1 skein lost"


def test_what_is_lost_is_not_sold_before_it_lies_on_a_shelf_again(counter):
    counter.studio.do(move, counter.two[2][2:3], To("lost"))
    counter.scan(counter.two[3][2])
    assert not counter.hand.basket_card.sell_key.isEnabled()
    assert "scan the shelf it lies on first" in counter.basket[0]
    counter.scan(shelf(4), counter.two[3][2], DONE)
    assert counter.said == "sold 1 skein, buyer not known"


def test_put_bys_that_are_over_are_named_and_go_back_with_one_key(counter):
    studio = counter.studio
    ends = studio.clock.now + timedelta(days=1)
    studio.do(put_by, counter.two[2][2:], studio.shelves[1], ends, studio.ada)
    studio.clock.now += timedelta(days=2)
    counter.press("F8")
    counter.enter(0), counter.enter(9)
    assert "2 put-bys are over: back on the shelf?" in counter.words()
    assert f"{shown(min(counter.two[3][2:]))} for Ada Nygård until 7 Apr" in counter.words()
    counter.press("Alt+B")
    assert counter.said == "2 skeins of ended put-bys back on the shelf"
    assert studio.book.ask(now_of, counter.two[2][2]).place == "the window"
    assert "put-bys are over" not in counter.words()


def test_a_put_by_that_is_over_is_sold_to_whoever_is_there(counter):
    studio = counter.studio
    ends = studio.clock.now + timedelta(days=1)
    studio.do(put_by, counter.two[2][2:3], studio.shelves[1], ends, studio.ada)
    counter.scan(counter.two[3][2])
    assert "put by for Ada Nygård" in counter.basket[0]
    counter.press("F8")
    studio.clock.now += timedelta(days=2)
    counter.scan(counter.two[3][2])
    assert counter.card.skein.text().endswith("over since 7 Apr 2026.")
    counter.press("F5")
    assert counter.said == "sold 1 skein, buyer not known"


def test_put_bys_that_lie_apart_go_back_to_the_shelf_that_is_scanned(counter):
    studio = counter.studio
    ends = studio.clock.now + timedelta(days=1)
    studio.do(put_by, counter.two[2][2:3], None, ends)
    studio.clock.now += timedelta(days=2)
    counter.enter(0), counter.enter(9)
    assert "1 put-by is over: back on the shelf?" in counter.words()
    counter.press("Alt+B")
    counter.scan(shelf(7))
    assert studio.book.ask(now_of, counter.two[2][2]).place == "the window"


def test_a_void_tag_says_what_took_its_place(counter):
    (mark,) = counter.studio.book.ask(marks_for, counter.two[1], 1, counter.studio.random)
    counter.studio.do(reprint, counter.two[2][2], mark, "{}", ("swing tag", 1))
    counter.scan(counter.two[3][2])
    assert counter.card.note.text() == (
        f"{shown(counter.two[3][2])} is void: {shown(mark)} took its place. "
        f"This skein, {shown(mark)}: on shelf 004.")
    assert counter.basket == []


def test_what_is_no_use_at_the_counter_is_said_and_a_way_offered(counter):
    counter.scan("C00017")
    assert "this bench has no use for it" in counter.trouble
    counter.ask("nobody at all")
    assert "Nothing in the book is called" in counter.trouble


def test_a_pasted_list_of_tags_lies_on_the_counter(counter):
    counter.window.head.scan_line.pasted.emit(
        [counter.one[3][3], *counter.two[3][2:]])
    counter.quiet()
    assert counter.hand.basket_card.sum.text() == "3 skeins of 2 lots · no price is set"
    counter.press("F8")
    assert counter.basket == []


def _on_the_table(connection):
    from sqlalchemy import select

    from app.records import Whereabouts
    return connection.execute(select(Whereabouts.yarn).where(
        Whereabouts.state == "table", Whereabouts.until.is_(None))).scalars().all()


def test_a_shelf_that_a_key_says_is_stated_and_one_that_is_scanned_is_scanned(counter):
    _, _, skeins, marks = counter.one
    counter.scan(marks[0])
    counter.press("F10")
    first = counter.hand.question.keys[0]
    first.click(), first.click()  # pressed twice
    counter.quiet()
    assert counter.said == "1 skein came back of order T1: as it left, on a shelf again"
    assert counter.found == []  # it came back once
    assert counter.question == ""
    counter.scan(marks[1])
    counter.press("F10")
    counter.scan(shelf(7))
    assert [counter.studio.book.ask(_lies_as, one) for one in skeins[:2]] == ["stated", "scanned"]
    counter.studio.check()


def test_a_shelf_in_the_middle_of_a_question_moves_nothing(counter):
    counter.scan(counter.one[3][3])
    counter.press("F6")
    assert counter.question == "Sell to"
    counter.scan(shelf(7))
    assert counter.trouble.startswith("The plate of shelf 007, the window answers nothing here.")
    assert counter.question == "Sell to"
    assert counter.studio.book.ask(now_of, counter.one[2][3]).place != "the window"


def _lies_as(connection, skein):
    from sqlalchemy import select

    from app.records import Whereabouts
    return connection.execute(select(Whereabouts.basis).where(
        Whereabouts.yarn == skein, Whereabouts.state == "shelf",
        Whereabouts.until.is_(None))).scalar()
