"""The tag table: the right tags, the right count, the right place on the sheet."""

from pathlib import Path

import pytest
from PySide6.QtCore import QObject, Qt, QUrl, Slot
from PySide6.QtGui import QDesktopServices
from sqlalchemy import select

from app.calculations.codes import shown
from app.documents.proof import read_back
from app.documents.stocks import stock
from app.exchange.tag_printing import OnStock, PrintOrder, print_for_pile
from app.lookups.bundles import bundle_facts
from app.lookups.now import NOW
from app.lookups.printed import TIED_ON, VOID, WAITING, tags_of
from app.lookups.recent import entries
from app.lookups.tagging import pile_facts
from app.records import Tag
from app.store.deed import By
from app.window.benches.tagging.choosing import Choosing
from app.window.benches.tagging.hold_card import HoldCard
from app.window.benches.tagging.sheet_picture import Cell
from app.window.benches.tagging.sheet_plan import SheetPlan, next_cell
from app.work.bases import describe_base
from app.work.dyeing import name_colourway
from app.work.finishing import finish
from app.work.holding import hold
from app.work.studio import choose
from app.work.winding import Drawn, Wound, wind
from tests.makers import LONG_MM, tarnfield
from tests.window.benches.at_work import DONE, SECONDS, UNDO, begin_work, disc, plate

SMALL = "small-63x38"


class Opened(QObject):
    """Stands in for whatever program shows a PDF on this computer."""

    def __init__(self):
        super().__init__()
        self.files = []

    @Slot(QUrl)
    def take(self, url):
        self.files.append(Path(url.toLocalFile()))


@pytest.fixture
def opened():
    """The files that were opened for the person."""
    viewer = Opened()
    QDesktopServices.setUrlHandler("file", viewer, "take")
    yield viewer.files
    QDesktopServices.unsetUrlHandler("file")


def pile_of(studio, count, place, tie="red", recipe=None, cone=None):
    """A pile of one cone, with a disc as its card."""
    group = studio.wind(cone or studio.cone(), count, tie, studio.discs[place])
    if recipe is None:
        studio.dye(group)
    return studio.finish(group, **{tie: count})[0]


@pytest.fixture
def pile(studio):
    """Eleven skeins on disc 031; eight cells of a sheet of small tags are used by another pile."""
    studio.do(choose, {"name": "Quernlow Dyeyard", "address": "Staithe Row 3, Quernlow"})
    eleven, eight = pile_of(studio, 11, 0), pile_of(studio, 8, 1, "yellow")
    print_for_pile(studio.book, By("LP", "tagging"), PrintOrder(eight, 8, OnStock(SMALL)),
                   studio.random)
    return eleven


@pytest.fixture
def table(qtbot, settings, studio, pile, opened):
    """At the tag table."""
    yield from begin_work(qtbot, settings, studio, 7)


def in_hand(table):
    return table.bench.in_hand


def figures(table):
    """What stands on the screen: counted, tied on, to tie on, to print, void."""
    shown_now = in_hand(table).pile_card.figures
    parts = (shown_now.counted, shown_now.tied_on, shown_now.waiting, shown_now.to_print,
             shown_now.void)
    return tuple(part.number for part in parts)


def add_up(table):
    """The sum on the screen is right, and is what the book says."""
    counted, tied_on, waiting, to_print, void = figures(table)
    facts = table.studio.book.ask(pile_facts, in_hand(table).pile)
    assert counted == tied_on + waiting + to_print
    assert facts.printed == tied_on + waiting + void
    return True


def tags(table, pile, *states):
    """Tags of a pile in these states."""
    return [tag for tag in table.studio.book.ask(tags_of, pile) if tag.state in states]


