"""Pots and trays: discs meet a bath, and the lot's code is born, not before."""

import pytest

from app.calculations.codes import shown
from app.lookups.pots import pots_now, recipes
from app.window.benches.pots.colourways import NewColourway
from app.window.benches.pots.filling import Filling
from app.window.benches.pots.lots import Lots
from app.window.benches.pots.nothing import Nothing
from app.window.look.look import look
from app.window.parts.shade_field import ShadeField
from app.work.bases import describe_base
from app.work.dyeing import name_colourway
from app.work.holding import hold
from tests.makers import tarnfield
from tests.window.benches.at_work import DONE, UNDO, disc, plate, pot
from tests.window.benches.pots_hands import begin_dyeing, in_pots


@pytest.fixture
def pots(qtbot, settings, studio):
    """At the pots."""
    yield from begin_dyeing(qtbot, settings, studio)


def test_two_bundles_with_one_tie_in_one_pot_are_warned_of_before_they_meet(pots):
    pots.scan(pot(2), disc(31))
    assert not pots.bench.hand.warnings.text()
    pots.scan(disc(32))
    assert pots.bench.hand.warnings.text() == (
        "Red ties of two cones, 7 + 5: keep their cords closed, else each skein is one of two."
    )
    assert pots.bench.hand.total.accessibleName() == "12 skeins in 2 bundles"
    assert in_pots(pots) == {}


def test_the_code_is_born_at_done_and_stands_there_at_bench_size(pots):
    pots.scan(pot(2), disc(31), disc(32), plate(1), DONE)
    (code,) = pots.bench.hand.codes
    assert in_pots(pots) == {"002": [(code.code, 12)]}
    assert code.fitted().pixelSize() >= 84
    assert pots.bench.hand.colourway.text() == "Ferry Ledger"
    assert ("dye lot", code.code) in pots.trail
    assert pots.said == f"{code.code}: 12 skeins of Ferry Ledger in pot 2"
    assert any("red ties in one pot" in sentence for sentence in pots.found)


def test_by_scanner_alone_from_the_pot_to_the_lot_and_out_again(pots):
    pots.scan(pot(1), disc(33), plate(2), DONE)
    assert [count for _, count in in_pots(pots)["001"]] == [8]
    pots.scan(pot(1))
    assert "Scan it once more" in pots.bench.hand.headline.text()
    pots.scan(pot(1))
    assert in_pots(pots) == {}
    assert pots.said == "lifted pot 1"
    pots.scan(UNDO)
    assert list(in_pots(pots)) == ["001"]


def test_by_keyboard_alone_a_name_is_typed_and_enter_chooses_and_dyes(pots):
    pots.press("Escape")
    pots.type("33")
    pots.press("Enter")
    pots.press("p")
    pots.type("lum")
    assert [tile.recipe.colourway for tile in pots.bench.hand.colourways.tiles] == [
        "Plum Stone in a Pocket"
    ]
    pots.press("Enter", "Enter")
    assert [count for _, count in in_pots(pots)[None]] == [8]
    assert isinstance(pots.bench.hand, Lots)


def test_nothing_goes_in_without_a_disc_or_a_colourway_and_it_says_why(pots):
    pots.scan(pot(2))
    assert "Scan a disc that goes in." in pots.bench.hand.dye.accessibleDescription()
    pots.scan(DONE)
    assert "Nothing is in the pot yet; nothing was saved." in pots.trouble
    pots.scan(disc(31))
    assert not pots.trouble
    assert "Choose the colourway." in pots.bench.hand.dye.accessibleDescription()
    pots.scan(DONE)
    assert "No colourway is chosen yet; nothing was saved." in pots.trouble
    assert in_pots(pots) == {}


def test_a_disc_that_hangs_on_nothing_puts_nothing_in(pots):
    pots.scan(pot(2), disc(45))
    assert "Disc 045 hangs on nothing" in pots.trouble
    assert pots.bench.hand.discs == []


def test_a_disc_scanned_twice_is_in_once_and_may_be_taken_out(pots):
    pots.scan(pot(2), disc(31), disc(33), disc(31))
    assert [one.number for one in pots.bench.hand.discs] == ["031", "033"]
    assert pots.note == "disc 031 is in already"
    row = pots.bench.hand._rows.itemAt(0).widget()
    row.out.emit()
    pots.quiet()
    assert [one.number for one in pots.bench.hand.discs] == ["033"]


def test_two_bases_make_two_codes_and_say_that_they_are_companions(pots):
    pots.studio.do(describe_base, tarnfield(name="Downholm Sock", fibre="80 % wool, 20 % linen"))
    sock = pots.studio.cones(1, "Downholm Sock")[0]
    pots.studio.wind(sock, 4, "blue", pots.studio.discs[3])
    pots.scan(pot(1), disc(33), disc(34))
    assert "companion lots" in pots.bench.hand.warnings.text()
    pots.scan(plate(1), DONE)
    assert len(pots.bench.hand.codes) == 2
    assert "Companions" in pots.bench.hand.kin.text()


