"""A clock that cannot be right is said at the desk, and put right there."""

from datetime import UTC, datetime, timedelta

import pytest

from app.work.dyeing import BathIn, into_bath
from tests.window.benches.desk_hands import open_desk

BATTERY_DEAD = datetime(2000, 1, 1, tzinfo=UTC)


@pytest.fixture
def desk(qtbot, settings, studio):
    yield from open_desk(qtbot, settings, studio)


def bathe(studio, count):
    """A bath; its lot."""
    bath = BathIn((studio.wind(studio.cone(), count),), studio.recipe)
    return studio.do(into_bath, bath, studio.random)["lots"][0]


@pytest.fixture
def card(desk):
    return desk.bench.back.clock.card


def test_nothing_is_said_of_a_clock_that_is_right(desk, card):
    desk.press("F5")
    assert not card.isVisible()


def test_the_clock_is_believed_on_a_persons_word(desk, card):
    studio = desk.studio
    studio.clock.now = studio.clock.now.replace(year=2031)
    studio.cone()
    studio.clock.now = studio.clock.now.replace(year=2026)
    desk.press("F5")
    assert "no lot gets a code until that is cleared" in card.said.text()
    desk.click(card.confirm_key)
    assert desk.said.startswith("confirmed the day: 6 Apr 2026")
    assert not card.isVisible()
    assert studio.code(bathe(studio, 3))[:4] == "2615"


def test_a_lot_that_waits_gets_its_code_when_the_day_is_sure(desk, card):
    studio = desk.studio
    sure = studio.clock.now
    studio.clock.now = BATTERY_DEAD
    lot = bathe(studio, 4)
    assert studio.code(lot) is None
    desk.press("F5")
    assert card.waiting.text().startswith("1 lot without a code yet.")
    assert "The day is not sure yet." in card.name_keys[lot].accessibleDescription()
    studio.clock.now = sure + timedelta(days=8)
    desk.press("F3", "F5")
    assert not card.confirm_key.isVisible()
    desk.click(card.name_keys[lot])
    assert studio.code(lot)[:4] == "2615"  # the week that the bath is put down for
    assert desk.said.startswith("named lot 26·15·")
    assert not card.isVisible()
    studio.check()
