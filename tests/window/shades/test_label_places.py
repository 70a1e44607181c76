from itertools import combinations
from random import Random

import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF

from app.window.shades.label_places import places, spread

ROOM = QRectF(0, 0, 320, 320)


@pytest.mark.parametrize("seed", range(5))
def test_no_label_lies_on_another_or_on_a_mark_or_outside(seed):
    chance = Random(seed)
    points = [QPointF(chance.gauss(160, 25), chance.gauss(160, 25)) for _ in range(24)]
    boxes = places(points, [QSizeF(20, 18)] * 24, ROOM, 10, 320)
    assert boxes is not None
    marks = [QRectF(point.x() - 10, point.y() - 10, 20, 20) for point in points]
    assert not any(one.intersects(other) for one, other in combinations(boxes, 2))
    assert not any(box.intersects(mark) for box in boxes for mark in marks)
    assert all(ROOM.contains(box) for box in boxes)


def test_where_there_is_no_room_nothing_is_placed_by_force():
    points = [QPointF(20, 20)] * 4
    assert places(points, [QSizeF(30, 30)] * 4, QRectF(0, 0, 40, 40), 10, 60) is None


@pytest.mark.parametrize("wanted", [
    [10, 10, 10], [50, 51, 200, 49], [0], [], [299, 300, 298, 297], [5, 4, 3, 2, 1]])
def test_labels_of_an_axis_keep_their_order_and_their_distance(wanted):
    found = spread(wanted, 20, 10, 290)
    in_order = [found[n] for n in sorted(range(len(wanted)), key=lambda n: wanted[n])]
    assert in_order == sorted(in_order)
    assert all(later - earlier >= 19.99 for earlier, later in zip(in_order, in_order[1:],
                                                                  strict=False))
    assert all(9.99 <= at <= 290.01 for at in found)


def test_labels_with_room_stay_where_they_are_wanted():
    assert spread([100, 50, 200], 20, 0, 300) == [100, 50, 200]
