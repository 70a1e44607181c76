from itertools import combinations

from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter

from app.window.shades.marks import SHAPES, draw_mark, draw_standard


def painted(draw):
    picture = QImage(QSize(40, 40), QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    draw(painter)
    painter.end()
    return picture


def test_every_shape_looks_different(qapp):
    pictures = [painted(lambda p, n=n: draw_mark(p, QPointF(20, 20), 7, n, filled=True))
                for n in range(SHAPES)]
    pictures.append(painted(lambda p: draw_standard(p, QPointF(20, 20), 7)))
    assert all(one != other for one, other in combinations(pictures, 2))


def test_hollow_filled_and_in_hand_differ_and_no_mark_has_a_colour(qapp):
    pictures = [painted(lambda p, f=filled, h=hand: draw_mark(
        p, QPointF(20, 20), 7, 1, filled=f, in_hand=h))
        for filled in (True, False) for hand in (True, False)]
    assert all(one != other for one, other in combinations(pictures, 2))
    for picture in pictures:
        for x in range(40):
            colour = QColor(picture.pixelColor(x, 20))
            assert colour.red() == colour.green() == colour.blue()
