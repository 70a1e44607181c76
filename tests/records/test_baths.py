"""Baths and loads: a lot is one bath and one base, and yarn is in it once."""

from app.records import Bath, Colourway, DyeLot, InBath, InLoad, Load, RecipeVersion
from app.store.deed import Deed
from tests.makers import Studio
from tests.records.forbidden import (
    allows_after_undo,
    burnt_for_ever,
    forbids,
    forbids_twice,
)


def lot(code: str | None = "2615R6F") -> DyeLot:
    return DyeLot(code=code, bath=None, base=1, colourway=1)


def test_a_colourway_has_its_name_alone(studio: Studio) -> None:
    forbids_twice(studio, lambda: Colourway(name="Ferry Ledger"))
    allows_after_undo(studio, lambda: Colourway(name="Ferry Ledger"))


def test_a_recipe_version_has_its_number_alone(studio: Studio) -> None:
    forbids_twice(studio, lambda: RecipeVersion(colourway=1, number=2))


def test_a_lot_code_is_burnt_for_ever(studio: Studio) -> None:
    forbids_twice(studio, lot)
    burnt_for_ever(studio, lot)


def test_several_lots_may_wait_for_their_code(studio: Studio) -> None:
    assert studio.do(lambda deed: deed.add_all([lot(None), lot(None)])) == [1, 2]


def test_a_bath_makes_one_lot_of_a_base(studio: Studio) -> None:
    bath = studio.do(lambda deed: deed.add(Bath(plate=None, recipe_version=1)))
    forbids_twice(studio, lambda: DyeLot(code=None, bath=bath, base=1, colourway=1))


def test_yarn_is_in_a_bath_or_load_once(studio: Studio) -> None:
    yarn = studio.wind(studio.cone(), 2)

    def made(deed: Deed) -> tuple[int, int]:
        return deed.add(lot()), deed.add(Load(step="wash"))
    number, load = studio.do(made)
    forbids_twice(studio, lambda: InBath(yarn=yarn, lot=number, basis="scanned"))
    forbids_twice(studio, lambda: InLoad(yarn=yarn, load=load, basis="scanned"))
    allows_after_undo(studio, lambda: InBath(yarn=yarn, lot=number, basis="scanned"))
    forbids(studio, "ck_in_bath_basis", InBath(yarn=yarn, lot=number, basis="guessed"))


def test_a_load_is_one_of_five_steps(studio: Studio) -> None:
    forbids(studio, "ck_load_step", Load(step="dream"))
