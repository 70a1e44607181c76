"""A cone's ecru against the other cones of its base: in which colourways it would be seen."""

from dataclasses import dataclass
from statistics import fmean

from sqlalchemy import Connection, select

from app.calculations.ecru_through_dye import seen_through_dye
from app.calculations.shade import Colour, Viewing
from app.calculations.shade_difference import Difference, difference
from app.lookups.shades import newest, read_of_cone, read_of_standard
from app.records import BaseVersion, Colourway, Cone, ShadeReading


@dataclass(frozen=True, slots=True)
class SeenIn:
    """A colourway, and how far the cone is to be expected from the usual ones in it.

    An estimate, never a measurement.
    """

    colourway: int
    name: str
    expected: float


@dataclass(frozen=True, slots=True)
class Ecru:
    """A cone against the mean of the other cones that were read alike."""

    cones: int
    undyed: Difference
    seen_in: tuple[SeenIn, ...]
    """Where it is seen the least first: there it belongs."""


def ecru_of(connection: Connection, cone: int) -> Ecru | None:
    """None where this cone was not read, or no other cone of its base was read alike."""
    base = connection.execute(
        select(BaseVersion.base).join(Cone, Cone.base_version == BaseVersion.id)
        .where(Cone.id == cone)).scalar_one()
    card = next((colour for (_, zone), colour in newest(read_of_cone(connection, cone)).items()
                 if not zone), None)
    if card is None:
        return None
    others = [colour for other in _read(connection, base, cone)
              if (colour := newest(read_of_cone(connection, other)).get((card.viewing, "")))]
    if not others:
        return None
    lightness, a, b = (fmean(values) for values in zip(*(one.lab for one in others), strict=True))
    usual = Colour(lightness, a, b, card.viewing, sum(one.readings for one in others))
    return Ecru(len(others), difference(usual, card),
                _seen_in(connection, base, usual, card, card.viewing))


def _seen_in(
    connection: Connection, base: int, usual: Colour, card: Colour, viewing: Viewing
) -> tuple[SeenIn, ...]:
    rows = connection.execute(
        select(Colourway.id, Colourway.name).distinct()
        .join(ShadeReading, ShadeReading.colourway == Colourway.id)
        .where(ShadeReading.base == base, ShadeReading.struck.is_(None),
               Colourway.struck.is_(None)).order_by(Colourway.id)).all()
    found = [
        SeenIn(row.id, row.name, seen_through_dye(usual, card, dyed)) for row in rows
        if (dyed := newest(read_of_standard(connection, row.id, base)).get((viewing, "")))]
    return tuple(sorted(found, key=lambda one: one.expected))


def _read(connection: Connection, base: int, but: int) -> list[int]:
    """Other cones of the base that were read."""
    return [cone for (cone,) in connection.execute(
        select(Cone.id).distinct().join(ShadeReading, ShadeReading.cone == Cone.id)
        .join(BaseVersion, BaseVersion.id == Cone.base_version)
        .where(BaseVersion.base == base, Cone.id != but, ShadeReading.struck.is_(None),
               Cone.struck.is_(None)).order_by(Cone.id))]
