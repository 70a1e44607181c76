from app.window.look.look import Size
from app.window.parts.hold_plate import HoldLine, HoldPlate
from app.window.parts.words import Words


def test_the_plate_says_what_it_is(qtbot):
    here, below = HoldPlate(), HoldPlate(here=False)
    qtbot.addWidget(here)
    qtbot.addWidget(below)
    assert here.accessibleName() == "on hold"
    assert below.accessibleName() == "below a hold"


def test_the_plate_grows_with_the_text(qtbot, dressed):
    plate = HoldPlate(size=Size.TITLE)
    qtbot.addWidget(plate)
    before = plate.sizeHint()
    dressed(2.0)
    assert plate.sizeHint().height() == 2 * before.height()
    assert plate.sizeHint().width() > 1.8 * before.width()


def test_the_reason_stands_beside_the_plate(qtbot):
    line = HoldLine("Oil stain on cone C·0114·F; ask OW.")
    qtbot.addWidget(line)
    line.show()
    (words,) = line.findChildren(Words)
    (plate,) = line.findChildren(HoldPlate)
    assert plate.geometry().right() < words.geometry().left()
