"""The counter's words: what is left of mixed put-ups, ages and lists."""

from datetime import UTC, datetime, timedelta

import pytest

from app.calculations.codes import Kind, shown
from app.lookups.agreed import Agreed
from app.lookups.bought import Bought
from app.lookups.counter import at_counter
from app.window.benches.counter.words import (
    age_words,
    bought_words,
    left_words,
    offers_words,
    promised_words,
    rest_words,
)
from app.work.bundling import make_plates
from app.work.moving import To, move, put_by
from app.work.offering import OfferIn, offered
from app.work.remaking import cut
from app.work.selling import (
    OrderIn,
    Wanted,
    forget_customer,
    know_customer,
    place_order,
)


@pytest.fixture
def shelf(studio):
    (place,) = studio.do(make_plates, Kind.SHELF, [4])
    return place


def test_minis_and_skeins_are_counted_together_and_told_apart(studio, shelf):
    lot, skeins = studio.tagged(studio.cone(), 3)
    minis = studio.tag(studio.do(cut, skeins[0], 5, "mini", 600), 5)
    studio.do(move, [*skeins[1:], *minis], To("shelf", place=shelf))
    number, counts, more = left_words(studio.book.ask(at_counter, lot))
    assert number == "7"
    assert counts.startswith("pieces left to sell of ")
    assert "5 minis" in counts
    assert "2 skeins" in counts
    assert more == "1,164 m · 7 on shelf 004"
    rest = rest_words(studio.book.ask(at_counter, lot), studio.clock.now)
    assert rest.replace("\u00a0", " ") == (
        "7 wear its tags: 7 on shelf 004; 1 more was made into something else.")
    wanted = Wanted("glove", 2, lot)
    studio.do(place_order, OrderIn("9", studio.clock.now, "web", (wanted,)))
    number, _, more = left_words(studio.book.ask(at_counter, lot))
    assert (number, more.split(" · ")[0]) == ("5", "at least 388 m")


def test_a_promise_that_cannot_be_kept_any_more_is_said(studio, shelf):
    lot, skeins = studio.tagged(studio.cone(), 2)
    studio.do(move, skeins, To("shelf", place=shelf))
    wanted = Wanted("glove", 2, lot)
    studio.do(place_order, OrderIn("9", studio.clock.now, "web", (wanted,)))
    studio.do(move, skeins[:1], To("lost"))
    assert promised_words(studio.book.ask(at_counter, lot)) == (
        "2 are promised to order 9, and 1 of them is not there any more.")


def test_a_put_by_that_is_over_says_since_when_and_an_untagged_lot_says_so(studio, shelf):
    lot, skeins = studio.tagged(studio.cone(), 1)
    studio.do(put_by, skeins, shelf, studio.clock.now + timedelta(days=1))
    later = studio.clock.now + timedelta(days=2)
    rest = rest_words(studio.book.ask(at_counter, lot), later).replace("\u00a0", " ")
    assert rest == "1 was made: 1 put by, over since 7 Apr 2026."
    new = studio.dye(studio.wind(studio.cone(), 2))
    assert rest_words(studio.book.ask(at_counter, new), later) == (
        "No skein of it wears a tag yet.")


def test_the_last_two_offers_are_told_with_whom_and_what_they_said(studio, shelf):
    lot, _ = studio.tagged(studio.cone(), 1)
    near, _ = studio.tagged(studio.cone(), 1)
    assert offers_words(studio.book.ask(at_counter, lot)) == ""
    bo = studio.do(know_customer, "Bo Ek")
    for said in (OfferIn(lot, 5, "redye", "declined"),
                 OfferIn(lot, 2, "nearest lot", "thinks it over", near, 57, bo),
                 OfferIn(lot, 1, "same lot", "taken", customer=bo),  # it is seen where it lies
                 OfferIn(lot, 3, "all new", "taken")):
        studio.do(offered, said)
    told = offers_words(studio.book.ask(at_counter, lot)).splitlines()
    assert told == [
        "Offered 6 Apr 2026, 3 wanted: all new; taken.",
        f"Offered 6 Apr 2026 to Bo Ek, who wanted 2: nearest lot {shown(studio.code(near))}, "
        "0.6 apart; thinks it over."]
    studio.do(forget_customer, bo)
    after = offers_words(studio.book.ask(at_counter, lot))
    assert f"to customer {bo}, who wanted 2" in after
    assert "Bo Ek" not in after


@pytest.mark.parametrize(("days", "said"), [
    (0, "dyed 6 Apr 2026"), (1, "dyed 6 Apr 2026, 1 day ago"), (13, "dyed 6 Apr 2026, 13 days ago"),
    (15, "dyed 6 Apr 2026, 2 weeks ago"), (75, "dyed 6 Apr 2026, 2 months ago"),
    (800, "dyed 6 Apr 2026, 2 years ago"),
])
def test_the_age_of_a_lot_is_said_in_the_words_of_a_shop(days, said):
    dyed = datetime(2026, 4, 6, 8, tzinfo=UTC)
    assert age_words(dyed, dyed + timedelta(days=days)) == said


def test_purchases_and_lists_are_said_with_the_right_plurals():
    placed = datetime(2026, 4, 6, 8, tzinfo=UTC)
    one = Bought(1, "T1", placed, "shop", "as scanned", None, "skein", 2, back=1)
    assert bought_words(one) == "2 skeins, 6 Apr 2026, order T1, 1 came back"
    waits = Bought(1, "9", placed, "web", "glove", None, "mini", 0, waiting=1, wanted=3)
    assert bought_words(waits) == "1 mini taken, not sent yet, 6 Apr 2026, order 9"
    off = Bought(1, "9", placed, "web", "glove", None, "mini", 0, wanted=3, over=True)
    assert bought_words(off) == "3 minis wanted, called off, 6 Apr 2026, order 9"
    settled = Bought(1, "9", placed, "web", "glove", None, "skein", 2,
                     agreed=Agreed("rows card put in", placed, "LP"))
    assert bought_words(settled) == "2 skeins, 6 Apr 2026, order 9; rows card put in 6 Apr 2026"
    assert age_words(None, placed) == "from before the book"
