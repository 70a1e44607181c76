"""Left to sell, by one definition."""

from app.calculations.codes import Kind
from app.lookups.finishing import NO_TIE
from app.lookups.left_to_sell import Promise, left_of, left_to_sell, wanting
from app.work.bundling import make_plates
from app.work.holding import hold
from app.work.moving import To, move
from app.work.remaking import cut, gather
from app.work.selling import OrderIn, Wanted, place_order, take_for


def test_only_tagged_skeins_on_a_shelf_under_no_hold_are_left(studio):
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    group = studio.wind(studio.cone(), 5)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=5)
    skeins = studio.tag(pile, 4)
    assert studio.book.ask(left_to_sell, lot).skeins == ()
    studio.do(move, skeins, To("shelf", place=shelf))
    assert studio.book.ask(left_to_sell, lot).skeins == tuple(skeins)
    studio.do(hold, "yarn", skeins[0], "a stain")
    assert studio.book.ask(left_to_sell, lot).skeins == tuple(skeins[1:])


def test_it_goes_by_the_tag_not_by_descent(studio):
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    group = studio.wind(studio.cone(), 4)
    first = studio.dye(group)
    (pile,) = studio.finish(group, red=4)
    skeins = studio.tag(pile, 4)
    row = studio.do(gather, skeins[:2])
    second = studio.dye(row)
    (again,) = studio.finish(row, **{NO_TIE: 2})
    studio.do(move, studio.tag(again, 2) + skeins[2:], To("shelf", place=shelf))
    free = studio.book.ask(left_of, [first, second])
    assert (free[first].count, free[second].count) == (2, 2)


def test_lines_that_want_some_are_named_oldest_first_and_a_put_up_counts_by_itself(studio):
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    lot, skeins = studio.tagged(studio.cone(), 5)
    minis = studio.tag(studio.do(cut, skeins[0], 5, "mini", 600), 5)
    studio.do(move, [*skeins[1:], *minis], To("shelf", place=shelf))
    lines = [
        studio.do(place_order, OrderIn(number, studio.clock.now, "web", (
            Wanted("green", count, lot, put_up=put_up),)))[0]
        for number, count, put_up in (("90", 1, "skein"), ("88", 4, None), ("91", 2, "mini"))
    ]
    assert studio.book.ask(wanting, lot) == (
        Promise(lines[0], "90", 1), Promise(lines[1], "88", 4), Promise(lines[2], "91", 2))

    def left(put_up=None):
        return studio.book.ask(left_to_sell, lot, put_up).count
    assert (left(), left("skein"), left("mini"), left("ball")) == (2, 2, 2, 0)
    studio.do(take_for, lines[0], skeins[1:2])
    studio.do(take_for, lines[1], skeins[2:4])
    assert studio.book.ask(wanting, lot)[0] == Promise(lines[1], "88", 2)
    assert (left(), left("skein"), left("mini")) == (2, 1, 2)
