"""How many kits the shelves allow, which colour is short, and what keeps the contrast."""

from app.calculations.codes import Kind
from app.calculations.kit_making import Short
from app.lookups.kit_patterns import KitsNow, colours_of, kits_now, pattern_now
from app.work.bundling import make_plates
from app.work.dyeing import name_colourway
from app.work.holding import hold
from app.work.kit_patterns import PatternIn, PlaceIn, make_by_pattern, write_pattern
from app.work.moving import To, move
from app.work.opening_stock import OldLot, open_lot
from tests.calculations.shades import SHOP
from tests.lookups.cards import read_lot, read_standard
from tests.makers import EACH_MG, Studio

LABS = {"Ferry Ledger": (25.1, 8.0, -20.5), "Moth at the Window": (65.5, 6.6, 4.0),
        "Wet Thatch Tuesday": (33.8, 15.0, 16.4), "Whey Blue": (74.1, -15.5, -12.8),
        "Seventh Buoy": (42.3, 59.8, 35.0), "Paper Ticket": (70.1, 32.4, 10.3),
        "Nettle Cellar": (34.8, -9.4, 7.1)}
STAIR_RAIL = PatternIn("Stair-Rail Cowl", tuple(
    PlaceIn(letter, 2 if letter == "A" else 1, colourway, 1,
            stand_ins=(7, 8) if letter == "C" else ())
    for letter, colourway in zip("ABCDE", range(2, 7), strict=True)))


def stocked(studio: Studio, *counts: int) -> dict[str, list[int]]:
    """An old lot of each colourway on a shelf, as many as said: {name: skeins}."""
    (shelf,) = studio.do(make_plates, Kind.SHELF, [3])
    skeins = {}
    for number, (name, count) in enumerate(zip(LABS, counts, strict=False), 2):
        studio.do(name_colourway, name, "#223344")
        pile = studio.do(open_lot, OldLot(f"OLD-{number}", 1, number, count), EACH_MG)
        skeins[name] = studio.tag(pile, count)
        studio.do(move, skeins[name], To("shelf", place=shelf))
    return skeins


def now(studio: Studio, pattern: int, asked: int) -> KitsNow:
    found = studio.book.ask(pattern_now, pattern)
    assert found
    return studio.book.ask(kits_now, found, asked)


def test_nine_kits_are_possible_and_the_third_colour_is_short_by_three(studio: Studio) -> None:
    stocked(studio, 31, 22, 9, 17, 14, 2, 8)
    for number, lab in enumerate(LABS.values(), 2):
        read_standard(studio, lab, number)
    pattern = studio.do(write_pattern, STAIR_RAIL)
    found = now(studio, pattern, 12)
    assert (found.possible, found.shortest, found.short) == (9, ("C",), (Short("C", 3),))
    assert found.by_letter == {"A": 15, "B": 22, "C": 9, "D": 17, "E": 14}
    assert [(one.name, one.kits, bool(one.warning)) for one in found.stand_ins["C"]] == [
        ("Nettle Cellar", 8, False), ("Paper Ticket", 2, True)]
    assert now(studio, pattern, 9).short == ()


def test_what_is_made_or_held_allows_fewer(studio: Studio) -> None:
    skeins = stocked(studio, 4, 2, 2, 2, 2, 1, 1)
    pattern = studio.do(write_pattern, STAIR_RAIL)
    assert now(studio, pattern, 2).possible == 2
    bag = [row for name in list(LABS)[:5] for row in skeins[name][:2 if "Ledger" in name else 1]]
    studio.do(make_by_pattern, pattern, bag)
    assert now(studio, pattern, 2).possible == 1
    studio.do(hold, "yarn", skeins["Whey Blue"][1], "pink cast")
    found = now(studio, pattern, 2)
    assert (found.possible, found.shortest) == (0, ("D",))


def test_of_a_colour_that_was_not_read_no_contrast_is_told(studio: Studio) -> None:
    stocked(studio, 4, 2, 1, 2, 2, 1, 1)
    for number, lab in list(enumerate(LABS.values(), 2))[:4]:
        read_standard(studio, lab, number)
    pattern = studio.do(write_pattern, STAIR_RAIL)
    found = now(studio, pattern, 2)
    assert (found.contrast_unknown, found.stand_ins) == (("E",), {})


def test_without_a_standard_the_lot_that_was_read_last_stands_for_its_colour(
    studio: Studio,
) -> None:
    stocked(studio, 1, 1)
    read_lot(studio, 1, (26.0, 8.0, -20.0))
    read_standard(studio, (65.5, 6.6, 4.0), 3, at=SHOP)
    found = studio.book.ask(colours_of, [("A", 2, 1), ("B", 3, 1), ("C", 1, 1)])
    assert set(found) == {"A"}
    assert found["A"].lightness == 26.0
