"""What comes back, with its tag and without."""

import pytest

from app.calculations.codes import Kind
from app.lookups.finished import finished_skeins
from app.lookups.present import Amount
from app.lookups.skeins import named_by_tag, now_of
from app.problems import NotFound, Refused
from app.work.bases import describe_base
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.holding import hold
from app.work.matching import new_tag
from app.work.moving import To, move
from app.work.returning import came_back, came_back_untagged, taken_back
from app.work.selling import OrderIn, Wanted, know_customer, place_order, sell, send, take_for
from tests.makers import EACH_MG, tarnfield


@pytest.fixture
def shop(studio):
    """Four skeins were sent with order 1187 to a known buyer, two lie on a shelf."""
    (studio.shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.lot, studio.skeins = studio.tagged(studio.cone(), 6)
    studio.do(move, studio.skeins, To("shelf", place=studio.shelf))
    buyer = studio.do(know_customer, "Ada Nygård")
    (line,) = studio.do(place_order, OrderIn(
        "1187", studio.clock.now, "web", (Wanted("green", 4, studio.lot),), buyer))
    studio.do(take_for, line, studio.skeins[:4])
    studio.do(send, "1187")
    return studio


def counts(shop):
    return {key[0]: amount.count for key, amount in shop.present().items()}


def test_a_tagged_skein_is_itself_again_and_can_be_sold_again(shop):
    done = shop.done(came_back, shop.skeins[:2], "1187")
    assert (done.said, done.findings) == ("2 skeins came back of order 1187", ())
    assert counts(shop) == {"table": 2, "sent, buyer known": 2, "shelf": 2}
    shop.do(move, shop.skeins[:2], To("shelf", place=shop.shelf))
    shop.do(sell, shop.skeins[:1])
    assert shop.book.ask(now_of, shop.skeins[0]).state == "sent"


def test_a_walk_in_return_needs_no_order(shop):
    shop.do(sell, shop.skeins[4:5])
    done = shop.done(came_back, shop.skeins[4:5])
    assert (done.said, done.findings) == ("1 skein came back", ())


def test_one_that_was_never_sold_or_not_with_this_order_is_marked(shop):
    (found,) = shop.done(came_back, shop.skeins[5:], "1187").findings
    assert found.endswith("comes back and was never sold: it was on a shelf.")
    shop.do(sell, shop.skeins[4:5])
    (found,) = shop.done(came_back, shop.skeins[4:5], "1187").findings
    assert "was not sent with order 1187" in found
    with pytest.raises(NotFound, match="There is no order 9"):
        shop.do(came_back, shop.skeins[:1], "9")
    with pytest.raises(NotFound, match="not in the book"):
        shop.do(came_back, [999])


def test_without_its_tag_it_is_one_of_those_that_were_sent(shop):
    back = shop.do(came_back_untagged, 1, 97_000, "1187")
    assert counts(shop) == {"table": 1, "sent, buyer known": 3, "shelf": 2}
    (link,) = shop.origins(back, "lot")
    assert (link.thing, link.word, link.basis) == (shop.lot, "known", "stated")
    assert {link.word for link in shop.origins(back, "yarn") if link.thing in shop.skeins} == {
        "one of a pool"}


def test_the_others_that_come_back_with_their_tags_are_not_the_one_without(shop):
    shop.do(came_back_untagged, 1, 97_000, "1187")
    shop.do(came_back, shop.skeins[:3], "1187")
    assert shop.present() == {
        ("table", "skein"): Amount(4, 4 * EACH_MG), ("shelf", "skein"): Amount(2, 2 * EACH_MG)}


def test_no_more_come_back_than_were_sent(shop):
    shop.do(came_back, shop.skeins[:3], "1187")
    shop.do(came_back_untagged, 1, 97_000, "1187")
    with pytest.raises(Refused, match="Other finds stand for all of these"):
        shop.do(came_back_untagged, 1, 97_000, "1187")
    shop.do(came_back, shop.skeins[3:4], "1187")
    with pytest.raises(Refused, match="No skein of this base is with the buyer of order 1187"):
        shop.do(came_back_untagged, 1, 97_000, "1187")
    shop.do(describe_base, tarnfield(name="Gossamer Lamb"))
    with pytest.raises(Refused, match="No skein of this base"):
        shop.do(came_back_untagged, 2, 97_000, "1187")
    with pytest.raises(Refused, match="No mini of this base"):
        shop.do(came_back_untagged, 1, 20_000, "1187", "mini")


def test_a_skein_without_a_tag_gets_a_new_one_of_its_lot(shop):
    group = shop.wind(shop.cone(), 2)
    shop.dye(group)
    (pile,) = shop.finish(group, red=2)
    (foreign,) = shop.print(pile, 1)
    back = shop.do(came_back_untagged, 1, 97_000, "1187")
    with pytest.raises(Refused, match=r"was printed for .* and this skein is of 26·15·"):
        shop.do(new_tag, back, foreign)


def test_what_is_seen_of_a_return_is_kept_with_it_and_it_may_lie_on_its_shelf_at_once(shop):
    one, other, third, _ = shop.skeins[:4]
    done = shop.done(taken_back, [one], "as it left", "1187", shop.shelf)
    assert done.said == "1 skein came back of order 1187: as it left, on a shelf again"
    assert shop.book.ask(now_of, one).state == "shelf"
    shop.undo()
    assert shop.book.ask(now_of, one).state == "sent"
    shop.do(taken_back, [other], "was wound", "1187", shop.shelf)
    assert shop.book.ask(finished_skeins, [shop.book.ask(named_by_tag, [other])[other].mark])[
        0].second == "was wound by a buyer"
    done = shop.done(taken_back, [third], "smells", None, shop.shelf)
    assert done.said == "1 skein came back: smells"
    assert shop.book.ask(now_of, third).state == "table"
    with pytest.raises(Refused, match="This does not say how it looks"):
        shop.do(taken_back, [one], "well")
    shop.check()


def test_its_shade_narrows_what_an_untagged_return_may_be(shop):
    shop.recipe = shop.do(name_colourway, "Ferry Ledger", "#223344")
    other, skeins = shop.tagged(shop.cone(), 2)
    (line,) = shop.do(place_order, OrderIn("1190", shop.clock.now, "web", (Wanted("any", 3),)))
    shop.do(move, skeins, To("shelf", place=shop.shelf))
    shop.do(take_for, line, [*skeins, shop.skeins[4]])
    shop.do(send, "1190")
    with pytest.raises(Refused, match="of this base and shade is with the buyer"):
        shop.do(came_back_untagged, 1, 97_000, "1190", lots=[999])
    found = shop.do(came_back_untagged, 1, 97_000, "1190", lots=[other])
    assert [link.thing for link in shop.origins(found, "lot")] == [other]
    shop.check()


def test_what_comes_back_under_a_hold_is_marked(shop):
    shop.do(hold, "lot", shop.lot, "oil in the yarn")
    (found,) = shop.done(taken_back, shop.skeins[:1], "not looked at yet", "1187").findings
    assert found.startswith("HOLD: 26·15·")
    assert found.endswith(" may not be sold again: lay it apart, and ask who placed the hold.")
