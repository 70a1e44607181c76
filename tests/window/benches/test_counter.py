"""The counter: an answer while the customer stands there, by scans and keys."""

import pytest

from app.calculations.codes import shown
from app.lookups.prices import CURRENCY
from app.lookups.skeins import now_of
from app.work.holding import hold
from app.work.moving import To, move, put_by
from app.work.remaking import cut
from app.work.selling import OrderIn, Wanted, know_customer, place_order, sell, set_price
from app.work.studio import choose
from tests.window.benches.at_work import DONE, plate
from tests.window.benches.counter_hands import open_counter, shelf


@pytest.fixture
def counter(qtbot, settings, studio):
    """Nine skeins of one lot: five free on two shelves, one put by, three sold, one of them to
    nobody known.
    """
    for at in open_counter(qtbot, settings, studio):
        studio.osk = studio.do(know_customer, "Ada Nygård")
        at.lot, at.code, at.skeins, at.marks = at.shelved(9, studio.shelves[0])
        studio.do(move, at.skeins[4:5], To("shelf", place=studio.shelves[1]))
        week = studio.clock.now.replace(day=20)
        studio.do(put_by, at.skeins[5:6], studio.shelves[0], week, studio.osk)
        studio.do(sell, at.skeins[6:8], studio.osk)
        studio.do(sell, at.skeins[8:])
        at.press("F8")
        yield at


def test_the_empty_counter_says_what_the_box_takes(counter):
    assert "Scan or type whatever the customer brings or knows." in counter.words()
    assert not counter.hand.away_key.isVisible()


def test_a_lot_says_first_how_many_are_left_and_then_where_all_of_it_is(counter):
    counter.scan(counter.code)
    assert counter.left == ("5 skeins left to sell 1,940 m · 4 on shelf 004 "
                            "· 1 on shelf 007, the window")
    assert counter.rest == (
        "9 were made: 4 on shelf 004; 1 on shelf 007, the window; 1 put by until 20 Apr 2026 for "
        "Ada Nygård; 2 sold (buyer known); 1 sold (buyer not known).")
    assert counter.card.code.accessibleName() == shown(counter.code)
    assert counter.card.name.text() == "Sluice Keeper's Glove"
    assert "Tarnfield 4-ply · dyed 6 Apr 2026" in counter.card.base.text()


def test_a_part_of_a_code_and_a_name_find_the_lot(counter):
    counter.ask(counter.code[:5] + "??")
    assert counter.hand.read.isVisible()
    counter.press("Enter")
    assert counter.left.startswith("5 skeins left")
    counter.ask("glove tarn")
    assert counter.left.startswith("5 skeins left")


def test_of_several_lots_those_with_some_left_stand_first_and_arrows_choose(counter):
    _, sold_out, skeins, _ = counter.shelved(2, counter.studio.shelves[0])
    counter.studio.do(sell, skeins)
    _, newest, _, _ = counter.shelved(1, counter.studio.shelves[0])
    counter.ask("glove")
    assert [row.split(", ")[0] for row in counter.rows] == [
        shown(newest), shown(counter.code), shown(sold_out)]
    assert [row.rpartition(", ")[2] for row in counter.rows] == ["1 left", "5 left", "0 left"]
    counter.press("Down", "Enter")
    assert counter.left.startswith("5 skeins left")


def test_sister_lots_with_some_left_are_the_next_look(counter):
    other, code, skeins, _ = counter.shelved(2, counter.studio.shelves[0])
    counter.scan(counter.code)
    look = counter.hand.next_look
    assert look.isVisible()
    assert [(row.offer.head, row.offer.aside) for row in look.rows.rows] == [
        (shown(code), "its jars not known")]
    counter.press("Down", "Enter")
    assert counter.card.code.accessibleName() == shown(code)
    assert [row.offer.head for row in look.rows.rows] == [shown(counter.code)]
    counter.studio.do(sell, skeins)
    counter.scan(counter.code)
    assert not look.isVisible()


def test_a_tag_says_its_lot_and_where_this_very_skein_is(counter):
    counter.scan(counter.marks[6])
    assert counter.card.skein.text() == (
        f"This skein, {shown(counter.marks[6])}: sold 6 Apr 2026 to Ada Nygård, order T1.")
    assert counter.basket == []
    counter.scan(counter.marks[0])
    assert "on shelf 004" in counter.card.skein.text()
    assert len(counter.basket) == 1


