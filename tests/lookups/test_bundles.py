"""Cords that wear a disc, and how far they are in the work."""

from app.lookups.bundles import IN_POT, LIFTED, PILED, WOUND, bundle_facts, bundles_now
from app.lookups.now import NOW
from app.work.bundling import take_off
from app.work.dyeing import BathIn, into_bath, lift
from app.work.holding import hold
from tests.makers import EACH_MG, Studio


def test_a_cord_is_wound_then_in_the_pot_then_lifted_then_counted(studio: Studio) -> None:
    disc = studio.discs[0]
    group = studio.wind(studio.cone(), 6, disc=disc)
    stages = []

    def look() -> None:
        facts = studio.book.ask(bundle_facts, disc, studio.clock.now)
        stages.append((facts.stage, facts.lot) if facts else None)
    look()
    bath = studio.do(into_bath, BathIn((group,), studio.recipe, studio.pot), studio.random)
    look()
    studio.do(lift, bath["bath"])
    look()
    studio.finish(group, red=6)
    look()
    studio.do(take_off, disc)
    look()
    code = f"26·15·{(studio.code(1) or '')[4:]}"
    assert stages == [(WOUND, None), (IN_POT, code), (LIFTED, code), (PILED, code), None]


def test_a_cord_says_what_hangs_on_it(studio: Studio) -> None:
    studio.wind(studio.cone(), 6, disc=studio.discs[0])
    facts = studio.book.ask(bundle_facts, studio.discs[0], studio.clock.now)
    assert facts is not None
    assert (facts.number, facts.count, facts.mg, facts.base, facts.put_up) == (
        "031", 6, 6 * EACH_MG, "Tarnfield 4-ply", "skein")
    assert facts.cones == ("C·0001·7",)
    assert [(tie.tie, tie.count) for tie in facts.ties] == [("red", 6)]
    assert not facts.held


def test_a_cord_below_a_hold_says_so(studio: Studio) -> None:
    studio.wind(studio.cone(), 6, disc=studio.discs[0])
    studio.do(hold, "cone", 1, "oil")
    facts = studio.book.ask(bundle_facts, studio.discs[0], studio.clock.now)
    assert facts is not None
    assert facts.held


def test_cords_are_listed_by_the_number_of_their_disc(studio: Studio) -> None:
    for place in (3, 0, 1):
        studio.wind(studio.cone(), 2, disc=studio.discs[place])
    found = studio.book.ask(bundles_now, studio.clock.now)
    assert [cord.number for cord in found] == ["031", "032", "034"]


def test_a_disc_that_hangs_on_nothing_is_no_cord(studio: Studio) -> None:
    assert studio.book.ask(bundle_facts, studio.discs[0], studio.clock.now) is None


def test_a_cord_wears_its_disc_at_the_moment_that_is_asked_for(studio: Studio) -> None:
    studio.wind(studio.cone(), 4, disc=studio.discs[0])
    then = studio.clock.now
    studio.do(take_off, studio.discs[0])
    assert [cord.number for cord in studio.book.ask(bundles_now, then)] == ["031"]
    assert studio.book.ask(bundles_now, studio.clock.now) == ()
    assert studio.book.ask(bundles_now, NOW) == ()
