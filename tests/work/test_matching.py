"""Skeins without a tag, or with another lot's."""

import pytest

from app.lookups.certainty import links
from app.lookups.present import NOT_MATCHED
from app.lookups.thread import thread
from app.problems import Refused
from app.work.matching import belongs_to, find, is_missing_from, is_one_of, new_tag
from app.work.selling import know_customer, sell
from tests.sums import adds_up


def lot_of(studio, count, tagged):
    """A lot of so many, so many of them tagged: lot, pile, skeins."""
    group = studio.wind(studio.cone(), count)
    lot = studio.dye(group)
    (pile,) = studio.finish(group, red=count)
    return lot, pile, studio.tag(pile, tagged)


def counts(studio):
    return {key[0]: amount.count for key, amount in studio.present().items()}


def test_a_find_stands_beside_until_it_is_matched(studio):
    found = studio.do(find, 1, 97_000)
    assert counts(studio) == {NOT_MATCHED: 1}
    assert studio.origins(found)[0].word == "not known"


def test_a_find_of_an_order_is_one_of_its_skeins_and_one_counts_as_back(studio):
    lot, _, skeins = lot_of(studio, 6, 6)
    studio.do(sell, skeins[:4], studio.do(know_customer, "Ada Nygård"))
    back = studio.do(find, 1, 97_000)
    studio.do(is_one_of, back, skeins[:4])
    assert counts(studio) == {"sent, buyer known": 3, "table": 3}
    (link,) = studio.origins(back, "lot")
    assert (link.thing, link.word, link.basis) == (lot, "known", "stated")
    which = studio.book.ask(lambda c: links(thread(c, [back]), back, "yarn"))
    assert (skeins[0], "known") not in [(link.thing, link.word) for link in which]
    studio.book.ask(adds_up)


def test_a_find_that_was_missing_at_a_count_is_counted_again(studio):
    group = studio.wind(studio.cone(), 8, "yellow")
    studio.dye(group)
    (pile,) = studio.finish(group, yellow=7)
    studio.tag(pile, 7)
    found = studio.do(find, 1, 102_000)
    assert counts(studio) == {"missing at a count": 1, "table": 7, NOT_MATCHED: 1}
    studio.do(is_missing_from, found, group)
    assert counts(studio) == {"table": 8}
    (link,) = studio.origins(found)
    assert (link.word, link.basis) == ("known", "recognised")


def test_a_find_is_matched_once_and_only_to_a_gap(studio):
    _, pile, skeins = lot_of(studio, 4, 2)
    found = studio.do(find, 1, 97_000)
    with pytest.raises(Refused, match="Nothing is missing"):
        studio.do(is_missing_from, found, pile)
    with pytest.raises(Refused, match="one of something"):
        studio.do(is_one_of, found, [])
    studio.do(is_one_of, found, skeins)
    with pytest.raises(Refused, match="matched already"):
        studio.do(is_one_of, found, skeins)


def test_a_tag_on_another_lots_skein_is_put_right(studio):
    first, own, skeins = lot_of(studio, 11, 11)
    other, pile, others = lot_of(studio, 6, 5)
    wrong = skeins[3]
    studio.do(belongs_to, wrong, pile)
    (link,) = studio.origins(wrong, "lot")
    assert (link.thing, link.word, link.basis) == (other, "known", "matched")
    assert {k[0]: a.count for k, a in studio.present("lot", first).items()} == {
        "table": 10, "missing at a count": 1}
    assert {k[0]: a.count for k, a in studio.present("lot", other).items()} == {"table": 6}
    assert len(others) == 5
    studio.book.ask(adds_up)
    with pytest.raises(Refused, match="cannot come from what was made of it"):
        studio.do(belongs_to, pile, pile)
    assert own != pile


def test_a_skein_gets_a_tag_only_while_it_wears_none(studio):
    _, pile, skeins = lot_of(studio, 3, 1)
    _, other, strangers = lot_of(studio, 3, 2)
    studio.do(belongs_to, skeins[0], other)
    (tag,) = studio.print(other, 1, why="an extra skein")
    studio.do(new_tag, skeins[0], tag)
    with pytest.raises(Refused, match="wears a tag"):
        studio.do(new_tag, skeins[0], tag)
    assert len(strangers) == 2
