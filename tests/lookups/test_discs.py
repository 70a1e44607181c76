"""A disc means what it hung on at a moment."""

from datetime import timedelta

from app.lookups.discs import bundle_on, disc_of, yarn_on_bundle, yarn_on_disc
from app.work.bundling import add_to_cord, take_off, tie_on
from tests.makers import Studio


def test_a_disc_holds_what_it_hung_on_then(studio: Studio) -> None:
    disc, a, b = studio.discs[0], studio.wind(studio.cone(), 3), studio.wind(studio.cone(), 2)
    before = studio.clock.now
    studio.do(tie_on, disc, [a])
    hung = studio.clock.now
    studio.do(take_off, disc)
    free = studio.clock.now
    studio.do(tie_on, disc, [b])
    told = [studio.book.ask(yarn_on_disc, disc, at)
            for at in (before, hung, free, studio.clock.now)]
    assert told == [[], [a], [], [b]]


def test_the_moment_it_comes_off_it_holds_nothing(studio: Studio) -> None:
    disc = studio.discs[0]
    studio.do(tie_on, disc, [studio.wind(studio.cone(), 3)])
    studio.do(take_off, disc)
    assert studio.book.ask(bundle_on, disc, studio.clock.now) is None
    assert studio.book.ask(bundle_on, disc, studio.clock.now - timedelta(seconds=1)) == 1


def test_several_groups_hang_on_one_cord(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 3, disc=studio.discs[0]), studio.wind(studio.cone(), 2)
    bundle = studio.do(add_to_cord, studio.discs[0], [b])
    assert studio.book.ask(yarn_on_bundle, bundle, studio.clock.now) == [a, b]


def test_a_row_knows_its_disc_while_it_wears_one(studio: Studio) -> None:
    group = studio.wind(studio.cone(), 3, disc=studio.discs[4])
    assert studio.book.ask(disc_of, group) == "035"
    (pile,) = studio.finish(group, red=3)
    assert studio.book.ask(disc_of, group) is None
    assert studio.book.ask(disc_of, pile) == "035"
    studio.do(take_off, studio.discs[4])
    assert studio.book.ask(disc_of, pile) is None
