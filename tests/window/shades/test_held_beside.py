from app.calculations.shade_difference import difference
from app.window.parts.swatch import Swatch
from app.window.parts.words import Words
from app.window.shades.held_beside import SIZE, held_beside
from tests.calculations.shades import TEAL


def test_two_lots_lie_side_by_side_with_their_number(qtbot):
    said = Words("26·06·H3W, 4 free")
    row = held_beside("26·15·R6F", difference(TEAL["P"], TEAL["V"]), said)
    qtbot.addWidget(row)
    row.resize(600, 60)
    row.show()
    (swatch,) = row.findChildren(Swatch)
    assert swatch.accessibleName() == "26·15·R6F beside what is offered, 2.8 ± 0.5: swatch"
    seen = swatch.grab().toImage()
    assert seen.pixelColor(20, 20) != seen.pixelColor(SIZE.width() - 20, 20)
    alone = held_beside("26·15·R6F", None, Words("1 in a kit"))
    qtbot.addWidget(alone)
    assert alone.findChildren(Swatch) == []
    assert row.layout().itemAt(1).geometry().left() >= SIZE.width()
