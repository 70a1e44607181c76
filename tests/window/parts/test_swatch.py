import pytest
from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QImage, QPainter

from app.window.look.look import Look
from app.window.look.palette import EVENING
from app.window.look.stylesheet import wear
from app.window.parts.swatch import SMALL, Swatch, Zone, draw_zones


def share_of(image, colour):
    pixels = image.width() * image.height()
    same = QColor(colour)
    return sum(image.pixelColor(x, y) == same
               for x in range(image.width()) for y in range(image.height())) / pixels  # fmt: skip


def test_zones_are_shown_in_proportion():
    zones = [Zone("#B3D0CE", 45), Zone("#1B856E", 35), Zone("#E5DDCB", 20)]
    image = QImage(200, 80, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    draw_zones(painter, QRectF(0, 0, 200, 80), zones)
    painter.end()
    for zone in zones:
        assert share_of(image, zone.colour) == pytest.approx(zone.share / 100, abs=0.01)


def test_specks_cover_their_share_and_stay_where_they_are(qtbot):
    swatch = Swatch([Zone("#FFFFFF"), Zone("#1D1816", 0.08, speckle=True)], size=QSize(152, 288))
    qtbot.addWidget(swatch)
    swatch.resize(swatch.sizeHint())
    first, again = swatch.grab().toImage(), swatch.grab().toImage()
    assert share_of(first, "#1D1816") == pytest.approx(0.08, abs=0.01)
    assert first == again


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_without_a_colour_the_words_have_room(qtbot, dressed, factor):
    dressed(factor)
    swatch = Swatch(of="2612F5F")
    qtbot.addWidget(swatch)
    size = swatch.sizeHint()
    words = swatch._words_box(size.width() - 4)
    assert words.width() <= size.width() - 4
    assert words.height() <= size.height() - 4
    assert swatch.accessibleName() == "2612F5F: not measured"


def test_a_swatch_is_never_smaller_than_can_be_judged(qtbot):
    swatch = Swatch([Zone("#1B856E")])
    qtbot.addWidget(swatch)
    assert swatch.sizeHint() == SMALL
    assert SMALL.expandedTo(QSize(56, 44)) == SMALL


def test_on_dark_paper_it_lies_on_a_light_patch(qtbot, qapp):
    swatch = Swatch([Zone("#1B856E")])
    qtbot.addWidget(swatch)
    wear(qapp, Look(EVENING))
    image = swatch.grab().toImage()
    assert image.pixelColor(1, 1).name().upper() == EVENING.mount
    assert image.pixelColor(20, 20).name().upper() == "#1B856E"
