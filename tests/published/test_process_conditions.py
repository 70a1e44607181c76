"""Published dyeing procedures: our desk finds nothing odd about those that were read.

Textbook and studio procedures, each with its source in the table; a plausibility check only.
"""

from decimal import Decimal

import pytest

from app.calculations.bath import liquor_l
from app.calculations.recipe_doubts import RATIOS, doubts_about
from app.calculations.scaling import Component, standard_g
from app.calculations.stock import powder_for_stock_g
from tests.published.published_values import rows_of

D = Decimal
ROWS = {row["case"]: row for row in rows_of("process_conditions")}
TEXTBOOK = "Acid (milling) dyes on wool, textbook procedure"
STUDIO = "Studio acid dyeing"
DEPTHS = "Depth of shade words"
BY_DEPTH = "Auxiliaries by depth (light/medium/strong)"


def test_the_ratios_of_the_published_baths_are_within_ours() -> None:
    textbook = ROWS[TEXTBOOK]["conditions"]
    assert "liquor 1:30 (1:50 for 1 % shade)" in textbook
    assert "liquor 40:1" in ROWS[STUDIO]["conditions"]
    for ratio in (30, 40, 50):
        assert doubts_about([], D(ratio)) == ()
    assert RATIOS[1] == 50


@pytest.mark.parametrize("percent", ["0.5", "1", "2", "4"])
def test_the_published_depths_of_shade_are_not_odd(percent: str) -> None:
    assert ROWS[DEPTHS]["conditions"] == "0.5 % light, 1 % medium, 2-4 % strong"
    assert doubts_about([Component("dye", D(percent))]) == ()


def test_the_textbook_bath_for_a_kilogram_is_100_g_of_salt_10_g_of_acid_and_30_l() -> None:
    assert ROWS[TEXTBOOK]["conditions"].startswith("10 % Glauber salt + 1 % acetic acid owf")
    recipe = (Component("Glauber salt", D(10)), Component("acetic acid", D(1)))
    assert [standard_g(one, D(1000)) for one in recipe] == [100, 10]
    assert liquor_l(D(1000), D(30)) == 30


def test_the_dye_makers_assistants_grow_with_the_depth() -> None:
    said = ROWS[BY_DEPTH]["conditions"]
    assert "citric acid 1 / 1.5 / 2 % owf" in said
    citric = [Component("citric acid", D(one)) for one in said.split()[2:7:2]]
    assert [standard_g(one, D(602)) for one in citric] == [D("6.02"), D("9.03"), D("12.04")]


def test_the_studios_1_percent_stock_is_10_g_a_litre_as_ours_is() -> None:
    assert "1 % stock 10 g/L" in ROWS[STUDIO]["conditions"]
    assert powder_for_stock_g(D(1000), D(1)) == 10
