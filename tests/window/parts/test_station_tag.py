import pytest

from app.window.parts.station_tag import StationTag, spoken
from tests.window.stops import Station


@pytest.fixture
def tag(qtbot):
    def make(*args, **more):
        tag = StationTag(Station(*args, **more))
        qtbot.addWidget(tag)
        return tag

    return make


def test_a_tag_says_everything_to_a_screen_reader():
    station = Station("bundle", "disc 044", "6 + 6", "one of a pool", "one of two", "below", True)
    assert spoken(station) == (
        "bundle disc 044, 6 + 6, origin one of a pool, one of two, below a hold, in hand"
    )
    assert spoken(Station("dye lot", "26·15·R6F")) == "dye lot 26·15·R6F"


@pytest.mark.parametrize("factor", [1.0, 2.0])
def test_at_its_natural_width_nothing_is_left_out(tag, dressed, factor):
    dressed(factor)
    one = tag("dye lot", "26·15·R6F", "12 skeins")
    one.resize(one.sizeHint())
    assert one.shown_words() == ("dye lot", "26·15·R6F", "12 skeins")
    assert one.natural_width() % 4 == 0


def test_in_too_little_room_words_end_in_an_ellipsis(tag):
    one = tag("finishing count", "26·15·R6F", "12 of 12 skeins counted")
    one.resize(80, one.height_needed())
    assert [word.endswith("…") for word in one.shown_words()] == [True, True, True]


def test_the_one_in_hand_looks_different(tag):
    plain, here = tag("dye lot", "26·15·R6F"), tag("dye lot", "26·15·R6F", here=True)
    for one in (plain, here):
        one.resize(one.sizeHint())
    assert plain.grab().toImage() != here.grab().toImage()
