"""The card of a fault gives what was written on it, or says in its place what is missing."""

import pytest

from app.window.faults.fault_card import FaultCard, Seen, Told
from app.window.parts.action_plates import COUNTS


@pytest.fixture
def of_a_skein(qtbot):
    card = FaultCard(Seen("26·19·K44 7M", "counter", {7: "26·19·K44 7M"}, order="1201"))
    qtbot.addWidget(card)
    return card


def press(card, words):
    next(key for key in (*card.faults, *card.where) if key.accessibleName() == words).click()


def test_a_sold_skein_brings_its_order_and_the_distance_is_kept_in_millimetres(
    qtbot, of_a_skein
):
    press(of_a_skein, "streak")
    press(of_a_skein, "repeats")
    of_a_skein.repeat.line.setText("150")
    with qtbot.waitSignal(of_a_skein.said) as told:
        of_a_skein.save()
    assert told.args == [Told("streak", "repeats", 1500, "", "1201", None, (7,))]


def test_without_a_fault_or_a_distance_nothing_is_told(qtbot, of_a_skein):
    with qtbot.assertNotEmitted(of_a_skein.said):
        of_a_skein.save()
        assert of_a_skein.taken.text() == "Choose the fault first."
        press(of_a_skein, "stain")
        press(of_a_skein, "repeats")
        of_a_skein.save()
        assert "centimetres" in of_a_skein.repeat.wrong.text()


def test_a_fault_shows_the_number_of_its_plate_where_it_has_one(of_a_skein):
    shown = {key.accessibleName(): key._words for key in of_a_skein.faults}
    assert all(of_a_skein.choose(number) for number in COUNTS.values())
    assert (shown["thin place"], shown["tie mark"]) == ("10  thin place", "tie mark")


def test_of_a_lot_as_stated_how_many_have_it_is_asked(qtbot):
    card = FaultCard(Seen("26·19·K44", "counter", lot=4))
    qtbot.addWidget(card)
    press(card, "stain")
    with qtbot.assertNotEmitted(card.said):
        card.save()
    card.count.line.setText("2")
    with qtbot.waitSignal(card.said) as told:
        card.save()
    assert (told.args[0].count, told.args[0].yarn) == (2, ())
