"""A tag as the packer scans it."""

from datetime import timedelta

from app.calculations.codes import Kind, numbered
from app.lookups.orders import open_orders
from app.lookups.packing import (
    TagScanned,
    order_to_pack,
    orders_to_pack,
    scanned_for,
    shelf_with,
    tag_scanned,
)
from app.lookups.skeins import named_by_tag
from app.work.holding import hold
from app.work.moving import put_by
from app.work.selling import know_customer, take_for
from app.work.tagging import spoil_tags
from tests.lookups.shop import GLOVE, ordered, shelved
from tests.makers import Studio


def scanned(studio: Studio, skein: int) -> TagScanned:
    mark = studio.book.ask(named_by_tag, [skein])[skein].mark
    tag: TagScanned = studio.book.ask(tag_scanned, mark)
    return tag


def test_a_tag_says_its_yarn_and_where_its_skein_lay(studio: Studio) -> None:
    ((lot, skeins),) = shelved(studio, 2)
    tag = scanned(studio, skeins[0])
    assert (tag.lot, tag.colourway_name, tag.base_name, tag.put_up, tag.state) == (
        lot, GLOVE, "Tarnfield 4-ply", "skein", "shelf")
    assert tag.last_shelf is not None
    assert tag.last_shelf.words == "shelf 003"
    assert studio.book.ask(tag_scanned, "2699XXX-XX") is None


def test_a_taken_skein_says_for_which_order_and_its_last_shelf_stays_known(studio: Studio) -> None:
    ((_, skeins),) = shelved(studio, 2)
    (line,) = ordered(studio, "1042", 1)
    studio.do(take_for, line, skeins[:1])
    tag = scanned(studio, skeins[0])
    assert (tag.state, tag.order_number) == ("taken", "1042")
    assert tag.last_shelf == studio.book.ask(shelf_with, numbered(Kind.SHELF, 3).text)
    assert studio.book.ask(shelf_with, numbered(Kind.SHELF, 9).text) is None


def test_a_hold_above_and_a_put_by_are_told_with_whom_to_ask(studio: Studio) -> None:
    ((lot, skeins),) = shelved(studio, 2)
    buyer = studio.do(know_customer, "Bo Lind")
    studio.do(put_by, skeins[:1], None, studio.clock.now + timedelta(days=7), buyer)
    studio.do(hold, "lot", lot, "weak jar")
    tag = scanned(studio, skeins[0])
    assert (tag.state, tag.customer, tag.name) == ("put by", buyer, "Bo Lind")
    assert [(one.why, one.ask) for one in tag.holds] == [("weak jar", "OW, Osk Wray")]


def test_a_void_tag_and_one_that_hangs_on_nothing(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 1)
    studio.dye(group)
    (tag,) = studio.print(studio.finish(group, red=1)[0], 1)
    mark = studio.book.ask(lambda c: c.exec_driver_sql("SELECT mark FROM tag").scalar())
    assert studio.book.ask(tag_scanned, mark).yarn is None
    studio.do(spoil_tags, [tag], "smudged")
    assert studio.book.ask(tag_scanned, mark).void


def test_orders_come_with_what_fills_them_and_tags_with_their_order(studio: Studio) -> None:
    ((lot, skeins),) = shelved(studio, 2)
    (line,) = ordered(studio, "1042", 1)
    found, offered = studio.book.ask(orders_to_pack)
    assert [offer.lot for offer in offered[line]] == [lot]
    assert studio.book.ask(order_to_pack, found[0].id) == (found[0], offered)
    assert studio.book.ask(order_to_pack, 99) == (None, {})
    mark = studio.book.ask(named_by_tag, skeins)[skeins[0]].mark
    tag, order = studio.book.ask(scanned_for, mark, found[0].id)
    assert (tag.mark, order) == (mark, studio.book.ask(open_orders)[0])
