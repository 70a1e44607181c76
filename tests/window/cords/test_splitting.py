"""SPLIT: some skeins of a cord go on with another disc, and both counts fit."""

import pytest

from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.window.cords.splitting import Parted, Splitting
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM
from tests.window.benches.at_work import SPLIT, disc, plate
from tests.window.benches.pots_hands import begin_dyeing


@pytest.fixture
def pots(qtbot, settings, studio):
    """At the pots."""
    yield from begin_dyeing(qtbot, settings, studio)


def test_a_cord_is_split_with_two_counts_and_a_second_disc(pots):
    pots.scan(SPLIT, disc(33), plate(5), plate(3), disc(40))
    assert isinstance(pots.bench.hand, Parted)
    assert pots.bench.hand.told.text() == "5 skeins on disc 033, 3 on disc 040"
    facts = [pots.studio.book.ask(bundle_facts, pots.studio.discs[n - 31], NOW) for n in (33, 40)]
    assert [one.count for one in facts] == [5, 3]
    pots.studio.check()


def test_counts_that_do_not_fit_are_refused_and_asked_again(pots):
    pots.scan(SPLIT, disc(33), plate(5), plate(4))
    assert "5 and 4 do not make 8; nothing was saved." in pots.trouble
    pots.press("6")
    assert pots.bench.hand.goes.accessibleName() == "2 go on the second disc"
    assert isinstance(pots.bench.hand, Splitting)


def test_a_second_disc_on_a_live_bundle_is_refused_and_nothing_is_lost(pots):
    pots.scan(SPLIT, disc(33), plate(5), disc(31))
    assert "Disc 031 hangs on a live bundle; nothing was saved." in pots.trouble
    pots.scan(disc(40))
    assert isinstance(pots.bench.hand, Parted)


def test_a_second_disc_before_the_count_asks_for_the_count(pots):
    pots.scan(SPLIT, disc(33), disc(40))
    assert "not counted yet how many stay on disc 033" in pots.trouble


def test_a_cord_with_two_ties_asks_which_of_them_part(pots):
    cones = pots.studio.cones(2)
    pots.studio.do(
        wind,
        [
            Wound((Drawn(cone, 4 * LONG_MM),), 4, "skein", tie)
            for cone, tie in zip(cones, ("blue", "green"), strict=True)
        ],
        pots.studio.discs[4],
    )
    pots.scan(SPLIT, disc(35))
    assert pots.bench.hand.asks.text() == "Which of them part?"
    pots.scan(plate(2), plate(3), disc(40))
    facts = pots.studio.book.ask(bundle_facts, pots.studio.discs[4], NOW)
    assert [(tie.count, tie.tie) for tie in facts.ties] == [(4, "blue"), (3, "green")]


def test_one_skein_alone_is_not_split(pots):
    pots.studio.wind(pots.studio.cone(), 1, "blue", pots.studio.discs[4])
    pots.scan(SPLIT, disc(35))
    assert "One skein cannot be split." in pots.trouble
