"""A colour that was read, as a screen can show it: to look at, never to reckon with.

L*a*b* to X, Y, Z as CIE 15 has it; to a screen as IEC 61966-2-1 (sRGB) has it, from memory. The
white of the lamp becomes the white of the screen, as the eye takes any lamp for white.
"""

from dataclasses import dataclass

from app.calculations.shade import Colour

_WHITE = (0.95047, 1.0, 1.08883)  # D65, 2°
_TO_RED_GREEN_BLUE = (
    (3.2404542, -1.5371385, -0.4985314),
    (-0.9692660, 1.8760108, 0.0415560),
    (0.0556434, -0.2040259, 1.0572252),
)
_HALVINGS = 12
_A_LITTLE = 0.002  # beyond full light, or below none: rounding, not another colour


@dataclass(frozen=True, slots=True)
class OnScreen:
    """`#1B856E`, and whether the screen can show it: else it is the nearest with less chroma."""

    swatch: str
    exact: bool


def on_screen(colour: Colour) -> OnScreen:
    """How a colour is shown; what no screen can show loses chroma and keeps lightness and hue."""
    lightness, a, b = colour.lab
    light = _light(lightness, a, b)
    if _fits(light):
        return OnScreen(_written(light), exact=True)
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = ((middle, high) if _fits(_light(lightness, a * middle, b * middle))
                     else (low, middle))
    return OnScreen(_written(_light(lightness, a * low, b * low)), exact=False)


def _light(lightness: float, a: float, b: float) -> tuple[float, ...]:
    """Red, green and blue light, 0 to 1 where a screen has it."""
    middle = (lightness + 16) / 116
    roots = (middle + a / 500, middle, middle - b / 200)
    xyz = [white * _cubed(root) for white, root in zip(_WHITE, roots, strict=True)]
    return tuple(sum(part * value for part, value in zip(row, xyz, strict=True))
                 for row in _TO_RED_GREEN_BLUE)


def _cubed(root: float) -> float:
    return root**3 if root > 6 / 29 else 3 * (6 / 29) ** 2 * (root - 4 / 29)


def _fits(light: tuple[float, ...]) -> bool:
    return all(-_A_LITTLE <= part <= 1 + _A_LITTLE for part in light)


def _written(light: tuple[float, ...]) -> str:
    return "#" + "".join(f"{round(255 * _bent(min(max(part, 0.0), 1.0))):02X}" for part in light)


def _bent(part: float) -> float:
    return float(12.92 * part if part <= 0.0031308 else 1.055 * part ** (1 / 2.4) - 0.055)
