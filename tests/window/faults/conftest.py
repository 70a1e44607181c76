"""Where a fault is told beside other work: at the tag table, while twisting, at the counter."""

import pytest

from tests.window.benches.at_work import begin_work


@pytest.fixture
def work(qtbot, settings, studio):
    yield from begin_work(qtbot, settings, studio, 9)
