"""A list of what lay here before the book began."""

from pathlib import Path

import pytest

from app.exchange.old_lots import OldLots, open_from_list, see_old_lots
from app.exchange.taking_in import Said
from app.problems import BadInput, Refused
from app.work.opening_stock import LayHere, open_lots
from tests.exchange.files import workbook
from tests.makers import Studio

GLOVE, TARNFIELD = "Sluice Keeper's Glove", "Tarnfield 4-ply"
HEADS = "Dye lot;Colour;Yarn;Qty;Put-up\n"
GOOD = HEADS + f"OLD-77;{GLOVE};{TARNFIELD};4;skeins\nM 12;Lock House Door;tarnfield 4-PLY;9;mini\n"


def seen(
    studio: Studio, folder: Path, data: str | bytes, said: Said | None = None
) -> OldLots:
    path = folder / "shelves.csv"
    path.write_bytes(data.encode() if isinstance(data, str) else data)
    return studio.book.ask(see_old_lots, path, said or Said())


def test_rows_are_old_lots_and_new_colourways_are_told(studio: Studio, tmp_path: Path) -> None:
    found = seen(studio, tmp_path, GOOD)
    assert found.lots == (LayHere("OLD-77", TARNFIELD, GLOVE, 4),
                          LayHere("M 12", TARNFIELD, "Lock House Door", 9, "mini"))
    assert (found.troubles, found.new_colourways, found.in_all) == ((), ("Lock House Door",), 13)
    done = studio.done(open_from_list, found)
    assert done.said == "opened 2 old lots, 13 in all"
    assert {key: amount.count for key, amount in studio.present().items()} == {
        ("piled", "skein"): 4, ("piled", "mini"): 9}
    studio.check()


def test_a_workbook_is_read_alike(studio: Studio, tmp_path: Path) -> None:
    data = workbook(("Lot", "Colourway", "Base", "Count"), ("OLD77", GLOVE, TARNFIELD, 4))
    assert seen(studio, tmp_path, data).lots == (LayHere("OLD77", TARNFIELD, GLOVE, 4),)


@pytest.mark.parametrize(("row", "why"), [
    (f"X1;{GLOVE};Moorit;4;skein", "Row 3, Yarn: no base is called so in the book"),
    (f"X1;{GLOVE};{TARNFIELD};none;skein", "Row 3, Qty: it is no number of skeins"),
    (f"X1;{GLOVE};{TARNFIELD};4;hank", "Row 3, Put-up: Tarnfield 4-ply is sold as skein or mini"),
    (f"X1;;{TARNFIELD};4;skein", "Row 3, Colour: nothing stands there."),
    (f"OLD77;{GLOVE};{TARNFIELD};4;skein", "Row 3, Dye lot: row 2 has it too."),
    (f"OLD9;{GLOVE};{TARNFIELD};4;skein", "Row 3, Dye lot: this lot is in the book already."),
    (f"C0114F;{GLOVE};{TARNFIELD};4;skein", "Row 3, Dye lot: it reads as the code of something"),
    (f"X1;=1+1;{TARNFIELD};4;skein", "Row 3, Colour: it reckons"),
])
def test_a_row_in_trouble_hides_no_good_one(
    studio: Studio, tmp_path: Path, row: str, why: str
) -> None:
    studio.do(open_lots, [LayHere("OLD9", TARNFIELD, GLOVE, 1)])
    found = seen(studio, tmp_path, HEADS + f"OLD-77;{GLOVE};{TARNFIELD};4;skein\n{row}\n")
    assert [one.code for one in found.lots] == ["OLD-77"]
    assert found.troubles[0].sentence.startswith(why)
    with pytest.raises(Refused, match="1 row of this list cannot be taken in"):
        studio.do(open_from_list, found)
    assert studio.done(open_from_list, found, True).said == (
        "opened old lot OLD-77: 4 skeins; 1 row left out")


def test_columns_are_matched_once_and_remembered(studio: Studio, tmp_path: Path) -> None:
    strange = GOOD.replace("Dye lot", "What it says").replace("Colour", "Look")
    lacking = seen(studio, tmp_path, strange)
    assert lacking.lacks == ("code", "colourway")
    assert lacking.lots == ()
    said = Said({"code": "What it says", "colourway": "Look"})
    studio.do(open_from_list, seen(studio, tmp_path, strange, said))
    again = seen(studio, tmp_path, strange.replace("OLD-77", "OLD-78").replace("M 12", "M 13"))
    assert again.match.remembered
    assert [one.code for one in again.lots] == ["OLD-78", "M 13"]


def test_what_holds_for_all_rows_may_be_said_once(studio: Studio, tmp_path: Path) -> None:
    text = f"Lot;Colourway;Count\nOLD77;{GLOVE};4\n"
    assert seen(studio, tmp_path, text).lacks == ("base",)
    (lot,) = seen(studio, tmp_path, text, Said(given={"base": TARNFIELD, "put up": "mini"})).lots
    assert lot == LayHere("OLD77", TARNFIELD, GLOVE, 4, "mini")


def test_what_is_no_list_is_refused(studio: Studio, tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="looks like headings of a list of old lots"):
        seen(studio, tmp_path, "a;b\n1;2\n")


def test_a_list_of_which_nothing_can_be_taken_in_says_so(studio: Studio, tmp_path: Path) -> None:
    found = seen(studio, tmp_path, HEADS + f"{'X' * 25};{GLOVE};{TARNFIELD};4;skein\n")
    assert "Dye lot: it is longer than 24 characters. Give it a shorter" in found.troubles[
        0].sentence
    with pytest.raises(Refused, match="Nothing of this list can be taken in; nothing was saved"):
        studio.do(open_from_list, found, True)


def test_codes_that_look_alike_are_one(studio: Studio, tmp_path: Path) -> None:
    row = f";{GLOVE};{TARNFIELD};4;skein\n"
    found = seen(studio, tmp_path, f"{HEADS}ZZ8{row}ZZ\u200b8{row}")
    assert [trouble.what for trouble in found.troubles] == ["row 2 has it too."]
