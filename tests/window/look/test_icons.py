import pytest
from PySide6.QtCore import QRectF

from app.window.look.icons import FIELD, WEIGHT, Icon, outline, picture


@pytest.mark.parametrize("icon", list(Icon))
def test_every_picture_keeps_to_its_field(icon):
    room = QRectF(0, 0, FIELD, FIELD).adjusted(WEIGHT / 2, WEIGHT / 2, -WEIGHT / 2, -WEIGHT / 2)
    assert room.contains(outline(icon).boundingRect())


def test_no_two_pictures_are_alike(qtbot):
    assert len({picture(icon, 48, "#161616").pixmap(48).toImage().bits().tobytes()
                for icon in Icon}) == len(Icon)  # fmt: skip