def test_eleven_skeins_get_eleven_tags_from_cell_nine_on_and_two_cells_are_left(
    table, pile, opened
):
    table.scan(disc(31))
    assert figures(table) == (11, 0, 0, 11, 0)
    picture = in_hand(table).print_card.picture.shown
    assert [picture.cell(n) for n in (8, 9, 19, 20)] == [
        Cell.USED, Cell.CHOSEN, Cell.CHOSEN, Cell.FREE]
    assert in_hand(table).print_card.where.text() == "Cells 9 to 19 of 21, 2 left."
    table.press("P")
    assert figures(table) == (11, 0, 11, 0, 0)
    (file,) = opened
    assert file.parent == table.studio.book.path.parent / "tags"
    codes = [code.code for page in read_back(file.read_bytes(), stock(SMALL).dpi)
             for code in page]
    assert sorted(codes) == sorted(tag.mark for tag in tags(table, pile, WAITING))
    assert [tag.place for tag in tags(table, pile, WAITING)] == list(range(9, 20))
    assert add_up(table)


def test_printing_again_is_refused_with_three_reasons_and_spoiled_ones_are_replaced(table, pile):
    table.scan(disc(31), DONE)
    assert figures(table) == (11, 0, 11, 0, 0)
    card = in_hand(table).print_card
    assert "11 of 11 printed: why?" in card.print.accessibleDescription()
    assert [(key.accessibleName(), key.key) for key in card.reasons] == [
        ("Spoiled", "S"), ("Fell off", "F"), ("Extra skein", "X")]
    assert all(key.isVisible() for key in card.reasons)
    table.press("P")
    table.scan(DONE)
    assert "11 of 11 printed: why?" in table.trouble
    assert len(tags(table, pile, WAITING)) == 11

    table.press("S")
    jammed = tags(table, pile, WAITING)[4:7]
    for tag in jammed:
        in_hand(table).aside.picture.tapped.emit(tag.place)
    table.press("Enter")
    assert figures(table) == (11, 0, 8, 3, 3)
    assert {tag.mark for tag in tags(table, pile, VOID)} == {tag.mark for tag in jammed}
    assert add_up(table)

    table.press("P")
    assert figures(table) == (11, 0, 11, 0, 3)
    fresh = tags(table, pile, WAITING)[-3:]
    assert {tag.mark for tag in fresh}.isdisjoint(tag.mark for tag in jammed)
    assert len(tags(table, pile, WAITING, TIED_ON, VOID)) == 14
    assert add_up(table)


def test_each_scan_ties_one_tag_on_and_the_last_one_frees_the_disc(table, pile):
    table.scan(disc(31), DONE)
    waiting = [tag.mark for tag in tags(table, pile, WAITING)]
    for number, mark in enumerate(waiting[:3], 1):
        table.scan(mark)
        assert figures(table) == (11, number, 11 - number, 0, 0)
    assert table.said == f"tied {shown(waiting[2])} on"
    assert table.studio.book.ask(bundle_facts, table.studio.discs[0], NOW) is not None
    table.scan(*waiting[3:])
    assert figures(table) == (11, 11, 0, 0, 0)
    assert in_hand(table).pile_card.next.text() == "All 11 wear their tags. Its disc is free again."
    assert table.studio.book.ask(bundle_facts, table.studio.discs[0], NOW) is None
    assert add_up(table)
    table.studio.check()


def test_a_bounce_is_counted_once_and_said_softly(table, pile):
    table.scan(disc(31), DONE)
    (first, *_) = tags(table, pile, WAITING)
    table.bounce(first.mark)
    assert figures(table)[1] == 1
    assert table.note == f"{shown(first.mark)} was scanned twice: counted once"
    assert not table.trouble


def test_a_tag_that_hangs_already_is_counted_once_and_may_be_printed_anew(table, pile):
    table.scan(disc(31), DONE)
    (first, *_) = tags(table, pile, WAITING)
    table.scan(first.mark, first.mark)
    card = in_hand(table).pile_card
    assert card.tag_words.text() == "hangs on its skein already: counted once"
    assert figures(table) == (11, 1, 10, 0, 0)
    table.press("R")
    assert figures(table) == (11, 1, 10, 0, 1)
    (new,) = tags(table, pile, TIED_ON)
    table.scan(first.mark)
    assert f"{shown(first.mark)} is void: {shown(new.mark)} took its place." in table.trouble
    assert "Throw it away." in table.trouble
    assert add_up(table)


