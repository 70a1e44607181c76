import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor

from app.window.shades.drift_picture import DriftPicture
from tests.calculations.shades import TEAL
from tests.window.shades.maps import CODES, a_map, crowded


@pytest.fixture
def picture(qtbot):
    picture = DriftPicture()
    qtbot.addWidget(picture)
    return picture


def test_every_step_and_both_limits_are_told_in_words(picture):
    picture.show_map(a_map([TEAL[name] for name in "PQRST"]))
    said = picture.accessibleName()
    assert "Limits: from the standard 1.5, a small step 0.8." in said
    assert f"5 {CODES[4]}: 2.4 ± 0.5 from the standard, 0.7 ± 0.5 from the last" in said
    assert f"1 {CODES[0]}: 0.0 ± 0.5 from the standard, not held against the last" in said


def test_without_a_standard_the_steps_from_the_last_are_still_shown(picture):
    picture.show_map(a_map(standard=None))
    assert "not held against the standard" in picture.accessibleName()
    assert {place for place, _ in picture.spots()} == set(range(1, 8))


@pytest.mark.parametrize(("text", "width"), [(1.0, 590), (2.0, 900)])
def test_lots_stand_apart_and_only_yarn_has_a_colour(picture, dressed, text, width):
    dressed(text)
    picture.show_map(crowded())
    picture.resize(width, picture.sizeHint().height())
    spots = [spot for place, spot in picture.spots()]
    assert all(picture.rect().contains(spot.toPoint()) for spot in spots)
    across = sorted({round(spot.x(), 3) for spot in spots})
    assert len(across) == 24
    seen = picture.grab().toImage()
    for x in range(0, seen.width(), 7):
        for y in range(0, seen.height(), 7):
            colour = QColor(seen.pixelColor(x, y))
            assert colour.red() == colour.green() == colour.blue()


def test_a_lot_is_chosen_by_a_tap(qtbot, picture):
    picture.show_map(a_map())
    picture.resize(590, picture.sizeHint().height())
    chosen = []
    picture.chosen.connect(chosen.append)
    spot = next(spot for place, spot in picture.spots() if place == 6)
    qtbot.mouseClick(picture, Qt.MouseButton.LeftButton, pos=spot.toPoint())
    assert chosen == [6]
