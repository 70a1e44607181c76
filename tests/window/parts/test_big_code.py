import pytest

from app.window.look.look import Size
from app.window.parts.big_code import BigCode


@pytest.fixture
def code(qtbot):
    shown = BigCode("26·15·R6F", 96)
    qtbot.addWidget(shown)
    shown.resize(shown.sizeHint())
    return shown


def test_it_is_as_large_as_asked_where_there_is_room(code):
    assert code.fitted().pixelSize() == 96
    assert code.accessibleName() == "26·15·R6F"


def test_it_shrinks_before_it_is_cut(code):
    code.resize(code.sizeHint().width() // 2, code.height())
    assert 40 < code.fitted().pixelSize() < 50


def test_it_asks_for_no_more_than_a_headline_when_room_is_short(code):
    least = BigCode("26·15·R6F", Size.TITLE).sizeHint()
    assert code.minimumSizeHint().width() == least.width()


def test_another_code_is_told_too(code):
    code.show_code("26·19·K44")
    assert (code.code, code.accessibleName()) == ("26·19·K44", "26·19·K44")


def test_ink_is_put_down(code):
    picture = code.grab().toImage()
    colours = {picture.pixelColor(x, picture.height() // 2).name()
               for x in range(picture.width())}
    assert "#161616" in colours
