"""How much of the difference between two undyed cones is still seen after the dye.

Kubelka and Munk's K/S, with the dye's share added to that of the wool, reckoned in the three broad
bands X, Y, Z instead of a spectrum: an estimate that shows which cones go to deep shades, never
a measurement. CIELAB and its white points after CIE 15, the two-constant theory after Kubelka and
Munk 1931, both from memory.
"""

from math import sqrt

from app.calculations.shade import Colour, must_be_comparable
from app.calculations.shade_difference import Lab, ciede2000

_KNEE = 6 / 29
_DARKEST = 0.0001  # no yarn throws back less


def seen_through_dye(usual_ecru: Colour, other_ecru: Colour, dyed: Colour) -> float:
    """The CIEDE2000 to expect between two cones in one bath; `dyed` is the usual cone's colour.

    A yellowish cone shows in a pale pink and hardly in a navy.
    """
    must_be_comparable((usual_ecru.viewing, other_ecru.viewing, dyed.viewing))
    usual_dyed, other_dyed = [], []
    for usual, other, dye in zip(
        _bands(usual_ecru.lab), _bands(other_ecru.lab), _bands(dyed.lab), strict=True
    ):
        share = max(_depth(dye) - _depth(usual), 0)
        usual_dyed.append(_reflectance(_depth(usual) + share))
        other_dyed.append(_reflectance(_depth(other) + share))
    return ciede2000(_lab(*usual_dyed), _lab(*other_dyed))


def _depth(reflectance: float) -> float:
    """K/S of a thick layer of yarn."""
    return (1 - reflectance) ** 2 / (2 * reflectance)


def _reflectance(depth: float) -> float:
    return 1 + depth - sqrt(depth**2 + 2 * depth)


def _bands(lab: Lab) -> tuple[float, float, float]:
    """X, Y and Z as shares of the white's."""
    middle = (lab[0] + 16) / 116
    x, y, z = middle + lab[1] / 500, middle, middle - lab[2] / 200
    return _from_root(x), _from_root(y), _from_root(z)


def _lab(x: float, y: float, z: float) -> Lab:
    x, y, z = _root(x), _root(y), _root(z)
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def _root(share: float) -> float:
    return share ** (1 / 3) if share > _KNEE**3 else share / (3 * _KNEE**2) + 4 / 29


def _from_root(root: float) -> float:
    share = root**3 if root > _KNEE else 3 * _KNEE**2 * (root - 4 / 29)
    return min(max(share, _DARKEST), 1.0)
