"""The chance of a redye, from what the colourway's other lots came out as."""

from app.lookups.redyes import RedyeHistory, redye_history
from tests.calculations.shades import TEAL
from tests.lookups.cards import dyed, read_lot
from tests.makers import Studio


def test_four_of_eleven_are_38_percent_in_one_try_and_60_in_two() -> None:
    assert RedyeHistory(4, 11).words == (
        "4 of 11 lots came within 1.0; reckoned 38 % in one try, 60 % in two; never promised")


def test_the_other_lots_that_were_read_are_counted_against_this_one(studio: Studio) -> None:
    lots = [dyed(studio) for _ in range(9)]
    for lot, name in zip(lots, TEAL, strict=False):
        read_lot(studio, lot, TEAL[name].lab)
    found = studio.book.ask(redye_history, lots[0])
    assert (found.near, found.lots) == (2, 7)  # Q and U lie within 1.0 of P


def test_without_any_card_nobody_can_say(studio: Studio) -> None:
    lot = dyed(studio)
    dyed(studio)
    found = studio.book.ask(redye_history, lot)
    assert (found.near, found.lots, found.chance()) == (0, 0, None)
    assert "nobody can say" in found.words
