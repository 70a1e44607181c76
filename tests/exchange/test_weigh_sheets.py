"""The weigh-out sheet: amounts by the dry mass, the strength of the jar, what a balance can do."""

from decimal import Decimal

import pytest

from app.calculations.balances import Balance
from app.documents.proof import read_back
from app.exchange.weigh_sheets import ToWeigh, to_weigh, weigh_pdf, weigh_sheet
from app.problems import NotFound
from app.work.jars import say_strength
from app.work.recipes import ComponentIn
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import ACID, BLACK, BLUE, DRY_MG, YELLOW, Dyehouse
from tests.full_lot import FullLot
from tests.makers import Studio


def asked(house: Dyehouse, **what: int) -> ToWeigh:
    return house.studio.book.ask(lambda c: to_weigh(c, house.studio.clock.now, **what))


def test_a_recipe_for_602_g_is_told_in_grams_with_jar_and_fill(studio: Studio) -> None:
    """602 g at 0.85, 0.22, 0.1 and 2 %: worked by hand."""
    house = Dyehouse(studio, (BLUE, YELLOW, BLACK, ACID))
    sheet = weigh_sheet(asked(house, version=house.recipe, dry_mg=DRY_MG), "DA")
    assert [(row.what, row.wanted, row.may_show) for row in sheet.rows] == [
        ("B1 turquoise", "5.12", "5.02 to 5.21"), ("Y1 lemon", "1.32", "1.30 to 1.35"),
        ("K1 black", "0.60", "0.59 to 0.62"), ("citric acid", "12.04", "11.80 to 12.28")]
    assert sheet.rows[0].where.startswith("jar 1, fill 1, 100 % · J·001·")
    assert sheet.rows[3].where == "no jar in the book"
    assert dict(sheet.facts)["bath, with the water in the yarn"] == "12.0 L"
    assert sheet.head.code == ""


def test_a_weak_jar_is_weighed_higher(studio: Studio) -> None:
    house = Dyehouse(studio)
    studio.do(say_strength, 1, 920)
    sheet = weigh_sheet(asked(house, version=house.recipe, dry_mg=DRY_MG), "DA")
    assert sheet.rows[0].wanted == "5.56"


def test_what_the_balance_cannot_weigh_is_offered_as_a_stock(studio: Studio) -> None:
    house = Dyehouse(studio)
    sheet = weigh_sheet(asked(house, version=house.recipe, dry_mg=DRY_MG), "DA",
                        Balance(Decimal("0.1")))
    assert sheet.rows[2].note.startswith("too little for this balance: 60.2 mL of a 1 % stock")
    assert "not under 5 g a line" in sheet.balance_rule


def test_grams_a_litre_go_by_the_bath_and_are_not_known_without_it(studio: Studio) -> None:
    house = Dyehouse(studio, (BLUE, ComponentIn("salt", "bath", 5_000, "assistant", "crystals")))
    sheet = weigh_sheet(asked(house, version=house.recipe, dry_mg=DRY_MG), "DA")
    assert (sheet.rows[1].what, sheet.rows[1].wanted) == ("salt (crystals)", "60.20")
    unknown = weigh_sheet(asked(house, version=house.recipe), "DA")
    assert [row.wanted for row in unknown.rows] == ["", ""]


def test_what_was_taken_stands_with_who_took_it_less_what_went_back(studio: Studio) -> None:
    full = FullLot(studio)
    one = asked(full.house, weighing=full.weighing)
    sheet = weigh_sheet(one, "DA")
    assert [row.taken for row in sheet.rows] == [
        "10.53 g  DA", "2.72 g  DA", "1.24 g  DA", "24.80 g  DA"]
    pdf = weigh_pdf(one, "DA")
    assert [code.code for code in read_back(pdf, 203)[0]] == [sheet.head.code] == ["G0019"]
    assert pdf == weigh_pdf(one, "DA")


def test_a_damp_weight_is_said_to_be_one(studio: Studio) -> None:
    house = Dyehouse(studio)
    damp = studio.do(begin_weighing, WeighingIn("bath", house.recipe, (), 1_083_000, 800))
    sheet = weigh_sheet(asked(house, weighing=damp), "DA")
    assert sheet.facts[0] == ("dry, from damp weight, 80 % pick-up", "601.7 g")


def test_without_a_recipe_there_is_no_sheet(studio: Studio) -> None:
    house = Dyehouse(studio)
    with pytest.raises(NotFound):
        asked(house, weighing=studio.do(begin_weighing, WeighingIn("stock")))
