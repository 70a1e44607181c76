"""A notebook into the book: looked at first; new, next versions, and what is there already."""

from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import Workbook

from app.exchange.recipes_in import (
    SETTING,
    Becomes,
    NotebookSeen,
    look_at_notebook,
    see_notebook,
    take_in_notebook,
)
from app.exchange.taking_in import Said
from app.lookups.pots import recipes
from app.lookups.recipe_amounts import amounts, difference
from app.lookups.recipes import recipe_then
from app.lookups.studio import setting
from app.problems import BadInput, Refused
from tests.exchange.files import workbook
from tests.makers import Studio

NOTEBOOK = """Colourway,Liquor,Dye,Amount %
Sluice Keeper's Glove,20:1,B1 turquoise,0.50
,,Y1 lemon,0.18
,,K1 black,0.04
Ferry Ledger,,B2 mid blue,0.55
,,N1 navy,0.40
"""


def look(studio: Studio, text: str | bytes = NOTEBOOK, **columns: str) -> NotebookSeen:
    data = text if isinstance(text, bytes) else text.encode()
    return studio.book.ask(look_at_notebook, data, Said(columns))


def test_looking_saves_nothing_and_says_what_each_recipe_becomes(studio: Studio) -> None:
    before = studio.last()
    seen = look(studio)
    assert seen.becomes == {"Sluice Keeper's Glove": Becomes.WRITTEN, "Ferry Ledger": Becomes.NEW}
    assert studio.last() == before


def test_a_notebook_is_taken_in_as_one_deed_and_taken_back_as_one(studio: Studio) -> None:
    done = studio.done(take_in_notebook, look(studio))
    assert done.said == "took in 2 recipes"
    glove, ledger = done.answer
    assert glove == studio.recipe
    assert [one.words for one in studio.book.ask(amounts, glove)] == ["0.5 %", "0.18 %", "0.04 %"]
    assert studio.book.ask(recipe_then, ledger).name == "Ferry Ledger"
    assert look(studio).match.remembered
    studio.undo()
    assert [one.colourway for one in studio.book.ask(recipes)] == ["Sluice Keeper's Glove"]
    assert studio.book.ask(amounts, glove) == ()
    assert studio.book.ask(setting, SETTING) == "{}"
    studio.check()


def test_what_is_there_already_is_not_written_again_and_what_changed_is_the_next_version(
    studio: Studio,
) -> None:
    first = studio.do(take_in_notebook, look(studio))
    assert set(look(studio).becomes.values()) == {Becomes.THERE}
    with pytest.raises(Refused, match="Nothing of this notebook is new"):
        studio.do(take_in_notebook, look(studio))
    changed = look(studio, NOTEBOOK.replace("0.18", "0.25"))
    assert changed.becomes == {"Sluice Keeper's Glove": Becomes.NEXT,
                               "Ferry Ledger": Becomes.THERE}
    (second,) = studio.do(take_in_notebook, changed, why="the new notebook")
    assert studio.book.ask(recipe_then, second).reason == "the new notebook"
    assert studio.book.ask(difference, first[0], second) == "Y1 lemon 0.18 → 0.25 %"


def test_a_bad_row_is_refused_or_its_whole_recipe_left_out(studio: Studio) -> None:
    seen = look(studio, NOTEBOOK.replace("0.40", "x"))
    assert [trouble.sentence for trouble in seen.notebook.troubles] == [
        "Row 6, Amount %: it is no number. It says: x"]
    with pytest.raises(Refused, match="1 recipe of this notebook cannot be taken in as written"):
        studio.do(take_in_notebook, seen)
    assert studio.book.ask(amounts, studio.recipe) == ()
    done = studio.done(take_in_notebook, seen, leave_out=True)
    assert done.said == "took in 1 recipe; 1 recipe left out"
    assert [one.colourway for one in studio.book.ask(recipes)] == ["Sluice Keeper's Glove"]


def test_a_workbook_is_read_like_a_list_in_text(studio: Studio, tmp_path: Path) -> None:
    data = workbook(("Colourway", "Dye", "Amount %"), ("Moth at the Window", "K1 black", 0.03),
                    (None, "R1 cool pink", 0.01))
    path = tmp_path / "notebook.xlsx"
    path.write_bytes(data)
    seen = studio.book.ask(see_notebook, path, Said())
    (version,) = studio.do(take_in_notebook, seen)
    assert [one.words for one in studio.book.ask(amounts, version)] == ["0.03 %", "0.01 %"]


