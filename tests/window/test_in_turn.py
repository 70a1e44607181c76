"""Scans are answered in the order they came."""

import threading

import pytest

from app.problems import NotFound
from app.window.background import Background
from app.window.bench import Around, Bench
from app.window.in_turn import InTurn
from tests.window.fakes import a_session


@pytest.fixture
def bench(qtbot):
    faults, troubles = [], []
    background = Background(lambda _owner, error: faults.append(error))
    nothing = lambda *_: None  # noqa: E731
    bench = Bench(Around(background, a_session(), nothing, nothing, nothing, troubles.append,
                         nothing, nothing, nothing, None))
    bench.troubles = troubles
    qtbot.addWidget(bench)
    yield bench
    background.close()


def test_a_slow_answer_comes_before_the_quick_one_that_was_asked_later(qtbot, bench):
    turn, shown, gate = InTurn(bench), [], threading.Event()

    def slow(connection):
        gate.wait()
        return "disc"

    turn.ask(shown.append, slow)
    turn.ask(shown.append, lambda connection: "pot")
    turn.then(lambda: shown.append("DONE"))
    assert shown == []
    gate.set()
    qtbot.waitUntil(lambda: len(shown) == 3)
    assert shown == ["disc", "pot", "DONE"]


def test_with_nothing_before_it_an_action_is_done_at_once(bench):
    shown = []
    InTurn(bench).then(lambda: shown.append("DONE"))
    assert shown == ["DONE"]


def test_what_an_answer_asks_comes_after_what_was_scanned_before(qtbot, bench):
    turn, shown = InTurn(bench), []

    def first(answer):
        shown.append(answer)
        turn.then(lambda: shown.append("piles"))

    turn.ask(first, lambda connection: "disc")
    turn.then(lambda: shown.append("DONE"))
    qtbot.waitUntil(lambda: len(shown) == 3)
    assert shown == ["disc", "DONE", "piles"]


def test_a_question_that_is_refused_is_told_and_the_next_goes_on(qtbot, bench):
    turn, shown = InTurn(bench), []

    def missing(connection):
        raise NotFound("There is no such disc.")

    turn.ask(shown.append, missing)
    turn.ask(shown.append, lambda connection: "pot")
    qtbot.waitUntil(lambda: shown == ["pot"])
    assert [problem.what for problem in bench.troubles] == ["There is no such disc."]