def test_a_void_tag_says_so_and_ties_nothing_on(table, pile):
    table.scan(disc(31), DONE, SECONDS)
    (first, *_) = tags(table, pile, WAITING)
    table.scan(first.mark, DONE)
    assert figures(table) == (11, 0, 10, 1, 1)
    table.scan(first.mark)
    assert f"{shown(first.mark)} is void. Throw it away." in table.trouble
    assert figures(table) == (11, 0, 10, 1, 1)


def test_spoiled_tags_may_be_scanned_instead_of_tapped_and_untold_again(table, pile):
    table.scan(disc(31), DONE)
    one, two, three, *_ = tags(table, pile, WAITING)
    table.scan(SECONDS, one.mark, two.mark, three.mark, two.mark)
    assert isinstance(in_hand(table).aside, Choosing)
    assert [tag.mark for tag in in_hand(table).aside.gone] == [one.mark, three.mark]
    table.press("Enter")
    assert {tag.mark for tag in tags(table, pile, VOID)} == {one.mark, three.mark}


def test_a_tag_that_fell_off_a_skein_is_printed_anew_at_once(table, pile):
    table.scan(disc(31), DONE)
    (first, *_) = tags(table, pile, WAITING)
    table.scan(first.mark)
    table.press("F")
    in_hand(table).aside.picture.tapped.emit(first.place)
    table.press("Enter")
    assert figures(table) == (11, 1, 10, 0, 1)
    assert tags(table, pile, VOID)[0].successor == tags(table, pile, TIED_ON)[0].mark
    assert add_up(table)


def test_a_tag_that_was_lost_before_it_hung_is_void_and_one_more_is_printed(table, pile):
    table.scan(disc(31), DONE, plate(2))
    tag = tags(table, pile, WAITING)[0]
    in_hand(table).aside.picture.tapped.emit(tag.place)
    table.press("Enter")
    assert figures(table) == (11, 0, 10, 1, 1)
    assert entries_say(table, "fell off or lost")


def entries_say(table, words):
    return any(words in entry.said for entry in table.studio.book.ask(entries))


def test_an_extra_skein_gets_a_tag_with_its_reason_and_the_sum_says_one_too_many(table, pile):
    table.scan(disc(31), DONE)
    table.press("X")
    card = in_hand(table).print_card
    assert card.print.accessibleName() == "Print 1 tag, an extra skein"
    table.press("P")
    assert figures(table) == (11, 0, 12, 0, 0)
    assert in_hand(table).pile_card.figures.over.number == 1
    assert in_hand(table).pile_card.figures.over.isVisible()


def test_more_than_the_count_asks_why_before_anything_is_printed(table, pile):
    table.scan(disc(31))
    table.press("+")
    assert in_hand(table).print_card.plan.count == 12
    assert "0 of 11 printed: why?" in in_hand(table).print_card.print.accessibleDescription()
    table.press("P")
    assert tags(table, pile, WAITING) == []
    table.press("-", "-", "P")
    assert figures(table) == (11, 0, 10, 1, 0)


def test_a_hold_on_the_cone_stops_printing_and_says_whom_to_ask(table, studio):
    cone = studio.cone()
    held = pile_of(studio, 6, 2, "blue", cone=cone)
    studio.do(hold, "cone", cone, "fluorescent oil stain")
    table.scan(disc(33))
    card = in_hand(table).aside
    assert isinstance(card, HoldCard)
    assert card.ask == ["Ask OW, Osk Wray."]
    assert not in_hand(table).print_card.isVisible()
    table.scan(DONE)
    assert "HOLD: no tags are printed for this pile." in table.trouble
    assert tags(table, held, WAITING) == []


def test_a_hold_that_comes_while_the_pile_is_in_hand_is_seen_at_once(table, studio, pile):
    table.scan(disc(31))
    studio.do(hold, "yarn", pile, "looks streaky")
    table.quiet()
    assert isinstance(in_hand(table).aside, HoldCard)


