"""The tray of the invented studio: its lots are painted from weighed bottles, and steamed."""

from collections import Counter

from sqlalchemy import select

from app.records import Bath, BottleSet, Colourway, Load, OnBoard, RecipeVersion
from app.store.book import Book


def test_what_is_dyed_in_no_pot_was_painted_from_weighed_bottles_and_steamed(
    demo_book: Book,
) -> None:
    with demo_book.reading() as connection:
        trays = set(connection.execute(select(Bath.id).where(Bath.plate.is_(None))).scalars())
        painted = dict(connection.execute(
            select(Bath.id, Colourway.name)
            .join(RecipeVersion, RecipeVersion.id == Bath.recipe_version)
            .join(Colourway, Colourway.id == RecipeVersion.colourway)
            .join(OnBoard, OnBoard.bath == Bath.id)
            .join(BottleSet, BottleSet.id == OnBoard.bottle_set)
            .where(BottleSet.weighing.is_not(None), Bath.weighing.is_(None)).distinct()).all())
        steamed = set(connection.execute(
            select(Bath.id).join(Load, Load.deed == Bath.deed)
            .where(Load.step == "steamer")).scalars())
    assert set(painted) == steamed == trays
    assert Counter(painted.values()) == {"Half-Tide Steps": 3, "Late Bus Orchard": 4}
