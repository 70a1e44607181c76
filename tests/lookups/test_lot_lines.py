"""Lots as lines of a list."""

import pytest

from app.lookups.lot_lines import base_names, lot_line, lot_lines, lots_named, sisters_left
from app.work.dyeing import name_colourway
from app.work.selling import sell
from tests.counter_shop import a_shop


@pytest.fixture
def shop(studio):
    return a_shop(studio, 3)


def test_those_with_some_left_come_first_and_of_them_the_newest(shop):
    shop.do(sell, shop.skeins[2])
    shop.do(sell, shop.skeins[0][:1])
    lines = shop.ask(lot_lines, shop.lots)
    assert [(one.lot, one.left.count) for one in lines] == [
        (shop.lots[1], 4), (shop.lots[0], 3), (shop.lots[2], 0)]
    one = shop.ask(lot_line, shop.lots[0])
    assert one.shown == lines[1].shown
    assert one.left.count == 0  # not asked for


def test_every_word_stands_in_the_colourway_or_the_base(shop):
    assert shop.ask(lots_named, "glove") == tuple(reversed(shop.lots))
    assert shop.ask(lots_named, "tarn GLOVE 4-ply") == tuple(reversed(shop.lots))
    assert shop.ask(lots_named, "4-ply", 2) == tuple(reversed(shop.lots))[:2]
    assert shop.ask(lots_named, "glove sock") == ()
    assert shop.ask(lots_named, "  ") == ()


def test_lots_of_another_colourway_are_not_called_so(shop):
    shop.do(name_colourway, "Plum Stone in a Pocket", "#6B2A52")
    assert shop.ask(lots_named, "plum") == ()


def test_only_lots_with_a_code_before_a_week_are_asked_for(shop):
    assert shop.ask(lots_named, "glove", 60, "2616") == tuple(reversed(shop.lots))
    assert shop.ask(lots_named, "glove", 60, "2615") == ()


def test_sisters_with_some_left_are_offered_and_those_sold_out_are_not(shop):
    assert {one.line.lot for one in shop.ask(sisters_left, shop.lots[0])} == set(shop.lots[1:])
    shop.do(sell, shop.skeins[1])
    (look,) = shop.ask(sisters_left, shop.lots[0])
    assert (look.line.lot, look.fills_known) == (shop.lots[2], False)  # no weighing told its fills


def test_bases_are_told_with_their_names(shop):
    assert shop.ask(base_names) == ((1, "Tarnfield 4-ply"),)
