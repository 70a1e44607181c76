"""Which rows of yarn lie above some yarn, or below a cone, lot, fill, load and the like: ids only.

No filter stands inside a recursive step: a struck link is carried along as `dead` and dropped
outside, else the database builds a filter over the whole table at every step.
"""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import ColumnElement, Connection, Select, bindparam, case, literal, select

from app.lookups.fills import baths_of, baths_with, fills_of
from app.records import Cone, Draw, DyeLot, InBath, InLoad, Part, Yarn
from app.store.dialect import among, listed


def _walk_up() -> Select[int]:
    start = select(Yarn.id.label("node"), literal(0).label("dead")).where(among(Yarn.id, "ids"))
    above = start.cte("above", recursive=True)
    step = select(Part.parent, case((Part.struck.is_(None), above.c.dead), else_=1)).join(
        above, Part.child == above.c.node
    )
    above = above.union(step)
    return select(above.c.node).where(above.c.dead == 0).distinct()


def _walk_down(start: Select[int, int]) -> Select[int]:
    below = start.cte("below", recursive=True)
    step = select(Part.child, case((Part.struck.is_(None), below.c.dead), else_=1)).join(
        below, Part.parent == below.c.node
    )
    below = below.union(step)
    return select(below.c.node).where(below.c.dead == 0).distinct()


def _links(link: type[Draw] | type[InBath] | type[InLoad], column: Any) -> Select[int, int]:
    dead = case((link.struck.is_(None), 0), else_=1)
    return select(link.yarn.label("node"), dead.label("dead")).where(column == bindparam("thing"))


def _spun(chosen: ColumnElement[bool]) -> Select[int, int]:
    dead = case((Draw.struck.is_(None), 0), else_=1)
    return (select(Draw.yarn.label("node"), dead.label("dead"))
            .join(Cone, Cone.id == Draw.cone).where(chosen))


def _bathed(chosen: ColumnElement[bool]) -> Select[int, int]:
    dead = case((InBath.struck.is_(None), 0), else_=1)
    return (
        select(InBath.yarn.label("node"), dead.label("dead"))
        .join(DyeLot, DyeLot.id == InBath.lot).where(chosen)
    )


ABOVE = _walk_up()
BELOW = {
    "cone": _walk_down(_links(Draw, Draw.cone)),
    "lot": _walk_down(_links(InBath, InBath.lot)),
    "bath": _walk_down(_bathed(DyeLot.bath == bindparam("thing"))),
    "fill": _walk_down(_bathed(among(DyeLot.bath, "ids"))),
    "load": _walk_down(_links(InLoad, InLoad.load)),
    "supplier_lot": _walk_down(_spun(Cone.supplier_lot == bindparam("thing"))),
    "yarn": _walk_down(
        select(Yarn.id.label("node"), literal(0).label("dead")).where(
            Yarn.id == bindparam("thing")
        )
    ),
}


def above(connection: Connection, yarn: Iterable[int]) -> list[int]:
    """These rows, and every row they came out of."""
    return [*connection.execute(ABOVE, {"ids": listed(yarn)}).scalars().all()]


def below(connection: Connection, kind: str, thing: int) -> list[int]:
    """Every row that came out of a cone, lot, bath, jar fill, load or yarn; a yarn counts itself.

    Below a fill lies all that its powder reached, also through the fills its rest went on into;
    below a maker's lot all that was wound of its cones or dyed with its powder.
    """
    if kind == "fill":
        return _dyed_in(connection, baths_of(connection, thing))
    found = [*connection.execute(BELOW[kind], {"thing": thing}).scalars().all()]
    if kind == "supplier_lot" and (fills := fills_of(connection, thing)):
        found = list(dict.fromkeys(found + _dyed_in(connection, baths_with(connection, fills))))
    return found


def _dyed_in(connection: Connection, baths: Iterable[int]) -> list[int]:
    return [*connection.execute(BELOW["fill"], {"ids": listed(baths)}).scalars().all()]
