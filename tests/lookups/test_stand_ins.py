"""Colourways that the pattern of a kit allows in the place of another."""

from app.lookups.stand_ins import stand_ins
from app.work.dyeing import name_colourway
from app.work.kit_patterns import PatternIn, PlaceIn, write_pattern
from tests.lookups.shop import shelved
from tests.makers import Studio


def test_lots_of_an_allowed_colourway_are_named_with_the_pattern(studio: Studio) -> None:
    studio.do(name_colourway, "Whey Blue", "#A9C6D6")
    (one, _), (other, _) = shelved(studio, 1, 3)
    assert studio.book.ask(stand_ins, 2, 1, "skein") == ()
    studio.do(write_pattern, PatternIn("Stair-Rail Cowl", (
        PlaceIn("A", 2, colourway=2, base=1, stand_ins=(1,)),)))
    found = studio.book.ask(stand_ins, 2, 1, "skein")
    assert [(one.pattern, one.line.lot, one.free) for one in found] == [
        ("Stair-Rail Cowl", other, 3), ("Stair-Rail Cowl", one, 1)]
    assert studio.book.ask(stand_ins, 2, 1, "mini") == ()
    assert studio.book.ask(stand_ins, 1, 1, "skein") == ()
