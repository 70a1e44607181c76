import pytest
from PySide6.QtWidgets import QLineEdit

from app.window.look.look import TARGET, Look, Size
from app.window.look.palette import EVENING
from app.window.look.stylesheet import stylesheet, wear
from app.window.parts.words import SECOND, Words


@pytest.mark.parametrize("size", list(Size))
def test_words_stand_in_the_size_that_was_asked(qtbot, size):
    words = Words("Ferry Ledger", size, bold=True)
    qtbot.addWidget(words)
    words.ensurePolished()
    assert words.font().pixelSize() == size
    assert words.font().bold()


def test_words_follow_the_text_factor(qtbot, dressed):
    words = Words("Ferry Ledger", Size.LEAD)
    qtbot.addWidget(words)
    dressed(2.0)
    words.ensurePolished()
    assert words.font().pixelSize() == 40


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_a_field_is_large_enough_to_be_pressed(qtbot, dressed, factor):
    dressed(factor)
    field = QLineEdit()
    qtbot.addWidget(field)
    field.ensurePolished()
    assert field.sizeHint().height() >= TARGET


def test_second_ink_is_second_ink_in_the_evening_too(qtbot, qapp):
    words = Words("measured", ink=SECOND)
    qtbot.addWidget(words)
    wear(qapp, Look(EVENING))
    words.ensurePolished()
    assert words.palette().windowText().color().name().upper() == EVENING.second_ink


def test_a_look_has_one_sheet():
    assert stylesheet(Look()) == stylesheet(Look())
    assert stylesheet(Look()) != stylesheet(Look(text=1.5))
