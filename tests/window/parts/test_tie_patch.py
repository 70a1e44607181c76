import pytest
from PySide6.QtGui import QFontMetricsF

from app.window.look.look import Size, look
from app.window.parts.tie_patch import TiePatch


def test_the_word_is_part_of_the_patch(qtbot):
    patch = TiePatch("red", "#C2272D")
    qtbot.addWidget(patch)
    assert patch.accessibleName() == "red tie"
    patch.show_tie("yellow", "#E8B500")
    assert patch.accessibleName() == "yellow tie"


def test_it_is_read_from_two_metres(qtbot):
    patch = TiePatch("red", "#C2272D")
    qtbot.addWidget(patch)
    capitals = QFontMetricsF(look().font(Size.HUGE, bold=True)).capHeight()
    assert capitals >= 48
    assert patch.sizeHint().height() > capitals


@pytest.mark.parametrize("room", [120, 300, 900])
def test_the_colour_fills_it_and_the_word_stays_inside(qtbot, room):
    patch = TiePatch("yellow", "#E8B500")
    qtbot.addWidget(patch)
    patch.resize(room, patch.sizeHint().height())
    image = patch.grab().toImage()
    middle = patch.height() // 2
    for x in (0, 3, room - 4, room - 1):
        assert image.pixelColor(x, middle).name().upper() == "#E8B500"
