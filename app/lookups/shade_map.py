"""A colourway on a base as its lots were read: the newest of them, and which go together."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, bindparam, select

from app.calculations.shade import Colour, Viewing
from app.calculations.shade_groups import Group, shade_groups
from app.calculations.shade_words import USUAL, Bands
from app.lookups.lot_lines import lot_line, lot_lines
from app.lookups.shade_bands import shade_bands
from app.lookups.shade_drift import DriftStep, drift_of
from app.records import DyeLot

SHOWN = 24
"""Newest lots that were read: more make no picture."""
_LOOKED_AT = 60
BETWEEN = 1.0
"""A limit between the studio's own; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Together:
    """Lots, by their places in the map from 0, of which every two are within the limit."""

    lots: tuple[int, ...]
    worst: float
    """CIEDE2000 of the least alike two, 0 for one lot."""


@dataclass(frozen=True, slots=True)
class ShadeMap:
    """Lots as they were dyed, in the light in which most were read, with the groups they make."""

    lot: int
    colourway: str
    base: str
    limit: float
    lots: tuple[DriftStep, ...]
    left: tuple[int, ...]
    """What is left to sell of each lot."""
    groups: tuple[Together, ...]
    fewest: bool
    """Whether it is proven that no fewer groups would do."""
    older: int
    """Lots that were read and are not shown."""
    not_read: tuple[str, ...]
    """Lots with some left that were not read in this light."""
    bands: Bands = USUAL
    """How far apart the studio says what."""

    @property
    def limits(self) -> tuple[float, ...]:
        """Within which lots may be grouped, from what looks the same to alternate rows."""
        return _limits(self.lots, self.bands)

    @property
    def viewing(self) -> Viewing | None:
        """How they were looked at."""
        return self.lots[0].colour.viewing if self.lots else None

    @property
    def standard(self) -> Colour | None:
        """The standard, where it was read alike."""
        apart = self.lots[-1].from_standard if self.lots else None
        return None if apart is None else apart.standard

    def group_of(self, place: int) -> int:
        """The group of the lot in this place, from 0."""
        return next(n for n, group in enumerate(self.groups) if place in group.lots)


_KINDRED = (
    select(DyeLot.id)
    .where(DyeLot.colourway == bindparam("colourway"), DyeLot.base == bindparam("base"),
           DyeLot.struck.is_(None))
    .order_by(DyeLot.id.desc()).limit(_LOOKED_AT)
)


def shade_map(connection: Connection, lot: int, limit: float | None = None) -> ShadeMap:
    """The colourway and base of this lot, with groups within the limit (CIEDE2000).

    Where none is said it is that of what looks the same, which is tighter in greys.
    """
    colourway, base = colourway_of(connection, lot)
    steps = drift_of(connection, colourway, base)
    shown = steps[-SHOWN:]
    bands = shade_bands(connection)
    limit = limit or _limits(shown, bands)[0]
    found = shade_groups({f"{n:03}": step.colour for n, step in enumerate(shown)}, limit)
    kindred = connection.execute(_KINDRED, {"colourway": colourway, "base": base}).scalars().all()
    lines = {line.lot: line for line in lot_lines(
        connection, {*kindred, *(step.lot for step in shown)})}
    line = lot_line(connection, lot)
    return ShadeMap(
        lot, line.colourway, line.base, limit, shown,
        tuple(lines[step.lot].left.count for step in shown), tuple(map(_together, found.groups)),
        found.fewest, len(steps) - len(shown),
        tuple(line.shown for line in lines.values()
              if line.left.count and line.lot not in {step.lot for step in steps}), bands)


def colourway_of(connection: Connection, lot: int) -> tuple[int, int]:
    """A lot's colourway and base."""
    row = connection.execute(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id == lot)).one()
    return row.colourway, row.base


def _limits(lots: Sequence[DriftStep], bands: Bands) -> tuple[float, ...]:
    grey = any(step.colour.chroma < bands.grey_below for step in lots)
    first = bands.same_in_greys if grey else bands.same
    return tuple(limit for limit in (first, BETWEEN, bands.two_rows)
                 if limit != BETWEEN or first < limit < bands.two_rows)


def _together(group: Group) -> Together:
    return Together(tuple(int(name) for name in group.lots), group.worst)
