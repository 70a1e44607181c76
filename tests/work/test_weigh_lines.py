"""Line by line: the wrong jar is refused before it is opened; no stop loses what was weighed."""

from contextlib import closing
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.lookups.weighings import open_weighings, weighed_with
from app.problems import NotFound, Refused
from app.store.book import Book
from app.work.holding import hold
from app.work.jars import Refill, refill
from app.work.weigh_lines import LineIn, begin_line, take_weight, tip_back, what_became
from app.work.weighing import WeighingIn, begin_weighing, close_weighing
from tests.dyehouse import ACID, DYES, Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars, and a recipe of three dyes and acid."""
    return Dyehouse(studio, (*DYES, ACID))


def stopped(house: Dyehouse) -> tuple[int, int]:
    """Lines 1 and 2 of 3 are weighed, the cup of line 3 stands on the balance: all stops."""
    weighing = house.begin()
    house.take(weighing, house.fills[1], 5_120, target_mg=5_117)
    house.take(weighing, house.fills[2], 1_330, target_mg=1_324)
    line = house.studio.do(begin_line, LineIn(weighing, fill=house.fills[3], target_mg=602))
    return weighing, line


def test_after_a_stop_two_lines_are_there_with_their_times_and_one_is_open(
    house: Dyehouse,
) -> None:
    weighing, line = stopped(house)
    house.studio.book.close()
    with closing(Book(house.studio.book.path, house.studio.clock)) as started_again:
        (out,) = started_again.ask(open_weighings)
    assert [(one.mg, one.taken is not None) for one in out.lines] == [
        (5_120, True), (1_330, True), (None, False)]
    assert [one.id for one in out.lines if one.is_open] == [line]
    assert out.missing == ("K1 black", "citric acid")
    with pytest.raises(Refused, match="K1 black is not weighed yet") as refused:
        house.studio.do(begin_line, LineIn(weighing, fill=house.fills[1]))
    assert "what became of the cup" in refused.value.next_step


@pytest.mark.parametrize(("what", "mg", "left", "reached", "said"), [
    ("kept", 600, 499_400, 600, "weighed 0.6 g K1 black"),
    ("tipped back", 600, 500_000, 0, "K1 black was tipped back: 0.6 g"),
    ("tipped back", None, 500_000, 0, "K1 black was tipped back"),
    ("thrown", 600, 499_400, 0, "K1 black was thrown: 0.6 g"),
])
def test_each_answer_for_the_cup_books_the_jar_rightly(
    house: Dyehouse, what: str, mg: int | None, left: int, reached: int, said: str
) -> None:
    weighing, line = stopped(house)
    assert house.studio.done(what_became, line, what, mg).said == said
    assert (house.jar(3).left_mg, house.jar(1).left_mg) == (left, 494_880)
    out = house.out(weighing)
    assert ("K1 black" in out.missing) is (not reached)
    assert not any(one.is_open for one in out.lines)
    with pytest.raises(Refused, match="was taken already"):
        house.studio.do(what_became, line, what, mg)
    house.studio.undo()
    assert [one.is_open for one in house.out(weighing).lines] == [False, False, True]
    assert house.jar(3).left_mg == 500_000
    house.studio.check()


def test_thrown_and_not_known_how_much_is_said(house: Dyehouse) -> None:
    _, line = stopped(house)
    with pytest.raises(Refused, match="A cup is not drunk"):
        house.studio.do(what_became, line, "drunk")
    assert house.studio.done(what_became, line, "thrown").findings == (
        "How much was thrown is not known: weigh jar 3, fill 1 again.",)
    with pytest.raises(NotFound, match="This line is not in the book"):
        house.studio.do(what_became, 99, "kept", 1)


def test_a_jar_that_is_not_asked_is_refused_before_it_is_weighed(house: Dyehouse) -> None:
    weighing = house.begin()
    blue = house.out(weighing)
    asked = next(one for one in DYES if one.substance == "B1 turquoise")
    with pytest.raises(Refused) as refused:
        house.studio.do(begin_line, LineIn(weighing, fill=house.fills[4]))
    assert str(refused.value.what) == (
        "Jar 4, fill 1 holds N1 navy, which is not in this recipe; nothing was weighed.")
    with pytest.raises(Refused) as refused:
        house.studio.do(begin_line, LineIn(weighing, component=1, fill=house.fills[4]))
    assert refused.value.what == (
        f"Jar 4, fill 1 holds N1 navy, and {asked.substance} is asked; nothing was weighed.")
    assert refused.value.next_step == "Take jar 1, or scan this one again to take it instead."
    assert (house.out(weighing), house.jar(4).left_mg) == (blue, 500_000)


def test_what_was_poured_instead_is_recorded_and_the_lot_is_off_its_recipe(
    house: Dyehouse,
) -> None:
    weighing = house.begin()
    done = house.studio.done(begin_line, LineIn(
        weighing, component=1, fill=house.fills[4], instead_of=True))
    assert done.findings == (
        "N1 navy is taken instead of B1 turquoise: the lot is off its recipe.",)
    house.studio.do(take_weight, done.answer, 5_117)
    house.studio.do(close_weighing, weighing)
    assert "B1 turquoise" not in house.out(weighing).missing
    found = house.studio.book.ask(weighed_with, house.dye(weighing))
    assert found.lines[0].kind == "instead of"
    assert found.off_recipe == ("weighed instead of B1 turquoise",)
    assert found.fills == {house.fills[4]}


def test_the_right_jar_said_to_be_instead_is_simply_taken(house: Dyehouse) -> None:
    line = house.studio.do(begin_line, LineIn(
        house.begin(), component=1, fill=house.fills[1], instead_of=True))
    assert house.out(1).lines[0].kind == "taken"
    assert house.out(1).lines[0].id == line


def test_one_scan_finds_the_line_that_asks_for_this_dye(house: Dyehouse) -> None:
    weighing = house.begin()
    done = house.studio.done(begin_line, LineIn(weighing, fill=house.fills[2]))
    assert done.said == "began to weigh Y1 lemon from jar 2, fill 1"
    assert house.out(weighing).lines[0].component == 2
    house.studio.do(what_became, done.answer, "tipped back")
    with pytest.raises(Refused, match="This recipe does not ask that"):
        house.studio.do(begin_line, LineIn(weighing, component=99, fill=house.fills[1]))


def test_acid_comes_from_its_bag(house: Dyehouse) -> None:
    weighing = house.begin()
    line = house.studio.do(begin_line, LineIn(weighing, component=4, target_mg=12_000))
    assert house.studio.done(take_weight, line, 12_100).said == "weighed 12.1 g citric acid"
    assert house.out(weighing).lines[0].source == "not scanned"


@pytest.mark.parametrize(("mg", "said"), [
    (602, ()), (622, ()), (582, ()),  # two divisions of 0.01 g are more than 2 % of 0.602 g
    (623, ("K1 black: 0.623 g for 0.602 g, 3.5 % too much.",)),
    (500, ("K1 black: 0.5 g for 0.602 g, 16.9 % too little.",)),
])
def test_off_its_target_is_said_and_kept(house: Dyehouse, mg: int, said: tuple[str, ...]) -> None:
    _, line = stopped(house)
    assert house.studio.done(take_weight, line, mg).findings == said
    assert house.jar(3).left_mg == 500_000 - mg


def test_a_decimal_slip_is_said(house: Dyehouse) -> None:
    weighing = house.begin()
    line = house.studio.do(begin_line, LineIn(weighing, fill=house.fills[1], target_mg=520))
    (said,) = house.studio.done(take_weight, line, 5_200).findings
    assert said == "B1 turquoise: 5.2 g for 0.52 g, 900.0 % too much."
    assert house.out(weighing).lines[0].off == 9


def test_what_is_tipped_back_is_a_line_of_its_own(house: Dyehouse) -> None:
    weighing = house.begin()
    line = house.take(weighing, house.fills[1], 5_200)
    assert house.studio.done(tip_back, line, 83).said == (
        "tipped 0.083 g B1 turquoise back to jar 1, fill 1")
    assert [(one.kind, one.mg) for one in house.out(weighing).lines] == [
        ("taken", 5_200), ("tipped back", -83)]
    assert house.jar(1).left_mg == 494_883
    with pytest.raises(Refused, match="5.2 g is more than was weighed"):
        house.studio.do(tip_back, line, 5_200)
    with pytest.raises(Refused, match="Nothing of this line can be tipped back"):
        house.studio.do(tip_back, line + 1, 1)
    house.studio.undo()
    assert house.jar(1).left_mg == 494_800
    house.studio.check()


def test_a_fill_on_hold_an_old_one_and_an_empty_one_are_warned_of(house: Dyehouse) -> None:
    studio, weighing = house.studio, house.begin()
    studio.do(hold, "fill", house.fills[1], "lid left off")
    new = studio.do(refill, 1, Refill("q", 500_000, strength_permille=1000))
    (said,) = studio.done(begin_line, LineIn(weighing, fill=new)).findings
    assert said == ("HOLD lies on jar 1, fill 2. Ask who placed the hold before you weigh.")
    studio.undo()
    line = studio.done(begin_line, LineIn(weighing, fill=house.fills[1]))
    assert line.findings[1:] == ("Jar 1 was filled again since: fill 2 is in it.",
                                 "Jar 1 is nearly empty: 0 g left by the book.")
    said = studio.done(take_weight, line.answer, 10).findings
    assert said == ("More was taken out of jar 1, fill 1 than was in it by the book: weigh it.",)


@pytest.mark.parametrize(("mg", "ul", "what"), [
    (None, None, "One weight or one volume"), (5, 5, "One weight or one volume"),
    (0, None, "One weight or one volume"), (None, 5, "A jar is weighed and a stock is measured"),
])
def test_half_an_answer_of_the_balance_is_refused(
    house: Dyehouse, mg: int | None, ul: int | None, what: str
) -> None:
    _, line = stopped(house)
    with pytest.raises(Refused, match=what):
        house.studio.do(take_weight, line, mg, ul)
    assert house.out(1).lines[2].is_open
    closed = house.studio.do(begin_weighing, WeighingIn("stock"))
    house.studio.do(close_weighing, closed)
    with pytest.raises(Refused, match="is closed"):
        house.studio.do(begin_line, LineIn(closed, fill=house.fills[1]))


def test_a_weight_taken_back_leaves_the_cup_on_the_balance(house: Dyehouse) -> None:
    _, line = stopped(house)
    begun = house.studio.last()
    house.studio.do(take_weight, line, 602)
    house.studio.undo()
    assert house.out(1).lines[2].is_open
    house.studio.undo(begun)
    assert len(house.out(1).lines) == 2
    house.studio.check()


def test_what_was_poured_into_a_bath_is_not_taken_back_from_under_it(house: Dyehouse) -> None:
    weighing = house.begin()
    begun = house.studio.last()
    house.take(weighing, house.fills[1], 5_117)
    taken = house.studio.last()
    house.dye(weighing)
    with pytest.raises(Refused, match="something was done with it since"):
        house.studio.undo(begun)
    house.studio.undo(taken)
    assert house.out(weighing).lines[0].is_open


ANSWERS = st.sampled_from(["kept", "tipped back", "thrown"])


@settings(max_examples=12, deadline=None,
          suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.tuples(st.integers(1, 4000), ANSWERS, st.integers(0, 4000)), max_size=6))
def test_a_jar_never_disagrees_with_its_lines(
    house: Dyehouse, lines: list[tuple[int, str, int]]
) -> None:
    left = house.jar(1).left_mg
    weighing = house.begin()
    for mg, what, back in lines:
        line = house.studio.do(begin_line, replace(LineIn(weighing), fill=house.fills[1]))
        house.studio.do(what_became, line, what, mg)
        if what == "kept" and 0 < back <= mg:
            house.studio.do(tip_back, line, back)
            left += back
        left -= 0 if what == "tipped back" else mg
    now = house.jar(1)
    assert now.left_mg == now.booked_mg == left
    assert left == 500_000 - sum(
        one.mg or 0 for number in range(1, weighing + 1) for one in house.out(number).lines)
