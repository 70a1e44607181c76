"""A colour as an instrument read it, and when two colours may be held against each other."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum, StrEnum
from math import hypot, isfinite

from app.problems import BadInput

MOST_CHROMA = 200.0  # no dyed yarn comes near; beyond it a figure was mistyped


class Lamp(StrEnum):
    """The light a colour is reckoned for, by its CIE name."""

    D65 = "D65"
    D50 = "D50"
    A = "A"
    F2 = "F2"
    F11 = "F11"
    LED_B3 = "LED-B3"


class Observer(IntEnum):
    """The CIE standard observer, by the angle of view in degrees."""

    TWO = 2
    TEN = 10


@dataclass(frozen=True, slots=True)
class Viewing:
    """How a colour was looked at. Wet yarn reads 5 to 10 L* darker, so wet is never left unsaid."""

    lamp: Lamp
    observer: Observer
    wet: bool

    def __str__(self) -> str:
        return f"{self.lamp}, {self.observer}°, {'wet' if self.wet else 'dry'}"


@dataclass(frozen=True, slots=True)
class Colour:
    """The mean of an instrument's readings on one card: L*, a*, b* (CIE 1976).

    There is no way to make one of a photograph: a telephone's picture is no measurement. It may
    help to put lots in order when a grey card and a known lot's card are in it, but it never
    yields a difference. `spread` is the largest CIEDE2000 between two of the readings, none
    where it was not kept.
    """

    lightness: float
    a: float
    b: float
    viewing: Viewing
    readings: int
    spread: float | None = None

    def __post_init__(self) -> None:
        _between("L*", self.lightness, 0, 100)
        _between("a*", self.a, -MOST_CHROMA, MOST_CHROMA)
        _between("b*", self.b, -MOST_CHROMA, MOST_CHROMA)
        if self.readings < 1:
            raise BadInput(
                f"A colour is given as the mean of {self.readings} readings, and it must be "
                "of 1 or more.",
                "Read the card again; nothing was reckoned from it.",
            )
        if self.spread is not None:
            _between("spread of the readings", self.spread, 0, MOST_CHROMA)

    @property
    def lab(self) -> tuple[float, float, float]:
        """L*, a* and b* together."""
        return self.lightness, self.a, self.b

    @property
    def chroma(self) -> float:
        """C*: how far the colour is from grey."""
        return hypot(self.a, self.b)


def must_be_comparable(viewings: Iterable[Viewing]) -> None:
    """Refuses wet against dry, and readings of different lamps or observers."""
    seen = sorted(set(viewings), key=str)
    if len({one.wet for one in seen}) > 1:
        raise BadInput(
            "One colour was read wet and one dry; wet yarn is 5 to 10 L* darker, so nothing "
            "was compared.",
            "Let the wet card dry and rest for 2 hours, and read it again.",
        )
    if len(seen) > 1:
        raise BadInput(
            f"The colours were read as {' and as '.join(map(str, seen))}; nothing was compared.",
            "Read both under the same lamp and for the same observer.",
        )


def _between(what: str, value: float, least: float, most: float) -> None:
    if not (isfinite(value) and least <= value <= most):
        raise BadInput(
            f"The {what} is given as {value}, and it must be between {least:g} and {most:g}.",
            "Read the card again; nothing was reckoned from it.",
        )
