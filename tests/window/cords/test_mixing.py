"""MIXED: counts stay exact, and nobody invents a cone."""

import pytest

from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.window.cords.mixing import Mixing, Told
from app.work.bases import describe_base
from tests.makers import tarnfield
from tests.window.benches.at_work import DONE, MIXED, disc, plate, pot
from tests.window.benches.pots_hands import begin_dyeing, cones_of, in_pots


@pytest.fixture
def pots(qtbot, settings, studio):
    """At the pots."""
    yield from begin_dyeing(qtbot, settings, studio)


def test_mixed_says_one_of_two_with_exact_counts(pots):
    pots.scan(MIXED, disc(31), disc(32))
    assert isinstance(pots.bench.hand, Mixing)
    assert pots.bench.hand.told.text() == "Each is one of two, 7 + 5"
    pots.scan(DONE)
    assert isinstance(pots.bench.hand, Told)
    assert pots.bench.hand.told.text() == "Each is one of two, 7 + 5"
    assert cones_of(pots, 31) == [("one of a pool", 7, 7), ("one of a pool", 5, 5)]
    assert pots.studio.book.ask(bundle_facts, pots.studio.discs[1], NOW) is None
    assert ("cones", "2 cones") in pots.trail
    pots.studio.check()


def test_all_that_lies_in_one_pot_may_be_mixed_by_its_plate(pots):
    pots.scan(pot(2), disc(31), disc(32), plate(1), DONE)
    pots.press("M")
    pots.scan(pot(2), DONE)
    assert pots.bench.hand.told.text() == "Each is one of two, 7 + 5"
    assert [count for _, count in in_pots(pots)["002"]] == [12]


def test_one_thing_alone_is_not_mixed_and_an_empty_pot_holds_nothing(pots):
    pots.scan(MIXED, disc(31), DONE)
    assert "Only one thing was scanned" in pots.trouble
    assert "Scan all that met first." in pots.bench.hand.mix.accessibleDescription()
    pots.scan(pot(1))
    assert "Nothing lies in pot 1." in pots.trouble


def test_different_bases_are_not_mixed_because_they_can_be_told_apart(pots):
    pots.studio.do(describe_base, tarnfield(name="Downholm Sock", fibre="100 % wool"))
    pots.studio.wind(pots.studio.cones(1, "Downholm Sock")[0], 4, "red", pots.studio.discs[3])
    pots.scan(MIXED, disc(31), disc(34))
    assert pots.bench.hand.told.text() == "Their bases differ: they can be told apart."
    assert not pots.bench.hand.mix.isEnabled()
