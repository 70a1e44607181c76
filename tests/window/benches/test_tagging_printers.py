"""Printing at the tag table by the printer of this computer, on the studio's own stocks."""

from dataclasses import replace

import pytest
from PySide6.QtPrintSupport import QPrinter

from app.documents.own_stocks import Layout
from app.documents.proof import read_back
from app.documents.stocks import stock
from app.documents.tag_choices import Choices
from app.exchange.tag_stocks import describe_stock, lay_out
from app.lookups.printed import WAITING
from app.work.bases import describe_base
from app.work.studio import choose
from tests.makers import tarnfield
from tests.window.benches.at_work import begin_work, disc
from tests.window.benches.tag_table_hands import (
    SMALL,
    eleven_on_the_table,
    figures,
    in_hand,
    pile_of,
    tags,
)

LASER = "laser in the office"


@pytest.fixture
def pile(studio):
    return eleven_on_the_table(studio)


@pytest.fixture
def printer(settings):
    """A printer with its two numbers for small tags."""
    settings.printers.name(LASER)
    settings.printers.choose(SMALL, LASER)
    settings.printers.correct(LASER, SMALL, (-2.1, -1.4))


@pytest.fixture
def table(qtbot, settings, studio, pile, printer, opened):
    """At the tag table."""
    yield from begin_work(qtbot, settings, studio, 7)


def middles(pdf):
    """{mark: middle of its code}, in mm."""
    return {one.code: (one.x, one.y) for page in read_back(pdf, 300) for one in page}


def test_the_tags_are_moved_by_the_two_numbers_of_their_printer(table, pile, opened):
    table.scan(disc(31))
    table.press("P")
    small = stock(SMALL)
    seen = middles(opened[-1].read_bytes())
    printed = tags(table, pile, WAITING)
    assert {tag.mark for tag in printed} == set(seen)
    half = 21 / 2 * 6 * 25.4 / 300  # of the dark square: modules of six dots
    for tag in printed:
        cell = small.cell((tag.place - 1) % 21 + 1)
        corner = (cell.left + 59.3 - half - 2.1, cell.top + 33.93 - half - 1.4)
        assert seen[tag.mark] == pytest.approx(corner, abs=0.1)


def test_a_printer_of_the_system_gets_the_sheet_straight_and_the_file_is_kept(
    table, pile, opened, tmp_path
):
    def queue(_name):
        into = QPrinter(QPrinter.PrinterMode.HighResolution)
        into.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        into.setOutputFileName(str(tmp_path / "queue.pdf"))
        return into

    here = table.bench.around.printers
    here._known, here._opened = (lambda: (LASER,)), queue
    table.scan(disc(31))
    table.press("P")
    assert f"Sent to {LASER}." in table.note
    assert opened == []
    came = middles((tmp_path / "queue.pdf").read_bytes())
    assert set(came) == {tag.mark for tag in tags(table, pile, WAITING)}
    (kept,) = table.studio.book.path.with_name("studio tags").glob("*.pdf")
    assert set(middles(kept.read_bytes())) == set(came)


def test_a_printer_that_is_gone_says_so_and_the_tags_are_in_the_book(table, pile, opened):
    here = table.bench.around.printers
    here._known = lambda: (LASER,)
    table.scan(disc(31))
    table.press("P")
    assert "not there now" in table.trouble
    assert figures(table) == (11, 0, 11, 0, 0)
    assert table.studio.book.path.with_name("studio tags").exists()


def test_a_stock_of_its_own_is_offered_printed_on_and_its_tags_can_be_spoiled(
    table, pile, studio, opened
):
    kraft = replace(stock("tag-70x50"), name="", title="Kraft card")
    name = studio.do(describe_stock, kraft)
    studio.do(lay_out, name, Layout("card", Choices(leaves_out=("care",))))
    table.scan(disc(31))
    card = in_hand(table).print_card
    for _ in range(len(card.known.in_use)):
        if card.stock.name != name:
            table.press("K")
    assert card.title.text() == "Kraft card"
    table.press("P")
    assert {tag.stock for tag in tags(table, pile, WAITING)} == {name}
    table.press("S", "Space")
    assert in_hand(table).aside.gone
    table.press("Enter")
    assert figures(table) == (11, 0, 10, 1, 1)


def test_what_the_market_asks_to_look_at_is_said_after_printing(table, studio):
    studio.do(choose, {"market": "EU", "language": "de"})
    studio.do(describe_base, tarnfield(care="Wash it in rain water."))
    pile_of(studio, 2, 2, "blue")
    table.scan(disc(33))
    table.press("P")
    assert any("has no words in German" in one for one in table.found)
