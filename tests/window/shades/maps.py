"""Maps of lots for tests of the pictures, without a book."""

from datetime import UTC, datetime

from app.calculations.shade_difference import difference
from app.calculations.shade_groups import shade_groups
from app.lookups.shade_drift import DriftStep
from app.lookups.shade_map import ShadeMap, Together
from tests.calculations.shades import TEAL

CODES = [f"26·15·{first}{second}{third}" for first in "HKM" for second in "RTW"
         for third in "XY3"]


def a_map(colours=None, limit=1.0, standard=TEAL["P"], hand=0, left=4):
    """Lots of these colours, eight teal ones where none are said, the first of them in hand."""
    colours = list(TEAL.values()) if colours is None else colours
    steps, last = [], None
    for number, colour in enumerate(colours):
        steps.append(DriftStep(
            number + 1, CODES[number], datetime(2026, 4, 6, tzinfo=UTC), colour,
            difference(standard, colour) if standard else None,
            difference(last, colour) if last else None))
        last = colour
    found = shade_groups({f"{n:03}": colour for n, colour in enumerate(colours)}, limit)
    groups = tuple(Together(tuple(int(name) for name in group.lots), group.worst)
                   for group in found.groups)
    return ShadeMap(hand + 1, "Sluice Keeper’s Glove", "Tarnfield 4-ply", limit, tuple(steps),
                    (left,) * len(steps), groups, found.fewest, 0, ())


def crowded(lots=24):
    """So many lots that lie close together, as those of one colourway do."""
    from random import Random

    from tests.calculations.shades import colour

    chance = Random(3)
    return a_map([colour(48.3 + chance.gauss(0, 0.3), -36.6 + chance.gauss(0, 0.5),
                         3.3 + chance.gauss(0, 0.5)) for _ in range(lots)], 0.8)
