"""How a batch record says what came after the bath."""

from dataclasses import replace

import pytest

from app.documents.batch_record import Said
from app.exchange.batch_words_after import (
    counts,
    holds,
    loads,
    marked,
    now,
    shade,
    tags,
    yields,
)
from app.lookups.batch_record import BatchRecord, batch_record
from tests.exchange.test_batch_words import rows_of, words_of
from tests.full_lot import FullLot
from tests.makers import Studio


@pytest.fixture
def full(studio: Studio) -> FullLot:
    return FullLot(studio)


@pytest.fixture
def record(full: FullLot, studio: Studio) -> BatchRecord:
    return studio.book.ask(batch_record, full.lot, studio.clock.now)


@pytest.fixture
def bare(studio: Studio) -> BatchRecord:
    lot = studio.dye(studio.wind(studio.cone(), 2))
    return studio.book.ask(batch_record, lot, studio.clock.now)


def test_loads_name_who_else_was_in_them_and_steps_not_written_say_so(record: BatchRecord) -> None:
    wash, spin, rail, soak = words_of(loads(record))
    assert wash.startswith("Wash 1: 12 skeins, with 26")
    assert wash.endswith("rinses 3; bleeding slight.")
    assert spin == "Spin 2: 12 skeins, with no other lot."
    assert "room 19 °C; humidity 51 %" in rail
    assert soak == "Soak: not written."


def test_yields_stand_in_per_cent_of_what_was_expected(record: BatchRecord) -> None:
    rows = {row[0]: row[1:6] for row in rows_of(yields(record))}
    assert rows["counted"] == ("11", "12", "91.7 %", "1,134.4 g", "91.7 %")


def test_a_count_that_is_short_says_by_how_many(record: BatchRecord) -> None:
    assert words_of(counts(record)) == ["12 went into the bath: 1 missing at the count."]


def test_tags_add_up_and_say_what_became_of_each(record: BatchRecord) -> None:
    blocks = list(tags(record.tags))
    assert words_of(blocks)[0] == "Printed 13 = on skeins 11 + void or spoiled 2 + waiting 0."
    assert "Counted in hand 0." in words_of(blocks)
    states = [row[1] for row in rows_of(blocks)]
    assert states.count("tied on") == 11
    assert states.count("spoiled, void") == 1
    assert any(state.startswith("tied on, came off, void; ") for state in states)
    assert "Quernlow Dyeyard / Staithe Row 3, Quernlow" in words_of(blocks)[-1]


def test_a_count_of_tags_that_differed_says_why(record: BatchRecord) -> None:
    count = replace(record.tags.in_hand[0], count=2, by_the_book=3, why="fell behind the table")
    told = words_of(tags(replace(record.tags, in_hand=(count,))))
    assert "Counted in hand 2, 3 by the book: fell behind the table." in told


def test_holds_where_now_and_marks_are_told(record: BatchRecord) -> None:
    assert words_of(holds(record))[-1] == "Lifted."
    assert ("3", "sent, buyer known") in [row[:2] for row in rows_of(now(record))]
    assert any("TAKEN BACK" in row[1] for row in rows_of(marked(record)))


def test_of_what_is_not_written_each_part_says_so(bare: BatchRecord) -> None:
    assert words_of(counts(bare)) == ["Finishing count: not written."]
    assert words_of(tags(bare.tags)) == ["No tag was printed."]
    assert words_of(holds(bare)) == ["None reaches this lot, now or before."]
    assert [row[6] for row in rows_of(yields(bare))][2:] == ["not written"] * 3
    assert list(marked(bare)) == [Said("Nothing was marked, corrected or taken back.")]
    assert "not written" in words_of(shade(bare))[0]
