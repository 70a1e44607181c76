import pytest

from app.work.weigh_lines import LineIn, begin_line
from tests.window.benches.at_work import plate
from tests.window.benches.weighing_hands import (
    again,
    balance_types,
    begin_602,
    begin_weighing_bench,
    jar,
    out,
    shown,
    weigh,
)


@pytest.fixture
def stopped(qtbot, settings, studio):
    """Two of three lines are weighed, the third jar stands open; then the power failed."""
    before = next(begin := begin_weighing_bench(qtbot, settings, studio))
    begin_602(before)
    weigh(before, 1, "5.12")
    weigh(before, 2, "1.33")
    before.scan(jar(3))
    path, house = studio.book.path, before.house
    with pytest.raises(StopIteration):
        next(begin)
    for bench in again(qtbot, settings, studio, path):
        bench.house = house
        bench.scan(plate(1))
        yield bench


def asked(bench):
    """The question that stands on the bench."""
    card = bench.bench.hand.stopped
    return card.question.text() if card.isVisible() else ""


def test_after_a_power_cut_the_lines_are_there_with_their_times_and_the_cup_is_asked(stopped):
    assert [(line.mg, line.is_open) for line in out(stopped).lines] == [
        (5120, False), (1330, False), (None, True)]
    assert asked(stopped) == ("K1 black stood on the balance when work stopped. Is the cup's "
                              "content kept, tipped back, or thrown?")
    lines = stopped.bench.hand.lines.lines
    assert lines[0].startswith("B1 turquoise: 5.12 g taken ")
    assert lines[2] == "K1 black: now"
    assert not stopped.bench.hand.cup.isVisible()


def test_a_cup_that_was_kept_goes_into_the_bath_by_its_weight(stopped):
    stopped.press("F5")
    assert asked(stopped)
    assert "Nothing is written here yet" in stopped.bench.hand.stopped.field.wrong.text()
    stopped.type("0.61")
    stopped.press("F5")
    assert [(line.kind, line.mg, line.why) for line in out(stopped).lines[2:]] == [
        ("taken", 610, "kept after a stop")]
    assert stopped.house.jar(3).used_mg == 610
    assert shown(stopped)[0] == "All is in."


def test_a_cup_that_was_tipped_back_leaves_the_jar_as_it_was(stopped):
    stopped.press("F6")
    assert stopped.house.jar(3).used_mg == 0
    assert not asked(stopped)
    assert shown(stopped)[0] == "K1 black"


def test_a_cup_that_was_thrown_makes_the_jar_poorer_and_the_bath_gets_none(stopped):
    balance_types(stopped, "0.3 g")
    stopped.press("F7")
    assert stopped.house.jar(3).used_mg == 300
    assert out(stopped).missing == ("K1 black",)
    assert shown(stopped)[0] == "K1 black"


def test_by_scanner_alone_count_3_throws_it_and_the_jar_is_to_be_weighed(stopped):
    stopped.scan(plate(3))
    assert any("weigh jar 3, fill 1 again" in sentence for sentence in stopped.found)
    assert out(stopped).lines[2].kind == "thrown"


def test_a_line_that_somebody_else_began_meanwhile_is_asked_about_too(qtbot, settings, studio):
    for bench in begin_weighing_bench(qtbot, settings, studio):
        begin_602(bench)
        bench.studio.do(begin_line, LineIn(1, fill=bench.house.fills[1]))
        bench.bench.hand.look()
        bench.quiet()
        assert asked(bench).startswith("B1 turquoise stood on the balance")