def test_of_two_compositions_the_owner_picks_the_text(table, studio):
    first = studio.cone()
    studio.do(describe_base, tarnfield(fibre="90 % wool, 10 % polyamide"))
    pool = studio.mix(studio.wind(first, 3, "red", studio.discs[3]),
                      studio.wind(studio.cone(), 2, "red"))
    studio.dye(pool)
    (mixed,) = studio.finish(pool, red=5)
    table.scan(disc(34), DONE)
    assert "Two compositions lie in one pile; nothing was printed." in table.trouble
    table.scan(plate(2), DONE)
    assert figures(table) == (5, 0, 5, 0, 0)
    words = studio.book.ask(lambda c: c.execute(
        select(Tag.words).where(Tag.pile == mixed)).scalars().first())
    assert list(in_hand(table).table.texts.values())[1] in words


def test_the_first_cell_is_tapped_or_walked_to(table):
    table.scan(disc(31))
    picture = in_hand(table).print_card.picture
    middle = picture.box(4).center().toPoint()
    table._qtbot.mouseClick(picture, Qt.MouseButton.LeftButton, pos=middle)
    assert in_hand(table).print_card.plan.first == 4
    table.press("Right", "Down")
    assert in_hand(table).print_card.plan.first == 8
    assert in_hand(table).print_card.where.text() == "Cells 8 to 18 of 21, 3 left."


def test_another_stock_has_its_own_cells(table):
    table.scan(disc(31))
    table.press("K")
    card = in_hand(table).print_card
    assert card.stock.name == "swing-85x55"
    assert card.where.text() == "Cells 1 to 10 of 10, then 1 more sheet, 9 left on the last."
    table.press("K")
    assert card.where.text() == "11 from the roll, one at a time."


def test_a_tag_of_another_pile_is_tied_on_there_and_said(table, studio, pile):
    other = studio.book.ask(tags_of, pile + 1) or studio.book.ask(tags_of, pile_by_disc(studio, 1))
    table.scan(disc(31), other[0].mark)
    assert table.found == [f"{shown(other[0].mark)} belongs to another pile: it is tied on there, "
                           "and not counted here."]
    assert figures(table) == (11, 0, 0, 11, 0)
    assert studio.book.ask(pile_facts, other[0].pile).applied == 1
    table.window.floor.findings.answered.emit(
        table.window.floor.findings._open[0], "Take that pile in hand")
    table.quiet()
    assert in_hand(table).pile == other[0].pile


def pile_by_disc(studio, place):
    (row,) = studio.book.ask(bundle_facts, studio.discs[place], NOW).rows
    return row


def test_a_disc_on_two_piles_asks_which_one(table, studio):
    reel = [Wound((Drawn(studio.cone(), count * LONG_MM),), count, "skein", tie)
            for tie, count in (("red", 8), ("yellow", 6))]
    rows = studio.do(wind, reel, studio.discs[4])
    studio.dye(*rows)
    studio.do(finish, rows, {"red": 8, "yellow": 6})
    table.scan(disc(35))
    assert table.bench.piles.asks.text() == "2 piles of disc 035: which one?"
    assert [row[5:7] for row in table.bench.piles.table._rows] == [("red", "8"), ("yellow", "6")]
    table.scan(plate(2))
    assert figures(table) == (6, 0, 0, 6, 0)


def test_a_pile_is_chosen_by_its_figure_or_by_its_lot(table, studio, pile):
    assert [row[1] for row in table.bench.piles.table._rows] == ["031", "032"]
    table.press("2")
    assert in_hand(table).pile == pile_by_disc(studio, 1)
    table.press("F8")
    table.scan(studio.book.ask(pile_facts, pile).lot)
    assert in_hand(table).pile == pile


