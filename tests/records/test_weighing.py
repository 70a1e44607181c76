"""The weigh bench: a line has one source and one purpose, and a damp weight its pick-up."""

from typing import Any

from app.records import Bath, BottleSet, Stock, WeighedFor, Weighing, WeighLine
from tests.makers import Studio
from tests.records.forbidden import burnt_for_ever, forbids, forbids_twice


def weighing(**changes: Any) -> Weighing:
    return Weighing(**{"purpose": "bath", "recipe_version": 1, **changes})


def line(**changes: Any) -> WeighLine:
    return WeighLine(**{"weighing": 1, "kind": "taken", **changes})


def test_a_stock_alone_is_weighed_without_a_recipe(studio: Studio) -> None:
    forbids(studio, "has_its_recipe", weighing(recipe_version=None))
    forbids(studio, "has_its_recipe", weighing(purpose="stock"))
    forbids(studio, "ck_weighing_purpose", weighing(purpose="soup"))
    studio.do(lambda deed: deed.add(weighing(purpose="stock", recipe_version=None)))


def test_a_damp_weight_has_its_pick_up_and_no_other(studio: Studio) -> None:
    forbids(studio, "damp_has_its_pick_up", weighing(dry_basis="weighed damp"))
    forbids(studio, "damp_has_its_pick_up", weighing(pick_up_permille=800))
    forbids(studio, "ck_weighing_dry_basis", weighing(dry_basis="guessed"))


def test_a_line_is_of_one_source_and_for_one_thing(studio: Studio) -> None:
    studio.do(lambda deed: deed.add(weighing()))
    studio.do(lambda deed: deed.add(Bath(plate=None, recipe_version=1)))
    forbids(studio, "from_one_source", line(fill=1, stock=1))
    forbids(studio, "for_one_thing", line(bath=1, kind="addition"))
    forbids(studio, "for_one_thing", line(weighing=None))
    forbids(studio, "addition_at_the_pot", line(kind="addition"))
    forbids(studio, "addition_at_the_pot", line(weighing=None, bath=1))
    forbids(studio, "ck_weigh_line_kind", line(kind="lost"))
    studio.do(lambda deed: deed.add(line()))
    studio.do(lambda deed: deed.add(line(weighing=None, bath=1, kind="addition")))


def test_yarn_is_weighed_for_once(studio: Studio) -> None:
    studio.wind(studio.cone(), 2)
    studio.do(lambda deed: deed.add(weighing()))
    forbids_twice(studio, lambda: WeighedFor(weighing=1, yarn=1))


def test_a_stock_is_a_solution(studio: Studio) -> None:
    forbids(studio, "is_a_solution", Stock(fill=None, mg_per_l=0, ml=1))
    forbids(studio, "is_a_solution", Stock(fill=None, mg_per_l=1, ml=0))


def test_the_number_of_a_bottle_set_is_burnt_for_ever(studio: Studio) -> None:
    burnt_for_ever(studio, lambda: BottleSet(recipe_version=1, number=1))
