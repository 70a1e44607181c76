import pytest
from PySide6.QtCore import QRectF

from app.window.shades.map_scale import Scale
from tests.calculations.shades import TEAL, colour

PLANE = QRectF(50, 20, 300, 300)


def test_a_unit_is_as_long_in_every_direction():
    scale = Scale.of([colour(50, 0, 0), colour(54, 2, 1)], PLANE, 400)
    one, other = colour(50, 0, 0), colour(51, 1, 1)
    apart = scale.point(other) - scale.point(one)
    assert apart.x() == pytest.approx(scale.px)
    assert apart.y() == pytest.approx(-scale.px)
    assert (scale.height(one) - scale.height(other)).y() == pytest.approx(scale.px)


def test_every_lot_lies_inside_and_lots_alike_lie_close_together():
    scale = Scale.of(list(TEAL.values()), PLANE, 400)
    for one in TEAL.values():
        assert PLANE.contains(scale.point(one))
        assert PLANE.top() <= scale.height(one).y() <= PLANE.bottom()
    alike = Scale.of([colour(50, 0, 0), colour(50, 0.1, 0)], PLANE, 400)
    assert alike.px < 100


def test_ticks_are_round_and_far_enough_apart():
    scale = Scale.of(list(TEAL.values()), PLANE, 400)
    for which in range(3):
        ticks = scale.ticks(which, 60)
        assert len(ticks) >= 2
        step = ticks[1] - ticks[0]
        assert step * scale.px >= 60
        assert all(tick / step == pytest.approx(round(tick / step)) for tick in ticks)
