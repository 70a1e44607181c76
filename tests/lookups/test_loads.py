"""Where every cord is by water or steam, and since when."""

from datetime import timedelta

import pytest

from app.calculations.codes import Kind, numbered
from app.lookups.loads import (
    GATHERED,
    LIFTED,
    cords_on,
    last_of,
    place_with,
    wet_work,
)
from app.lookups.now import NOW
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, lift
from app.work.loading import into_load
from app.work.remaking import gather


@pytest.fixture
def wash(studio):
    """A soak tub, a machine, a steamer and two rails."""
    made = (("tub", Kind.VESSEL, 1, "soak tub"), ("machine", Kind.VESSEL, 2, "machine"),
            ("steamer", Kind.STEAMER, 1, ""), ("rail", Kind.RAIL, 1, "heater side"),
            ("rail2", Kind.RAIL, 2, ""))
    studio.places = {name: studio.do(make_plates, kind, [number], words)[0]
                     for name, kind, number, words in made}
    return studio


def cord(studio, count, place, tie="red"):
    return studio.wind(studio.cone(), count, tie, studio.discs[place])


def dyed(studio, row, lifted=True):
    bath = studio.do(into_bath, BathIn((row,), studio.recipe, studio.pot), studio.random)["bath"]
    if lifted:
        studio.do(lift, bath)


def load(studio, step, place, *rows, **more):
    return studio.do(into_load, step, yarn=rows, plate=studio.places[place], **more)


def places(studio, at=NOW):
    """{where: (steps, discs)} of the places in use."""
    return {one.where: ({wet.step for wet in one.cords}, [wet.cord.number for wet in one.cords])
            for one in studio.book.ask(wet_work, at).places}


def waiting(studio):
    return [(wet.cord.number, wet.step) for wet in studio.book.ask(wet_work, NOW).waiting]


def test_a_cord_goes_from_the_soak_through_the_pot_to_the_rail(wash):
    row = cord(wash, 8, 0)
    assert places(wash) == {}
    load(wash, "soak", "tub", row)
    assert places(wash) == {"in soak tub 1": ({"soak"}, ["031"])}
    dyed(wash, row, lifted=False)
    assert (places(wash), waiting(wash)) == ({}, [])
    wash.do(lift, 1)
    assert (places(wash), waiting(wash)) == ({}, [("031", LIFTED)])
    load(wash, "wash", "machine", row)
    assert (places(wash), waiting(wash)) == ({"in machine 2": ({"wash"}, ["031"])}, [])
    load(wash, "rail", "rail", row)
    assert places(wash) == {"on rail 1": ({"rail"}, ["031"])}
    wash.finish(row, red=8)
    assert (places(wash), waiting(wash)) == ({}, [])


def test_a_tray_in_the_steamer_is_there_though_its_bath_was_not_lifted(wash):
    row = cord(wash, 8, 0)
    dyed(wash, row, lifted=False)
    load(wash, "steamer", "steamer", row)
    assert places(wash) == {"in steamer 1": ({"steamer"}, ["031"])}
    wash.do(lift, 1)
    assert waiting(wash) == [("031", LIFTED)]


def test_half_a_cord_in_another_machine_is_in_both_and_what_was_before_is_inherited(wash):
    row = cord(wash, 8, 0)
    dyed(wash, row)
    load(wash, "wash", "machine", row)
    left, right = wash.split(row, 5, 3)
    met = wash.book.ask(last_of, [left, right], NOW)
    assert {one.step for one in met.values()} == {"wash"}
    load(wash, "rail", "rail", left), load(wash, "rail", "rail2", right)
    met = wash.book.ask(last_of, [left, right], NOW)
    assert [met[row].place for row in (left, right)] == [
        wash.places["rail"], wash.places["rail2"]]


def test_what_is_gathered_begins_anew_and_waits(wash):
    row = cord(wash, 3, 0)
    dyed(wash, row)
    load(wash, "rail", "rail", row)
    (pile,) = wash.finish(row, red=3)
    skeins = wash.tag(pile, 3)
    wash.do(gather, skeins[:2], wash.discs[5])
    assert places(wash) == {}
    assert waiting(wash) == [("036", GATHERED)]


def test_a_load_entered_late_is_where_it_was_then(wash):
    row = cord(wash, 8, 0)
    dyed(wash, row)
    before = wash.clock.now
    wash.clock.now += timedelta(hours=6)
    load(wash, "rail", "rail", row)
    load(wash, "wash", "machine", row, happened=before + timedelta(hours=1))
    assert list(places(wash)) == ["on rail 1"]
    then = before + timedelta(hours=2)
    assert list(places(wash, then)) == ["in machine 2"]
    (at_that_time,) = wash.book.ask(wet_work, then).places
    assert at_that_time.since == before + timedelta(hours=1)


def test_a_load_that_was_taken_back_is_nowhere(wash):
    row = cord(wash, 8, 0)
    dyed(wash, row)
    load(wash, "wash", "machine", row)
    wash.undo()
    assert (places(wash), waiting(wash)) == ({}, [("031", LIFTED)])


def place(studio, kind, number):
    return studio.book.ask(place_with, numbered(kind, number).text, NOW)


def test_the_words_on_a_plate_say_what_is_done_in_it(wash):
    for number, words in enumerate(("Basin by the door", "wash and spin", "spinner"), 11):
        wash.do(make_plates, Kind.VESSEL, [number], words)
    steps = [place(wash, Kind.VESSEL, number).place.step for number in (1, 2, 11, 12, 13)]
    assert steps == ["soak", None, "wash", None, "spin"]
    assert place(wash, Kind.RAIL, 1).place.step == "rail"
    assert place(wash, Kind.STEAMER, 1).place.step == "steamer"
    assert place(wash, Kind.RAIL, 1).place.what == "rail, heater side"


def test_a_machine_remembers_its_last_load_and_a_spin_follows_a_wash(wash):
    row = cord(wash, 8, 0)
    load(wash, "spin", "machine", row)
    assert place(wash, Kind.VESSEL, 2).place.step == "spin"
    load(wash, "wash", "machine", row), load(wash, "spin", "machine", row)
    assert place(wash, Kind.VESSEL, 2).place.step == "wash"


def test_a_place_tells_what_is_in_it_and_other_plates_are_no_places(wash):
    row = cord(wash, 8, 0)
    load(wash, "soak", "tub", row)
    assert [wet.cord.number for wet in place(wash, Kind.VESSEL, 1).cords] == ["031"]
    assert place(wash, Kind.VESSEL, 2).cords == ()
    assert place(wash, Kind.POT, 1) is None
    assert place(wash, Kind.VESSEL, 99) is None
    wash.do(make_plates, Kind.VESSEL, [9])
    assert place(wash, Kind.VESSEL, 9).where == "in tub or machine 9"


def test_a_load_without_a_place_is_told_as_that(wash):
    row = cord(wash, 8, 0)
    wash.do(into_load, "wash", yarn=[row])
    assert places(wash) == {"in no place": ({"wash"}, ["031"])}


def test_discs_give_their_cords_as_they_are_now(wash):
    cord(wash, 8, 0)
    (facts,) = wash.book.ask(cords_on, wash.discs[:2], NOW)
    assert (facts.number, facts.count) == ("031", 8)
