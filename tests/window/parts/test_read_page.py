"""What was read back is shown row by row; nothing is chosen by itself."""

from app.lookups.things import Found
from app.scanning.how_known import Came
from app.scanning.read_back import ReadBack, ReadRow
from app.window.parts.read_page import ReadPage

LOT = Found("lot", 3, "2615R6F", "Glove, Tarnfield 4-ply", "#1B856E")


def page_of(qtbot, *rows, reply="Please photograph it flat."):
    page = ReadPage()
    qtbot.addWidget(page)
    page.show()
    page.show_read(ReadBack(rows, "2 codes were read.", "Look.", reply, Came.PHOTO))
    return page


def test_a_row_by_its_number_is_chosen_and_what_is_not_known_is_not(qtbot):
    page = page_of(qtbot, ReadRow("2619H44", None, "The check does not fit."),
                   ReadRow("26·15·R6F", LOT, "a dye lot"))
    assert page.next_step.text() == "Look. Arrow keys and Enter choose."
    chosen = []
    page.chosen.connect(chosen.append)
    assert not page.choose(1)
    assert not page.choose(3)
    assert page.choose(2)
    assert chosen == [LOT]
    assert not page.known.isVisible()
    page.show_read(ReadBack((ReadRow("26·15·R6F", LOT, "a dye lot"),), "", "", "", Came.GAPS))
    assert page.known.isVisible()


def test_with_nothing_read_only_the_answer_stands_there(qtbot):
    page = page_of(qtbot)
    assert not page.known.isVisible()
    assert page.reply.isVisible()
    assert page.next_step.text() == "Look."
    page.show_read(ReadBack((), "", "", "", Came.PHOTO))
    assert not page.reply.isVisible()
