"""The card of a bath says what lies in the pot."""

import pytest

from app.documents.proof import read_back
from app.exchange.bath_cards import AtThePot, at_the_pot, bath_card, card_pdf
from app.problems import NotFound
from app.work.dyeing import BathIn, into_bath
from app.work.weighing import WeighingIn, begin_weighing
from tests.dyehouse import Dyehouse
from tests.full_lot import FullLot
from tests.makers import Studio


def seen(studio: Studio, bath: int) -> AtThePot:
    return studio.book.ask(at_the_pot, bath, studio.clock.now)


def test_lots_bundles_steps_and_additions_stand_on_it(studio: Studio) -> None:
    full = FullLot(studio)
    one = seen(studio, full.bath)
    card = bath_card(one, "DA")
    assert [(lot.code, lot.skeins) for lot in card.lots] == [(full.code, "12 skeins")]
    assert card.bundles == (("disc 031", "6 skeins Tarnfield 4-ply"),
                            ("disc 032", "6 skeins Tarnfield 4-ply"))
    assert card.steps == ("heat up, 85 °C, 46 min",)
    assert [words.split(",")[0] for words in card.additions] == ["6.00 g citric acid",
                                                                "0.20 g Y1 lemon"]
    assert card.water[0] == "24.8 L"
    assert any("Acid into water" in words for words in card.cautions)
    assert [code.code for code in read_back(card_pdf(one, "DA"), 203)[0]] == [full.code]
    assert card_pdf(one, "DA") == card_pdf(one, "DA")


def test_with_a_pick_up_the_water_to_add_is_told(studio: Studio) -> None:
    """602 g at 20 : 1 is 12.04 L; at 80 % pick-up the yarn brings 0.48 L."""
    house = Dyehouse(studio)
    row = studio.wind(studio.cone(), 6)
    damp = studio.do(begin_weighing, WeighingIn("bath", house.recipe, (row,), 1_083_600, 800))
    bath = studio.do(into_bath, BathIn((row,), house.recipe, studio.pot, damp),
                     studio.random)["bath"]
    assert bath_card(seen(studio, bath), "DA").water == (
        "11.6 L", "of water to add to a bath of 12.0 L")


def test_a_bath_of_no_written_size_says_so(studio: Studio) -> None:
    studio.dye(studio.wind(studio.cone(), 2))
    card = bath_card(seen(studio, 1), "DA")
    assert card.water[0] == "? L"
    assert card.steps == ()
    assert card.bundles[0][0] == "no disc"


def test_a_bath_that_is_not_there_has_no_card(studio: Studio) -> None:
    with pytest.raises(NotFound):
        seen(studio, 99)
