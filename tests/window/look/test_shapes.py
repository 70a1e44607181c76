from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from app.window.look.look import Look, Size
from app.window.look.palette import HOLD_RED
from app.window.look.shapes import (
    draw_focus,
    draw_hold,
    draw_key_cap,
    hold_size,
    key_cap_width,
    octagon,
    swing_tag,
)


def drawn(draw):
    image = QImage(200, 80, QImage.Format.Format_RGB32)
    image.fill(QColor("#CFCFCF"))
    painter = QPainter(image)
    draw(painter)
    painter.end()
    return image


def red_pixels(image):
    red = QColor(HOLD_RED)
    return sum(image.pixelColor(x, y) == red for x in range(200) for y in range(80))


def test_hold_has_eight_corners_and_a_tag_six():
    box = QRectF(0, 0, 60, 30)
    assert len(octagon(box, 6)) == 8
    assert len(swing_tag(box, 6)) == 6
    assert octagon(box, 6).boundingRect() == swing_tag(box, 6).boundingRect() == box


def test_hold_is_filled_where_it_was_placed_and_an_outline_below():
    box = QRectF(10, 10, *hold_size(Size.TITLE))
    here = red_pixels(drawn(lambda p: draw_hold(p, box, Size.TITLE, True)))
    below = red_pixels(drawn(lambda p: draw_hold(p, box, Size.TITLE, False)))
    assert here > 3 * below > 0


def test_a_longer_key_has_a_wider_cap():
    font = Look().font(Size.SMALL, bold=True)
    assert key_cap_width("Enter", font) > key_cap_width("F2", font) >= 24


def test_caps_and_rings_leave_ink():
    font = Look().font(Size.SMALL)
    ink = QColor("#161616")
    cap = drawn(lambda p: draw_key_cap(p, QRectF(10, 10, 40, 24), "F2", font, ink))
    ring = drawn(lambda p: draw_focus(p, QRectF(10, 10, 40, 24)))
    blank = drawn(lambda p: None)
    assert cap != blank
    assert ring != blank
