"""A mill's list as deliveries: good rows are never hidden by bad ones."""

import time
from datetime import UTC, datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.exchange.cells import Cell, Formula, Row, Table
from app.exchange.columns import propose
from app.exchange.delivery_note import DeliveryNote, InBook, read_note
from app.exchange.rows import RowTrouble
from app.problems import BadInput

NOW = datetime(2026, 4, 6, 8, tzinfo=UTC)
BOOK = InBook(("Tarnfield 4-ply", "Downholm Sock"), frozenset({7}),
              frozenset({("Aske Mill", "1999", "Tarnfield 4-ply")}))
HEADINGS = "Note;Base;Batch;Cone;Gross g;Tare g"


def note(*rows: str, headings: str = HEADINGS, **given: Cell) -> DeliveryNote:
    lines = tuple(Row(n, tuple(row.split(";"))) for n, row in enumerate((headings, *rows), 1))
    table = Table(lines)
    return read_note(table, propose(table, {}), given, BOOK, NOW)


def trouble(row: str, headings: str = HEADINGS, **given: Cell) -> RowTrouble:
    (only,) = note(row, headings=headings, **given).troubles
    return only


def test_cones_are_gathered_by_note_and_base_in_their_order() -> None:
    found = note("2241;Tarnfield 4-ply;A-203;114;1,580;64", "2242;Tarnfield 4-ply;A-203;;1,472;64",
                 "2241;Downholm Sock;D-7;;1,460;64", "2241;tarnfield 4 PLY;A-207;115;1,462.5;63,5",
                 supplier="Aske Mill")
    assert [(d.supplier, d.note_no, d.base, len(d.cones)) for d in found.deliveries] == [
        ("Aske Mill", "2241", "Tarnfield 4-ply", 2), ("Aske Mill", "2242", "Tarnfield 4-ply", 1),
        ("Aske Mill", "2241", "Downholm Sock", 1)]
    first, last = found.deliveries[0].cones
    assert (first.number, first.gross_mg, first.tare_mg, first.batch) == (
        114, 1_580_000, 64_000, "A-203")
    assert (last.gross_mg, last.tare_mg, last.batch) == (1_462_500, 63_500, "A-207")
    assert found.cones == 4
    assert found.troubles == ()


def test_an_empty_batch_is_one_that_was_not_stated() -> None:
    found = note("2241;Tarnfield 4-ply;;;1462;64", "2241;Tarnfield 4-ply;A;;1462;64")
    assert [cone.batch for cone in found.deliveries[0].cones] == [None, "A"]


@pytest.mark.parametrize(("row", "column", "what"), [
    ("2241;Tarnfield 4-ply;A;;12x;64", "Gross g", "“x” is no unit"),
    ("2241;Tarnfield 4-ply;A;;;64", "Gross g", "two of gross, tare and net"),
    ("2241;Tarnfield 4-ply;A;;64;64", "Tare g", "cannot weigh so much"),
    ("2241;Tarnfield 4-ply;A;7;1462;64", "Cone", "C·0007·Y is another cone in the book"),
    ("2241;Tarnfield 4-ply;A;C0114K;1462;64", "Cone", "no cone's number"),
    ("2241;Tarnfeld 4-ply;A;;1462;64", "Base", "nearest is Tarnfield 4-ply."),
    ("2241;Silk;A;;1462;64", "Base", "no base is called so"),
    (";Tarnfield 4-ply;A;;1462;64", "Note", "nothing stands there"),
    ("2241;;A;;1462;64", "Base", "nothing stands there"),
])
def test_a_row_in_trouble_says_what_and_where_and_keeps_what_stood_there(
    row: str, column: str, what: str
) -> None:
    found = note("2240;Tarnfield 4-ply;A;;1462;64", row, "2240;Tarnfield 4-ply;A;;1462;64")
    (only,) = found.troubles
    assert (only.row, only.column) == (3, column)
    assert what in only.what
    assert found.cones == 2
    assert found.bad_rows == 1


def test_a_trouble_is_a_sentence_with_what_stood_there() -> None:
    assert trouble("2241;Tarnfield 4-ply;A;;12x;64").sentence == (
        "Row 2, Gross g: “x” is no unit for the weight of a cone with its centre. It says: 12x")
    assert RowTrouble(3, "Note", "nothing stands there.", "").sentence == (
        "Row 3, Note: nothing stands there.")


def test_all_that_is_wrong_with_a_row_is_told_at_once() -> None:
    found = note("2241;Silk;A;0;12x;64 lb")
    assert [one.column for one in found.troubles] == ["Base", "Gross g", "Tare g", "Cone"]
    assert found.bad_rows == 1


def test_a_number_given_twice_in_a_list_is_told_with_its_first_row() -> None:
    found = note("2241;Tarnfield 4-ply;A;114;1462;64", "2241;Tarnfield 4-ply;A;T-0114;1470;64")
    assert found.troubles[0].what == "C·0114·F stands in row 2 already."
    assert found.cones == 1


@pytest.mark.parametrize("place", range(6))
def test_a_formula_is_told_and_not_taken_wherever_it_stands(place: int) -> None:
    cells: list[Cell] = ["2241", "Tarnfield 4-ply", "A", "114", "1462", "64"]
    cells[place] = Formula("=A1")
    table = Table((Row(1, tuple(HEADINGS.split(";"))), Row(2, tuple(cells))))
    found = read_note(table, propose(table, {}), {}, BOOK, NOW)
    assert found.troubles[0].what.startswith("it reckons")
    assert found.troubles[0].kept == "=A1"
    assert found.cones == 0


