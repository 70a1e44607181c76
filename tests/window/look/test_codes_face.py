import pytest
from PySide6.QtGui import QFontMetricsF

from app.window.look.codes_face import code_width, elided_code
from app.window.look.look import Look, Size


@pytest.fixture
def font(qapp):
    return Look().font(Size.PLAIN, bold=True, codes=True)


def test_points_stand_closer_than_figures(font):
    plain = QFontMetricsF(font).horizontalAdvance("26·15·R6F")
    assert code_width("26·15·R6F", font) == pytest.approx(plain - 4 * 0.14 * 16, abs=1)


def test_a_code_that_fits_is_left_alone(font):
    assert elided_code("26·15·R6F", font, 200) == "26·15·R6F"


def test_a_code_that_does_not_fit_says_so(font):
    short = elided_code("26·15·R6F", font, 50)
    assert short.endswith("…")
    assert code_width(short, font) <= 50
