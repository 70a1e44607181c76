"""A list as a file: what it lacks, what is wrong with it in many rows, and what it calls a base."""

from pathlib import Path

import pytest

from app.exchange.list_file import Seen, gathered, in_trouble, lack, see
from app.exchange.rows import RowTrouble
from app.exchange.taking_in import Said, take_in
from app.problems import BadInput
from tests.makers import Studio

HEADS = "Note;Base;Batch;Gross g;Tare g\n"
GOOD = HEADS + "2241;Tarnfield 4-ply;A-203;1462;64\n"


def seen(studio: Studio, folder: Path, text: str, said: Said | None = None) -> Seen:
    path = folder / "list.csv"
    path.write_text(text, "utf-8")
    return studio.book.ask(see, path, said or Said(), studio.clock.now)


def test_a_list_with_all_it_needs_is_an_arrival(studio: Studio, tmp_path: Path) -> None:
    found = seen(studio, tmp_path, GOOD)
    assert found.lacks == ()
    assert found.arrival is not None
    assert len(studio.do(take_in, found.arrival)) == 1
    assert [base.name for base in found.bases] == ["Tarnfield 4-ply"]


def test_what_a_list_lacks_is_told_and_may_be_said_once_for_all(
    studio: Studio, tmp_path: Path
) -> None:
    text = GOOD.replace("Tare g", "Remark").replace(";64", ";dry")
    found = seen(studio, tmp_path, text)
    assert found.lacks == ("tare",)
    assert lack(found, "tare", ()) == "No column is headed as the empty centre (tare)."
    assert found.arrival is None
    told = seen(studio, tmp_path, text, Said(given={"tare": "64"}))
    assert told.arrival is not None
    assert told.arrival.note.deliveries[0].cones[0].tare_mg == 64_000


def test_headings_that_nobody_understands_are_settled_by_a_person(
    studio: Studio, tmp_path: Path
) -> None:
    text = GOOD.replace(HEADS, "Aa;Bb;Cc;Dd;Ee\n")
    found = seen(studio, tmp_path, text)
    assert found.match.headings == ("Aa", "Bb", "Cc", "Dd", "Ee")
    assert found.lacks == ("base", "note", "batch", "gross", "tare")
    assert lack(found, "gross", ()) == "No column is headed as the gross weight."
    settled = Said({"note": "Aa", "base": "Bb", "batch": "Cc", "gross": "Dd", "tare": "Ee"})
    arrival = seen(studio, tmp_path, text, settled).arrival
    assert arrival is not None
    assert arrival.note.cones == 1


def test_a_file_that_is_no_table_says_how_it_begins(studio: Studio, tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="looks like headings") as raised:
        seen(studio, tmp_path, "Dear dyers,\nplease find enclosed\n")
    assert "It begins with: Dear dyers" in raised.value.next_step


def test_a_file_that_is_gone_says_so(studio: Studio, tmp_path: Path) -> None:
    with pytest.raises(BadInput, match=r"gone\.csv cannot be opened: .*"):
        studio.book.ask(see, tmp_path / "gone.csv", Said(), studio.clock.now)


def test_the_same_trouble_in_many_rows_is_said_once() -> None:
    def trouble(row: int, what: str = "it is no number.", kept: str = "x") -> RowTrouble:
        return RowTrouble(row, "Gross g", what, kept)

    assert gathered([trouble(3)]) == ("Row 3, Gross g: it is no number. It says: x",)
    assert gathered([trouble(3), trouble(5), trouble(4, kept="y")]) == (
        "Rows 3, 5, Gross g: it is no number. It says: x",
        "Row 4, Gross g: it is no number. It says: y")
    assert gathered([trouble(row) for row in range(2, 26)]) == (
        "Rows 2 to 25, Gross g: it is no number. It says: x",)
    assert gathered([trouble(row) for row in range(1, 21, 2)])[0].startswith(
        "Rows 1, 3, 5, 7, 9, 11 and 4 more, Gross g")


def test_what_stands_in_a_column_that_is_in_trouble(studio: Studio, tmp_path: Path) -> None:
    found = seen(studio, tmp_path, GOOD.replace("Tarnfield 4-ply", "Gossamer Lamb"))
    assert (in_trouble(found, "base"), in_trouble(found, "cone")) == ("Gossamer Lamb", "")
    assert in_trouble(seen(studio, tmp_path, GOOD), "base") == ""


def test_a_note_of_this_number_that_came_before_is_known(studio: Studio, tmp_path: Path) -> None:
    assert seen(studio, tmp_path, GOOD).before == {}
    studio.cones(3)
    before = seen(studio, tmp_path, GOOD).before
    assert [(one.supplier, one.cones) for one in before["2241"]] == [("Aske Mill", 3)]
