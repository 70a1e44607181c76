"""Jars that were weighed against their lines: a pair of opposite gaps names the wrong jar."""

from decimal import Decimal

from sqlalchemy import Connection

from app.calculations.jar_balance import JarGap, Use, WrongJar, wrong_jars
from app.lookups.jars import gaps, jar_of, lots_by_line

_MG = Decimal(1000)


def jars_that_were_swapped(connection: Connection) -> tuple[WrongJar, ...]:
    """Every pair of jars whose last weighings are off by as much the other way, closest first.

    A use is named by the lots that its powder went into.
    """
    found, uses = [], []
    for count in gaps(connection):
        jar = jar_of(connection, count.fill)
        if jar is None:
            continue
        found.append(JarGap(jar.shown, count.gap_mg / _MG))
        lots = lots_by_line(connection, count.fill)
        uses += [Use(jar.shown, " and ".join(lots.get(use.line, ())) or use.into, use.mg / _MG)
                 for use in count.uses if use.line is not None]
    return wrong_jars(found, uses)
