"""Chance: named codes are drawn for their own bath and for no other."""

import pytest

from app.calculations.code_drawing import draw_lot_code
from app.demo.chance import Chance


def test_a_named_code_is_drawn_and_its_check_comes_of_the_grammar() -> None:
    chance = Chance(1, ["2615R6F"])
    chance.will_draw(["2615R6F"])
    assert draw_lot_code(2026, 15, [], chance).text == "2615R6F"


def test_nobody_else_gets_a_code_that_is_named() -> None:
    named = ["2615R6F", "2614T26"]
    drawn: list[str] = []
    chance = Chance(1, named)
    for _ in range(140):
        drawn.append(draw_lot_code(2026, 15, drawn, chance).text)
    assert {code[4:6] for code in drawn}.isdisjoint({"R6", "T2"})


def test_a_named_code_that_was_given_already_is_a_fault_and_not_another_code() -> None:
    chance = Chance(1, ["2615R6F"])
    chance.will_draw(["2615R6F"])
    with pytest.raises(LookupError, match="R6 is not among what may be drawn"):
        draw_lot_code(2026, 15, ["2615R6F"], chance)


def test_the_same_seed_draws_the_same() -> None:
    first, second = (draw_lot_code(2026, 15, [], Chance(seed)).text for seed in (5, 5))
    assert first == second