def test_by_keyboard_alone_a_disc_is_typed_tags_printed_and_one_told_by_its_two_characters(
    table, pile
):
    table.press("Escape")
    table.type("31")
    table.press("Enter", "P")
    (first, *_) = tags(table, pile, WAITING)
    table.press("Escape")
    table.type(first.mark[-2:])
    table.press("Enter")
    assert figures(table) == (11, 1, 10, 0, 0)


def test_a_printing_is_taken_back_like_any_deed(table, pile):
    table.scan(disc(31), DONE, UNDO)
    assert figures(table) == (11, 0, 0, 11, 0)
    assert tags(table, pile, WAITING) == []
    assert in_hand(table).print_card.plan.first == 9


def test_a_tag_without_a_pile_in_hand_takes_its_pile_in_hand(table, pile):
    table.scan(disc(31), DONE)
    table.press("F8")
    table.scan(tags(table, pile, WAITING)[0].mark)
    assert in_hand(table).pile == pile
    assert figures(table) == (11, 1, 10, 0, 0)


def test_what_is_not_here_is_told(table, studio):
    table.scan(disc(45))
    assert "Disc 045 hangs on nothing." in table.trouble
    studio.wind(studio.cone(), 3, "red", studio.discs[5])
    table.scan(disc(36))
    assert "The cord on disc 036 is not counted yet" in table.trouble
    table.scan(f"{studio.code(1)}-00")
    assert "was never printed" in table.trouble
    table.scan(DONE)
    assert "No pile is in hand." in table.trouble


def test_a_lot_whose_skeins_are_all_tagged_has_no_pile(table, studio):
    group = studio.wind(studio.cone(), 1)
    lot = studio.dye(group)
    studio.tag(studio.finish(group, red=1)[0], 1)
    table.scan(studio.code(lot))
    assert "waits for tags" in table.trouble


def test_a_sheet_that_cannot_be_saved_is_said_and_nothing_is_opened(table, pile, opened):
    (table.studio.book.path.parent / "tags").write_text("in the way")
    table.scan(disc(31), DONE)
    assert "could not be saved" in table.found[0]
    assert opened == []
    assert not in_hand(table).pile_card.open.isVisible()
    assert len(tags(table, pile, WAITING)) == 11


def test_a_sheet_is_opened_again_by_its_key(table, opened):
    table.scan(disc(31), DONE)
    table.press("O")
    assert len(opened) == 2
    assert opened[0] == opened[1]


def test_the_piles_say_when_nothing_waits(qtbot, settings, studio):
    for at_work in begin_work(qtbot, settings, studio, 7):
        assert "No pile waits" in at_work.bench.piles.table._none.text()
        assert at_work.bench.piles.table._none.isVisible()


def test_a_colourway_without_a_swatch_says_so(table, studio):
    studio.recipe = studio.do(name_colourway, "Coal Hatch")
    pile_of(studio, 2, 6)
    table.scan(disc(37))
    assert in_hand(table).pile_card._swatch.accessibleName() == "Coal Hatch: no swatch chosen"


@pytest.mark.parametrize(("first", "count", "sheets", "left", "words"), [
    (9, 11, 1, 2, "Cells 9 to 19 of 21, 2 left."),
    (9, 13, 1, 0, "Cells 9 to 21 of 21, none left."),
    (20, 3, 2, 20, "Cells 20 to 21 of 21, then 1 more sheet, 20 left on the last."),
    (21, 1, 1, 0, "Cell 21 of 21, none left."),
    (1, 50, 3, 13, "Cells 1 to 21 of 21, then 2 more sheets, 13 left on the last."),
    (5, 0, 1, 17, "From cell 5 of 21."),
])
def test_a_sheet_is_planned_to_its_last_cell(first, count, sheets, left, words):
    plan = SheetPlan(stock(SMALL), first, count)
    assert (plan.sheets, plan.left, plan.words) == (sheets, left, words)


@pytest.mark.parametrize(("place", "cell"), [(1, 1), (9, 9), (21, 21), (22, 1), (30, 9)])
def test_the_next_free_cell_follows_the_last_tag(place, cell):
    assert next_cell(stock(SMALL), place) == cell
