"""A cord in one line."""

from app.lookups.bundles import bundle_facts
from app.lookups.finishing import Expected
from app.lookups.now import NOW
from app.window.cords.cord_row import CordRow, how_many
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.key_button import KeyButton
from app.window.parts.ties import Ties
from app.window.parts.words import CodeWords, OneLine
from app.work.holding import hold


def texts(row, kind):
    return [one.accessibleName() for one in row.findChildren(kind)]


def test_a_count_is_a_range_where_a_mixed_cord_was_split():
    assert how_many(Expected("red", 8, 8, (1,), (), "red")) == "8"
    assert how_many(Expected("red", 5, 7, (1,), (), "red")) == "5 to 7"


def test_a_cord_says_its_disc_tie_base_and_cone(qtbot, studio):
    studio.wind(studio.cone(), 8, "red", studio.discs[0])
    row = CordRow(studio.book.ask(bundle_facts, studio.discs[0], NOW), "Take out")
    qtbot.addWidget(row)
    assert texts(row, CodeWords) == ["031"]
    assert texts(row, Ties) == ["red ties"]
    assert texts(row, OneLine) == ["Tarnfield 4-ply", "C·0001·7"]
    assert texts(row, HoldPlate) == []
    (out,) = row.findChildren(KeyButton)
    assert out.accessibleName() == "Take out: disc 031"
    with qtbot.waitSignal(row.out):
        out.click()


def test_a_cord_below_a_hold_says_so_in_outline(qtbot, studio):
    cone = studio.cone()
    studio.wind(cone, 8, "red", studio.discs[0])
    studio.do(hold, "cone", cone, "oil")
    row = CordRow(studio.book.ask(bundle_facts, studio.discs[0], NOW))
    qtbot.addWidget(row)
    assert texts(row, HoldPlate) == ["below a hold"]
    assert row.findChildren(KeyButton) == []
