"""Yesterday's white board entered today, at any bench."""

from datetime import UTC, datetime, timedelta

import pytest
from sqlalchemy import select

from app.lookups.recent import entries
from app.records import Delivery
from app.window.written_late import why_not
from app.work.bundling import take_off
from app.work.finishing import finish
from app.work.people import enrol
from tests.window.benches.at_work import DONE, begin_work, disc, plate, pot
from tests.window.benches.door_hands import AtTheDoor
from tests.window.benches.pots_hands import in_pots

MORNING = datetime(2026, 4, 7, 8, tzinfo=UTC)
THEN = datetime(2026, 4, 6, 17)  # noqa: DTZ001 - by the clock on the wall


@pytest.fixture
def pots(qtbot, settings, studio):
    """Disc 031 was on 7 skeins yesterday, was taken off at night, and is on 5 others today."""
    studio.yesterday = studio.wind(studio.cone(), 7, "red", studio.discs[0])
    studio.clock.now = MORNING - timedelta(hours=6)
    studio.do(take_off, studio.discs[0])
    studio.clock.now = MORNING - timedelta(minutes=30)
    studio.today = studio.wind(studio.cone(), 5, "blue", studio.discs[0])
    studio.clock.now = MORNING
    yield from begin_work(qtbot, settings, studio, 4)


def happened(pots):
    """When the last entry happened, by the clock on the wall."""
    return pots.studio.book.ask(entries, 1)[0].happened.astimezone().replace(tzinfo=None)


def lots_of(studio, yarn):
    return [link.thing for link in studio.origins(yarn, "lot") if link.thing]


def banner(pots):
    late = pots.window.late
    return late.words.text() if late.isVisible() else ""


def test_the_bath_of_yesterday_lands_on_what_hung_on_the_disc_then(pots):
    pots.press("F12")
    assert banner(pots) == "It happened Mon 6 Apr 17:00"
    pots.press("Enter")
    assert banner(pots) == ("WRITTEN LATE: MON 6 APR 17:00 — all that is entered now happened "
                            "then.")
    pots.scan(pot(2), disc(31), plate(1), DONE)
    assert happened(pots) == THEN
    ((_, count),) = in_pots(pots)["002"]
    assert count == 7
    assert len(lots_of(pots.studio, pots.studio.yesterday)) == 1
    assert lots_of(pots.studio, pots.studio.today) == []
    pots.press("Escape")
    assert banner(pots) == ""
    assert pots.note == "back to now: what is entered from here on happens now"
    pots.scan(pot(1), disc(31), plate(1), DONE)
    assert len(lots_of(pots.studio, pots.studio.today)) == 1
    assert happened(pots) > THEN
    pots.studio.check()


def test_the_moment_is_chosen_by_arrows_and_by_taps(pots):
    pots.press("F12", "Left", "Up", "Up", "PageDown", "Right")
    assert banner(pots) == "It happened Mon 6 Apr 16:20"
    keys = {key.accessibleName(): key for key in pots.window.late.steps}
    pots.click(keys["Hour later"])
    pots.click(keys["10 min earlier"])
    assert banner(pots) == "It happened Mon 6 Apr 17:10"
    pots.press("Enter")
    assert banner(pots).startswith("WRITTEN LATE: MON 6 APR 17:10")


def test_a_moment_that_cannot_be_is_refused_in_a_sentence(pots):
    pots.press("F12", "Right", "Enter")
    assert pots.window.late.wrong.text() == (
        "Tue 7 Apr 17:00 has not come yet: choose a moment that is over.")
    pots.press("Left", "Left", "Enter")
    assert pots.window.late.wrong.text().startswith("The book began on 6 Apr")
    assert pots.window.session.late is None
    pots.press("Right")
    assert not pots.window.late.wrong.isVisible()
    pots.press("Enter")
    assert pots.window.session.late is not None


def test_the_first_escape_puts_away_what_is_open_and_stays_with_yesterday(pots):
    pots.press("F12", "Escape")
    assert banner(pots) == ""
    pots.press("F12", "Enter")
    pots.scan("2615R6X")
    assert pots.trouble
    pots.press("Escape")
    assert not pots.trouble
    assert banner(pots).startswith("WRITTEN LATE")
    pots.press("F12", "Up", "Escape")
    assert banner(pots).startswith("WRITTEN LATE: MON 6 APR 17:00")
    pots.press("Escape")
    assert banner(pots) == ""


def test_it_stays_from_bench_to_bench_until_it_is_ended(pots):
    pots.press("F12", "Enter")
    pots.enter(6)
    assert banner(pots).startswith("WRITTEN LATE")
    pots.scan(disc(31))
    assert pots.bench.card.cord.rows == (pots.studio.yesterday,)
    pots.press("7")
    pots.press("Enter")
    assert happened(pots) == THEN
    assert pots.said.startswith("counted 7 skeins")


def test_paper_is_printed_now(pots):
    studio = pots.studio
    (pile,) = studio.do(finish, [studio.yesterday], {"red": 7})
    pots.press("F12", "Enter")
    pots.enter(7)
    pots.bench.take_pile(pile)
    pots.quiet()
    pots.bench.run(lambda _session: pytest.fail("printed"))
    assert "Paper is printed now, not then" in pots.trouble


@pytest.fixture
def door(qtbot, settings, studio):
    studio.clock.now = MORNING
    for at_work in begin_work(qtbot, settings, studio, 1):
        yield AtTheDoor(at_work)


def test_cones_of_yesterday_came_in_yesterday(door):
    door.press("F12", "Enter")
    door.begin()
    door.weigh(1520, centre="64", batch="A-203")
    door.press("F10")
    arrived = door.studio.book.ask(lambda c: c.execute(select(Delivery.arrived)).scalar_one())
    assert arrived.astimezone().replace(tzinfo=None) == THEN
    assert happened(door) == THEN


def test_why_a_moment_cannot_be():
    began = MORNING - timedelta(days=30)
    assert why_not(MORNING, MORNING, began) == ""
    assert why_not(began, MORNING, began) == ""
    assert "has not come yet" in why_not(MORNING + timedelta(minutes=1), MORNING, began)
    assert "The book began" in why_not(began - timedelta(minutes=1), MORNING, began)


def test_another_person_signs_on_with_enter_at_a_bench_that_has_enter_too(door):
    door.studio.do(enrol, "LP", "Lin Perrow")
    door.click(door.window.head.who)
    door.type("LP")
    door.press("Enter")
    assert door.window.session.person == "LP"
    assert door.bench.hand is door.bench.cards.start
    assert not door.bench.cards.start.supplier.wrong.isVisible()


@pytest.fixture
def reel(qtbot, settings, studio):
    """Disc 032 was tied on yesterday, disc 031 today."""
    studio.wind(studio.cone(), 7, "red", studio.discs[1])
    studio.clock.now = MORNING - timedelta(minutes=30)
    studio.wind(studio.cone(), 5, "blue", studio.discs[0])
    studio.clock.now = MORNING
    yield from begin_work(qtbot, settings, studio, 2)


def test_the_reel_shows_the_cords_of_the_day_that_is_written_late(reel):
    cords = reel.bench.cards.today
    assert cords.title.text() == "Today: 5 skeins on 1 disc"
    reel.press("F12", "Enter")
    assert cords.title.text() == "6 Apr: 7 skeins on 1 disc"
    reel.press("Escape")
    assert cords.title.text() == "Today: 5 skeins on 1 disc"
