"""Where skeins stay: on a shelf by its number, with a buyer by the order, or nowhere yet."""

from app.lookups.stays import NOWHERE, stays_of
from tests.deeds import customer, put, send
from tests.makers import Studio


def test_each_skein_stays_in_one_place_or_with_one_buyer(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 3)
    group = studio.wind(studio.cone(), 2)
    ada = studio.do(customer, "Ada Nygård")
    studio.do(put, skeins[:1], "shelf", studio.pot)
    studio.do(send, skeins[1:2], ada)
    stays = studio.book.ask(stays_of, [*skeins, group])
    assert (stays[skeins[0]].place, stays[skeins[0]].order) == ("1", None)
    assert stays[skeins[1]].customer == ada
    assert stays[skeins[1]].order
    assert stays[skeins[2]].place is None
    assert stays.get(group, NOWHERE) == NOWHERE
