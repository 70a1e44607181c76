"""Cards for tests: a lot, a standard or a cone is read dry in daylight at four places."""

from typing import Any

from app.calculations.shade import Colour, Viewing
from app.calculations.shade_difference import Lab
from app.work.inspecting import ShadeIn, read_shade
from tests.calculations.shades import DRY
from tests.makers import Studio


def read_lot(studio: Studio, lot: int, lab: Lab, at: Viewing = DRY, **more: Any) -> None:
    studio.do(read_shade, ShadeIn(Colour(*lab, at, more.pop("readings", 4),
                                         more.pop("spread", None)), lot=lot, **more))


def read_standard(
    studio: Studio, lab: Lab, colourway: int = 1, base: int = 1, at: Viewing = DRY
) -> None:
    studio.do(read_shade, ShadeIn(Colour(*lab, at, 4), standard=(colourway, base)))


def dyed(studio: Studio, count: int = 2) -> int:
    """A lot in a pot, and lifted out of no other trouble."""
    return studio.dye(studio.wind(studio.cone(), count))
