"""What may have spoiled yarn, by the names people know it by."""

from collections.abc import Collection, Mapping

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.evidence import Suspect
from app.calculations.moments import short_day
from app.lookups.thread import Thing
from app.lookups.winder_days import WINDER_DAY
from app.records import Colourway, Cone, DeedRow, DyeLot, Fill, Jar, Load, Plate
from app.store.dialect import among, listed

LOADS = {"wash": "wash load", "rail": "rail"}
"""Kinds of loads as a suspect's kind; the others are their step and 'load'."""

_CONES = select(Cone.id, Cone.code).where(among(Cone.id, "ids"))
_LOTS = (
    select(DyeLot.id, DyeLot.code, Colourway.name).join(Colourway, Colourway.id == DyeLot.colourway)
    .where(among(DyeLot.id, "ids"))
)
_FILLS = (
    select(Fill.id, Fill.number, Jar.dye).join(Jar, Jar.id == Fill.jar)
    .where(among(Fill.id, "ids"))
)
_LOADS = (
    select(Load.id, Load.step, Plate.words, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Load.deed).outerjoin(Plate, Plate.id == Load.plate)
    .where(among(Load.id, "ids"))
)


def named(
    connection: Connection, things: Collection[Thing], days: Mapping[int, str]
) -> dict[Thing, Suspect]:
    """The suspect of each thing; winders' days are named by the caller, who numbered them."""
    asked = {kind: {"ids": listed(number for one, number in things if one == kind and number)}
             for kind in ("cone", "lot", "fill", "load")}
    found: dict[Thing, Suspect] = {
        ("cone", row.id): Suspect("cone", shown(row.code))
        for row in connection.execute(_CONES, asked["cone"])}
    for lot, code, name in connection.execute(_LOTS, asked["lot"]):
        found["lot", lot] = Suspect(
            "lot", shown(code) if code else f"without a code yet ({name})")
    for fill, number, dye in connection.execute(_FILLS, asked["fill"]):
        found["fill", fill] = Suspect("jar fill", f"{dye}, fill {number}")
    for load, step, words, happened in connection.execute(_LOADS, asked["load"]):
        where = f"{words}, " if words else ""
        found["load", load] = Suspect(
            LOADS.get(step, f"{step} load"), f"{load} ({where}{short_day(happened)})")
    for kind, day in things:
        if kind == WINDER_DAY and day is not None:
            found[kind, day] = Suspect(WINDER_DAY, days[day])
    return found
