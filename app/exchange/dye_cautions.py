"""Which cautions a recipe asks for, by the names of what is in it.

The book does not keep the class of a dye: only what its name says is gone by, and the maker's
sheet says the rest.
"""

from collections.abc import Iterable

from app.calculations.cautions import Step, cautions_for
from app.lookups.recipes import RecipeThen

CLASS_NOT_KEPT = "Which class a dye is of is not in the book: the sheet of its maker says it."

_NAMED = {
    "acid": ("acid", "vinegar"), "sodium dithionite": ("dithionite", "hydrosulphite"),
    "acid dye": ("acid dye",), "reactive dye": ("reactive",), "vat dye": ("vat dye",),
    "disperse dye": ("disperse",), "metal-complex dye": ("metal complex", "metal-complex"),
}


def cautions_of(recipe: RecipeThen | None, steps: Iterable[Step]) -> tuple[str, ...]:
    """The words for these steps, each once, in the order they are shipped in."""
    names = [f"{one.substance} {one.form}".casefold() for one in recipe.components
             ] if recipe else []
    substances = {substance for substance, parts in _NAMED.items()
                  if any(part in name for part in parts for name in names)}
    said = {one.words: None for step in steps for one in cautions_for(step, substances)}
    return (*said, CLASS_NOT_KEPT)
