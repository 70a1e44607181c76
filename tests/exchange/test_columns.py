"""Which column holds what: offered, settled, remembered."""

import pytest

from app.exchange.cells import Row, Table
from app.exchange.columns import (
    known_columns,
    propose,
    stated_above,
    with_remembered,
)
from app.problems import BadInput


def table(*rows: str) -> Table:
    return Table(tuple(Row(n, tuple(row.split(";"))) for n, row in enumerate(rows, 1)))


@pytest.mark.parametrize("headings", [
    "Delivery note;Yarn;Spin lot;Cone;Gross (g);Tare (g)",
    "Lieferschein-Nr.;Garnqualität;Partie;Kone Nr.;Bruttogewicht kg;Hülse g",
    "Bon de livraison;Qualité;Lot de filature;Numéro de cône;Poids brut;Tare",
    "Pakbonnummer;Kwaliteit;Partij;Kegel;Brutogewicht;Tarra",
    "Albarán;Hilo;Partida;Cono;Peso bruto;Tara",
    "DDT;Filato;Lotto;Rocca;Peso lordo;Tara",
    "Følgeseddel;Garn;Parti;Spole;Bruttovægt;Hylse",
    "NOTE NO.;BASE;BATCH NO.;CONE NO.;GROSS WEIGHT;EMPTY CENTRE",
])
def test_headings_are_known_in_many_wordings_and_languages(headings: str) -> None:
    match = propose(table(headings, "2241;x;A;1;1462;64"), {})
    assert match.places == {"note": 0, "base": 1, "batch": 2, "cone": 3, "gross": 4, "tare": 5}
    assert match.lacks(()) == ()


def test_the_headings_are_found_below_a_title() -> None:
    match = propose(table("Aske Mill", "", "Note;2241", "Base;Batch;Gross;Tare;Note", "…"), {})
    assert match.row == 4


def test_nearly_right_headings_are_known() -> None:
    match = propose(table("Delivry note;Yarn;Batch;Gros weight;Tare"), {})
    assert match.places["note"] == 0
    assert match.places["gross"] == 3


def test_where_two_columns_fit_equally_none_is_chosen_and_both_are_named() -> None:
    match = propose(table("Note;Base;Batch;Gross;Gross;Tare"), {})
    assert "gross" not in match.places
    assert match.what_lacks(()) == "The gross weight may stand in “Gross” and “Gross”."


def test_the_very_words_go_before_words_among_others() -> None:
    match = propose(table("Note;Delivery date;Base;Batch;Gross weight checked;Gross weight;Tare"),
                    {})
    assert match.places["arrived"] == 1
    assert match.places["gross"] == 5


def test_missing_columns_are_named_with_the_nearest_heading() -> None:
    match = propose(table("Note;Base;Gros wt.;Tare"), {})
    assert match.lacks(()) == ("batch", "gross")
    sentence = match.what_lacks(())
    assert "No column is headed as the spinner's batch." in sentence
    assert "No column is headed as the gross weight; nearest is “Gros wt.”." in sentence


def test_two_of_three_weights_are_enough_and_what_is_said_once_need_be_no_column() -> None:
    assert propose(table("Note;Base;Batch;Gross;Net"), {}).lacks(()) == ()
    assert propose(table("Note;Base;Batch;Gross"), {}).lacks(()) == ("tare",)
    assert propose(table("Base;Gross"), {}).lacks({"note", "batch", "tare"}) == ()


def test_a_person_says_which_column_it_is() -> None:
    lines = table("Note;Base;Batch;Weight A;Weight B", "2241;x;A;1462;64")
    match = propose(lines, {}, {"gross": "weight a", "tare": "Weight B"})
    assert match.places["gross"] == 3
    assert match.places["tare"] == 4
    assert not match.remembered


@pytest.mark.parametrize(("said", "why"), [
    ({"gross": "Weight C"}, "No single column is headed “Weight C”"),
    ({"colour": "Note"}, "nothing that a delivery note says"),
])
def test_a_column_that_is_not_there_is_refused_with_those_that_are(
    said: dict[str, str], why: str
) -> None:
    with pytest.raises(BadInput, match=why) as refused:
        propose(table("Note;Base;Batch;Gross;Tare"), {}, said)
    assert "Choose one of" in refused.value.next_step or "Tare" in refused.value.next_step


def test_what_was_settled_is_remembered_for_the_same_headings_in_any_order() -> None:
    first = propose(table("Note;Base;Batch;Weight A;Weight B"), {},
                    {"gross": "Weight A", "tare": "Weight B"})
    stored = with_remembered("{}", first)
    again = propose(table("Aske Mill", "Weight B;Note;Weight A (g);Base;Batch"),
                    known_columns(stored))
    assert again.remembered
    assert again.places == {"note": 1, "base": 3, "batch": 4, "gross": 2, "tare": 0}
    assert again.unit("gross") == "g"
    other = propose(table("Note;Base;Batch;Weight A;Weight B;Weight C"), known_columns(stored))
    assert not other.remembered


def test_of_very_many_kinds_of_lists_the_oldest_are_forgotten() -> None:
    stored = "{}"
    for number in range(70):
        match = propose(table(f"Note;Base;Batch;Gross;Tare;Remark {number}"), {})
        stored = with_remembered(stored, match)
    known = known_columns(stored)
    assert len(known) == 60
    assert "remark 69" in list(known)[-1]


def test_what_is_said_above_the_table_counts_for_all_rows() -> None:
    lines = table("Delivery note:;118", "Date:;31.03.2026", "Supplier;Withybank;Note;119",
                  "Base;Batch;Gross;Tare", "x;A;1;2")
    match = propose(lines, {})
    assert stated_above(lines, match) == {
        "note": "118", "arrived": "31.03.2026", "supplier": "Withybank"}


def test_a_column_outweighs_what_is_said_above_it() -> None:
    lines = table("Note;118", "Note;Base;Batch;Gross;Tare", "119;x;A;1;2")
    assert stated_above(lines, propose(lines, {})) == {}


def test_a_list_without_headings_is_refused_with_how_it_begins() -> None:
    with pytest.raises(BadInput, match="looks like headings") as refused:
        propose(table("2241;Tarnfield;A-203;1462;64"), {})
    assert "2241, Tarnfield, A-203" in refused.value.next_step


def test_a_field_may_be_said_to_stand_in_no_column_and_that_is_remembered() -> None:
    rows = table("Note;Base;Batch;Cone;Gross;Tare", "2241;x;A;1;1462;64")
    match = propose(rows, {}, {"cone": ""})
    assert "cone" not in match.places
    assert "cone" not in propose(rows, known_columns(with_remembered("{}", match))).places
