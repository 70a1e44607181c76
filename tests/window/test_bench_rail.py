import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtTest import QTest

from app.window.bench import Bench
from app.window.bench_rail import BenchRail
from app.window.look.look import TARGET, Size, look
from tests.window.fakes import a_place

PLACES = [
    a_place(Bench, "Receiving", number=1),
    a_place(Bench, "Pots & trays", number=4),
    a_place(Bench, "Desk", number=10, apart=True),
]


@pytest.fixture
def rail(qtbot):
    rail = BenchRail(PLACES)
    qtbot.addWidget(rail)
    rail.resize(rail.sizeHint().width(), 600)
    rail.show()
    QTest.qWaitForWindowActive(rail)
    return rail


def test_a_bench_is_chosen_by_hand(qtbot, rail):
    with qtbot.waitSignal(rail.chosen) as heard:
        QTest.mouseClick(rail.keys[1], Qt.MouseButton.LeftButton)
    assert heard.args == [PLACES[1]]


@pytest.mark.parametrize(("number", "place"), [("4", 1), ("0", 2)])
def test_a_bench_is_chosen_by_alt_and_its_number(qtbot, rail, number, place):
    with qtbot.waitSignal(rail.chosen) as heard:
        QTest.keyClick(rail.windowHandle(), number, Qt.KeyboardModifier.AltModifier)
    assert heard.args == [PLACES[place]]


def test_arrow_keys_walk_and_enter_chooses(qtbot, rail):
    rail.keys[0].setFocus()
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Up):
        QTest.keyClick(rail.windowHandle(), key)
    with qtbot.waitSignal(rail.chosen) as heard:
        QTest.keyClick(rail.windowHandle(), Qt.Key.Key_Return)
    assert heard.args == [PLACES[1]]


def test_only_the_window_marks_where_one_is(rail):
    rail.keys[0].click()
    assert not rail.keys[0].isChecked()
    rail.mark(PLACES[2])
    assert [key.isChecked() for key in rail.keys] == [False, False, True]
    assert rail.keys[2].focusPolicy() is Qt.FocusPolicy.StrongFocus


@pytest.mark.parametrize("factor", [1.0, 1.5, 2.0])
def test_names_have_room_and_keys_are_large_enough(rail, dressed, factor):
    dressed(factor)
    metrics = QFontMetricsF(look().font(Size.PLAIN, bold=True))
    for key in rail.keys:
        size = key.sizeHint()
        assert metrics.horizontalAdvance(key.place.title) + look().grid(24) + 40 <= size.width()
        assert size.height() >= TARGET
        assert key.accessibleName() == key.place.title
        assert key.shortcut().isEmpty()
