"""Kits at the packing bench: how many are possible, a bag filled by scan, its label, a bag opened.
"""

import shutil
from pathlib import Path

import pytest
from PySide6.QtGui import QDesktopServices

from app.calculations.codes import Kind, numbered, shown
from app.lookups.kit_patterns import patterns_now
from app.lookups.kits import kit_now
from app.lookups.skeins import named_by_tag, now_of
from app.store.book import Book
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.holding import hold
from app.work.kit_patterns import PatternIn, PlaceIn, write_pattern
from app.work.moving import To, move
from app.work.opening_stock import OldLot, open_lot
from app.work.reporting import FaultIn, report_fault
from app.work.selling import OrderIn, Wanted, place_order
from tests.documents.samples import text_of
from tests.large_book import copy_of
from tests.lookups.cards import read_standard
from tests.makers import EACH_MG, Clock, Studio
from tests.window.benches.at_work import DONE, plate
from tests.window.benches.packing_hands import at_packing, shelf

LABS = {"Ferry Ledger": (25.1, 8.0, -20.5), "Moth at the Window": (65.5, 6.6, 4.0),
        "Wet Thatch Tuesday": (33.8, 15.0, 16.4), "Whey Blue": (74.1, -15.5, -12.8),
        "Seventh Buoy": (42.3, 59.8, 35.0), "Paper Ticket": (70.1, 32.4, 10.3),
        "Nettle Cellar": (34.8, -9.4, 7.1)}
STOCK = {"Ferry Ledger": (1, 3, 3), "Moth at the Window": (2, 2), "Wet Thatch Tuesday": (1, 1),
         "Whey Blue": (2, 1), "Seventh Buoy": (2, 1), "Paper Ticket": (2,), "Nettle Cellar": (1, 1)}
"""Of each an old lot, and lots that are scanned here."""
BAG = numbered(Kind.KIT, 1).text


def stocked(studio_file, folder):
    """The shelves, and a pattern of five places, of which C may be two others."""
    studio = Studio(Book(copy_of(studio_file, folder), Clock()), furnished=True)
    (place,) = studio.do(make_plates, Kind.SHELF, [3])
    studio.marks = {}
    for number, (name, (old, *lots)) in enumerate(STOCK.items(), 2):
        studio.recipe = studio.do(name_colourway, name, "#223344")
        pile = studio.do(open_lot, OldLot(f"OLD-{number}", 1, number, old), EACH_MG)
        skeins = studio.tag(pile, old)
        for count in lots:
            _, dyed = studio.tagged(studio.cone(), count)
            named = studio.book.ask(named_by_tag, dyed)
            studio.marks.setdefault(name, []).append([named[one].mark for one in dyed])
            skeins += dyed
        studio.do(move, skeins, To("shelf", place=place))
        read_standard(studio, LABS[name], number)
    studio.do(write_pattern, PatternIn("Stair-Rail Cowl", tuple(
        PlaceIn(letter, 2 if letter == "A" else 1, colourway, 1,
                stand_ins=(7, 8) if letter == "C" else ())
        for letter, colourway in zip("ABCDE", range(2, 7), strict=True)), 12_900))
    studio.book.close()
    return studio


@pytest.fixture(scope="module")
def kept(studio_file, tmp_path_factory):
    """Made once."""
    return stocked(studio_file, tmp_path_factory.mktemp("kits"))


@pytest.fixture
def packing(qtbot, settings, book, kept, monkeypatch):
    """At the packing bench, with the kits before the person; no reader shows the labels."""
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _url: True)
    book.close()
    shutil.copy(kept.book.path, book.path)
    studio = Studio(book, furnished=True)
    studio.clock.now, studio.marks = kept.clock.now, kept.marks
    for at in at_packing(qtbot, settings, studio):
        at.press("F5")
        yield at


@pytest.fixture
def cowl(packing):
    """The cowl is in hand."""
    packing.press("Enter")
    packing.quiet()
    return packing.bench.kits.card


def rows(card):
    return [row.accessibleName() for row in card.rows]


def whole(packing, letter_a=0):
    """The marks of one bag: two of A, one of each other."""
    marks = packing.studio.marks
    return [*marks["Ferry Ledger"][letter_a][:2], marks["Moth at the Window"][0][0],
            marks["Wet Thatch Tuesday"][0][0], marks["Whey Blue"][0][0],
            marks["Seventh Buoy"][0][0]]


