import sys
import threading

import pytest
import shiboken6
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QLabel, QPushButton

from app.problems import Refused
from app.window.background import Background


@pytest.fixture
def background(qapp):
    shown = []
    background = Background(lambda owner, error: shown.append(error))
    background.shown = shown
    yield background
    background.close()


def test_an_answer_comes_back_on_the_screens_thread(qtbot, background):
    owner, seen = QObject(), []
    background.write(
        owner,
        lambda: threading.current_thread().name,
        lambda name: seen.append((name, threading.current_thread())),
    )
    qtbot.waitUntil(lambda: bool(seen))
    assert seen[0][0].startswith("writer")
    assert seen[0][1] is threading.main_thread()


def test_deeds_are_done_in_order_one_at_a_time(qtbot, background):
    owner, order = QObject(), []
    for number in range(20):
        background.write(owner, lambda n=number: order.append(n), lambda _: None)
    qtbot.waitUntil(lambda: len(order) == 20)
    assert order == list(range(20))


def test_a_failure_is_told_once(qtbot, background):
    owner = QObject()

    def job():
        raise Refused("no")

    background.read(owner, job, lambda _: pytest.fail("it was not done"))
    qtbot.waitUntil(lambda: bool(background.shown))
    assert isinstance(background.shown[0], Refused)


def test_whoever_asks_for_failures_gets_them(qtbot, background):
    owner, failed = QObject(), []
    background.read(owner, lambda: 1 / 0, lambda _: None, failed.append)
    qtbot.waitUntil(lambda: bool(failed))
    assert background.shown == []


def test_an_answer_for_a_bench_that_is_gone_is_dropped(qtbot, background):
    owner, gate, seen = QPushButton(), threading.Event(), []
    background.read(owner, gate.wait, lambda _: seen.append(1))
    shiboken6.delete(owner)
    gate.set()
    qtbot.waitUntil(lambda: background.jobs() == 0)
    assert seen == []
    assert background.shown == []


def test_how_many_jobs_are_open_is_told(qtbot, background):
    owner, gate, told = QObject(), threading.Event(), []
    background.busy.connect(told.append)
    background.read(owner, gate.wait, lambda _: None)
    assert background.jobs() == 1
    gate.set()
    qtbot.waitUntil(lambda: background.jobs() == 0)
    assert told == [1, 0]


def test_a_long_job_tells_how_far_it_is(qtbot, background):
    owner, told, done = QObject(), [], []
    background.progressed.connect(lambda p: told.append((p.words, p.done, p.of)))

    def job(progress):
        for number in range(1, 4):
            progress.say(number, 3)
        return "all of it"

    background.long(owner, "reading the bands", job, done.append)
    qtbot.waitUntil(lambda: bool(done))
    assert done == ["all of it"]
    assert told[-1] == ("reading the bands", 3, 3)


def test_a_long_job_ends_where_it_was_cancelled(qtbot, background):
    owner, steps, gate = QObject(), [], threading.Event()

    def job(progress):
        steps.append("first")
        gate.wait()
        progress.say(1, 2)
        steps.append("second")

    progress = background.long(owner, "importing", job, lambda _: pytest.fail("not done"))
    qtbot.waitUntil(lambda: steps == ["first"])
    progress.cancel()
    with qtbot.waitSignal(background.ended) as ended:
        gate.set()
    qtbot.waitUntil(lambda: background.jobs() == 0)
    assert ended.args == [progress]
    assert steps == ["first"]
    assert background.shown == []


def test_waiting_deeds_are_still_done_when_the_program_closes(qapp):
    background, order, owner = Background(lambda *_: None), [], QObject()
    for number in range(50):
        background.write(owner, lambda n=number: order.append(n), lambda _: None)
    background.close()
    assert order == list(range(50))


def test_five_thousand_answers_with_owners_going_meanwhile(qtbot, background):
    answers = []
    for number in range(5_000):
        owner = QObject()
        background.read(owner, lambda n=number: n, answers.append)
        if number % 3 == 0:
            shiboken6.delete(owner)
        else:
            owner.setParent(background)
    qtbot.waitUntil(lambda: background.jobs() == 0, timeout=30_000)
    assert sorted(answers) == [number for number in range(5_000) if number % 3]


def test_calls_and_signals_leave_no_reference_behind(qtbot, background):
    """PySide6 6.12.0 on Python 3.11 loses one of None and True at each, and aborts in the end."""
    label, heard = QLabel(), []
    qtbot.addWidget(label)
    background.busy.connect(heard.append)
    before = sys.getrefcount(None), sys.getrefcount(True)
    for number in range(1_000):
        label.setText("x")
        background.busy.emit(number)
    after = sys.getrefcount(None), sys.getrefcount(True)
    assert len(heard) == 1_000
    assert all(abs(a - b) < 200 for a, b in zip(after, before, strict=True))
