import threading

import pytest

from app.problems import Refused
from app.window.background import Background
from app.window.bench import Around, Bench
from app.window.parts.key_button import KeyButton
from tests.window.fakes import FakeBook, a_session


@pytest.fixture
def bench(qtbot):
    background = Background(lambda *_: None)
    did, said = [], []
    bench = Bench(
        Around(
            background=background,
            session=a_session(FakeBook()),
            do=lambda owner, deed, args, then, terms: did.append((deed, args, terms)),
            run=lambda *_: None,
            say=said.append,
            trouble=lambda _: None,
            found=lambda *_: None,
            show_trail=lambda _: None,
            go=lambda _: None,
            printers=None,
        )  # fmt: skip
    )
    bench.did, bench.said = did, said
    qtbot.addWidget(bench)
    yield bench
    background.close()


def test_a_bench_takes_nothing_it_was_not_made_for(bench):
    assert not bench.take("2615R6F")
    assert not bench.take_again("2615R6F")
    assert not bench.seek("Ferry Ledger")
    assert not bench.take_list(["2615R6F", "2619K44"])
    assert not bench.take_picture(b"")


def test_a_deed_goes_to_the_window_with_its_terms(bench):
    bench.do(print, "2615R6F", reason="spoiled", happened=None)
    assert bench.did == [(print, ("2615R6F",), {"reason": "spoiled", "happened": None})]
    bench.say("looked up")
    assert bench.said == ["looked up"]


def test_an_answer_is_shown(qtbot, bench):
    shown = []
    bench.ask(shown.append, lambda connection, text: text.upper(), "osk")
    qtbot.waitUntil(lambda: shown == ["OSK"])


def test_only_the_newest_of_two_answers_is_shown(qtbot, bench):
    shown, gate = [], threading.Event()

    def question(connection, text):
        if text == "o":
            gate.wait()
        return text

    bench.ask(shown.append, question, "o")
    bench.ask(shown.append, question, "osk")
    qtbot.waitUntil(lambda: shown == ["osk"])
    gate.set()
    qtbot.waitUntil(lambda: bench.around.background.jobs() == 0)
    assert shown == ["osk"]


def test_two_askers_do_not_disturb_each_other(qtbot, bench):
    one, other = [], []
    bench.ask(one.append, lambda connection: "one")
    bench.ask(other.append, lambda connection: "other")
    qtbot.waitUntil(lambda: (one, other) == (["one"], ["other"]))


def test_what_is_refused_is_not_shown_as_an_answer(qtbot, bench):
    shown = []

    def question(connection):
        raise Refused("no")

    bench.ask(shown.append, question)
    qtbot.waitUntil(lambda: bench.around.background.jobs() == 0)
    assert shown == []


def test_a_letter_presses_the_key_of_the_bench_that_shows_it(bench):
    heard = []
    shown, hidden = KeyButton("Lift", "L"), KeyButton("Look", "K")
    for key in (shown, hidden):
        key.clicked.connect(lambda _checked, key=key: heard.append(key.key))
        bench.body.addWidget(key)
    hidden.hide()
    bench.show()
    assert bench.press("l")
    assert not bench.press("k")
    assert not bench.press("7")
    assert heard == ["L"]


def test_a_key_that_is_refused_is_pressed_in_vain_but_begins_no_word(bench):
    heard = []
    key = KeyButton("Lift", "L")
    key.clicked.connect(lambda: heard.append(1))
    bench.body.addWidget(key)
    key.refuse("The pot is empty.")
    bench.show()
    assert bench.press("L")
    assert heard == []