def test_one_key_sells_what_was_scanned_to_nobody_known(counter):
    counter.studio.do(set_price, 1, "skein", 2450)
    counter.scan(*counter.marks[:2])
    assert counter.hand.basket_card.sum.text() == "2 skeins of 1 lot · 49.00"
    assert counter.basket[0] == f"{shown(counter.marks[0])}, 24.50"
    counter.press("F5")
    assert counter.said == "sold 2 skeins, buyer not known"
    assert counter.basket == []
    assert counter.left.startswith("3 skeins left")


def test_what_is_put_by_is_named_before_it_is(counter):
    counter.scan(counter.code)
    counter.press("F3")
    assert counter.question == f"Put by some of {shown(counter.code)}"
    counter.press("F8")
    counter.scan(counter.marks[0])
    counter.press("F3")
    assert counter.question == "Put by what lies on the counter"


def test_a_price_stands_with_the_studios_currency(counter):
    counter.studio.do(set_price, 1, "skein", 2450)
    counter.studio.do(choose, {CURRENCY: "EUR"})
    counter.scan(counter.marks[0])
    assert counter.basket[0] == f"{shown(counter.marks[0])}, 24.50 EUR"
    assert counter.card.price.text() == "24.50 EUR each"


def test_a_promise_asks_the_put_up_where_several_lie_free(counter):
    studio = counter.studio
    minis = studio.tag(studio.do(cut, counter.skeins[0], 5, "mini", 600), 5)
    studio.do(move, minis, To("shelf", place=studio.shelves[0]))
    counter.scan(counter.code)
    counter.press("F4")
    asked = counter.hand.question
    counter.fill(asked.how_many, "5")
    assert asked.how_many.wrong.text() == "4 can still be promised, not 5."
    counter.fill(asked.form, "ball")
    assert asked.form.wrong.text() == "Which is it: skein or mini?"
    asked.form.line.setText("mini")
    counter.fill(asked.whom.field, "Bo")
    assert counter.said == f"promised 5 minis of {shown(counter.code)}, order T3"
    assert counter.left.startswith("4 pieces left to sell")


def test_done_sells_by_the_scanner_alone(counter):
    counter.scan(counter.marks[0], DONE)
    assert counter.said == "sold 1 skein, buyer not known"
    counter.scan(DONE)
    assert counter.trouble.startswith("Nothing lies on the counter.")


def test_a_bounce_counts_once_and_a_later_scan_asks_to_take_it_out(counter):
    counter.bounce(counter.marks[0])
    assert len(counter.basket) == 1
    assert counter.question == ""
    counter.scan(counter.marks[1])
    counter.scan(counter.marks[0])
    assert counter.question == f"Take {shown(counter.marks[0])} out?"
    counter.press("F8")
    assert len(counter.basket) == 2
    counter.scan(counter.marks[1], DONE)
    assert [row.split(",")[0] for row in counter.basket] == [shown(counter.marks[0])]


def test_it_is_sold_to_a_known_customer_by_a_name_that_was_chosen(counter):
    counter.scan(counter.marks[0])
    counter.press("F6")
    counter.type("ada")
    counter.press("Enter")
    counter.press("Enter")
    now = counter.studio.book.ask(now_of, counter.skeins[0])
    assert (now.state, now.customer) == ("sent", counter.studio.osk)
    assert "Ada" not in counter.said


def test_a_new_name_makes_a_new_customer(counter):
    counter.scan(counter.marks[0])
    counter.press("F6")
    counter.type("Bo")
    counter.press("Enter")
    now = counter.studio.book.ask(now_of, counter.skeins[0])
    assert now.customer not in (None, counter.studio.osk)
    counter.ask("bo")
    assert counter.hand.listed.title.text() == "Bo"


def test_put_by_names_the_marks_to_fetch_and_keeps_them_a_week(counter):
    counter.scan(counter.code)
    counter.press("F3")
    counter.type("2")
    first = sorted(counter.marks[:4])[:2]
    assert counter.hand.question.fetch.text() == (
        f"Fetch {first[0][-2:]} and {first[1][-2:]} from shelf 004.")
    counter.press("Enter")
    counter.type("Bo")
    counter.press("Enter")
    assert counter.said == "put by 2 skeins until 13 Apr 2026"
    assert counter.left.startswith("3 skeins left")
    assert counter.rest.count("put by") == 2
    assert "2 put by until 13 Apr 2026 for Bo" in counter.rest


