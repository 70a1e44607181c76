import pytest
from PySide6.QtGui import QFontInfo, QFontMetricsF

from app.window.look.look import Gap, Look, Size, families, look
from app.window.look.stylesheet import wear


def test_the_shipped_faces_are_loaded_and_used():
    assert families().words == "Atkinson Hyperlegible Next"
    assert "Atkinson Hyperlegible Mono" in families().codes
    for codes in (False, True):
        font = Look().font(Size.PLAIN, codes=codes)
        assert QFontInfo(font).family() == font.family()


def test_type_grows_with_the_text_factor_and_space_does_not():
    assert [Look(text=2.0).px(size) for size in Size] == [26, 32, 40, 56, 80, 168]
    assert [int(gap) for gap in Gap] == [4, 8, 12, 16, 24, 32, 48]


@pytest.mark.parametrize("factor", [1.0, 1.25, 1.5, 1.75, 2.0])
def test_lengths_stay_on_the_grid(factor):
    assert all(Look(text=factor).grid(length) % 4 == 0 for length in (28, 60, 104))


def test_figures_are_all_equally_wide():
    metrics = QFontMetricsF(Look().figures(Size.HUGE))
    assert len({round(metrics.horizontalAdvance(figure), 2) for figure in "0123456789"}) == 1


def test_what_the_program_wears_is_known_to_every_part(qapp):
    wear(qapp, Look(text=1.5))
    assert look().text == 1.5
    assert qapp.font().pixelSize() == 24