def test_a_lacking_column_is_said_and_settled_by_a_person(studio: Studio) -> None:
    text = "Colourway,Dye,What we take\nMoth,K1,0.03 %\n"
    seen = look(studio, text)
    assert (seen.lacks, seen.notebook) == (("amount",), None)
    with pytest.raises(Refused, match="Nothing of this notebook is new"):
        studio.do(take_in_notebook, seen)
    (version,) = studio.do(take_in_notebook, look(studio, text, amount="What we take"))
    assert [one.words for one in studio.book.ask(amounts, version)] == ["0.03 %"]
    with pytest.raises(BadInput, match="The file is empty"):
        look(studio, "")


def test_a_unit_is_said_once_for_all_rows(studio: Studio) -> None:
    text = b"Colourway,Dye,Amount\nMoth,K1,0.03\n"
    assert look(studio, text).notebook.out == ("Moth",)
    seen = studio.book.ask(look_at_notebook, text, Said(given={"unit": "%"}))
    (version,) = studio.do(take_in_notebook, seen)
    assert [one.words for one in studio.book.ask(amounts, version)] == ["0.03 %"]


WHOLE = "Colourway,Dye,Amount %\nMoth,K1,0.3\n"
HOSTILE = {
    "negative": "Coal,N1,-0.4\n", "not a number": "Coal,N1,NaN\n", "endless": "Coal,N1,inf\n",
    "huge": "Coal,N1,1e400\n", "all of the fibre twice": "Coal,N1,200\n",
    "nothing": "Coal,N1,0\n", "a formula": "Coal,N1,=0.2+0.2\n",
    "two readings": "Coal,N1,0.4-0.5\n", "cut at the comma": "Coal,N1,1,5\n",
    "a spoon": "Coal,N1,1 spoon\n", "no dye": "Coal,,0.4\n",
    "a name for a page": f"{'C' * 500},N1,0.4\n",
    "twice": "Coal,N1,0.4\nMoth,R1,0.1\nCoal,N1,0.5\n",
}


@pytest.mark.parametrize("rows", HOSTILE.values(), ids=HOSTILE)
def test_of_a_hostile_notebook_nothing_is_half_taken_in(studio: Studio, rows: str) -> None:
    seen = look(studio, WHOLE + rows)
    assert seen.notebook is not None
    assert all(one.sentence.startswith("Row ") for one in seen.notebook.troubles)
    before = studio.last()
    with pytest.raises(Refused, match="cannot be taken in as written; nothing was saved"):
        studio.do(take_in_notebook, seen)
    assert studio.last() == before
    studio.do(take_in_notebook, seen, leave_out=True)
    assert "Coal" not in [one.colourway for one in studio.book.ask(recipes)]
    studio.check()


@pytest.mark.parametrize("coding", ["utf-8-sig", "latin-1", "cp1252", "utf-16"])
def test_names_are_read_in_the_codings_that_spreadsheets_save(studio: Studio, coding: str) -> None:
    seen = look(studio, "Colourway,Dye,Amount %\nGrün,K1,0.3\n".encode(coding))
    assert list(seen.becomes) == ["Grün"]


def test_a_hundred_thousand_rows_and_what_is_no_list_are_refused_with_a_sentence(
    studio: Studio,
) -> None:
    for data, what in ((WHOLE + "Moth,K1,0.3\n" * 100_000, "more than 20,000 rows"),
                       (bytes(range(256)) * 9, "neither a spreadsheet nor a list"),
                       (b"", "The file is empty")):
        with pytest.raises(BadInput, match=what):
            look(studio, data)


def test_a_workbook_that_shows_per_cent_means_per_cent(studio: Studio) -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in (("Colourway", "Dye", "Amount"), ("Moth", "K1", 0.0085), (None, "R1", 0.001)):
        sheet.append(row)
    for cell in ("C2", "C3"):
        sheet[cell].number_format = "0.00%"
    sheet.merge_cells("A2:A3")
    file = BytesIO()
    book.save(file)
    (version,) = studio.do(take_in_notebook, look(studio, file.getvalue()))
    assert [one.words for one in studio.book.ask(amounts, version)] == ["0.85 %", "0.1 %"]
