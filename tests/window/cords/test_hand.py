"""What is in hand: what it has no use for it leaves alone, and it goes out of hand by one key."""

import pytest

from app.lookups.loads import InPlace
from app.lookups.pot_plates import PotPlate
from app.lookups.reel import DiscNow
from app.window.cords.hand import Hand
from app.window.parts.action_plates import MIXED, SPLIT
from app.window.parts.card import Actions


@pytest.fixture
def hand(shell):
    """A hand that does nothing by itself, with its keys on the screen."""
    made = Hand(shell.floor._around)
    made.body.addWidget(Actions(made.put_away(), *made.other_keys()))
    shell.floor.show_page(made)
    return made


def test_a_hand_has_no_use_for_what_it_was_not_told_to_take(hand):
    assert not hand.take_disc(DiscNow(1, "031", None))
    assert not hand.take_pot(PotPlate(1, 1, None))
    assert not hand.take_place(InPlace(None, ()))
    assert not hand.write("a")


def test_f8_puts_it_out_of_hand_and_two_letters_do_what_the_plates_do(qtbot, hand):
    with qtbot.waitSignal(hand.over) as over:
        next(
            key for key in hand.findChildren(type(hand.put_away())) if key.key == "F8").click()
    assert over.args == [None]
    wanted = []
    hand.wanted.connect(wanted.append)
    assert hand.press("m")
    assert hand.press("S")
    assert wanted == [MIXED, SPLIT]


def test_what_leaves_the_hand_is_put_away_and_never_put_by(hand):
    """Put by is the trade's word for keeping for a customer."""
    assert hand.put_away().accessibleName() == "Put away"
