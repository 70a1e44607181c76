"""The discs and plates that were made."""

from app.calculations.codes import Kind
from app.lookups.plates import PlatesMade, plates_made
from app.work.bundling import make_plates


def test_every_kind_is_told_with_its_numbers_and_words(studio):
    studio.do(make_plates, Kind.POT, [7], "heater side")
    discs, pots = studio.book.ask(plates_made)
    assert (discs.kind, discs.runs, len(discs.numbers)) == (Kind.DISC, "31 to 50", 20)
    assert (pots.kind, pots.runs, pots.words) == (Kind.POT, "1 to 2, 7", ("", "", "heater side"))
    assert (discs.next_number, pots.next_number) == (51, 8)


def test_plates_that_were_taken_back_are_not_told(studio):
    studio.do(make_plates, Kind.RAIL, [1])
    studio.undo()
    assert Kind.RAIL not in {made.kind for made in studio.book.ask(plates_made)}


def test_numbers_are_said_in_runs():
    assert PlatesMade(Kind.SHELF, (1, 2, 3, 5, 8, 9), ("",) * 6).runs == "1 to 3, 5, 8 to 9"
    assert PlatesMade(Kind.SHELF, (), ()).runs == ""
    assert PlatesMade(Kind.SHELF, (), ()).next_number == 1
