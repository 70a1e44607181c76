"""A notebook of recipes from file to book: looked at first, taken in as one deed or not at all."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from sqlalchemy import Connection, func, select

from app.exchange.cells import read_cell
from app.exchange.columns import ColumnMatch, known_columns, match_columns, with_remembered
from app.exchange.reading import bytes_of, read_table
from app.exchange.recipe_headings import NOTEBOOK
from app.exchange.recipe_notebook import Notebook, RecipeRead, plain, read_notebook
from app.exchange.taking_in import Said
from app.lookups.recipe_amounts import amounts
from app.lookups.recipes import recipe_then
from app.lookups.studio import setting
from app.problems import Refused
from app.records import Colourway, Jar, RecipeVersion
from app.store.deed import Deed
from app.work.dyeing import name_colourway
from app.work.recipes import RecipeIn, write_recipe
from app.work.studio import choose

SETTING = "recipe columns"


class Becomes(StrEnum):
    """What taking it in makes of a recipe."""

    NEW = "a new colourway"
    WRITTEN = "the recipe of a colourway that was only named"
    NEXT = "its next version"
    THERE = "in the book already"


@dataclass(frozen=True, slots=True)
class NotebookSeen:
    """A notebook as it was understood; nothing of it is in the book yet.

    No notebook while a column is lacking or in doubt.
    """

    match: ColumnMatch
    lacks: tuple[str, ...]
    notebook: Notebook | None
    becomes: Mapping[str, Becomes]
    """For each colourway of a whole recipe."""


def look_at_notebook(connection: Connection, data: bytes, said: Said) -> NotebookSeen:
    """Read a notebook with what the studio remembers of such lists; raises BadInput."""
    table = read_table(data)
    match = match_columns(table, known_columns(setting(connection, SETTING)), said.columns,
                          NOTEBOOK)
    lacks = match.lacks(())
    if lacks:
        return NotebookSeen(match, lacks, None, {})
    dyes = {plain(dye): dye for dye in connection.execute(
        select(Jar.dye).where(Jar.struck.is_(None))).scalars()}
    given = {name: read_cell(words) for name, words in said.given.items()}
    notebook = read_notebook(table, match, dyes, given)
    return NotebookSeen(match, (), notebook, {
        one.colourway: _becomes(connection, one) for one in notebook.recipes})


def see_notebook(connection: Connection, path: Path, said: Said) -> NotebookSeen:
    """The same from a file; raises BadInput where it cannot be read at all."""
    return look_at_notebook(connection, bytes_of(path), said)


def take_in_notebook(
    deed: Deed, seen: NotebookSeen, leave_out: bool = False, why: str = "from the notebook"
) -> list[int]:
    """All whole recipes and how the columns were matched, as one deed; their versions.

    What the book has already is not written again. Refused: recipes with a row in trouble, unless
    they are to be left out.
    """
    notebook = seen.notebook
    if notebook and (notebook.out or notebook.troubles) and not leave_out:
        what = _recipes(len(notebook.out)) if notebook.out else "Rows"
        raise Refused(f"{what} of this notebook cannot be taken in as written; nothing was saved.",
                      "Put the rows right, or say that such recipes are to be left out.")
    new = [one for one in (notebook.recipes if notebook else ())
           if _becomes(deed.connection, one) is not Becomes.THERE]
    if not new:
        raise Refused("Nothing of this notebook is new; nothing was saved.",
                      "Look whether it is the right file.")
    versions = [_write(deed, one, why) for one in new]
    if not seen.match.remembered:
        choose(deed, {SETTING: with_remembered(setting(deed.connection, SETTING), seen.match)})
    out = len(notebook.out) if notebook else 0
    deed.say(f"took in {_recipes(len(new))}" + (f"; {_recipes(out)} left out" if out else ""))
    return versions


def _write(deed: Deed, one: RecipeRead, why: str) -> int:
    colourway = _colourway(deed.connection, one.colourway)
    if colourway is None:
        name_colourway(deed, one.colourway, note=why)
        colourway = _colourway(deed.connection, one.colourway) or 0
    return write_recipe(deed, RecipeIn(
        colourway, one.components, one.look, one.base_class, one.liquor_tenths, one.zones,
        reason=why))


def _becomes(connection: Connection, one: RecipeRead) -> Becomes:
    colourway = _colourway(connection, one.colourway)
    if colourway is None:
        return Becomes.NEW
    newest = connection.execute(select(func.max(RecipeVersion.id)).where(
        RecipeVersion.colourway == colourway, RecipeVersion.struck.is_(None))).scalar() or 0
    then = recipe_then(connection, newest)
    if then is None or not then.is_written:
        return Becomes.WRITTEN
    has = [(a.substance, a.unit, a.amount, a.form, a.zone) for a in amounts(connection, newest)]
    says = [(c.substance, c.unit, c.amount, c.form, c.zone) for c in one.components]
    same = has == says and (then.look, then.liquor_tenths or one.liquor_tenths,
                            then.base_class or one.base_class) == (
        one.look, one.liquor_tenths or then.liquor_tenths, one.base_class or then.base_class)
    return Becomes.THERE if same else Becomes.NEXT


def _colourway(connection: Connection, name: str) -> int | None:
    return next((row.id for row in connection.execute(
        select(Colourway.id, Colourway.name).where(Colourway.struck.is_(None)))
        if plain(row.name) == plain(name)), None)


def _recipes(count: int) -> str:
    return "1 recipe" if count == 1 else f"{count} recipes"
