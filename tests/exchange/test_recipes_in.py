"""A notebook into the book: looked at first; new, next versions, and what is there already."""

from pathlib import Path

import pytest

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
