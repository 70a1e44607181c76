from itertools import combinations

import pytest
from PySide6.QtCore import QRectF, Qt

from app.window.shades.map_picture import MARK, MapPicture
from tests.window.shades.maps import CODES, a_map, crowded


@pytest.fixture
def picture(qtbot):
    picture = MapPicture()
    qtbot.addWidget(picture)
    return picture


@pytest.mark.parametrize(("text", "width"), [(1.0, 590), (2.0, 900)])
@pytest.mark.parametrize("shades", [a_map(), crowded(), crowded(2)])
def test_no_label_lies_on_another_or_on_a_mark_at_any_size(picture, dressed, text, width, shades):
    dressed(text)
    picture.show_map(shades)
    picture.resize(width, picture.sizeHint().height())
    plan = picture.plan()
    lots = len(shades.lots)
    assert len(plan.boxes) == len(plan.axis_boxes) == lots
    labels = [*plan.boxes, *plan.axis_boxes]
    assert [(one, other) for one, other in combinations(labels, 2)
            if one.adjusted(0, 0.5, 0, -0.5).intersects(other)] == []
    marks = [QRectF(p.x() - MARK, p.y() - MARK, 2 * MARK, 2 * MARK)
             for p in (*plan.points, *plan.heights)]
    assert not any(label.intersects(mark) for label in labels for mark in marks)
    assert all(QRectF(picture.rect()).contains(label) for label in labels)
    assert all(plan.scale.plane.contains(point) for point in plan.points)
    assert not picture.grab().isNull()


def test_few_lots_are_named_by_their_codes_and_many_by_numbers(picture):
    picture.show_map(a_map())
    picture.resize(590, picture.sizeHint().height())
    assert picture.plan().labels == tuple(f"{n} {CODES[n - 1]}" for n in range(1, 9))
    picture.show_map(crowded())
    assert picture.plan().labels == tuple(str(n) for n in range(1, 25))


def test_whoever_sees_no_colour_hears_the_same_numbers(picture):
    picture.show_map(a_map())
    said = picture.accessibleName()
    assert "8 lots in 4 groups of which every two are within 1.0; fewer would not do." in said
    assert f"8 {CODES[7]}: L* 46.9, a* −35.6, b* 2.0, 1.6 ± 0.5 from the standard" in said


def test_a_lot_is_chosen_by_a_tap_and_by_arrow_keys(qtbot, picture):
    picture.show_map(a_map())
    picture.resize(590, picture.sizeHint().height())
    chosen = []
    picture.chosen.connect(chosen.append)
    picture.chosen.connect(picture.mark)
    qtbot.mouseClick(picture, Qt.MouseButton.LeftButton,
                     pos=picture.plan().points[7].toPoint())
    qtbot.mouseClick(picture, Qt.MouseButton.LeftButton,
                     pos=picture.plan().axis_boxes[2].center().toPoint())
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Left, Qt.Key.Key_Left, Qt.Key.Key_Left):
        qtbot.keyClick(picture, key)
    assert chosen == [7, 2, 3, 2, 1, 0]


def test_nothing_to_show_is_no_picture(picture):
    assert picture.plan() is None
    assert not picture.grab().isNull()
