"""How far each bath is, by the clock and what was noted."""

from datetime import timedelta

from app.lookups.pot_steps import pots_at_work
from app.work.dyeing import lift
from app.work.readings import read_bath, step_done
from app.work.recipes import StepIn
from tests.dyehouse import DYES
from tests.lookups.waters import recipe_of

STEPS = (StepIn("heat up", 850, 46), StepIn("second acid"), StepIn("hold", 850, 40))


def begun(studio, **more):
    studio.recipe = recipe_of(studio, "Ferry Ledger", DYES, **more)
    studio.dye(studio.wind(studio.cone(), 2), pot=studio.pot)
    return at_work(studio)


def at_work(studio):
    (work,) = studio.book.ask(pots_at_work)
    return work


def test_the_first_step_runs_from_when_the_bath_was_begun(studio):
    work = begun(studio, steps=STEPS)
    assert (work.steps.now.words, work.steps.next.words) == ("heat up", "second acid")
    assert work.steps.due == work.pot.since + timedelta(minutes=46)
    for minutes, left in ((0, 46), (1, 45), (46, 0), (50, -4)):
        assert work.steps.minutes_left(work.pot.since + timedelta(minutes=minutes)) == left
    assert work.steps.minutes_left(work.pot.since + timedelta(seconds=30)) == 46
    assert (work.steamer, work.recipe.name) == (None, "Ferry Ledger")


def test_the_next_runs_from_when_the_one_before_was_done(studio):
    first, second, third = begun(studio, steps=STEPS).steps.steps
    studio.do(step_done, 1, first.id)
    assert (at_work(studio).steps.now, at_work(studio).steps.due) == (second, None)
    studio.do(step_done, 1, second.id)
    steps = at_work(studio).steps
    assert (steps.now, steps.next, steps.due) == (
        third, None, steps.began + timedelta(minutes=40))
    studio.undo()
    assert at_work(studio).steps.now == second
    studio.do(step_done, 1, second.id)
    studio.do(step_done, 1, third.id)
    assert at_work(studio).steps.now is None
    studio.do(lift, 1)
    assert studio.book.ask(pots_at_work) == ()


def test_without_written_steps_nothing_is_told_and_readings_are_the_newest_of_each(studio):
    steps = begun(studio).steps
    assert (steps.now, steps.next, steps.due) == (None, None, None)
    studio.do(read_bath, 1, ph_centi=650, decidegrees=300)
    studio.do(read_bath, 1, ph_centi=430, clearness=1)
    assert [one.words for one in at_work(studio).steps.read] == ["pH 4.3", "30 °C", "tinted"]
