"""What a colour may be, and which two may be compared."""

import ast
from pathlib import Path

import pytest

import app.calculations
from app.calculations.shade import Colour, Lamp, Observer, Viewing, must_be_comparable
from app.problems import BadInput
from tests.calculations.shades import DRY, SHOP, WET, colour


def test_a_colour_says_its_chroma_and_how_it_was_looked_at() -> None:
    assert colour(50, 3, 4).chroma == 5
    assert colour(50, 3, 4).lab == (50, 3, 4)
    assert str(WET) == "D65, 2°, wet"


@pytest.mark.parametrize(
    ("lab", "said"),
    [
        ((101, 0, 0), "L*"), ((-1, 0, 0), "L*"), ((50, 366, 0), "a*"), ((50, 0, -366), "b*"),
        ((float("nan"), 0, 0), "L*"), ((50, float("inf"), 0), "a*"),
    ],
)
def test_what_cannot_be_a_colour_of_yarn_is_refused_by_name(
    lab: tuple[float, float, float], said: str
) -> None:
    with pytest.raises(BadInput) as refused:
        colour(*lab)
    assert refused.value.what.startswith(f"The {said} is given as ")
    assert refused.value.next_step


def test_a_colour_is_of_one_reading_at_least_and_its_spread_not_below_nothing() -> None:
    with pytest.raises(BadInput, match="mean of 0 readings"):
        colour(50, 0, 0, readings=0)
    with pytest.raises(BadInput, match="spread of the readings"):
        Colour(50, 0, 0, DRY, 4, spread=-0.1)


def test_wet_is_never_held_against_dry() -> None:
    with pytest.raises(BadInput) as refused:
        must_be_comparable([DRY, WET])
    assert "one dry" in refused.value.what
    assert "dry and rest for 2 hours" in refused.value.next_step


@pytest.mark.parametrize("other", [SHOP, Viewing(Lamp.D65, Observer.TEN, wet=False)])
def test_other_lamps_and_observers_are_not_held_against_one_another(other: Viewing) -> None:
    with pytest.raises(BadInput) as refused:
        must_be_comparable([DRY, other])
    assert str(DRY) in refused.value.what
    assert str(other) in refused.value.what


def test_alike_is_alike_and_nothing_is_alike() -> None:
    must_be_comparable([DRY, DRY])
    must_be_comparable([])


def test_only_an_instruments_readings_ever_become_a_colour() -> None:
    """No function of the arithmetic turns anything else, such as a picture, into a colour."""
    folder = Path(str(app.calculations.__file__)).parent
    makers = {
        node.name
        for path in folder.glob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef)
        and any(
            isinstance(one, ast.Call) and isinstance(one.func, ast.Name) and one.func.id == "Colour"
            for one in ast.walk(node)
        )
    }
    assert makers == {"mean_of"}
