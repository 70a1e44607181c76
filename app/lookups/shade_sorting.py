"""A colourway on a base: its lots in groups that may be sold together, and how it drifts."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, bindparam, select

from app.calculations.shade import Colour, Lamp, Viewing
from app.calculations.shade_difference import Difference, difference
from app.calculations.shade_groups import shade_groups
from app.calculations.shade_words import USUAL
from app.lookups.lot_lines import LotLine, lot_lines
from app.lookups.shades import lots_read, newest, read_of_lots, read_of_standard
from app.records import DyeLot


@dataclass(frozen=True, slots=True)
class LotGroup:
    """Lots of which every two are within the limit, and what is left of them together."""

    lots: tuple[LotLine, ...]
    worst: float
    """CIEDE2000 of the least alike two, 0 for one lot."""

    @property
    def free(self) -> int:
        """Skeins that may be sold together."""
        return sum(line.left.count for line in self.lots)


@dataclass(frozen=True, slots=True)
class ShadeSorting:
    """Groups as the lots are today: a view, never a property of a lot."""

    limit: float
    viewing: Viewing | None
    groups: tuple[LotGroup, ...]
    fewest: bool
    """Whether it is proven that no fewer groups would do."""
    not_read: tuple[LotLine, ...]
    """Lots with some left that were not read in this light, or by zones only."""


_LOTS = (
    select(DyeLot.id)
    .where(DyeLot.colourway == bindparam("colourway"), DyeLot.base == bindparam("base"),
           DyeLot.struck.is_(None))
)


def shade_sorting(
    connection: Connection, colourway: int, base: int, limit: float = USUAL.same,
) -> ShadeSorting:
    """The lots of a colourway on a base that have some left to sell, sorted by shade."""
    lots = connection.execute(_LOTS, {"colourway": colourway, "base": base}).scalars()
    lines = {line.lot: line for line in lot_lines(connection, lots) if line.left.count}
    colours = {lot: newest(read) for lot, read in read_of_lots(connection, lines).items()}
    viewing = _usual(viewing for cards in colours.values() for viewing, zone in cards if not zone)
    read = {lot: cards[viewing, ""] for lot, cards in colours.items()
            if viewing and (viewing, "") in cards}
    names = {f"{lot:09}": lot for lot in read}
    found = shade_groups({name: read[lot] for name, lot in names.items()}, limit)
    groups = tuple(LotGroup(tuple(lines[names[name]] for name in group.lots), group.worst)
                   for group in found.groups)
    return ShadeSorting(
        limit, viewing, tuple(sorted(groups, key=lambda group: -group.free)), found.fewest,
        tuple(line for lot, line in lines.items() if lot not in read))


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
