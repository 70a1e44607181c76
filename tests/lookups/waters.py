"""Lots of known depth for tests: a pale blue of 0.055 %, a red of 1.70 %."""

from app.lookups.recipes import recipe_then
from app.work.dyeing import BathIn, into_bath, lift, name_colourway
from app.work.loading import into_load
from app.work.readings import bleed
from app.work.recipes import ComponentIn, RecipeIn, write_recipe

PALE = (ComponentIn("B1 turquoise", "owf", 400), ComponentIn("B2 mid blue", "owf", 150))
RED = (ComponentIn("R2 scarlet", "owf", 14_000), ComponentIn("R1 cool pink", "owf", 3_000))
NAVY = (ComponentIn("N1 navy", "owf", 20_000),)


def recipe_of(studio, name, components, **more):
    """A colourway with a written recipe; its version."""
    version = studio.do(name_colourway, name)
    colourway = studio.book.ask(recipe_then, version).colourway
    return studio.do(write_recipe, RecipeIn(colourway, components, **more))


def lot_of(studio, name, components, disc=None, count=6):
    """A lifted lot by such a recipe: (row, lot)."""
    version = recipe_of(studio, name, components)
    row = studio.wind(studio.cone(), count, "red", disc)
    done = studio.do(into_bath, BathIn((row,), version), studio.random)
    studio.do(lift, done["bath"])
    return row, done["lots"][0]


def washed(studio, *rows, how=None):
    """These rows in one wash, seen to bleed or not; the load."""
    load = studio.do(into_load, "wash", yarn=rows)
    if how is not None:
        studio.do(bleed, load, how)
    return load
