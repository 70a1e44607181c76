"""One tagged skein, now and then."""

from app.calculations.codes import Kind, shown
from app.lookups.skeins import last_marks, named_by_tag, now_of, then_of
from app.work.bundling import make_plates
from app.work.moving import To, move
from app.work.remaking import gather


def test_a_skein_says_its_lot_by_its_tag_and_where_it_is(studio):
    group = studio.wind(studio.cone(), 2)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=2)
    first, _ = studio.tag(pile, 2)
    at = studio.clock.now
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.do(move, [first], To("shelf", place=shelf))
    now = studio.book.ask(now_of, first)
    assert (now.lot, now.colourway, now.state, now.place) == (
        lot, "Sluice Keeper's Glove", "shelf", "003")
    assert studio.book.ask(then_of, first, at) == "table"


def test_a_row_that_is_no_skein_is_nowhere(studio):
    assert studio.book.ask(now_of, studio.wind(studio.cone(), 2)) is None


def test_tags_say_what_they_were_printed_with(studio):
    lot, skeins = studio.tagged(studio.cone(), 2)
    group = studio.do(gather, skeins[:1])
    named = studio.book.ask(named_by_tag, [*skeins, group])
    (tag,) = named.values()
    assert list(named) == skeins[1:]
    assert (tag.lot, tag.lot_code, tag.put_up) == (lot, studio.code(lot), "skein")
    assert tag.lot_shown == shown(studio.code(lot))


def test_a_mark_is_known_also_after_its_tag_came_off(studio):
    _, skeins = studio.tagged(studio.cone(), 2)
    before = studio.book.ask(last_marks, skeins)
    assert len(set(before.values())) == 2
    studio.do(gather, skeins)
    assert studio.book.ask(last_marks, skeins) == before