def test_what_was_scanned_is_put_by_on_the_shelf_that_is_scanned(counter):
    counter.scan(counter.marks[1], counter.marks[2])
    counter.press("F3")
    counter.scan(shelf(7))
    assert counter.hand.question.there.text() == "They are laid on shelf 007, the window."
    counter.type("Bo")
    counter.press("Enter")
    now = counter.studio.book.ask(now_of, counter.skeins[1])
    assert (now.state, now.place) == ("put by", "the window")


def test_another_day_is_read_and_what_is_no_day_keeps_what_was_typed(counter):
    counter.scan(counter.code)
    counter.press("F3")
    asked = counter.hand.question
    counter.fill(asked.whom.field, "Bo")
    assert counter.said == "put by 1 skein until 13 Apr 2026"
    counter.press("F3")
    asked = counter.hand.question
    asked.whom.field.line.setText("Cy")
    counter.fill(asked.until, "soon")
    assert "“soon” is no day that can be read." in asked.until.wrong.text()
    assert asked.until.line.text() == "soon"
    counter.fill(asked.until, "friday")
    assert counter.said == "put by 1 skein until 10 Apr 2026"


def test_no_more_is_put_by_or_promised_than_is_left(counter):
    counter.scan(counter.code)
    for key in ("F3", "F4"):
        counter.press(key)
        counter.fill(counter.hand.question.how_many, "6")
        wrong = counter.hand.question.how_many.wrong
        assert wrong.text().startswith("5 can ")
        assert wrong.isVisible()  # Enter settles the field too: the sentence stays
        counter.press("F8")
    assert counter.left.startswith("5 skeins left")


def test_a_promise_counts_down_and_says_for_which_order(counter):
    counter.scan(counter.marks[5], counter.code)
    counter.press("F4")
    counter.scan(plate(4))
    counter.fill(counter.hand.question.whom.field, "Bo")
    assert counter.said == f"promised 4 skeins of {shown(counter.code)}, order T3"
    assert len(counter.basket) == 1  # what was scanned lies there still
    assert counter.left.startswith("1 skein left to sell 388 m")
    assert counter.card.promised.text() == (
        "4 are promised to order T3, and not counted as left.")
    counter.ask("T3")
    assert counter.hand.listed.title.text() == "Order T3, Bo"
    assert "4 skeins wanted, none taken yet" in counter.rows[0]


def test_what_an_order_was_promised_is_not_sold_to_another(counter):
    wanted = Wanted("glove", 5, counter.lot)
    counter.studio.do(place_order, OrderIn("1187", counter.studio.clock.now, "web", (wanted,)))
    counter.scan(counter.marks[0])
    counter.press("F5")
    assert "order 1187 wants 5" in counter.trouble
    assert len(counter.basket) == 1


def test_a_hold_stands_in_its_place_with_whom_to_ask_and_stops_the_sale(counter):
    counter.studio.do(hold, "lot", counter.lot, "oil in the yarn")
    counter.scan(counter.marks[0])
    assert counter.left.startswith("0 skeins left")
    assert counter.rest.startswith("9 were made: 4 on shelf 004, on HOLD; ")
    asks = f"Lot {shown(counter.code)}: oil in the yarn. Ask OW, Osk Wray."
    assert asks in counter.words(counter.card)
    assert not counter.hand.basket_card.sell_key.isEnabled()
    assert asks in counter.words(counter.hand.basket_card)
    assert not counter.card.put_by_key.isEnabled()
    counter.scan(DONE)
    assert counter.trouble.endswith(f"{asks} Nothing was sold.")


def test_a_skein_kept_for_another_is_sold_to_them_alone(counter):
    counter.scan(counter.marks[5])
    assert not counter.hand.basket_card.sell_key.isEnabled()
    assert "put by for Ada Nygård" in counter.basket[0]
    counter.press("F6")
    counter.type("bo")
    counter.press("Enter")
    assert counter.trouble.startswith(f"{shown(counter.marks[5])}: put by for Ada Nygård")
    counter.press("F8")
    counter.ask("ada n")
    assert counter.hand.basket_card.to_key.accessibleName() == "Sell to Ada Nygård"
    counter.press("F6")
    assert counter.said.startswith("sold 1 skein to customer")
