from PySide6.QtCore import QPointF, Qt

from app.window.shades.spots import SpotPicture


class _Three(SpotPicture):
    def spots(self):
        return [(0, QPointF(20, 20)), (1, QPointF(60, 20)), (2, QPointF(100, 20))]


def test_the_nearest_spot_is_meant_and_none_from_afar(qtbot):
    picture = _Three()
    qtbot.addWidget(picture)
    picture.resize(200, 120)
    chosen = []
    picture.chosen.connect(chosen.append)
    for place in (QPointF(24, 30), QPointF(75, 22), QPointF(180, 100)):
        qtbot.mouseClick(picture, Qt.MouseButton.LeftButton, pos=place.toPoint())
    assert chosen == [0, 1]


def test_arrow_keys_walk_from_end_to_end(qtbot):
    picture, chosen = _Three(), []
    qtbot.addWidget(picture)
    picture.chosen.connect(chosen.append)
    picture.chosen.connect(picture.mark)
    for key in "Left", "Right", "Down", "Right", "Up":
        qtbot.keyClick(picture, getattr(Qt.Key, f"Key_{key}"))
    assert chosen == [0, 1, 2, 2, 1]


def test_a_picture_without_lots_takes_no_keys(qtbot):
    picture, chosen = SpotPicture(), []
    qtbot.addWidget(picture)
    picture.chosen.connect(chosen.append)
    qtbot.keyClick(picture, Qt.Key.Key_Right)
    qtbot.mouseClick(picture, Qt.MouseButton.LeftButton)
    assert chosen == []
