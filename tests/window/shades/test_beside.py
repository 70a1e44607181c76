from itertools import combinations

from PySide6.QtCore import QPoint, QRect

from app.calculations.screen_colour import on_screen
from app.window.parts.swatch import Swatch, Zone
from app.window.shades.beside import LARGE, Beside, Shown, short_of, zones_of
from tests.calculations.shades import TEAL, colour


def boxes(beside):
    return [QRect(one.mapTo(beside, QPoint(0, 0)), one.size())
            for one in beside.findChildren(Swatch)]


def test_swatches_have_one_size_and_lie_in_one_row_at_both_sizes(qtbot, dressed):
    for text, width in ((1.0, 560), (2.0, 900)):
        dressed(text)
        beside = Beside()
        qtbot.addWidget(beside)
        beside.show_all([Shown(name, zones_of(one), ("0.5 ± 0.5",))
                         for name, one in list(TEAL.items())[:3]])
        beside.resize(width, 600)
        beside.show()
        found = boxes(beside)
        assert {box.size() for box in found} == {LARGE}
        assert len({box.top() for box in found}) == 1
        assert not any(one.intersects(other) for one, other in combinations(found, 2))


def test_what_has_no_colour_says_so_and_all_is_said_in_words(qtbot):
    beside = Beside()
    qtbot.addWidget(beside)
    beside.show_all([Shown("the standard", (), none="not read alike"),
                     Shown("26·15·R6F", (Zone("#1B856E"),), ("in hand",))])
    assert beside.accessibleName() == "the standard, not read alike; 26·15·R6F, in hand"
    assert [one.accessibleName() for one in beside.findChildren(Swatch)] == [
        "the standard, not read alike", "26·15·R6F, in hand"]


def test_colours_of_zones_become_bands_and_lost_chroma_is_told():
    one, other = zones_of(TEAL["P"], TEAL["V"])
    assert one.colour == on_screen(TEAL["P"]).swatch != other.colour
    assert short_of({"26·15·R6F": colour(50, 5, 5)}) == ""
    assert short_of({"the standard": colour(48.3, -60, 3)}).startswith(
        "The standard: more colour than a screen can show")
