"""A yellowish cone goes to deep shades: numbers of the trade, no source."""

from app.lookups.ecru import ecru_of
from app.work.dyeing import name_colourway
from app.work.inspecting import ShadeIn, read_shade
from tests.calculations.shades import WET, colour
from tests.lookups.cards import read_standard
from tests.makers import Studio

USUAL, YELLOW = colour(89.6, -2.0, 10.8), colour(87.1, -1.6, 13.2)
PINK, NAVY = (70.1, 32.4, 10.3), (25.1, 8.0, -20.5)


def test_a_yellow_cone_is_seen_in_the_pale_pink_and_not_in_the_navy(studio: Studio) -> None:
    usual, yellow = studio.cones(2)
    for name, lab in (("Paper Ticket", PINK), ("Ferry Ledger", NAVY)):
        studio.do(name_colourway, name, "#223344")
        read_standard(studio, lab, 2 if lab is PINK else 3)
    studio.do(read_shade, ShadeIn(USUAL, cone=usual))
    assert studio.book.ask(ecru_of, usual) is None
    assert studio.book.ask(ecru_of, yellow) is None
    studio.do(read_shade, ShadeIn(YELLOW, cone=yellow))
    found = studio.book.ask(ecru_of, yellow)
    assert found
    assert f"{found.undyed.ciede2000:.2f}" == "2.34"
    navy, pink = found.seen_in
    assert (navy.name, pink.name) == ("Ferry Ledger", "Paper Ticket")
    assert navy.expected < 0.3
    assert 1.2 < pink.expected < 1.3


def test_a_cone_that_was_read_wet_is_held_against_no_dry_one(studio: Studio) -> None:
    usual, wet = studio.cones(2)
    studio.do(read_shade, ShadeIn(USUAL, cone=usual))
    studio.do(read_shade, ShadeIn(colour(80, -2, 10, at=WET), cone=wet))
    assert studio.book.ask(ecru_of, wet) is None
