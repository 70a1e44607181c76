"""The desk: the trail of what is in hand as a picture, walked, opened, folded, put on paper."""

import pytest

from app.work.holding import hold
from tests.lookups.graphs import mixed_pot
from tests.window.benches import at_work
from tests.window.benches.desk_hands import open_desk


@pytest.fixture
def made(monkeypatch):
    """Papers that were made, instead of a folder of them: {name: bytes}."""
    from app.window.benches.desk import graphs

    papers = {}
    monkeypatch.setattr(graphs, "put_on_paper", lambda _bench, _kind, name, pdf, _said:
                        papers.update({name: pdf("OW")}))
    return papers


@pytest.fixture
def desk(qtbot, settings, studio, made):
    cones, lot, skeins = mixed_pot(studio)
    studio.do(hold, "cone", cones[0], "moths")
    studio.of = {"lot": studio.code(lot), "skeins": skeins}
    yield from open_desk(qtbot, settings, studio)


def page(desk):
    return desk.bench.graphs.page


def at(desk):
    """The station that is walked to, as it is spoken."""
    return page(desk).graph.accessibleDescription()


def test_the_trail_is_drawn_walked_and_opened_by_keys_alone(desk):
    desk.scan("C00017")
    desk.press("T")
    assert page(desk).title.text() == "The trail of cone C·0001·7"
    assert page(desk).graph.hasFocus()
    assert at(desk).startswith("Cone C·0001·7: Tarnfield 4-ply, 7 skeins. HOLD was put on it.")
    assert not desk.window.floor.trail.isVisible()
    desk.press("Right", "Right", "Right")
    assert at(desk).startswith("Dye lot ")
    desk.press("Enter")  # it is taken in hand, and its own trail is drawn
    assert page(desk).title.text().startswith("The trail of dye lot 26·15·")
    assert desk.hand.thing.found.code == desk.studio.of["lot"]
    desk.press("F8")
    assert desk.hand.page.isVisible()
    assert desk.window.floor.trail.isVisible()


def test_a_scan_while_it_is_open_shows_the_trail_of_that(desk):
    desk.scan("C00017")
    desk.press("T")
    desk.scan(desk.studio.of["lot"])
    assert page(desk).title.text().startswith("The trail of dye lot")
    desk.scan(at_work.HOLD)  # a plate acts on the thing, on its page
    assert desk.hand.page.why is not None
    assert desk.hand.page.isVisible()


def test_a_fold_opens_with_its_first_skein_and_is_folded_again(desk):
    desk.scan(desk.studio.of["lot"])
    desk.press("T")
    graph = page(desk).graph
    while "8 skeins on the table" not in at(desk):
        before = graph.at
        desk.press("Right")
        if graph.at == before:
            desk.press("Down")
            assert graph.at != before
    desk.press("Enter")
    assert at(desk).startswith("Skein 26·15·")
    assert page(desk).fold_key.isVisible()
    desk.press("Backspace")
    assert "8 skeins on the table" in at(desk)
    assert not page(desk).fold_key.isVisible()


def test_a_station_without_a_code_is_taken_to_the_middle_and_left_again(desk):
    desk.scan("C00017")
    desk.press("T", "Left", "Enter")
    assert page(desk).title.text().startswith("The trail of delivery")
    desk.press("F8")
    assert page(desk).title.text() == "The trail of cone C·0001·7"
    desk.press("Enter")
    assert desk.hand.page.isVisible()


def test_the_same_is_said_in_words_and_put_on_paper(desk, made):
    desk.scan("C00017")
    desk.press("T", "W")
    assert not page(desk).graph.isVisible()
    assert "7 of these 12 skeins came of it; which ones is not certain." in desk.words()
    assert "8 skeins on the table: one of a pool: 3 to 7 of 8. It is below a HOLD." in desk.words()
    desk.press("P", "V", "W")
    assert page(desk).graph.isVisible()
    assert made["picture-C00017.pdf"].startswith(b"%PDF")
    assert b"<svg" in made["picture-C00017.svg"]


def test_what_has_no_yarn_says_what_to_scan(desk):
    desk.scan(at_work.disc(31))
    desk.press("T")
    assert "It hangs on nothing now." in desk.words()
    assert not page(desk).pdf_key.isVisible()
    desk.press("F8")
    assert desk.hand.page.isVisible()


def test_the_keys_of_the_pages_are_alive_while_it_is_drawn(desk):
    desk.scan("C00017")
    for key, name in (("F1", "Faults"), ("F4", "Holds"), ("F11", "Shop"), ("Alt+B", "Balances"),
                      ("F3", "In hand")):
        desk.press("F3", "T")
        assert page(desk).isVisible()
        desk.press(key)
        assert (desk.bench.at, page(desk).isVisible()) == (name, False)
