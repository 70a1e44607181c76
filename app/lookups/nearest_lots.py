"""The lots nearest to a colour on a base, out of all that were ever read: those with some left."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from sqlalchemy import Connection, bindparam, select

from app.calculations.shade import Colour
from app.calculations.shade_difference import Difference, difference
from app.calculations.shade_words import Judged, judge
from app.lookups.lot_lines import LotLine, lot_lines
from app.lookups.shade_bands import shade_bands
from app.lookups.shades import MILLI, newest, read_of_lots
from app.records import DyeLot, ShadeReading
from app.store.dialect import among, listed

ANY_USE_WITHIN = 4.0
"""Beyond it is another colour."""
MOST = 12
FARTHEST = 500.0
"""No two colours lie farther apart in a* or b*."""
_LOOKED_AT_ONCE = 100


@dataclass(frozen=True, slots=True)
class NearLot:
    """A lot with some left to sell, how far its card is from the colour, and what that means."""

    line: LotLine
    difference: Difference
    judged: Judged


_NEAR = (
    select(ShadeReading.lot, ShadeReading.l_milli, ShadeReading.a_milli, ShadeReading.b_milli)
    .where(ShadeReading.l_milli.between(bindparam("dark"), bindparam("light")),
           ShadeReading.a_milli.between(bindparam("green"), bindparam("red")),
           ShadeReading.b_milli.between(bindparam("blue"), bindparam("yellow")),
           ShadeReading.lot.is_not(None), ShadeReading.zone == "",
           ShadeReading.lamp == bindparam("lamp"), ShadeReading.observer == bindparam("observer"),
           ShadeReading.wet == bindparam("wet"), ShadeReading.struck.is_(None))
)
_ON_BASE = (
    select(DyeLot.id).where(among(DyeLot.id, "ids"), DyeLot.base == bindparam("base"),
                            DyeLot.struck.is_(None))
)


def nearest_lots(
    connection: Connection, colour: Colour, base: int, within: float = ANY_USE_WITHIN,
    most: int = MOST, but: Collection[int] = (),
) -> tuple[NearLot, ...]:
    """Those of this base that were looked at as the colour was, nearest first.

    A colour is only ever what an instrument read; a lot counts by its newest card. Lots of which
    nothing may be sold now are passed over, and so are those in `but`.
    """
    found: list[NearLot] = []
    bands = shade_bands(connection)
    for some in _ranked(connection, colour, base, within, but):
        left = {line.lot: line for line in lot_lines(connection, some) if line.left.count}
        for lot, other in some.items():
            if lot in left:
                apart = difference(colour, other)
                found.append(NearLot(left[lot], apart, judge(apart, bands)))
        if len(found) >= most:
            break
    return tuple(found[:most])


def _ranked(
    connection: Connection, colour: Colour, base: int, within: float, but: Collection[int]
) -> Iterator[dict[int, Colour]]:
    """Lots with their colours, nearest first, so many at once."""
    from app.calculations.nearest_shades import nearest, shades  # brings numpy, not at start-up

    lots = _with_a_card_near(connection, colour, base, within) - set(but)
    cards = {lot: newest(read) for lot, read in read_of_lots(connection, sorted(lots)).items()}
    looked = colour.viewing, ""
    read = [(lot, of[looked]) for lot, of in cards.items() if looked in of]
    table = shades((one.lab for _, one in read), colour.viewing)
    near = [read[one.place] for one in nearest(colour, table, within)]
    for first in range(0, len(near), _LOOKED_AT_ONCE):
        yield dict(near[first:first + _LOOKED_AT_ONCE])


def _with_a_card_near(
    connection: Connection, colour: Colour, base: int, within: float
) -> set[int]:
    """Lots with a card that is near enough; their newest card may be another."""
    from app.calculations.nearest_shades import box, nearest, shades

    lighter, sideways = (round(min(far, FARTHEST) * MILLI) for far in box(colour, within))
    lightness, a, b = (round(value * MILLI) for value in colour.lab)
    viewing = colour.viewing
    rows = connection.execute(_NEAR, {
        "dark": lightness - lighter, "light": lightness + lighter, "green": a - sideways,
        "red": a + sideways, "blue": b - sideways, "yellow": b + sideways,
        "lamp": viewing.lamp, "observer": int(viewing.observer), "wet": int(viewing.wet)}).all()
    table = shades(((l_milli / MILLI, a_milli / MILLI, b_milli / MILLI)
                    for _, l_milli, a_milli, b_milli in rows), viewing)
    near = {rows[one.place][0] for one in nearest(colour, table, within)}
    return set(connection.execute(
        _ON_BASE, {"ids": listed(lot for lot in near if lot), "base": base}).scalars())
