"""The inspecting bench in telling states, as poses for the pictures."""

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.window.pictures import Hands

LOT = "2615YX1"


def _with(*keys: str) -> "Callable[[Hands], None]":
    def done(hands: "Hands") -> None:
        hands.scan(LOT)
        hands.press(*keys)
    return done


def _by_swatch(hands: "Hands") -> None:
    hands.scan(LOT)
    hands.window.floor.bench().card.swatch_key.click()


BY_THE_WINDOW: "dict[str, Callable[[Hands], None]]" = {
    "inspecting-empty": lambda _hands: None,
    "inspecting": _with(),
    "inspecting-reading": _with("F7"),
    "inspecting-eye": _with("Alt+E"),
    "inspecting-swatch": _by_swatch,
    "inspecting-seconds": _with("F5"),
    "inspecting-shades": _with("F10"),
}
