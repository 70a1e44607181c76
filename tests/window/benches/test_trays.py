"""Trays: bottles, boards, the steamer, and the lots that are born in it."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.pot_steps import pots_at_work
from app.lookups.trays import trays_now
from app.window.benches.pots.board import Board
from app.window.benches.pots.nothing import Nothing
from app.window.benches.pots.steaming import InSteam
from app.work.bundling import make_plates
from app.work.recipes import ComponentIn, ZoneIn
from tests.lookups.waters import recipe_of
from tests.window.benches.at_work import DONE, begin_work, disc, plate

ZONES = (ZoneIn("A", 400, 60, "sky"), ZoneIn("B", 300, 45), ZoneIn("C", 200, 30),
         ZoneIn("D", 100, 12))
POURED = tuple(ComponentIn(name, "bottle", amount, zone=zone) for name, amount, zone in (
    ("B2", 10_000, "B"), ("B1", 5_000, "A"), ("Y1", 2_500, "C"), ("K1", 20_000, "D")))


def board(number):
    return numbered(Kind.BOARD, number).text


STEAMER = numbered(Kind.STEAMER, 1).text


@pytest.fixture
def trays(qtbot, settings, studio):
    """Half-Tide Steps in four zones, boards 1 and 2, a steamer; discs 031 and 032 wait."""
    recipe_of(studio, "Half-Tide Steps", POURED, look="zones", zones=ZONES)
    studio.do(make_plates, Kind.BOARD, [1, 2])
    studio.do(make_plates, Kind.STEAMER, [1])
    for place in (0, 1):
        studio.wind(studio.cone(), 4, "red", studio.discs[place])
    yield from begin_work(qtbot, settings, studio, 4)


def fill(trays):
    """Board 1 and new bottles."""
    trays.scan(board(1))
    trays.press("1")


def test_zones_stand_in_their_order_of_pouring_with_letter_and_millilitres(trays):
    fill(trays)
    assert trays.said == "filled bottle set 1 of Half-Tide Steps"
    trays.scan(disc(31))
    hand = trays.bench.hand
    assert hand.total.text() == "4 skeins, 412 g"
    assert hand.zones.lines == ["bottle B: 186 mL", "bottle A: 248 mL", "bottle C: 124 mL",
                                "bottle D: 50 mL"]
    assert "147 mL on 100 g, and a skein spun to 80 % takes 140 mL" in hand.zones.puddle.text()
    assert hand.zones.puddle.text().endswith("Spin it to 73 %.")


def test_by_scanner_alone_from_the_board_to_the_lot(trays):
    trays.scan(board(1), plate(1), disc(31), DONE)
    assert trays.said == "laid 4 skeins of Half-Tide Steps on board 1"
    assert isinstance(trays.bench.hand, Nothing)
    trays.scan(STEAMER)
    assert trays.bench.hand.which.text() == "Board 1: 4 skeins"
    trays.scan(DONE)
    hand = trays.bench.hand
    assert isinstance(hand, InSteam)
    (code,) = hand.codes
    assert code.fitted().pixelSize() >= 84
    assert trays.said.startswith(code.code)
    (work,) = trays.studio.book.ask(pots_at_work)
    assert (work.steamer, [lot.code for lot in work.pot.lots]) == (1, [code.code])
    (card,) = trays.bench.pots.cards
    assert card.step == "minutes in the steamer, 25 at least"
    trays.studio.clock.now += timedelta(minutes=30)
    trays.bench.pots.tick()
    assert int(card.minutes) >= 30
    assert card.step == "minutes in the steamer"
    assert "minutes in the steamer" in card.accessibleName()
    trays.press("L")
    assert trays.studio.book.ask(pots_at_work) == ()
    assert trays.found == []
    trays.studio.check()


def test_a_bottle_filled_again_is_a_new_lot_said_aloud_and_both_are_on_one_screen(trays):
    trays.scan(board(1), plate(1), disc(31), DONE, board(2))
    trays.press("A")
    assert trays.note == "bottle A filled again: a new set, and a new lot"
    assert trays.bench.hand.zones.new_lot.text().startswith("NEW LOT: bottle A was filled again.")
    trays.scan(disc(32), DONE, STEAMER)
    assert trays.bench.hand.which.text() == "Boards 1, 2: 8 skeins"
    trays.scan(DONE)
    assert len({code.code for code in trays.bench.hand.codes}) == 2
    assert len(trays.bench.pots.cards) == 2
    trays.press("L")
    assert any("minutes in the steamer: below 25" in one for one in trays.found)
    assert trays.studio.book.ask(pots_at_work) == ()


def test_only_the_boards_that_are_scanned_go_in(trays):
    trays.scan(board(1), plate(1), disc(31), DONE, board(2), plate(1), disc(32), DONE)
    trays.scan(STEAMER, board(2), DONE)
    assert [one.number for one in trays.studio.book.ask(trays_now).boards] == [1]
    trays.scan(STEAMER)
    assert trays.bench.hand.which.text() == "Board 1: 4 skeins"


def test_a_card_of_what_steams_opens_the_whole_run(trays):
    trays.scan(board(1), plate(1), disc(31), DONE, STEAMER, DONE)
    trays.press("F8")
    trays.click(trays.bench.pots.cards[0])
    assert isinstance(trays.bench.hand, InSteam)
    trays.press("F8")
    trays.scan(STEAMER)
    assert isinstance(trays.bench.hand, InSteam)


def test_a_board_says_what_it_lacks(trays):
    trays.scan(board(1), DONE)
    assert "Scan a disc that lies on it." in trays.trouble
    trays.scan(disc(31), DONE)
    assert "Choose the bottles by their figure" in trays.trouble
    trays.scan(board(2))
    assert "Board 1 is not done yet; nothing was saved." in trays.trouble
    trays.scan(disc(45))
    assert "Disc 045 hangs on nothing" in trays.trouble
    trays.press("F8")
    trays.scan(STEAMER)
    assert trays.bench.hand.which.text() == "No painted board waits."
    trays.scan(DONE)
    assert "Nothing lies on these boards" in trays.trouble


def test_bottles_older_than_two_days_are_said(trays):
    fill(trays)
    trays.studio.clock.now += timedelta(hours=49)
    trays.press("F8")
    trays.scan(board(1))
    assert isinstance(trays.bench.hand, Board)
    assert "Older than 48 hours" in trays.bench.hand.zones.age.text()
