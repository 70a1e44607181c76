"""A pale lot and one that comes off are not to be in one water, and only then."""

from app.calculations.codes import shown
from app.lookups.load_warnings import before_load
from app.lookups.now import NOW
from app.lookups.together import in_one_water, not_together
from app.work.loading import into_load
from tests.lookups.waters import NAVY, PALE, RED, lot_of, washed


def said(studio, *rows, step="wash"):
    return studio.book.ask(not_together, rows, step, NOW)


def test_a_pale_lot_of_0_055_with_a_red_of_1_70_that_bled(studio):
    (pale, a), (red, b) = lot_of(studio, "Whey", PALE), lot_of(studio, "Buoy", RED)
    washed(studio, red, how=2)
    code, other = (shown(studio.code(lot)) for lot in (a, b))
    sentence = (f"{code} (pale, 0.055 %) with {other} (deep, 1.70 %, bleeds strongly): "
                "it takes up what comes off.")
    assert said(studio, pale, red) == (sentence,)
    assert studio.book.ask(before_load, [pale, red], "wash", NOW)[0] == f"Not together: {sentence}"
    done = studio.done(into_load, "wash", yarn=[pale, red])
    assert done.findings[0] == f"Not together: {sentence}"
    water = studio.book.ask(in_one_water, [pale, red], "wash", NOW)
    assert water.marks[pale].startswith("pale, 0.055 %")
    studio.check()


def test_what_may_go_together_goes_without_a_word(studio):
    (pale, _), (red, _) = lot_of(studio, "Whey", PALE), lot_of(studio, "Buoy", RED)
    navy, _ = lot_of(studio, "Ledger", NAVY)
    plain = studio.wind(studio.cone(), 3)
    unknown = studio.wind(studio.cone(), 3)
    studio.dye(unknown)
    assert said(studio, pale, navy) == said(studio, red, navy) == said(studio, pale) == ()
    assert said(studio, red, unknown) == said(studio, red, plain) == said(studio) == ()
    assert said(studio, pale, red, step="spin") == said(studio, pale, red, step="rail") == ()
    assert len(said(studio, pale, red, step="soak")) == 1
    assert said(studio, pale, red, step=None) == ()


def test_a_navy_that_was_seen_to_bleed_is_as_bad_and_one_of_unknown_depth_too(studio):
    (pale, _), (navy, _) = lot_of(studio, "Whey", PALE), lot_of(studio, "Ledger", NAVY)
    washed(studio, navy, how=1)
    assert len(said(studio, pale, navy)) == 1
    washed(studio, navy, how=0)
    assert said(studio, pale, navy) == ()
    unknown = studio.wind(studio.cone(), 3)
    studio.dye(unknown)
    washed(studio, unknown, how=2)
    (sentence,) = said(studio, pale, unknown)
    assert "(depth not known, bleeds strongly)" in sentence
