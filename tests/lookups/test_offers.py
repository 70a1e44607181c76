"""From which lots a line can be filled now."""

from typing import Any

import pytest

from app.lookups.offers import Offer, offers
from app.lookups.orders import open_orders
from app.problems import Refused
from app.work.holding import hold
from app.work.moving import To, move
from app.work.remaking import cut
from app.work.selling import Wanted, take_for
from tests.lookups.shop import GLOVE, ordered, shelved
from tests.makers import Studio


def offered(studio: Studio, number: str = "1042") -> tuple[Offer, ...]:
    (order,) = [one for one in studio.book.ask(open_orders) if one.number == number]
    found: Any = studio.book.ask(offers, order.lines)
    return tuple(found[order.lines[0].id])


def lots(studio: Studio, number: str = "1042") -> list[tuple[int, int]]:
    return [(offer.lot, offer.count) for offer in offered(studio, number)]


def test_a_lot_that_can_fill_the_line_comes_first_the_smallest_of_them(studio: Studio) -> None:
    (two, _), (five, _), (three, _) = shelved(studio, 2, 5, 3)
    ordered(studio, "1042", 3)
    assert lots(studio) == [(three, 3), (five, 5), (two, 2)]
    code = studio.code(three) or ""
    assert offered(studio)[0].words == f"{code[:2]}·{code[2:4]}·{code[4:]}: 3 on shelf 005"


def test_the_lot_that_was_begun_with_comes_before_all(studio: Studio) -> None:
    (five, skeins), (two, _) = shelved(studio, 5, 2)
    (line,) = ordered(studio, "1042", 3)
    assert lots(studio)[0] == (five, 5)
    studio.do(take_for, line, skeins[:1])
    assert lots(studio) == [(five, 4), (two, 2)]


def test_what_is_held_or_promised_to_another_is_not_offered(studio: Studio) -> None:
    (three, skeins), (two, _) = shelved(studio, 3, 2)
    ordered(studio, "1041", Wanted(GLOVE, 2, three))
    ordered(studio, "1042", 1)
    assert lots(studio) == [(three, 1), (two, 2)]
    studio.do(hold, "yarn", skeins[0], "stain")
    assert lots(studio) == [(two, 2)]


def test_a_promised_lot_is_the_only_one_and_its_own_promise_is_free_for_it(studio: Studio) -> None:
    (three, _), _ = shelved(studio, 3, 2)
    ordered(studio, "1042", Wanted(GLOVE, 2, three, colourway=1))
    assert lots(studio) == [(three, 3)]


def test_skeins_of_one_lot_on_two_shelves_are_told_apart(studio: Studio) -> None:
    (_, skeins), (_, others) = shelved(studio, 3, 1)
    place = 1 + len(studio.discs) + 3
    studio.do(move, skeins[:1], To("shelf", place=place))
    studio.do(move, others, To("table"))
    ordered(studio, "1042", 3)
    assert [places for offer in offered(studio) for places in offer.places] == [
        ("shelf 003", 2), ("shelf 004", 1)]


def test_another_base_put_up_or_words_alone_are_offered_nothing(studio: Studio) -> None:
    shelved(studio, 3)
    for number, wanted in (("1", Wanted(GLOVE, 1, colourway=1, put_up="mini")),
                           ("2", Wanted("Gift card", 1))):
        ordered(studio, number, wanted)
        assert lots(studio, number) == []


def test_a_base_alone_is_offered_any_colourway_and_a_full_line_nothing(studio: Studio) -> None:
    ((lot, skeins),) = shelved(studio, 2)
    (line,) = ordered(studio, "1042", Wanted("any Tarnfield", 1, base=1))
    assert lots(studio) == [(lot, 2)]
    studio.do(take_for, line, skeins[:1])
    (order,) = studio.book.ask(open_orders)
    assert studio.book.ask(offers, order.lines) == {}


def test_one_put_up_that_is_promised_is_not_offered_because_another_lies_free(
    studio: Studio,
) -> None:
    ((lot, skeins),) = shelved(studio, 3)
    minis = studio.tag(studio.do(cut, skeins[0], 5, "mini", 600), 5)
    studio.do(move, minis, To("shelf", place=1 + len(studio.discs)))
    ordered(studio, "1041", Wanted(GLOVE, 1, lot, put_up="skein"))
    (line,) = ordered(studio, "1042", Wanted(GLOVE, 2, colourway=1, put_up="skein"))
    assert lots(studio) == [(lot, 1)]
    assert ": 1 of the 2 on shelf 003" in offered(studio)[0].words
    with pytest.raises(Refused, match="order 1041 wants 1"):
        studio.do(take_for, line, skeins[1:])
