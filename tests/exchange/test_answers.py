"""The command line's answers as lines and as data."""

import json

import pytest

from app.exchange.answers import found_data, note_data, short_lines, trace_data, trace_lines
from app.exchange.delivery_note import DeliveryNote
from app.exchange.rows import RowTrouble
from app.exchange.tracing import Traced, traced
from app.lookups.things import Found, by_code
from app.work.holding import hold
from app.work.receiving import ConeIn, DeliveryIn
from tests.makers import Studio


@pytest.fixture
def held(studio: Studio) -> Traced:
    """Cone C0001 on hold: 6 in a pot with 6 of another cone, not told apart."""
    one, other = studio.cones(2)
    rows = [studio.wind(one, 6), studio.wind(other, 6)]
    studio.dye(*rows)
    studio.do(hold, "cone", one, "oil")
    found = studio.book.ask(by_code, "C00017")
    assert found is not None
    return studio.book.ask(traced, found, studio.clock.now)


def test_words_stand_under_each_other_and_the_trail_goes_station_by_station(held: Traced) -> None:
    lines = list(trace_lines(held))
    assert all(line[9] == " " and line[10] != " " for line in lines if not line.startswith(" "))
    trail = lines[[line.startswith("Trail") for line in lines].index(True):]
    assert len(trail) == len(held.stops)
    assert any(line.endswith("HOLD") for line in trail)
    assert all(stop.code in line for stop, line in zip(held.stops, trail, strict=True))


def test_the_short_answer_is_where_it_is_and_what_stops_it(held: Traced) -> None:
    assert [line.split()[0] for line in short_lines(held)] == ["Now", "HOLD"]


def test_data_survives_the_way_to_another_program(held: Traced) -> None:
    data = trace_data(held)
    assert json.loads(json.dumps(data)) == data
    assert data["code"] == "C00017"
    assert data["now"] == [{"state": "in work", "put_up": "skein", "count": 6, "grams": 618.75,
                            "certainty": "known", "least": 6, "most": 6, "of": 6, "expected": 6.0,
                            "share": 1.0}]
    assert data["holds"][0]["why"] == "oil"
    assert data["journal"] == {"entry": held.entry, "head": held.journal_head}
    assert [stop["station"] for stop in data["trail"]] == [stop.kind for stop in held.stops]
    assert [lot["least"] for lot in data["went_into"]] == [6]


def test_a_thing_as_data_has_its_code_as_kept_and_as_read() -> None:
    data = found_data(Found("tag", 1, "2619K44-7M", "Glove", void=True, successor="2619K44-KK"))
    assert (data["code"], data["shown"], data["void"], data["successor"]) == (
        "2619K44-7M", "26·19·K44 7M", True, "2619K44-KK")


def test_a_note_as_data_has_its_deliveries_and_every_trouble(held: Traced) -> None:
    cones = (ConeIn(1_462_000, 64_000, "A-203"), ConeIn(1_462_000, 64_000, None))
    delivery = DeliveryIn("Aske Mill", "2241", "Tarnfield 4-ply", held.at, cones)
    note = DeliveryNote((delivery,), (RowTrouble(3, "Gross g", "it is no number.", "x"),),
                        notes=("Row 9 is a total and was left out.",))
    data = note_data(note)
    assert json.loads(json.dumps(data)) == data
    assert data["deliveries"][0]["batches"] == ["A-203", "not stated"]
    assert data["deliveries"][0]["cones"] == 2
    assert data["troubles"] == [
        {"row": 3, "column": "Gross g", "what": "it is no number.", "kept": "x"}]
    assert data["notes"] == ["Row 9 is a total and was left out."]
