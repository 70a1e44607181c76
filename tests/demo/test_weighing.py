"""The dye bench of the invented studio: what it weighed out, and what is planted in its jars."""

import json
from collections import Counter
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest
from sqlalchemy import select

from app.calculations.codes import Kind, numbered
from app.lookups.balances import balances_now
from app.lookups.fills import dyed_of
from app.lookups.jars import gaps, jar_with
from app.lookups.recipes import recipe_then
from app.lookups.things import by_code
from app.lookups.warned import warned
from app.records import (
    Bath,
    Colourway,
    DeedRow,
    DyeLot,
    Fill,
    LoadReading,
    RecipeVersion,
    Weighing,
    WeighLine,
)
from app.store.book import Book

FEWEST_TOO_MANY = 3


def fills_of(book: Book, lot: str) -> dict[int, int]:
    """{fill: milligrams} weighed straight from its jars for a lot."""
    with book.reading() as connection:
        return {row.fill: row.mg for row in connection.execute(
            select(WeighLine.fill, WeighLine.mg).join(Bath, Bath.weighing == WeighLine.weighing)
            .join(DyeLot, DyeLot.bath == Bath.id)
            .where(DyeLot.code == lot, WeighLine.fill.is_not(None)))}


def turquoise(book: Book) -> dict[int, int]:
    """{fill: its number} of jar B1."""
    with book.reading() as connection:
        jar = jar_with(connection, numbered(Kind.JAR, 5).text)
        assert jar is not None
        assert jar.dye == "turquoise B1"
        return {row.id: row.number for row in connection.execute(
            select(Fill.id, Fill.number).where(Fill.jar == jar.jar))}


def test_every_bath_of_a_pot_was_weighed_out(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        weighed = connection.execute(
            select(Bath.weighing).where(Bath.plate.is_not(None))).scalars().all()
    assert all(weighed)
    assert len(weighed) > 150


def test_a_lot_of_which_another_dye_was_taken_is_off_its_recipe_and_no_other_is(
    demo_book: Book,
) -> None:
    with demo_book.reading() as connection:
        lots = connection.execute(select(DyeLot.id).where(DyeLot.bath.is_not(None))).scalars().all()
        off = {lot: one.off_recipe for lot, one in dyed_of(connection, lots).items()
               if one.off_recipe}
    assert list(off.values()) == [("weighed instead of tan T1",)]


def test_what_was_dyed_by_has_its_steps_and_pots_their_bath(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        used = set(connection.execute(select(Bath.recipe_version)).scalars())
        recipes = [one for version in used if (one := recipe_then(connection, version))]
        litres = connection.execute(
            select(Weighing.bath_ml).join(Bath, Bath.weighing == Weighing.id)).scalars().all()
        (scale,) = balances_now(connection)
        weighed = connection.execute(select(WeighLine.balance, WeighLine.mg).where(
            WeighLine.mg.is_not(None))).all()
    assert len(recipes) == len(used)
    assert {(one.look, len(one.steps), one.liquor_tenths, one.base_class) for one in recipes} == {
        ("solid", 4, 200, "wool"), ("zones", 3, None, "wool")}
    assert all(litres)
    assert {line.balance for line in weighed} == {scale.plate}
    assert all(scale.facts.can_weigh(Decimal(line.mg) / 1000) for line in weighed)


@pytest.mark.parametrize(("lot", "fill"), [
    ("2606H3W", {1}), ("2608XKM", {1, 2}), ("2612F5F", {3}), ("2613Y8T", {3}), ("2615R6F", {3}),
    ("2613F03", set())])
def test_the_weak_fill_is_in_the_greener_lots_and_not_beside_them(
    demo_book: Book, lot: str, fill: set[int]
) -> None:
    numbers = turquoise(demo_book)
    used = {numbers[one] for one in fills_of(demo_book, lot) if one in numbers}
    assert used <= fill
    assert bool(used) == bool(fill)


def test_once_its_weakness_is_known_more_of_it_is_weighed(demo_book: Book) -> None:
    numbers = turquoise(demo_book)
    per_lot = {lot: sum(mg for fill, mg in fills_of(demo_book, lot).items() if fill in numbers)
               for lot in ("2613Y8T", "2615R6F")}
    assert per_lot["2613Y8T"] / per_lot["2615R6F"] == pytest.approx(0.78, abs=0.02)


def test_two_jars_are_off_by_one_spoon_of_one_lot_and_no_other_is(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        scarlet = jar_with(connection, numbered(Kind.JAR, 4).text)
    assert scarlet is not None
    spoon = fills_of(demo_book, "2616HX8")[scarlet.fill]
    off = sorted(one.gap_mg for one in demo_book.ask(gaps) if abs(one.gap_mg) > 500)
    assert off == [pytest.approx(-spoon, abs=100), pytest.approx(spoon, abs=100)]


def test_a_recipe_was_changed_after_use_as_its_next_version(demo_book: Book) -> None:
    with demo_book.reading() as connection:
        used = connection.execute(
            select(RecipeVersion.number).distinct()
            .join(Colourway, Colourway.id == RecipeVersion.colourway)
            .join(Bath, Bath.recipe_version == RecipeVersion.id)
            .where(Colourway.name == "Wet Thatch Tuesday")).scalars().all()
    assert sorted(used) == [1, 2]


def test_one_lot_bled_in_its_wash(demo_book: Book) -> None:
    lot = demo_book.ask(by_code, "2610F81")
    assert lot is not None
    with demo_book.reading() as connection:
        bled = connection.execute(select(LoadReading.value).where(
            LoadReading.kind == "bleed")).scalars().all()
    assert bled == [2]


def test_nobody_is_warned_three_times_on_any_day(demo_book: Book) -> None:
    """Planted days too, so no day needs to be called plain; the table agrees on the worst."""
    told = Counter[tuple[date, str]]()
    with demo_book.reading() as connection:
        for row in connection.execute(select(DeedRow.written, DeedRow.person, DeedRow.body)):
            told[row.written.date(), row.person] += len(json.loads(row.body)["findings"])
        (day, _), most = told.most_common(1)[0]
        since = datetime.combine(day, datetime.min.time(), UTC)
        assert warned(connection, since, since + timedelta(days=1))[0].warnings == most
    assert 0 < most < FEWEST_TOO_MANY, told.most_common(3)
