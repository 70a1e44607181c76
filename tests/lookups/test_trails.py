"""The trail of a thing by its code."""

from app.calculations.codes import Kind, numbered
from app.lookups.trails import trail_of


def test_a_disc_leads_back_to_its_cone_and_stands_in_hand(studio):
    studio.wind(studio.cone(), 5, "red", studio.discs[0])
    stops = studio.book.ask(trail_of, numbered(Kind.DISC, 31).text)
    assert [stop.kind for stop in stops][:3] == ["delivery", "cone", "disc"]
    assert [stop.kind for stop in stops if stop.here] == ["disc"]


def test_what_is_not_in_the_book_has_no_trail(studio):
    assert studio.book.ask(trail_of, numbered(Kind.DISC, 999).text) == ()
    assert studio.book.ask(trail_of, numbered(Kind.DISC, 31).text) == ()
