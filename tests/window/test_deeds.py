import threading

import pytest
from PySide6.QtCore import QObject
from shiboken6 import delete

from app.problems import Refused
from app.window.background import Background
from app.window.deeds import Deeds
from tests.window.fakes import FakeBook, Outcome, a_session


def lift(deed, lot):
    return f"lifted {lot}", ("a bundle is missing",)


def refuse(deed):
    raise Refused("Not yet.", "Wait.")


@pytest.fixture
def book():
    return FakeBook()


@pytest.fixture
def deeds(qtbot, book):
    background = Background(lambda *_: None)
    deeds = Deeds(background, background)
    deeds.session = a_session(book)
    deeds.heard = []
    deeds.said.connect(lambda *said: deeds.heard.append(said))
    yield deeds
    background.close()


def test_a_deed_is_done_in_the_name_of_who_signed_on_and_told(qtbot, deeds, book):
    outcomes = []
    with qtbot.waitSignal(deeds.found) as found:
        deeds.do(deeds, lift, ("2615R6F",), outcomes.append, {})
    qtbot.waitUntil(lambda: bool(outcomes))
    assert book.done == [("lift", ("2615R6F",), ("SK", "till"))]
    assert deeds.heard == [("lifted 2615R6F", True)]
    assert found.args == [("a bundle is missing",)]
    assert outcomes[0].seq == 1


def test_what_was_done_is_told_though_the_card_that_did_it_is_gone(qtbot, deeds, book):
    card, came = QObject(), []
    with qtbot.waitSignal(deeds.said) as told:
        deeds.do(card, lift, ("2615R6F",), came.append, {})
        delete(card)
    assert told.args[1] is True
    assert came == []


def test_the_last_deed_is_taken_back_once(qtbot, deeds, book):
    deeds.do(deeds, lift, ("2615R6F",), None, {})
    qtbot.waitUntil(lambda: len(deeds.heard) == 1)
    deeds.undo_last()
    qtbot.waitUntil(lambda: len(deeds.heard) == 2)
    deeds.undo_last()
    assert book.undone == [1]
    assert deeds.heard[1:] == [
        ("taken back: lifted 2615R6F", False),
        ("Nothing to take back", False),
    ]


def test_what_is_refused_is_told_and_not_undone(qtbot, deeds, book):
    with qtbot.waitSignal(deeds.failed) as failed:
        deeds.do(deeds, refuse, (), None, {})
    assert failed.args[0].what == "Not yet."
    assert deeds.heard == []


def test_each_deed_has_a_token_of_its_own(qtbot, deeds, book, monkeypatch):
    tokens = []

    def do(self, work, *args, by, **terms):
        tokens.append(terms["token"])
        return Outcome(None, len(tokens), "")

    monkeypatch.setattr(FakeBook, "do", do)
    for _ in range(2):
        deeds.do(deeds, lift, ("2615R6F",), None, {})
    deeds.do(deeds, lift, ("2615R6F",), None, {"token": "mine"})
    qtbot.waitUntil(lambda: len(tokens) == 3)
    assert tokens[2] == "mine"
    assert len(set(tokens)) == 3


def test_without_a_person_nothing_is_done(qtbot, deeds, book):
    deeds.session.person = ""
    with qtbot.waitSignal(deeds.failed) as failed:
        deeds.do(QObject(), lift, ("2615R6F",), None, {})
    assert "Nobody has signed on" in failed.args[0].what
    assert book.done == []


def test_what_ends_in_one_deed_is_told_and_taken_back_like_a_deed(qtbot, deeds, book):
    outcomes = []
    deeds.run(
        deeds,
        lambda session: Outcome("sheet.pdf", 7, f"printed by {session.person}"),
        outcomes.append,
    )
    qtbot.waitUntil(lambda: bool(outcomes))
    assert outcomes[0].answer == "sheet.pdf"
    assert deeds.heard == [("printed by SK", True)]
    deeds.undo_last()
    qtbot.waitUntil(lambda: book.undone == [7])


def test_nobody_prints_who_has_not_signed_on(deeds):
    deeds.session.person, told = "", []
    deeds.failed.connect(told.append)
    deeds.run(deeds, lambda session: pytest.fail("printed"), None)
    assert told[0].what == "Nobody has signed on here, so nothing was saved."


def test_who_pressed_the_key_signs_though_another_signs_on_meanwhile(qtbot, deeds, book):
    gate = threading.Event()
    deeds.run(deeds, lambda session: gate.wait() and Outcome("", 1, ""), None)
    deeds.do(deeds, lift, ("2615R6F",), None, {})
    deeds.session.person = "DA"
    gate.set()
    qtbot.waitUntil(lambda: bool(book.done))
    assert book.done == [("lift", ("2615R6F",), ("SK", "till"))]
