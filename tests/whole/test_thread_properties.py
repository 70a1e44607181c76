"""Whatever is done in whatever order: sums hold, and the truth lies within what is said."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.whole.walk_of_trails import TrailsWalk

BASE = settings(database=None, deadline=None, suppress_health_check=list(HealthCheck),
                phases=[Phase.generate])  # to make a failing story shorter takes many minutes


def test_nothing_that_is_done_breaks_the_thread(studio_file: Path) -> None:
    run_state_machine_as_test(lambda: TrailsWalk(studio_file), settings=settings(
        BASE, max_examples=12, stateful_step_count=16, derandomize=True))


@pytest.mark.long
def test_nothing_that_is_done_for_long_breaks_the_thread(studio_file: Path) -> None:
    run_state_machine_as_test(lambda: TrailsWalk(studio_file), settings=settings(
        BASE, max_examples=24, stateful_step_count=30))
