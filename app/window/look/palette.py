"""The greys, the inks and the one red: only yarn has colour, so all else is R = G = B."""

from dataclasses import dataclass

HOLD_RED = "#B3001B"


@dataclass(frozen=True, slots=True)
class Palette:
    """Colours of one surround, named for what they are used on."""

    surround: str
    paper: str
    in_hand: str
    foot: str
    ink: str
    second_ink: str
    surround_ink: str  # second ink where the ground is the surround
    edge: str  # of fields and keys: 3 : 1 on every ground
    line: str  # decoration only
    head: str
    head_ink: str
    head_second_ink: str
    hold: str = HOLD_RED
    on_hold: str = "#FFFFFF"
    hold_below: str = HOLD_RED  # the outline and word on what lies below a hold
    mount: str = "#F6F6F6"  # the light patch a swatch lies on, by day and in the evening


DAY = Palette(
    surround="#CFCFCF",  # near L* 83, a neutral surround for judging colour (ISO 3664)
    paper="#F6F6F6",
    in_hand="#FFFFFF",
    foot="#E6E6E6",
    ink="#161616",
    second_ink="#5A5A5A",
    surround_ink="#484848",
    edge="#767676",
    line="#DDDDDD",
    head="#1E1E1E",
    head_ink="#F6F6F6",
    head_second_ink="#BDBDBD",
)

EVENING = Palette(
    surround="#2E2E2E",
    paper="#3C3C3C",
    in_hand="#464646",
    foot="#363636",
    ink="#F2F2F2",
    second_ink="#C8C8C8",
    surround_ink="#C8C8C8",
    edge="#A6A6A6",
    line="#565656",
    head="#161616",
    head_ink="#F2F2F2",
    head_second_ink="#BDBDBD",
    hold_below="#FFFFFF",
)


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def ink_on(colour: str) -> str:
    """Black or white, whichever is read better on this colour."""
    return max(("#161616", "#FFFFFF"), key=lambda ink: contrast(ink, colour))


def _luminance(colour: str) -> float:
    red, green, blue = (_linear(int(colour[n : n + 2], 16) / 255) for n in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)
