"""A photo is no measurement: no way leads from a picture to a difference of colours."""

import ast
import importlib
import inspect
import re
from pathlib import Path

import pytest

from app.calculations.shade import Colour
from app.records.shades import CAME
from tests.calculations.shades import DRY

ROOT = Path(__file__).resolve().parents[2]
RECKONERS = ("app.calculations.shade_difference", "app.calculations.nearest_shades",
             "app.calculations.grey_scales", "app.calculations.cards",
             "app.calculations.shade_groups", "app.calculations.fewest_lots")
READS_A_PICTURE = re.compile(
    r"\bPIL\b|\bQImageReader\b|\.pixelColor\(|\.pixel\(|\bfromData\(|\bimport (?:.*\b)?Photo\b|"
    r"\bpixels\(|\bnumpy_image\b")
MAKES_A_COLOUR = re.compile(r"\bColour\(|\bmean_of\(|\bShadeIn\(")


def modules() -> dict[str, str]:
    return {path.relative_to(ROOT).as_posix(): path.read_text(encoding="utf-8")
            for path in sorted((ROOT / "app").rglob("*.py")) if "_installed" not in path.parts}


def imports(text: str) -> set[str]:
    return {node.module for node in ast.walk(ast.parse(text))
            if isinstance(node, ast.ImportFrom) and node.module}


def test_no_module_that_reads_pictures_reckons_with_colours_or_makes_one() -> None:
    readers = {name: text for name, text in modules().items() if READS_A_PICTURE.search(text)}
    assert "app/documents/proof.py" in readers, "the check itself must see who reads pictures"
    assert {name: found for name, text in readers.items()
            if (found := imports(text) & set(RECKONERS)) or MAKES_A_COLOUR.search(text)} == {}


def test_only_readings_make_a_colour() -> None:
    makers = {name for name, text in modules().items() if MAKES_A_COLOUR.search(text)
              and not name.startswith(("app/calculations/", "app/window/", "app/demo/"))}
    assert makers <= {"app/lookups/shades.py", "app/lookups/nearest_lots.py",
                      "app/lookups/ecru.py", "app/exchange/shades_in.py"}
    assert CAME == ("typed", "csv", "cgats")


@pytest.mark.parametrize("name", RECKONERS)
def test_what_reckons_a_difference_takes_colours_alone(name: str) -> None:
    module = importlib.import_module(name)
    for function in vars(module).values():
        if inspect.isfunction(function) and function.__module__ == name:
            said = " ".join(str(one.annotation) for one in
                            inspect.signature(function).parameters.values())
            assert not re.search(r"bytes|Path|Image|Photo", said), function.__name__


@pytest.mark.parametrize("picture", [b"\x89PNG", "photo.jpg", None, [1, 2, 3]])
def test_a_colour_cannot_be_made_of_a_picture(picture: object) -> None:
    with pytest.raises(TypeError):
        Colour(picture, 0, 0, DRY, 4)  # type: ignore[arg-type]
