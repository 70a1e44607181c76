import threading

import pytest
from PySide6.QtCore import QObject, Qt
from PySide6.QtTest import QTest

from app.window.background import Background
from app.window.head_and_foot import Foot, Head, WhoKey
from app.window.look.look import TARGET
from tests.window.example_benches import put_by


@pytest.fixture
def background(qapp):
    background = Background(lambda *_: None)
    yield background
    background.close()


@pytest.fixture
def foot(qtbot, background):
    foot = Foot(background)
    qtbot.addWidget(foot)
    foot.resize(1280, 52)
    foot.show()
    return foot


def test_what_was_done_stays_with_its_undo(qtbot, foot):
    foot.show_said("put by 1 skein", undo=True)
    foot.show_note("26·15·R6F was scanned twice and taken once")
    assert foot.said.text() == "put by 1 skein"
    assert foot.undo.isVisible()
    with qtbot.waitSignal(foot.undo_wanted):
        foot.undo.click()
    foot.show_said("taken back: put by 1 skein")
    assert not foot.undo.isVisible()
    assert foot.note.text() == ""


def test_f2_asks_for_undo_also_while_there_is_nothing_to_take_back(qtbot, shell, fake_book):
    QTest.keyClick(shell.windowHandle(), Qt.Key.Key_F2)
    assert shell.foot.said.text() == "Nothing to take back"
    assert not shell.foot.undo.isVisible()
    shell.floor.bench().do(put_by, "2615R6F")
    qtbot.waitUntil(shell.foot.undo.isVisible)
    QTest.keyClick(shell.windowHandle(), Qt.Key.Key_F2)
    qtbot.waitUntil(lambda: fake_book.undone == [1])


def test_what_goes_on_is_told_until_it_is_over(qtbot, foot, background):
    gate = threading.Event()
    background.read(QObject(foot), gate.wait, lambda _: None)
    assert foot.going_on.text() == "working …"
    gate.set()
    qtbot.waitUntil(lambda: foot.going_on.text() == "")


def test_a_long_job_says_how_far_it_is_and_can_be_cancelled(qtbot, foot, background):
    gate = threading.Event()

    def job(progress):
        progress.say(1200, 4000)
        gate.wait()
        progress.say(1201, 4000)

    background.long(QObject(foot), "reading the sheet", job, lambda _: pytest.fail("not done"))
    qtbot.waitUntil(lambda: "reading the sheet" in foot.going_on.text())
    assert foot.cancel.isVisible()
    foot.cancel.click()
    gate.set()
    qtbot.waitUntil(lambda: not foot.cancel.isVisible())
    assert foot.going_on.text() == ""


def test_who_is_at_which_station_is_always_said(qtbot):
    who = WhoKey()
    qtbot.addWidget(who)
    assert "nobody has signed on" in who.accessibleName()
    who.show_who("SK", "till")
    assert who.accessibleName().startswith("SK at the till")
    assert who.sizeHint().height() >= TARGET


def test_the_hint_gives_way_to_large_text(qtbot, dressed):
    head = Head({})
    qtbot.addWidget(head)
    head.show()
    assert head.hint.isVisible()
    dressed(2.0)
    assert not head.hint.isVisible()
