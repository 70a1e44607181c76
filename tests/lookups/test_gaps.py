"""What does not add up: jars, cords, tags and stock, the dearest first, and what has no price."""

from datetime import timedelta

from app.calculations.gaps import CONE, CORD, STOCK, TAG, worth
from app.lookups.gaps import balance_gaps
from app.work.matching import find
from app.work.selling import set_price
from app.work.stocktaking import begin_stocktake, met
from app.work.tagging import apply_tag
from app.work.winding import end_cone
from tests.deeds import put, send
from tests.makers import EACH_MG, Studio


def gaps(studio: Studio) -> dict[str, tuple[int | None, int | None]]:
    """{kind: (how many, price)} of a studio with no more than one gap of a kind."""
    found = studio.book.ask(balance_gaps, studio.clock.now + timedelta(days=8))
    return {one.kind: (one.count, one.price) for one in found}


def test_a_book_that_adds_up_has_no_gap(studio: Studio) -> None:
    studio.tagged(studio.cone(), 3)
    assert gaps(studio) == {}


def test_a_short_count_and_a_lost_skein_cost_the_price_of_their_base(studio: Studio) -> None:
    studio.do(set_price, 1, "skein", 2600)
    group = studio.wind(studio.cone(), 6)
    studio.dye(group)
    (pile,) = studio.finish(group, red=4)
    skeins = studio.tag(pile, 4)
    studio.do(put, skeins[:1], "lost")
    assert gaps(studio) == {CORD: (2, 5200), STOCK: (1, 2600)}
    found = studio.book.ask(balance_gaps, studio.clock.now)
    assert [one.kind for one in found] == [CORD, STOCK]
    assert worth(found) == (7800, 0)
    assert found[0].mg == 2 * EACH_MG


def test_a_find_is_worth_what_is_missing_elsewhere_and_is_not_counted_as_missing(
    studio: Studio
) -> None:
    studio.do(set_price, 1, "skein", 2600)
    studio.do(find, 1, 97_000)
    (one,) = studio.book.ask(balance_gaps, studio.clock.now)
    assert (one.count, one.mg, one.price) == (-1, -97_000, -2600)
    assert worth([one]) == (0, 0)


def test_a_skein_that_was_left_without_a_tag_is_missing_after_a_week(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    studio.tag(pile, 2)
    assert studio.book.ask(balance_gaps, studio.clock.now) == ()
    assert gaps(studio) == {CORD: (1, None)}


def test_a_cone_that_ended_a_skein_too_early_says_so(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 11)
    studio.do(end_cone, cone, 3_000)
    ((kind, (count, price)),) = gaps(studio).items()
    (one,) = studio.book.ask(balance_gaps, studio.clock.now)
    assert (kind, count, price) == (CONE, None, None)
    assert "not booked" in one.looks_like or "no number of skeins" in one.looks_like
    assert one.mg is not None
    assert one.mg > EACH_MG / 2


def test_a_tag_that_no_skein_waits_for_is_loose(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3)
    studio.dye(group)
    (pile,) = studio.finish(group, red=3)
    tags = studio.print(pile, 3)
    spare, *_ = studio.print(pile, 1, why="one more, to be sure")
    for tag in tags:
        studio.do(apply_tag, tag)
    assert spare not in tags
    assert gaps(studio) == {TAG: (1, None)}


def test_a_skein_that_is_sold_yet_was_met_is_a_gap_until_it_is_put_right(studio: Studio) -> None:
    studio.do(set_price, 1, "skein", 2600)
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(put, skeins, "shelf", studio.pot)
    count = studio.do(begin_stocktake, studio.pot)
    studio.do(met, count, skeins[1:])
    studio.do(send, skeins)  # after it was met: no wonder
    assert studio.book.ask(balance_gaps, studio.clock.now) == ()
    studio.do(met, studio.do(begin_stocktake, studio.pot), skeins[:1])
    (one,) = studio.book.ask(balance_gaps, studio.clock.now)
    assert (one.kind, one.count, one.price) == (STOCK, -1, -2600)
    assert one.looks_like.startswith("sold by the book, yet met on shelf 001 at the count of")
    assert one.code
    studio.do(put, skeins[:1], "table")
    assert studio.book.ask(balance_gaps, studio.clock.now) == ()
