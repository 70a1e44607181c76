"""Whatever is scanned or typed anywhere is found at the desk, and nothing is chosen by itself."""

import pytest

from app.calculations.codes import Kind, numbered, shown
from app.window.parts.picture import Picture
from app.window.parts.swatch import Swatch
from app.work.bases import describe_base
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.opening_stock import OldLot, open_lot
from app.work.tagging import Printing, apply_tag, print_tags, reprint
from tests.makers import EACH_MG, tarnfield
from tests.window.benches.at_work import plate
from tests.window.benches.desk_hands import open_desk

GLOVE = ("2619K44", "Sluice Keeper's Glove, Tarnfield 4-ply", "#1B856E")
TICKET = ("2617M9K", "Paper Ticket, Tarnfield 4-ply", "#E79B9B")
SHOP_CODE = "4006381333931"  # thirteen digits, the last a right check


def old_lot(studio, code, colourway=1):
    return studio.do(open_lot, OldLot(code, studio.version, colourway, 4), EACH_MG)


@pytest.fixture
def desk(qtbot, settings, studio):
    """The desk of a studio with lots 2619K44 and 2617M9K, of two colourways."""
    second = studio.do(name_colourway, "Paper Ticket", "#E79B9B")
    studio.pile = old_lot(studio, "2619K44")
    old_lot(studio, "2617M9K", second)
    yield from open_desk(qtbot, settings, studio)


@pytest.mark.parametrize("slip", ["2619H44", "2691K44", "2615K44"])
def test_a_slip_lists_what_is_near_with_its_swatch_and_chooses_nothing(desk, slip):
    desk.ask(slip)
    assert desk.choices == [GLOVE]
    assert desk.hand.thing is None
    assert "check character" in desk.hand.choices.sentence.text()
    assert "nothing was chosen for you" in desk.hand.choices.next_step.text()


def test_a_choice_is_taken_by_its_figure_and_enter(desk):
    desk.ask("2619H44")
    desk.ask("1")
    assert desk.name.code.accessibleName() == "26·19·K44"


def test_a_choice_is_taken_by_the_plate_count(desk):
    desk.ask("26")
    codes = [code for code, _, _ in desk.choices]
    assert set(codes) == {"2619K44", "2617M9K"}
    desk.scan(plate(2))
    assert desk.name.code.accessibleName() == shown(codes[1])


def test_a_scan_with_a_wrong_check_is_refused_and_what_is_in_hand_stays(desk):
    desk.ask("2617M9K")
    desk.scan("2619H44")
    assert "check character of 2619H44 does not fit" in desk.trouble
    assert desk.name.code.accessibleName() == "26·17·M9K"
    assert not desk.hand.choices.isVisible()


@pytest.mark.parametrize(
    ("text", "sentence"),
    [(SHOP_CODE, "shop's bar code"), ("2615R6F", "is not in this book"),
     ("gloves of silk", "Nothing in the book is called")],
)
def test_what_is_not_ours_is_told_in_a_sentence(desk, text, sentence):
    desk.ask(text)
    assert sentence in desk.trouble


def test_unreadable_characters_list_what_fits(desk):
    desk.ask("26?9K4?")
    (row,) = desk.hand.read.rows.rows
    assert (row.offer.head, row.offer.swatch) == (shown(GLOVE[0]), GLOVE[2])
    assert desk.hand.thing is None


def test_a_part_of_a_name_lists_lots(desk):
    desk.ask("paper tick")
    assert desk.choices == [TICKET]


def test_a_typed_mark_opens_its_skein_beside_the_marks_one_slip_away(desk):
    studio = desk.studio
    printing = Printing(studio.pile, ("2619K44-7M", "2619K44-7K"), "{}", "swing-85x55",
                        version=studio.version)
    for tag in studio.do(print_tags, printing):
        studio.do(apply_tag, tag)
    desk.ask("2619K44-7M")
    assert desk.name.code.accessibleName() == "26·19·K44 7M"
    assert [row.thing.code for row in desk.hand.page.near.rows] == ["2619K44-7K"]
    assert desk.hand.page.near.isVisible()
    desk.scan("2619K44-7M")
    assert not desk.hand.page.near.isVisible()


def test_forty_pasted_codes_get_a_sentence_each(desk):
    codes = ["2619K44", "2619H44", SHOP_CODE, *["2615R6F"] * 36, "2617M9K"]
    desk.window.reception.pasted(codes)
    desk.quiet()
    page = desk.hand.choices
    assert page.sentence.text() == "40 codes: 2 in the book, 38 to look at."
    rows = [row.sentence for row in page.listed.rows]
    assert len(rows) == 40
    assert all(rows)
    assert rows[1].endswith("Near it: 26·19·K44.")
    assert rows[0] == "26·19·K44 is a dye lot: Sluice Keeper's Glove, Tarnfield 4-ply."
    assert rows[2].startswith("4006381333931 is a shop's bar code")
    assert page.listed.rows[1].key is None
    assert desk.hand.thing is None
    desk.click(page.listed.rows[39].key)
    assert desk.name.code.accessibleName() == "26·17·M9K"


def test_a_code_that_a_working_bench_does_not_take_is_offered_and_shown_here(desk):
    desk.enter(4)
    desk.scan("2619K44")
    assert desk.trouble.startswith("26·19·K44 is a dye lot, and this bench has no use for it.")
    desk.window.floor.problem._way.click()
    desk.quiet()
    assert desk.name.code.accessibleName() == "26·19·K44"


@pytest.mark.parametrize("text", ["OLD-77", "old 77"])
def test_a_code_from_before_the_book_is_found_by_scan(desk, text):
    old_lot(desk.studio, "OLD77")
    desk.scan(text)
    assert desk.name.code.accessibleName() == "OLD77"


def test_a_code_from_before_the_book_is_known_at_a_working_bench_too(desk):
    old_lot(desk.studio, "OLD77")
    desk.enter(4)
    desk.scan("OLD77")
    assert desk.trouble.startswith("OLD77 is a dye lot, and this bench has no use for it.")
    desk.window.floor.problem._way.click()
    desk.quiet()
    assert desk.name.code.accessibleName() == "OLD77"


def test_a_void_tag_says_so_and_names_the_one_in_its_place(desk):
    studio = desk.studio
    (tag,) = studio.do(print_tags, Printing(studio.pile, ("2619K44-7M",), "{}", "swing-85x55",
                                            version=studio.version))
    skein = studio.do(apply_tag, tag)
    studio.do(reprint, skein, "2619K44-KK", "{}", ("swing-85x55", 1))
    desk.scan("2619K44-7M")
    assert desk.name.note.text() == (
        "26·19·K44 7M is void: 26·19·K44 KK took its place. Throw it away.")


def test_a_shelf_has_a_picture_and_no_swatch_to_choose(desk):
    desk.studio.do(make_plates, Kind.SHELF, [1])
    desk.scan(numbered(Kind.SHELF, 1).text)
    assert desk.name.code.accessibleName() == numbered(Kind.SHELF, 1).grouped
    assert desk.name.findChildren(Picture)
    assert not desk.name.findChildren(Swatch)


def test_an_origin_with_long_words_makes_the_desk_no_wider_than_its_place(desk, dressed):
    dressed(2.0)
    four = "60 % wool, 20 % polyamide, 10 % alpaca, 10 % silk"
    desk.studio.do(describe_base, tarnfield(fibre=four))
    lot, _ = desk.studio.tagged(desk.studio.cone(), 2)
    desk.scan(desk.studio.code(lot))
    assert desk.hand.page.where_from.isVisible()
    assert desk.bench.width() == desk.bench.parentWidget().width()