def papers(packing):
    return sorted(Path(packing.studio.book.path).parent.glob("* kits/*.pdf"))


def test_a_colour_of_seven_in_three_lots_is_enough_for_two_kits_and_what_is_short_is_said(
    packing, cowl
):
    assert cowl.number.accessibleName() == ("2 kits can be made the shortest colours are A, Ferry "
                                            "Ledger and C, Wet Thatch Tuesday")
    assert cowl.rows[0].left.text().startswith("7 left: 3 of ")
    assert cowl.rows[0].left.text().endswith("; enough for 2 kits.")  # 3, 3 and 1: one lot a kit
    assert cowl.short.text() == ""
    packing.scan(plate(3))
    assert cowl.short.text() == (
        "Of 3 kits, 2 can be made: A (Ferry Ledger) is short by 2, C (Wet Thatch Tuesday) is "
        "short by 1. Dyed anew, ready by 20 Apr 2026, at least 3 skeins a pot.")
    none, nettle, ticket = cowl.stand_ins.text().split("\n")
    assert none == "The pattern allows nothing in the place of A."
    assert nettle.startswith("For C Nettle Cellar may stand in: enough for 2 kits, the contrast "
                             "is kept, at least ")
    assert ticket.startswith("Paper Ticket leaves too little contrast or turns it round: ")


def test_a_bag_is_filled_by_scan_closed_by_done_and_its_label_names_every_lot(packing, cowl):
    marks = whole(packing)
    packing.scan(marks[2], marks[0])
    assert rows(cowl)[:2] == ["A, Ferry Ledger: 1 of 2", "B, Moth at the Window: 1 of 1"]
    assert not cowl.close_key.isEnabled()
    packing.scan(DONE)
    assert packing.trouble.startswith("The bag lacks 1 of A, Ferry Ledger, 1 of C")
    packing.scan(marks[1], *marks[3:], DONE)
    packing.quiet()
    code = shown(BAG)
    bag = packing.studio.book.ask(kit_now, 1)
    assert (bag.name, len(bag.skeins)) == ("Stair-Rail Cowl", 6)
    assert rows(cowl)[0] == "A, Ferry Ledger: 0 of 2"
    assert cowl.number.accessibleName().startswith("1 kit can be made")
    (paper,) = papers(packing)
    assert packing.note == f"the label of kit {code} is {paper.name}"
    (text,) = text_of(paper.read_bytes())
    for one in bag.skeins:
        assert shown(one.lot) in text
    assert code in text
    assert "cell 2 of 10" in cowl.stock.text()
    packing.press("F5")
    assert "cell 3 of 10" in cowl.stock.text()
    packing.studio.check()


def test_one_colour_is_never_from_two_lots(packing, cowl):
    ferry = packing.studio.marks["Ferry Ledger"]
    packing.scan(ferry[0][0], ferry[1][0])
    assert packing.trouble.startswith("Colour A was begun with ")
    assert "one colour of a kit is of one lot. Nothing was taken." in packing.trouble
    assert rows(cowl)[0] == "A, Ferry Ledger: 1 of 2"
    packing.press("F7")
    packing.scan(*ferry[1])
    assert rows(cowl)[0] == "A, Ferry Ledger: 2 of 2"


def test_what_no_place_wants_what_is_full_and_what_is_held_stays_out(packing, cowl):
    marks = packing.studio.marks
    packing.scan(*marks["Moth at the Window"][0])
    assert "Moth at the Window is full in this bag; nothing was taken." in packing.trouble
    packing.scan(marks["Moth at the Window"][0][0])
    assert "is in this bag already; it counts once." in packing.trouble
    packing.studio.do(hold, "yarn",
                      packing.studio.book.ask(_yarn_of, marks["Whey Blue"][0][0]), "pink cast")
    packing.scan(marks["Whey Blue"][0][0])
    assert cowl.aside is not None
    assert "pink cast" in cowl.aside.why[0]
    packing.press("F8")
    nettle = marks["Nettle Cellar"][0][0]
    packing.studio.do(report_fault, FaultIn("stain", "counter"),
                      [packing.studio.book.ask(_yarn_of, nettle)])
    packing.scan(nettle)
    assert packing.found == [
        f"“stain” was told of {shown(nettle)} on 6 Apr 2026; nobody closed it."]
    assert rows(cowl)[2] == "C, Wet Thatch Tuesday: 1 of 1"
    assert cowl.rows[2].inside.text().startswith("In the bag: Nettle Cellar, ")
    packing.press("F6")
    assert rows(cowl)[2] == "C, Wet Thatch Tuesday: 0 of 1"


