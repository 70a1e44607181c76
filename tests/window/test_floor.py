import pytest

from app.problems import Refused
from app.window.bench import Around, Bench
from app.window.floor import Floor
from app.window.parts.findings import Finding
from app.window.parts.key_button import KeyButton
from tests.window.fakes import a_place, a_session
from tests.window.stops import Station


class Quiet(Bench):
    """A bench that counts how often it was entered."""

    times = 0

    def entered(self):
        self.times += 1


def around(floor):
    nothing = lambda *_: None  # noqa: E731
    return Around(
        background=None, session=a_session(), do=nothing, run=nothing, say=nothing,
        trouble=floor.trouble, found=floor.found, show_trail=floor.show_trail, go=nothing,
        printers=None,
    )  # fmt: skip


@pytest.fixture
def floor(qtbot):
    floor = Floor([a_place(Quiet, "Winding", number=2), a_place(Quiet, "Desk", number=10)])
    qtbot.addWidget(floor)
    floor.resize(1280, 700)
    floor.show()
    return floor


def test_until_the_book_is_open_no_bench_can_be_entered(floor):
    floor.show_sentence("opening the book …")
    floor.rail.keys[0].click()
    assert floor.bench() is None
    assert floor.open_place(floor.places[0]) is None


def test_a_bench_is_made_once_and_entered_each_time(floor):
    floor.let_in(around(floor))
    first = floor.open_place(floor.places[0])
    floor.open_place(floor.places[1])
    assert floor.open_place(floor.places[0]) is first
    assert first.times == 2
    assert floor.bench() is first
    assert floor.rail.keys[0].isChecked()


def test_trail_and_warnings_belong_to_the_bench_that_is_open(floor):
    floor.let_in(around(floor))
    floor.open_place(floor.places[0])
    floor.show_trail([Station("dye lot", "26·15·R6F", here=True)])
    floor.found([Finding("97 g is too light.")])
    floor.trouble(Refused("No."))
    assert floor.trail.isVisible()
    assert floor.findings.isVisible()
    floor.open_place(floor.places[1])
    assert not floor.trail.isVisible()
    assert not floor.findings.isVisible()
    assert not floor.problem.isVisible()


def test_an_answer_goes_to_whoever_found_it(floor):
    answers = []
    finding = Finding("97 g is too light.", ("Seconds",))
    floor.found([finding], lambda *answer: answers.append(answer))
    floor.findings.findChildren(KeyButton)[0].click()
    assert answers == [(finding, "Seconds")]
