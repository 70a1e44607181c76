from pathlib import Path
from types import SimpleNamespace

import pytest

from app.exchange.taking_in import Said
from app.problems import BadInput
from app.window.list_look import look_at


class Later:
    """A background whose answers come when they are called."""

    def read(self, _owner, _job, done, failed):
        self.done, self.failed = done, failed


@pytest.fixture
def bench():
    return SimpleNamespace(around=SimpleNamespace(background=Later()))


@pytest.fixture
def card():
    shown = []
    return SimpleNamespace(path=Path("a.csv"), said=Said(), shown=shown, show_seen=shown.append,
                           show_problem=shown.append, begin=lambda: shown.append("keys"))


def test_the_answer_is_shown_and_has_the_keys(bench, card):
    look_at(bench, card, lambda: None)
    bench.around.background.done("three cones")
    assert card.shown == ["three cones", "keys"]


@pytest.mark.parametrize("meanwhile", [{"path": Path("b.csv")}, {"said": Said({"base": "Yarn"})}])
def test_an_answer_about_another_file_or_column_comes_too_late(bench, card, meanwhile):
    look_at(bench, card, lambda: None)
    for name, value in meanwhile.items():
        setattr(card, name, value)
    bench.around.background.done("three cones")
    bench.around.background.failed(BadInput("It is empty.", "Save it again."))
    assert card.shown == []


def test_what_cannot_be_read_is_told_and_a_fault_of_the_program_is_not_hidden(bench, card):
    look_at(bench, card, lambda: None)
    problem = BadInput("It is empty.", "Save it again.")
    bench.around.background.failed(problem)
    assert card.shown == [problem]
    with pytest.raises(ZeroDivisionError):
        bench.around.background.failed(ZeroDivisionError())
