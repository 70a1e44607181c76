"""What a studio may choose of a layout, and the sizes under which nothing is set."""

from dataclasses import dataclass, replace
from typing import Any

from app.documents.square_codes import MODULE_MM
from app.documents.tag_words import TagWords
from app.problems import Refused

LEAST_LOT_MM = 4.0  # what is read at arm's length; common practice, no source
LEAST_PT = 6.0
MAY_BE_LEFT_OUT = ("care", "origin", "ounces", "knit", "differ")
"""The maker and the address, what it is, its net contents and its lot stand on every tag."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """How the tags of one stock are set, where their layout leaves a choice.

    `text` is a factor on the sizes of all words but the lot; `lot_mm` is the height of the lot's
    digits, 0 as the layout has it; `module_mm` is the least side of one module of the square code;
    `leaves_out` names words that are not wanted there though they would fit.
    """

    text: float = 1.0
    lot_mm: float = 0.0
    module_mm: float = MODULE_MM
    leaves_out: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.module_mm < MODULE_MM:
            raise _too_small(
                f"modules of {self.module_mm:g} mm make a square code that readers miss",
                f"The least is {MODULE_MM:g} mm.")
        if self.lot_mm and self.lot_mm < LEAST_LOT_MM:
            raise _too_small(f"a lot {self.lot_mm:g} mm high cannot be read at arm's length",
                             f"The least is {LEAST_LOT_MM:g} mm.")
        if strange := [one for one in self.leaves_out if one not in MAY_BE_LEFT_OUT]:
            raise ValueError(f"always on a tag: {strange}")

    def points(self, of_layout: float) -> float:
        """The size of words that a layout sets in so many points; refused under the least."""
        points = round(of_layout * self.text, 2)
        if points < LEAST_PT:
            raise _too_small(
                f"text at {self.text * 100:.0f} % would set its smallest words in {points:g} pt",
                f"The least is {LEAST_PT:g} pt: choose {-(-LEAST_PT * 100 // of_layout):.0f} % or "
                "more.")
        return points

    def wanted(self, words: TagWords) -> TagWords:
        """The words without those left out; what the market's law asks for stays."""
        by_law = {"ounces": words.ounces_by_law, "origin": words.origin_by_law}
        gone: dict[str, Any] = {one: "" for one in self.leaves_out if not by_law.get(one, False)}
        return replace(words, **gone)


PLAIN = Choices()


def _too_small(what: str, least: str) -> Refused:
    return Refused(f"This is not kept, because {what}.", least)
