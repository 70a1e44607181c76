from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.window.parts.shade_field import ShadeField, shades


def test_a_shade_is_chosen_by_arrow_keys_and_by_a_tap(qtbot):
    field = ShadeField()
    qtbot.addWidget(field)
    field.resize(field.sizeHint())
    chosen = []
    field.chosen.connect(chosen.append)
    QTest.keyClick(field, Qt.Key.Key_Right)
    QTest.keyClick(field, Qt.Key.Key_Down)
    assert chosen == [shades()[0][1], shades()[1][1]]
    QTest.mouseClick(field, Qt.MouseButton.LeftButton, pos=field.rect().topLeft() + field.rect()
                     .center() * 0.05)
    assert field.colour == shades()[0][0]
    assert field.accessibleDescription() == f"{field.colour} is chosen"
