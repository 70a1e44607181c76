"""Where all yarn is now: every member in exactly one state."""

import pytest
from sqlalchemy import select

from app.lookups.present import NOT_MATCHED, Amount, each_once, leaves, totals, without_finds
from app.records import Yarn
from app.store.deed import Deed
from app.work.matching import find, is_one_of
from app.work.mixing import lose
from tests.deeds import customer, put, send
from tests.makers import EACH_MG, Studio


def test_wound_piled_tagged_and_missing_are_states_of_their_own(studio: Studio) -> None:
    studio.wind(studio.cone(), 2)
    group = studio.wind(studio.cone(), 8)
    studio.dye(group)
    (pile,) = studio.finish(group, red=7)
    studio.tag(pile, 3)
    assert studio.present() == {
        ("in work", "skein"): Amount(2, 2 * EACH_MG),
        ("missing at a count", "skein"): Amount(1, EACH_MG),
        ("piled", "skein"): Amount(4, 4 * EACH_MG), ("table", "skein"): Amount(3, 3 * EACH_MG)}


@pytest.mark.parametrize("state", ["shelf", "fair", "lost", "given", "discarded", "table"])
def test_a_skein_is_in_the_state_it_was_put_into_last(studio: Studio, state: str) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(put, skeins[:1], "shelf", studio.pot)
    studio.do(put, skeins[:1], state, studio.pot)
    counts = {key[0]: amount.count for key, amount in studio.present().items()}
    assert counts.get(state) == (2 if state == "table" else 1)
    assert sum(counts.values()) == 2


def test_sent_to_a_known_buyer_and_sent_to_nobody_known_are_two_states(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(send, skeins[:1], studio.do(customer, "Ada Nygård"))
    studio.do(send, skeins[1:2])
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "sent, buyer known": 1, "sent, buyer not known": 1, "table": 1}


def test_masses_of_parts_add_up_to_the_whole_to_the_milligram(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 7)
    parts = studio.split(group, 3, 3, 1)
    kept, lost = studio.do(lose, parts[0], 1)
    masses = [leaf.mg for leaf in studio.book.ask(leaves, [*parts, kept, lost])]
    assert sum(masses) == 7 * EACH_MG
    assert len(masses) == 4


def test_what_became_something_else_is_not_there_any_more(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 3), studio.wind(studio.cone(), 2)
    pool = studio.mix(a, b)
    assert [leaf.yarn for leaf in studio.book.ask(leaves, [a, b, pool])] == [pool]


def test_an_untagged_find_stands_beside_all_totals(studio: Studio) -> None:
    studio.wind(studio.cone(), 3)

    def find(deed: Deed) -> int:
        return deed.add(Yarn(kind="find", base=1, put_up="skein", count=1, mg=97_000))
    studio.do(find)
    rows = studio.book.ask(lambda c: c.execute(select(Yarn.id)).scalars().all())
    assert dict(totals(studio.book.ask(leaves, rows))) == {
        ("in work", "skein"): Amount(3, 3 * EACH_MG), (NOT_MATCHED, "skein"): Amount(1, 97_000)}


def test_a_find_that_is_one_of_those_sold_takes_the_place_and_the_mass_of_one(
    studio: Studio,
) -> None:
    _, skeins = studio.tagged(studio.cone(), 4)
    studio.do(send, skeins[:3])
    studio.do(is_one_of, studio.do(find, 1, 97_000), skeins[:3])
    assert studio.present() == {
        ("sent, buyer not known", "skein"): Amount(2, 2 * EACH_MG),
        ("table", "skein"): Amount(2, 2 * EACH_MG)}


def test_a_find_that_may_be_anothers_takes_no_place_among_some_of_them(studio: Studio) -> None:
    """Of one that may be it nobody knows that it came back; of all of them one did."""
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(send, skeins[:2])
    found = studio.do(find, 1, 97_000)
    studio.do(is_one_of, found, skeins[:2])
    assert studio.present("yarn", skeins[0]) == {
        ("sent, buyer not known", "skein"): Amount(1, EACH_MG)}
    there = studio.book.ask(leaves, [*skeins, found])
    assert [leaf.yarn for leaf in each_once(there)] == [*skeins[1:], found]
    assert [leaf.yarn for leaf in without_finds(there)] == skeins


def test_a_find_stands_for_one_that_is_gone_before_one_that_came_back(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(send, skeins)
    studio.do(is_one_of, studio.do(find, 1, 97_000), skeins[:2])
    studio.do(put, skeins[:1], "table")
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "table": 2, "sent, buyer not known": 1}


def test_a_find_never_stands_for_one_that_was_seen_with_its_tag_since(studio: Studio) -> None:
    """What came back with its tag and was thrown away then is not what lies on the table."""
    _, skeins = studio.tagged(studio.cone(), 3)
    studio.do(send, skeins)
    studio.do(is_one_of, studio.do(find, 1, 97_000), skeins[:2])
    studio.do(put, skeins[:1], "table")
    studio.do(put, skeins[:1], "discarded")
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "table": 1, "discarded": 1, "sent, buyer not known": 1}


def test_a_find_rather_stands_for_one_that_was_lost_since(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    studio.do(put, skeins, "shelf", studio.pot)
    studio.do(is_one_of, studio.do(find, 1, 97_000), skeins)
    studio.do(put, skeins[1:], "lost")
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {
        "table": 1, "shelf": 1}


def test_finds_stand_for_different_rows_however_they_overlap(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 4)
    studio.do(send, skeins[:2])
    for candidates in (skeins[:2], skeins[:1]):
        studio.do(is_one_of, studio.do(find, 1, 97_000), candidates)
    assert {key[0]: amount.count for key, amount in studio.present().items()} == {"table": 4}


def test_nothing_is_nowhere(studio: Studio) -> None:
    assert studio.book.ask(leaves, []) == ()
    assert totals([]) == {}
