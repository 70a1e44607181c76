"""The picture of a trail on the screen: walked by keys, moved and zoomed, opened and folded."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.window.parts.trail_graph import TrailGraph
from tests.window.parts.test_trail_walk import at, sample


@pytest.fixture
def graph(qtbot):
    graph = TrailGraph()
    qtbot.addWidget(graph)
    graph.resize(620, 300)
    graph.show()
    graph.setFocus()
    QTest.qWaitForWindowActive(graph)
    graph.show_picture(sample(), "here", {"here": "It is here.", "wash": "It was washed."})
    return graph


def strike(graph, *keys):
    for key in keys:
        QTest.keyClick(graph, getattr(Qt.Key, f"Key_{key}"))


def where(graph, key):
    """Where a station is on the widget."""
    return graph._on_screen(at(graph.picture, key))


def test_arrow_keys_walk_and_what_is_walked_to_is_seen_and_spoken(graph):
    graph.nearer(5)
    strike(graph, "Right")
    assert graph.at in ("wash", "rail")
    strike(graph, "Right", "Up", "Down", "Left", "Home")
    assert graph.at == "here"
    assert graph.accessibleDescription() == "It is here."
    for _ in range(3):
        strike(graph, "Right")
        assert graph.rect().contains(where(graph, graph.at).toPoint())


def test_enter_opens_and_backspace_folds(graph, qtbot):
    with qtbot.waitSignal(graph.opened) as heard:
        strike(graph, "Left", "Return")
    assert heard.args == ["cone"]
    with qtbot.waitSignal(graph.folded) as heard:
        strike(graph, "Backspace")
    assert heard.args == ["cone"]


def test_a_tap_opens_and_a_drag_moves(graph, qtbot):
    with qtbot.waitSignal(graph.opened) as heard:
        QTest.mouseClick(graph, Qt.MouseButton.LeftButton, pos=where(graph, "cone").toPoint())
    assert heard.args == ["cone"]
    before = where(graph, "here")
    QTest.mousePress(graph, Qt.MouseButton.LeftButton, pos=QPoint(10, 10))
    QTest.mouseMove(graph, QPoint(60, 40))
    with qtbot.assertNotEmitted(graph.opened):
        QTest.mouseRelease(graph, Qt.MouseButton.LeftButton, pos=QPoint(60, 40))
    assert where(graph, "here") - before == QPointF(50, 30)


def test_the_wheel_comes_nearer_to_what_is_under_it(graph):
    point, zoom = where(graph, "wash"), graph.zoom
    turned = QWheelEvent(point, graph.mapToGlobal(point), QPoint(), QPoint(0, 120),
                         Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
                         Qt.ScrollPhase.NoScrollPhase, False)
    QApplication.sendEvent(graph, turned)
    assert graph.zoom > zoom
    assert (where(graph, "wash") - point).manhattanLength() < 0.01
    graph.whole()
    assert all(graph.rect().contains(where(graph, one.tag.key).toPoint())
               for one in graph.picture.tags)


def test_what_was_walked_to_keeps_its_place_in_the_next_picture(graph):
    strike(graph, "Right")
    walked, place = graph.at, where(graph, graph.at)
    graph.show_picture(sample(), "here", {})
    assert graph.at == walked
    assert (where(graph, walked) - place).manhattanLength() < 0.01
    graph.clear()
    assert graph.grab().toImage().pixelColor(5, 5).name() == "#cfcfcf"
