"""Claims beside the composition: what a blend may not say, and what has to be looked at."""

import pytest

from app.calculations.label_claims import doubtful_claims, refused_claims
from app.calculations.label_composition import composition_for
from app.calculations.markets import market


def refused(fibre: str, at: str = "EU", **said: str) -> list[str]:
    there = market(at)
    made_of = composition_for(fibre, there, "en").shares
    return [one.what for one in refused_claims(places(said), made_of, there)]


def doubted(fibre: str, at: str = "EU", bled: str = "", **said: str) -> list[str]:
    there = market(at)
    made_of = composition_for(fibre, there, "en").shares
    return [one.what for one in doubtful_claims(places(said), made_of, there, bled)]


def places(said: dict[str, str]) -> dict[str, str]:
    return {f"The {place}": words for place, words in said.items()}


@pytest.mark.parametrize("words", ["Pure Wool", "100% wool", "all-merino", "Reine Wolle",
                                   "pure laine", "Nothing but alpaca"])
def test_a_blend_says_nothing_that_means_one_fibre(words: str) -> None:
    for at in ("EU", "UK", "US", "Canada"):
        assert len(refused("80 % wool, 20 % alpaca", at, base=words)) == 1
        assert refused("100 % wool", "EU", base=words) == []


@pytest.mark.parametrize("words", ["Pure Joy", "All the Woolpacks", "Purely Blue", "Call Wool"])
def test_a_name_that_claims_no_fibre_is_let_be(words: str) -> None:
    assert refused("80 % wool, 20 % alpaca", colourway=words) == []


def test_virgin_wool_is_doubted_in_one_fibre_and_refused_in_three() -> None:
    assert doubted("100 % wool", base="Virgin Wool DK") != []
    assert refused("100 % wool", base="Virgin Wool DK") == []
    three = "60 % wool, 20 % silk, 20 % linen"
    assert refused(three, base="Virgin Wool DK") != []
    assert refused(three, "US", base="Virgin Wool DK") == []
    assert refused("20 % wool, 80 % silk", base="Schurwolle DK") != []


@pytest.mark.parametrize(("words", "told"), [
    ("Cashmere Rose", "cashmere"), ("Kashmere Rose", "cashmere"), ("Silque", "silk"),
    ("Merino", "wool"), ("Woodland", ""), ("Button Box", ""), ("Linden", "")])
def test_a_fibre_that_is_not_there_is_heard_in_a_name_in_the_states(words: str, told: str) -> None:
    heard = doubted("100 % cotton", "US", colourway=words)
    assert [told in one for one in heard] == ([True] if told else [])
    assert doubted("100 % cotton", "EU", colourway=words) == []


def test_a_base_named_after_a_hair_needs_its_percent_in_the_states() -> None:
    assert len(refused("100 % wool", "US", base="Alpaca Cloud")) == 1
    assert refused("95 % wool, 5 % alpaca", "US", base="Alpaca Cloud") == []
    assert refused("100 % wool", "EU", base="Alpaca Cloud") == []


def test_a_lot_that_bled_is_not_called_machine_washable() -> None:
    said = doubted("100 % wool", bled="bleeds strongly", care="Machine wash 30 °C.")
    assert said == ["The care says machine wash, and this lot bleeds strongly."]
    assert doubted("100 % wool", care="Machine wash 30 °C.") == []
    assert doubted("100 % wool", bled="bleeds strongly", care="Hand wash 30 °C.") == []


def test_made_in_is_not_said_without_a_look() -> None:
    assert len(doubted("100 % wool", origin="Made in Quernlow")) == 1
    assert len(doubted("100 % wool", "US", origin="Made in USA")) == 1
    assert doubted("100 % wool", "US", origin="Dyed in USA of imported yarn") == []