def test_a_bag_that_is_scanned_tells_its_lots_and_a_shelf_opens_it(packing, cowl):
    marks = whole(packing)
    packing.scan(*marks, DONE)
    packing.quiet()
    packing.scan(BAG)
    bag = packing.bench.kits.scanned
    assert bag.title.text() == "Stair-Rail Cowl: 6 skeins in the bag"
    assert f"2 × Ferry Ledger, Tarnfield 4-ply, {shown(marks[0].partition('-')[0])}" in (
        bag.inside.text())
    packing.scan(shelf(3))
    assert packing.said == f"opened kit {shown(BAG)}: 6 skeins on the shelf"
    assert packing.studio.book.ask(
        now_of, packing.studio.book.ask(_yarn_of, marks[0])).state == "shelf"
    packing.scan(BAG)
    assert "was opened: nothing is in it." in packing.trouble


def test_a_pattern_is_written_place_by_place_and_stands_in_the_list(packing):
    packing.press("F4")
    writing = packing.bench.kits.writing
    packing.type("Lock-Gate Mitts")
    packing.press("Enter")
    packing.type("whey")
    packing.press("Enter")
    assert "names no colourway of the studio" in writing.what.wrong.text()
    for words, count in (("Whey Blue, Tarnfield 4-ply", "2"), ("Ferry Ledger Tarnfield 4-ply", "")):
        writing.what.line.setText(words)
        writing.count.line.setText(count)
        writing.others.line.setText("Nettle Cellar; Paper Ticket" if count else "")
        packing.press("Enter")
    assert writing.count.line.hasFocus()
    packing.type("1")
    packing.press("F5")
    packing.quiet()
    assert packing.said == "wrote the kit pattern Lock-Gate Mitts: A 2, B 1"
    mitts = next(one for one in packing.studio.book.ask(patterns_now) if one.price is None)
    assert [(one.letter, one.wanted, one.name, len(one.stand_ins)) for one in mitts.places] == [
        ("A", 2, "Whey Blue", 2), ("B", 1, "Ferry Ledger", 0)]
    packing.press("F8")
    packing.quiet()
    assert [row[:2] for row in packing.bench.kits.list.table._rows] == [
        ("Lock-Gate Mitts", "1"), ("Stair-Rail Cowl", "2")]
    packing.press("F8")
    packing.scan(plate(1), plate(2))  # the kits, and the second of them, by scanner alone
    assert packing.bench.kits.card.name.text() == "Stair-Rail Cowl"


def _yarn_of(connection, mark):
    from app.lookups.things import by_code
    return by_code(connection, mark).id


def test_a_bag_that_is_closed_twice_is_one_kit_and_undo_gives_its_skeins_back(packing, cowl):
    packing.scan(*whole(packing))
    cowl.close_key.click(), cowl.close_key.click()
    packing.quiet()
    packing._qtbot.waitUntil(lambda: len(papers(packing)) == 1)
    assert packing.trouble == ""
    assert rows(cowl)[0] == "A, Ferry Ledger: 0 of 2"
    assert packing.studio.book.ask(kit_now, 1) is not None
    packing.press("F2")
    assert cowl.number.accessibleName().startswith("2 kits can be made")
    packing.press("F5")
    assert len(papers(packing)) == 1  # there is no such kit any more
    packing.scan(*whole(packing))
    packing.scan(DONE)
    assert packing.said.startswith("made kit ")
    assert packing.trouble == ""


def test_the_slip_of_an_order_does_not_lose_a_bag_that_is_being_filled(packing, cowl):
    studio = packing.studio
    studio.do(place_order, OrderIn("9001", studio.clock.now, "web", (Wanted("green", 1),)))
    packing.scan(*whole(packing)[:2], "9001")
    assert packing.trouble.startswith("A kit's bag is being filled; no order was opened.")
    assert rows(cowl)[0] == "A, Ferry Ledger: 2 of 2"


def test_a_tag_that_is_scanned_while_a_bag_waits_to_be_opened_goes_nowhere(packing, cowl):
    packing.scan(*whole(packing), DONE, BAG, whole(packing, 1)[0])
    assert packing.trouble.startswith("No bag is being filled; nothing was taken.")
    packing.press("F8")
    assert rows(cowl)[0] == "A, Ferry Ledger: 0 of 2"