def test_a_lot_of_the_same_recipe_and_day_is_named(pots):
    sister = shown(
        pots.studio.code(
            pots.studio.dye(pots.studio.wind(pots.studio.cone(), 2), pot=pots.studio.pot2)
        )
    )
    pots.scan(pot(1), disc(33), plate(3), DONE)
    assert f"Same recipe and day, fills not known: {sister}." in pots.bench.hand.kin.text()


def test_a_hold_and_a_pot_that_is_full_are_warned_of_and_recorded_all_the_same(pots):
    pots.scan(pot(1), disc(33), plate(1), DONE)
    (before,) = [code for code, _ in in_pots(pots)["001"]]
    pots.studio.do(hold, "cone", 1, "oil stain")
    pots.scan(pot(1), disc(31))
    assert pots.bench.hand.warnings.text().splitlines() == [
        f"{before} was not lifted out of this pot: which bucket is it in?",
        "HOLD lies on disc 031: in the bath it goes on, marked.",
    ]
    pots.scan(plate(1), DONE)
    assert len(pots.studio.book.ask(pots_now)) == 2


def test_a_new_colourway_is_named_in_place_with_a_swatch_chosen_by_eye(pots):
    pots.scan(pot(2), disc(31))
    pots.press("F6")
    new = pots.bench.hand._right.currentWidget()
    assert isinstance(new, NewColourway)
    pots.type("Moth")
    new.findChild(ShadeField).setFocus()
    pots.press("Right", "Down")
    pots.press("Enter")
    found = {one.colourway: one.swatch for one in pots.studio.book.ask(recipes)}
    assert found["Moth"] == new.field.colour
    assert pots.bench.hand.recipe.colourway == "Moth"
    pots.press("Enter")
    assert in_pots(pots)["002"]


def test_a_colourway_without_a_name_is_not_named_and_what_was_chosen_stays(pots):
    pots.scan(pot(2), disc(31))
    pots.press("F6", "Enter")
    new = pots.bench.hand._right.currentWidget()
    assert new.name.wrong.text() == "Say what the colourway is called."
    pots.press("F8")
    assert pots.bench.hand._right.currentWidget() is pots.bench.hand.colourways
    assert [one.number for one in pots.bench.hand.discs] == ["031"]


def test_more_than_nine_colourways_are_reached_by_the_next_nine(pots):
    for number in range(9):
        pots.studio.do(name_colourway, f"Zinc {number}")
    pots.scan(pot(2), disc(31))
    first = [tile.recipe.colourway for tile in pots.bench.hand.colourways.tiles]
    pots.scan(plate(10))
    second = [tile.recipe.colourway for tile in pots.bench.hand.colourways.tiles]
    assert len(first) == 9
    assert second == ["Zinc 6", "Zinc 7", "Zinc 8"]
    pots.press("0")
    assert [tile.recipe.colourway for tile in pots.bench.hand.colourways.tiles] == first


def test_an_undo_takes_the_lot_back_and_the_bench_with_it(pots):
    pots.scan(pot(2), disc(31), plate(1), DONE)
    pots.press("F2")
    assert in_pots(pots) == {}
    assert isinstance(pots.bench.hand, Nothing)
    assert not pots.trail


def test_a_pot_whose_trigger_bounced_is_not_lifted(pots):
    pots.scan(pot(2), disc(31), plate(1), DONE)
    pots.scan(disc(33))
    pots.press("F8")
    pots.bounce(pot(2))
    assert list(in_pots(pots)) == ["002"]
    assert "scanned twice" in pots.note


def test_a_pot_in_use_shows_its_lot_and_l_lifts_it(pots):
    pots.scan(pot(2), disc(31), plate(1), DONE)
    pots.press("F8")
    (card,) = pots.bench.pots.cards
    assert "pot 2" in card.accessibleName()
    assert "7 skeins" in card.accessibleName()
    pots.click(card)
    pots.press("L")
    assert in_pots(pots) == {}
    assert isinstance(pots.bench.hand, Nothing)


def test_cords_that_wait_are_listed_and_a_tap_puts_one_in(pots):
    assert [row[0] for row in pots.bench.hand.waiting._rows] == ["031", "032", "033"]
    pots.bench.hand.waiting.opened.emit(2)
    pots.quiet()
    assert isinstance(pots.bench.hand, Filling)
    assert [one.number for one in pots.bench.hand.discs] == ["033"]
    assert pots.bench.hand.pot is None


def test_a_code_the_pots_have_no_use_for_is_offered_to_be_shown(pots):
    lot = pots.studio.dye(pots.studio.wind(pots.studio.cone(), 2))
    pots.scan(pots.studio.code(lot))
    assert "this bench has no use for it" in pots.trouble


def test_the_lot_shrinks_before_it_is_cut_when_the_text_is_large(pots, dressed):
    pots.scan(pot(2), disc(31), plate(1), DONE)
    dressed(2.0)
    pots.quiet()
    (code,) = pots.bench.hand.codes
    assert look().text == 2.0
    assert 0 < code.width() <= pots.bench.width()
