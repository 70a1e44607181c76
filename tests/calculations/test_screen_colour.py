"""A colour on the screen, with the library coloraide as a second opinion."""

from random import Random

import pytest
from coloraide import Color

from app.calculations.screen_colour import on_screen
from app.calculations.shade import Colour
from tests.calculations.shades import DRY


def of(*lab):
    return Colour(*lab, DRY, 4)


@pytest.mark.parametrize(("lab", "swatch"), [
    ((0, 0, 0), "#000000"), ((100, 0, 0), "#FFFFFF"), ((53.585, 0, 0), "#808080")])
def test_black_white_and_middle_grey_have_no_colour(lab, swatch):
    assert on_screen(of(*lab)).swatch == swatch


def test_what_a_screen_has_is_shown_as_the_library_reckons_it():
    chance, seen = Random(5), 0
    for _ in range(300):
        lab = chance.uniform(5, 95), chance.uniform(-60, 60), chance.uniform(-60, 60)
        shown, theirs = on_screen(of(*lab)), Color("lab-d65", lab).convert("srgb")
        if not theirs.in_gamut(tolerance=0):
            continue
        seen += 1
        assert shown.exact
        ours = [int(shown.swatch[n:n + 2], 16) / 255 for n in (1, 3, 5)]
        assert ours == pytest.approx(theirs.coords(), abs=1.01 / 255)
    assert seen > 50


def test_what_no_screen_has_keeps_its_lightness_and_hue():
    shown = on_screen(of(42.3, 59.8, 65.0))
    assert not shown.exact
    lightness, chroma, hue = Color(shown.swatch).convert("lch-d65").coords()
    assert lightness == pytest.approx(42.3, abs=1.0)
    assert chroma < 88.3
    assert hue == pytest.approx(47.4, abs=2.0)


def test_two_readings_that_differ_are_two_swatches():
    assert on_screen(of(48.3, -36.6, 3.3)).swatch != on_screen(of(50.0, -34.9, 5.9)).swatch
