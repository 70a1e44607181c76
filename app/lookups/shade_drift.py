"""How the lots of a colourway on a base drift, in the order of dyeing."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection

from app.calculations.shade import Colour, Lamp, Viewing
from app.calculations.shade_difference import Difference, difference
from app.lookups.lot_lines import lot_lines
from app.lookups.shades import lots_read, newest, read_of_lots, read_of_standard


@dataclass(frozen=True, slots=True)
class DriftStep:
    """One lot of a colourway in the order of dyeing: from the standard, and from the last lot."""

    lot: int
    code: str
    dyed: datetime | None
    colour: Colour
    from_standard: Difference | None
    from_last: Difference | None


def drift_of(connection: Connection, colourway: int, base: int) -> tuple[DriftStep, ...]:
    """All lots that were read in the usual light, as they were dyed."""
    read = read_of_lots(connection, lots_read(connection, colourway, base))
    cards = {lot: newest(of) for lot, of in sorted(read.items())}
    standard = newest(read_of_standard(connection, colourway, base))
    viewing = _usual([*(viewing for viewing, zone in standard if not zone),
                      *(viewing for of in cards.values() for viewing, zone in of if not zone)])
    if viewing is None:
        return ()
    colours = {lot: of[viewing, ""] for lot, of in cards.items() if (viewing, "") in of}
    lines = {line.lot: line for line in lot_lines(connection, colours)}
    kept, last, steps = standard.get((viewing, "")), None, []
    for lot, colour in colours.items():
        steps.append(DriftStep(lot, lines[lot].shown, lines[lot].dyed, colour,
                               _apart(kept, colour), _apart(last, colour)))
        last = colour
    return tuple(steps)


def _apart(standard: Colour | None, other: Colour) -> Difference | None:
    return None if standard is None else difference(standard, other)


def _usual(viewings: Iterable[Viewing]) -> Viewing | None:
    """In which most were read; of as many, daylight, and dry."""
    counted = Counter(viewings)
    lamps = list(Lamp)
    return min(counted, key=lambda one: (-counted[one], one.wet, lamps.index(one.lamp),
                                         one.observer), default=None)
