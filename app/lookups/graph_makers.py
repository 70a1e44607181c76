"""Where the thread begins: the makers' batches, deliveries, and powder tipped into jars."""

from collections import defaultdict

from sqlalchemy import Connection, select

from app.lookups.fills import dyed_of
from app.lookups.graph_web import HERE, Centre, Web, add, key, kind_of, number_of
from app.lookups.thread import Thing
from app.records import Cone, DyeLot, FillPart
from app.store.dialect import among, listed

_CAME = select(Cone.id, Cone.delivery, Cone.supplier_lot).where(among(Cone.id, "ids"))
_SPUN_IN = select(Cone.supplier_lot).where(
    among(Cone.delivery, "ids"), Cone.struck.is_(None)).distinct().order_by(Cone.supplier_lot)
_LOTS_OF_BATH = select(DyeLot.id).where(among(DyeLot.bath, "ids"), DyeLot.struck.is_(None))
_TIPPED = select(FillPart.fill, FillPart.supplier_lot, FillPart.from_fill).where(
    among(FillPart.fill, "ids"), FillPart.struck.is_(None)).order_by(FillPart.id)


def lead_from_makers(connection: Connection, made: Web) -> None:
    """To the cones and lots on the left what came of makers: batches, deliveries, fills of jars."""
    _lead_from_mills(connection, made)
    _lead_from_jars(connection, made)


def _lead_from_mills(connection: Connection, made: Web) -> None:
    """To every cone on the left its delivery and the maker's batch."""
    cones: dict[str, dict[int, int]] = defaultdict(dict)
    for (start, _), rows in made.left.items():
        if kind_of(start) == "cone" and number_of(start) is not None:
            cones[start] |= rows
    if made.centre.kind == "cone":
        cones |= {key("cone", cone): {} for cone in made.centre.things}
    came = connection.execute(_CAME, {"ids": listed(
        number for cone in cones if (number := number_of(cone)) is not None)}).all()
    for cone, delivery, spun in came:
        rows = cones[key("cone", cone)]
        here = HERE if made.centre.kind == "cone" else key("cone", cone)
        add(made.left, (key("delivery", delivery), here), rows)
        batch = made.left.setdefault((key("supplier_lot", spun), key("delivery", delivery)), {})
        batch.update(rows)  # yarn over a join came of two cones and is there once
        _mean(made, key("delivery", delivery), ("cone", cone))
    if made.centre.kind == "delivery":
        spun_in = connection.execute(_SPUN_IN, {"ids": listed(made.centre.things)}).scalars()
        for spun in spun_in:
            add(made.left, (key("supplier_lot", spun), HERE), {})


def _lead_from_jars(connection: Connection, made: Web) -> None:
    """To every lot on the left the fills it was dyed of, and to these what was tipped in."""
    lots: dict[str, dict[int, int]] = defaultdict(dict)
    for (start, _), rows in made.left.items():
        if kind_of(start) == "lot":
            lots[start] |= rows
    numbers = {number: station for station in lots
               if (number := number_of(station)) is not None}
    if made.centre.kind in ("lot", "bath"):
        numbers |= dict.fromkeys(_lots_here(connection, made.centre), HERE)
    dyed = dyed_of(connection, numbers)
    waiting: dict[int, frozenset[Thing]] = {}
    for lot, station in numbers.items():
        of = dyed.get(lot)
        for fill in sorted(of.fills) if of is not None else ():
            add(made.left, (key("fill", fill), station), lots.get(station, {}))
            waiting[fill] = frozenset({("fill", fill)})
        if of is None or not of.known:
            add(made.left, (key("fill", None), station), lots.get(station, {}))
    if made.centre.kind == "fill":
        waiting |= {fill: frozenset({("fill", fill)}) for fill in made.centre.things}
    _lead_from_tins(connection, made, waiting)


def _lead_from_tins(
    connection: Connection, made: Web, waiting: dict[int, frozenset[Thing]]
) -> None:
    """To these fills the makers' lots and older fills that were tipped in, to the beginning."""
    done = set[int]()
    while waiting:
        done |= waiting.keys()
        more: dict[int, frozenset[Thing]] = {}
        for fill, lot, rest in connection.execute(_TIPPED, {"ids": listed(waiting)}):
            here = HERE if made.centre.kind == "fill" and fill in made.centre.things else key(
                "fill", fill)
            came = key("fill", rest) if lot is None else key("supplier_lot", lot)
            add(made.left, (came, here), {})
            for thing in waiting[fill]:
                _mean(made, came, thing)
            if rest is not None and rest not in done:
                more[rest] = waiting[fill] | more.get(rest, frozenset())
        waiting = more


def _mean(made: Web, station: str, thing: Thing) -> None:
    made.means[station] = made.means.get(station, frozenset()) | {thing}


def _lots_here(connection: Connection, centre: Centre) -> list[int]:
    if centre.kind == "lot":
        return list(centre.things)
    return list(connection.execute(
        _LOTS_OF_BATH, {"ids": listed(centre.things)}).scalars())
