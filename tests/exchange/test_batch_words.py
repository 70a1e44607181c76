"""How a batch record says what was weighed, poured and read."""

from datetime import UTC, datetime

import pytest

from app.documents.batch_record import Listed, Said
from app.exchange.batch_words import amount, bath, grams, names, recipe, weighed, when, yarn_in
from app.lookups.batch_record import BatchRecord, batch_record
from tests.full_lot import FullLot
from tests.makers import Studio


@pytest.fixture
def record(studio: Studio) -> BatchRecord:
    return studio.book.ask(batch_record, FullLot(studio).lot, studio.clock.now)


def words_of(blocks: object) -> list[str]:
    return [one.words for one in blocks if isinstance(one, Said)]  # type: ignore[attr-defined]


def rows_of(blocks: object) -> list[tuple[str, ...]]:
    return [row for one in blocks if isinstance(one, Listed)  # type: ignore[attr-defined]
            for row in one.rows]


def test_amounts_are_said_with_their_unit_and_nothing_is_said_for_nothing() -> None:
    assert (grams(6_580), grams(None), amount(None, 49_500), amount(None, None)) == (
        "6.58 g", "", "49.5 mL", "")
    assert amount(10_519, None) == "10.519 g"
    assert when(None) == "not written"
    assert when(datetime(2026, 4, 9, 12, tzinfo=UTC)).startswith("9 Apr")
    assert (names(["DA", "", "WS", "DA"]), names([])) == ("DA, WS", "not written")


def test_cones_say_how_sure_they_are_and_cords_what_hung_on_them(record: BatchRecord) -> None:
    blocks = list(yarn_in(record))
    assert [row[-1] for row in rows_of(blocks)] == ["one of a pool: 6 of 12, not known which"] * 2
    assert words_of(blocks)[0] == (
        "Wound, on disc 031: 6 skeins, 618.8 g as wound, red ties.")


def test_the_recipe_is_told_as_it_was_with_what_the_next_one_changed(record: BatchRecord) -> None:
    words = words_of(recipe(record.recipe))
    assert words[0] == "Sluice Keeper's Glove, version 1, as it was written."
    assert "B1 turquoise: 0.85 % of the dry fibre" in words
    assert words[-1].startswith("Version 2 came after it (less black): K1 black left out")


def test_every_line_stands_with_source_time_and_person(record: BatchRecord) -> None:
    blocks = list(weighed(record))
    rows = rows_of(blocks)
    assert [(row[0], row[1], row[3], row[4]) for row in rows[:2]] == [
        ("B1 turquoise", "jar 1, fill 1", "10.60 g", "+0.8 %"),
        ("B1 turquoise, tipped back", "jar 1, fill 1", "−0.07 g", "")]
    assert rows[-1][0] == "Y1 lemon, added at the pot (too blue)"
    assert {row[-1] for row in rows} == {"DA"}
    assert "Jar 1, fill 1, B1 turquoise: 100 % of the standard; p of Aske Mill." in words_of(blocks)
    assert words_of(blocks)[-1] == "OFF RECIPE: dye was added at the pot."


def test_what_was_read_at_the_pot_is_told_and_what_was_not_is_said(
    record: BatchRecord, studio: Studio
) -> None:
    assert [row[1:4] for row in rows_of(bath(record.bath))][-1] == ("85", "4.30", "clear")
    bare = studio.book.ask(
        batch_record, studio.dye(studio.wind(studio.cone(), 1)), studio.clock.now)
    said = words_of(bath(bare.bath))
    assert {"pH: not written.", "heat: not written.", "Lifting: not written."} <= set(said)
    assert words_of(weighed(bare))[0].startswith("Not known: nothing was weighed out")
