"""Left to sell, by one definition."""

from app.calculations.codes import Kind
from app.lookups.left_to_sell import left_of, left_to_sell
from app.work.bundling import make_plates
from app.work.holding import hold
from app.work.moving import To, move
from app.work.remaking import gather


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
    (again,) = studio.finish(row, red=2)
    studio.do(move, studio.tag(again, 2) + skeins[2:], To("shelf", place=shelf))
    free = studio.book.ask(left_of, [first, second])
    assert (free[first].count, free[second].count) == (2, 2)
