"""Minis, balls and what is dyed once more."""

import pytest

from app.lookups.certainty import nearest
from app.lookups.finishing import NO_TIE
from app.lookups.present import Amount
from app.lookups.skeins import now_of
from app.lookups.thread import thread
from app.problems import Refused
from app.work.remaking import cut, gather
from tests.makers import EACH_MG
from tests.sums import adds_up


@pytest.fixture
def table(studio):
    """Four tagged skeins on the table."""
    group = studio.wind(studio.cone(), 4)
    studio.lot = studio.dye(group)
    (pile,) = studio.finish(group, red=4)
    studio.skeins = studio.tag(pile, 4)
    return studio


def test_a_skein_becomes_five_minis_of_the_same_lot_and_mass_adds_up(table):
    pile = table.do(cut, table.skeins[0], 5, "mini", 600)
    minis = table.tag(pile, 5)
    assert [link.thing for link in table.origins(minis[0], "lot")] == [table.lot]
    assert table.present()["table", "mini"] == Amount(5, EACH_MG - 600)
    assert table.present()["table", "skein"] == Amount(3, 3 * EACH_MG)
    assert table.book.ask(now_of, table.skeins[0]) is None
    table.book.ask(adds_up)


def test_what_is_no_whole_skein_cannot_be_cut(table):
    with pytest.raises(Refused, match="cannot be lost"):
        table.do(cut, table.skeins[0], 5, "mini", EACH_MG)
    table.do(cut, table.skeins[0], 5, "mini", 600)
    with pytest.raises(Refused):
        table.do(cut, table.skeins[0], 5, "mini", 600)


def test_an_overdyed_skein_is_no_stock_of_its_old_lot_and_has_both_in_its_past(table):
    row = table.do(gather, table.skeins[:2], table.discs[0])
    second = table.dye(row)
    (pile,) = table.finish(row, **{NO_TIE: 2})
    again = table.tag(pile, 2)
    assert {link.thing for link in table.origins(again[0], "lot")} == {table.lot, second}
    assert table.book.ask(lambda c: nearest(thread(c, again), again[0], "lot")) == {second}
    assert table.present()["table", "skein"].count == 4
    table.book.ask(adds_up)


def test_skeins_of_two_lots_on_one_cord_are_said(table):
    other = table.wind(table.cone(), 2)
    table.dye(other)
    (pile,) = table.finish(other, red=2)
    strangers = table.tag(pile, 2)
    done = table.done(gather, [table.skeins[0], strangers[0]])
    assert done.findings == ("Skeins of 2 lots on one cord: after the bath they are one lot, "
                             "with both in their past.",)


def test_an_undone_gathering_hangs_the_tags_again(table):
    before = table.present()
    done = table.done(gather, table.skeins[:2])
    table.book.undo(done.seq, by=table.by)
    assert table.present() == before
    assert table.book.ask(now_of, table.skeins[0]).state == "table"
    table.book.ask(adds_up)
