import pytest
from PySide6.QtGui import QFontMetricsF

from app.window.look.look import Size
from app.window.parts.words import BigNumber, CodeWords, Digits, FactLine, OneLine, Words


def test_words_are_never_read_as_markup(qtbot):
    words = Words("<b>R. Osk</b> & sons", wrap=False)
    qtbot.addWidget(words)
    metrics = QFontMetricsF(words.font())
    assert words.sizeHint().width() >= metrics.horizontalAdvance("<b>R. Osk</b> & sons")


@pytest.mark.parametrize("factor", [1.0, 2.0])
@pytest.mark.parametrize("room", [60, 120, 240, 600])
def test_a_number_shrinks_before_it_is_clipped(qtbot, dressed, factor, room):
    dressed(factor)
    digits = Digits("2.408", 160)
    qtbot.addWidget(digits)
    digits.resize(room, digits.sizeHint().height())
    metrics = QFontMetricsF(digits.fitted())
    assert metrics.horizontalAdvance("2.408") <= room
    assert metrics.capHeight() <= digits.height()


def test_a_number_with_room_has_the_height_that_was_asked(qtbot):
    digits = Digits("275", 160)
    qtbot.addWidget(digits)
    digits.resize(digits.sizeHint())
    assert digits.fitted().pixelSize() == 160


def test_a_big_number_says_all_of_it_to_a_screen_reader(qtbot):
    number = BigNumber()
    qtbot.addWidget(number)
    number.show_number("1", "skein left to sell", "388 m · shelf 3")
    assert number.accessibleName() == "1 skein left to sell 388 m · shelf 3"


def test_one_line_gives_way_and_shows_the_rest_when_pointed_at(qtbot):
    line = OneLine("put by 1 skein of 26·15·R6F for R. Osk, 10:42")
    qtbot.addWidget(line)
    line.show()
    line.resize(line.sizeHint())
    assert line.toolTip() == ""
    line.resize(120, line.height())
    assert line.toolTip() == line.text() == line.accessibleName()


def test_facts_below_each_other_stand_in_one_column(qtbot):
    one, other = FactLine("base", "Tarnfield 4-ply"), FactLine("colourway", "Ferry Ledger")
    for line in (one, other):
        qtbot.addWidget(line)
        line.resize(400, 30)
        line.show()
    other.show_fact("Seventh Buoy")
    assert one._fact.x() == other._fact.x()
    assert other._fact.text() == "Seventh Buoy"


def test_a_code_is_named_and_given_its_room(qtbot):
    code = CodeWords("26·15·R6F", Size.TITLE)
    qtbot.addWidget(code)
    narrow = code.sizeHint().width()
    code.show_code("26·15·R6F 7M")
    assert code.accessibleName() == "26·15·R6F 7M"
    assert code.sizeHint().width() > narrow
