import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtTest import QTest

from app.window.look.look import TARGET, Size, look
from app.window.parts.yarn_trail import YarnTrail
from tests.window.stops import Station

STATIONS = (
    Station("delivery", "14 Mar", "24 cones", link="14"),
    Station("cone", "C·0121·4", "13 of 13", link="C01214"),
    Station("disc", "044", "6 + 6", "one of a pool", "one of two, and a long note over it"),
    Station("dye lot", "26·15·R6F", "12 skeins", held="here", here=True, link="2615R6F"),
    Station("wash", "W-231", "with 1 lot", "partly", "62 %", "below"),
    Station("pile", "16 Apr", "12 counted"),
    Station("tags", "12 of 12", "tied on", "not known"),
    Station("customers", "7 sold", "to 4", link="sold"),
)


@pytest.fixture
def trail(qtbot):
    trail = YarnTrail()
    qtbot.addWidget(trail)
    trail.show_stations(STATIONS)
    trail.resize(1096, 200)
    trail.show()
    QTest.qWaitForWindowActive(trail)
    return trail


def strike(trail, key):
    QTest.keyClick(trail.windowHandle(), key)


def test_a_tag_leads_where_it_says(qtbot, trail):
    with qtbot.waitSignal(trail.followed) as heard:
        QTest.mouseClick(trail.tags[3], Qt.MouseButton.LeftButton)
    assert heard.args == ["2615R6F"]


def test_arrow_keys_walk_along_the_yarn_and_enter_follows(qtbot, trail):
    trail.tags[3].setFocus()
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Left):
        strike(trail, key)
    assert trail.tags[4].hasFocus()
    strike(trail, Qt.Key.Key_Home)
    strike(trail, Qt.Key.Key_Left)
    with qtbot.waitSignal(trail.followed) as heard:
        strike(trail, Qt.Key.Key_Return)
    assert heard.args == ["14"]
    strike(trail, Qt.Key.Key_End)
    assert trail.tags[-1].hasFocus()


def test_tab_reaches_the_yarn_once(trail):
    assert [tag.focusPolicy() is Qt.FocusPolicy.StrongFocus for tag in trail.tags].count(True) == 1
    assert trail.tags[3].focusPolicy() is Qt.FocusPolicy.StrongFocus


def test_tags_never_touch_and_notes_have_room(trail, dressed):
    for factor in (1.0, 1.5, 2.0):
        dressed(factor)
        boxes = [tag.geometry().adjusted(8, 0, -8, 0) for tag in trail.tags]
        assert not any(a.intersects(b) for a in boxes for b in boxes if a is not b)
        metrics = QFontMetricsF(look().font(Size.SMALL))
        for station, left, right in zip(STATIONS[1:], boxes, boxes[1:], strict=False):
            between = right.center().x() - left.center().x()
            assert metrics.horizontalAdvance(station.note) + 8 <= between


def test_a_long_trail_scrolls_sideways_and_the_one_in_hand_is_in_sight(trail, dressed):
    assert not trail.horizontalScrollBar().isVisible()
    dressed(2.0)
    assert trail.horizontalScrollBar().maximum() > 0
    trail.show_stations(STATIONS)
    left = trail.tags[3].mapTo(trail.viewport(), trail.tags[3].rect().topLeft()).x()
    assert 0 <= left <= trail.viewport().width() - trail.tags[3].width()


def test_walking_brings_the_next_tag_into_sight(trail, dressed):
    dressed(2.0)
    trail.tags[0].setFocus()
    strike(trail, Qt.Key.Key_End)
    last = trail.tags[-1]
    right = last.mapTo(trail.viewport(), last.rect().topRight()).x()
    assert right <= trail.viewport().width()


def test_tags_are_large_enough_and_named(trail):
    for tag in trail.tags:
        assert min(tag.width(), tag.height()) >= TARGET
        assert tag.accessibleName()


def test_other_stations_keep_the_focus_on_the_same_one(qtbot, trail):
    trail.tags[1].setFocus()
    trail.show_stations(STATIONS[:4])
    assert trail.tags[1].hasFocus()


def test_no_stations_at_all_is_a_plain_yarn(trail):
    trail.show_stations(())
    assert trail.tags == []
    assert not trail.grab().isNull()
