"""A list from file to book: looked at, then taken in whole or not at all."""

from typing import Any

import pytest

from app.exchange.columns import SETTING, known_columns
from app.exchange.taking_in import Arrival, Said, look_at, take_in, told
from app.lookups.cones import cone_facts, cones_on_hand
from app.lookups.recent import entries
from app.lookups.studio import setting
from app.problems import BadInput, Refused
from app.store.journal import verify
from tests.exchange.test_workbooks import workbook
from tests.makers import Studio, tarnfield

GOOD = "Note;Base;Batch;Cone;Gross g;Tare g\n2241;Tarnfield 4-ply;A-203;114;1.462,5;64\n"
BAD = GOOD + "2241;Tarnfield 4-ply;A-203;115;12x;64\n2241;Tarnfield 4-ply;;116;1.470,0;64\n"
MILL = Said(given={"supplier": "Aske Mill"})


def seen(studio: Studio, text: str | bytes, said: Said = MILL) -> Arrival:
    data = text if isinstance(text, bytes) else text.encode()
    return studio.book.ask(look_at, data, said, studio.clock.now)


def taken(studio: Studio, text: str | bytes, said: Said = MILL, leave: bool = False) -> Any:
    return studio.done(take_in, seen(studio, text, said), leave)


def test_looking_saves_nothing(studio: Studio) -> None:
    before = studio.book.ask(verify)
    assert seen(studio, BAD).note.cones == 2
    assert studio.book.ask(verify) == before


def test_a_good_list_is_one_deed_and_its_cones_are_as_it_says(studio: Studio) -> None:
    done = taken(studio, GOOD)
    assert done.said == "took in 1 cone of Tarnfield 4-ply, note 2241"
    facts = studio.book.ask(cone_facts, done.answer[0])
    assert (facts.code, facts.supplier, facts.batch, facts.net_mg) == (
        "C0114F", "Aske Mill", "A-203", 1_398_500)
    assert studio.book.ask(entries)[0].seq == done.seq


def test_bad_rows_refuse_the_whole_list_unless_they_are_left_out(studio: Studio) -> None:
    with pytest.raises(Refused, match="1 row of this list cannot be taken in") as refused:
        taken(studio, BAD)
    assert "bad rows are to be left out" in refused.value.next_step
    assert studio.book.ask(cones_on_hand) == ()
    done = taken(studio, BAD, leave=True)
    assert done.said == "took in 2 cones of Tarnfield 4-ply, note 2241; 1 row left out"
    assert [cone.batch for cone in studio.book.ask(cones_on_hand)] == ["A-203", None]


def test_the_same_note_is_not_taken_in_twice(studio: Studio) -> None:
    taken(studio, GOOD)
    with pytest.raises(Refused, match="Note 2241 of Aske Mill with Tarnfield 4-ply was taken in"):
        taken(studio, GOOD.replace(";114;", ";;"))
    other = taken(studio, GOOD.replace(";114;", ";;"), Said(given={"supplier": "Withybank"}))
    assert len(other.answer) == 1


def test_a_note_that_was_taken_back_may_be_taken_in_again(studio: Studio) -> None:
    done = taken(studio, GOOD.replace(";114;", ";;"))
    studio.book.undo(done.seq, by=studio.by)
    assert len(taken(studio, GOOD.replace(";114;", ";;")).answer) == 1


def test_two_bases_are_two_deliveries_saved_together_or_not_at_all(studio: Studio) -> None:
    from app.work.bases import describe_base

    studio.do(describe_base, tarnfield(name="Downholm Sock"))
    mixed = GOOD + "2241;Downholm Sock;D-7;;1.460,0;64\n"
    done = taken(studio, mixed)
    assert done.said == "took in 1 cone of Tarnfield 4-ply, note 2241, 1 cone of Downholm Sock, " \
                        "note 2241"
    assert studio.book.ask(verify).entries == done.seq
    studio.book.undo(done.seq, by=studio.by)
    assert studio.book.ask(cones_on_hand) == ()


def test_how_columns_were_matched_is_remembered_with_the_deed(studio: Studio) -> None:
    strange = GOOD.replace("Gross g;Tare g", "Weight A;Weight B")
    with pytest.raises(BadInput, match="the gross weight"):
        seen(studio, strange)
    said = Said({"gross": "Weight A", "tare": "Weight B"}, MILL.given)
    assert not seen(studio, strange, said).match.remembered
    taken(studio, strange, said)
    assert known_columns(studio.book.ask(setting, SETTING))
    again = seen(studio, strange.replace("2241;", "2242;").replace(";114;", ";;"))
    assert again.match.remembered
    assert again.note.cones == 1


def test_a_later_choice_of_columns_outweighs_what_is_remembered(studio: Studio) -> None:
    strange = GOOD.replace("Gross g;Tare g", "Weight A;Weight B")
    taken(studio, strange, Said({"gross": "Weight A", "tare": "Weight B"}, MILL.given))
    turned = strange.replace("2241;", "2242;").replace(";114;", ";;").replace(
        "1.462,5;64", "64;1.462,5")
    arrival = seen(studio, turned, Said({"gross": "Weight B", "tare": "Weight A"}, MILL.given))
    assert arrival.note.deliveries[0].cones[0].gross_mg == 1_462_500


def test_what_looks_off_at_the_door_is_found_as_ever(studio: Studio) -> None:
    done = taken(studio, GOOD.replace("1.462,5", "2.900,0"))
    assert "Weigh it again" in done.findings[0]


def test_a_list_without_a_single_cone_is_refused(studio: Studio) -> None:
    with pytest.raises(Refused, match="No row of this list is a cone"):
        taken(studio, "Note;Base;Batch;Gross;Tare\nTotal;;;1;2\n")


def test_a_workbook_that_says_its_note_above_the_table_is_taken_in(studio: Studio) -> None:
    data = workbook(("Withybank Spinners",), ("Delivery note:", 118), (),
                    ("Quality", "Batch", "Cone", "Gross weight (kg)", "Net weight (kg)"),
                    ("Tarnfield 4-ply", "D-71", 138, 1.462, 1.398))
    arrival = seen(studio, data, Said())
    assert told(arrival.note) == "1 cone of Tarnfield 4-ply, note 118"
    (cone,) = studio.done(take_in, arrival).answer
    assert studio.book.ask(cone_facts, cone).supplier == "not stated"