def test_a_formula_in_a_column_nobody_needs_does_no_harm() -> None:
    table = Table((Row(1, (*HEADINGS.split(";"), "Price")),
                   Row(2, ("1", "Tarnfield 4-ply", "A", "", "1462", "64", Formula("=2*3")))))
    assert read_note(table, propose(table, {}), {}, BOOK, NOW).cones == 1


def test_tare_or_gross_follow_from_net() -> None:
    for headings, row in (("Note;Base;Batch;Gross kg;Net kg", "1;Downholm Sock;D;1,462;1,398"),
                          ("Note;Base;Batch;Net kg;Tare g", "1;Downholm Sock;D;1,398;64")):
        (delivery,) = note(row, headings=headings).deliveries
        assert (delivery.cones[0].gross_mg, delivery.cones[0].tare_mg) == (1_462_000, 64_000)


def test_a_net_weight_that_contradicts_the_others_is_told() -> None:
    headings = "Note;Base;Batch;Gross g;Tare g;Net g"
    assert note("1;Downholm Sock;D;1462;64;1400", headings=headings).cones == 1
    assert trouble("1;Downholm Sock;D;1462;64;1380", headings).what == (
        "gross less tare is 1,398 g.")


def test_what_is_said_once_fills_only_what_the_rows_do_not_say() -> None:
    found = note("2241;Tarnfield 4-ply;A;;1462;", "2241;Tarnfield 4-ply;A;;1462;70",
                 supplier="Aske Mill", tare="64 g")
    assert [cone.tare_mg for cone in found.deliveries[0].cones] == [64_000, 70_000]


def test_measurements_at_the_door_come_along() -> None:
    (delivery,) = note("2241;Tarnfield 4-ply;A;;1462;64;13,0;25,1;13.03.2026",
                       headings=f"{HEADINGS};Moisture %;100 m g;Date").deliveries
    assert delivery.cones[0].moisture_permille == 130
    assert delivery.cones[0].wrap_mg == 25_100
    assert delivery.arrived == datetime(2026, 3, 13, 12, tzinfo=UTC)


def test_a_note_without_a_day_came_now() -> None:
    (delivery,) = note("2241;Tarnfield 4-ply;A;;1462;64").deliveries
    assert delivery.arrived == NOW


def test_a_day_that_may_be_two_is_told() -> None:
    assert trouble("1;Downholm Sock;D;;1462;64;3/4/2026", f"{HEADINGS};Date").what.startswith(
        "it may be two days")


def test_numbers_of_a_workbook_need_no_writing() -> None:
    table = Table((Row(1, tuple(HEADINGS.split(";"))),
                   Row(2, (Decimal(2241), "Downholm Sock", Decimal("71.0"), Decimal(114),
                           Decimal("1462.5"), Decimal(64)))))
    (delivery,) = read_note(table, propose(table, {}), {}, BOOK, NOW).deliveries
    assert (delivery.note_no, delivery.cones[0].batch, delivery.cones[0].number) == (
        "2241", "71", 114)


def test_a_total_below_the_rows_is_left_out_and_said() -> None:
    found = note("2241;Tarnfield 4-ply;A;;1462;64", "Total;;;;1462;64", "SUMME:;;;;;")
    assert found.cones == 1
    assert found.notes == ("Row 3 is a total and was left out.",
                           "Row 4 is a total and was left out.")


def test_a_note_that_is_in_the_book_is_told_once_and_not_row_by_row() -> None:
    found = note("1999;Tarnfield 4-ply;A;7;1462;64", "1999;Tarnfield 4-ply;A;;1462;64",
                 supplier="Aske Mill")
    assert found.before == (("Aske Mill", "1999", "Tarnfield 4-ply"),)
    assert (found.cones, found.troubles) == (0, ())
    assert note("1999;Tarnfield 4-ply;A;;1462;64").cones == 1


def test_a_list_that_lacks_columns_is_refused_by_their_names() -> None:
    with pytest.raises(BadInput, match="spinner's batch") as refused:
        note("2241;Tarnfield 4-ply;1462;64", headings="Note;Base;Gross;Tare")
    assert "say it once for all rows" in refused.value.next_step


def test_a_delivery_of_thousands_is_another_list() -> None:
    with pytest.raises(BadInput, match="more than 1,000 cones"):
        note(*["2241;Tarnfield 4-ply;A;;1462;64"] * 1_001)


def test_twenty_thousand_bad_rows_are_told_within_seconds() -> None:
    begun = time.perf_counter()
    found = note(*["2241;Tarnfield 4-ply;A;;12x;64"] * 20_000)
    assert len(found.troubles) == 20_000
    assert time.perf_counter() - begun < 20  # less than a tenth of it on a quiet machine


@settings(deadline=None)
@given(st.lists(st.lists(st.text(max_size=8), max_size=7), max_size=8))
def test_every_row_is_a_cone_or_a_trouble_or_a_total(rows: list[list[str]]) -> None:
    good = "2241;Tarnfield 4-ply;A;;1462;64"
    table = Table((Row(1, tuple(HEADINGS.split(";"))), Row(2, tuple(good.split(";"))),
                   *(Row(n, tuple(cells)) for n, cells in enumerate(rows, 3) if any(cells))))
    found = read_note(table, propose(table, {}), {}, BOOK, NOW)
    assert found.cones >= 1
    assert found.cones + found.bad_rows + len(found.notes) == len(table.rows) - 1
