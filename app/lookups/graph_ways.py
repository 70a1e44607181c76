"""The whole thread around one thing, read: every row above and below it, still unfolded."""

from collections.abc import Collection, Iterable, Sequence
from itertools import pairwise

from sqlalchemy import Connection, Select, select

from app.lookups.fills import fills_of
from app.lookups.graph_makers import lead_from_makers
from app.lookups.graph_names import kinds_of_yarn
from app.lookups.graph_plain import known_as, plain_skeins
from app.lookups.graph_sure import Asking
from app.lookups.graph_web import HERE, Centre, Web, add, key, kind_of
from app.lookups.present import leaves
from app.lookups.thread import Thing, thread
from app.lookups.walks import above, below
from app.records import Cone, Draw, DyeLot, InBath, InLoad, Load, Yarn
from app.store.dialect import among, listed

_CONES = {
    "supplier_lot": select(Cone.id).where(
        among(Cone.supplier_lot, "ids"), Cone.struck.is_(None)).order_by(Cone.id),
    "delivery": select(Cone.id).where(
        among(Cone.delivery, "ids"), Cone.struck.is_(None)).order_by(Cone.id),
}
_STARTS = {
    "cone": select(Draw.yarn).where(among(Draw.cone, "ids"), Draw.struck.is_(None)),
    "lot": select(InBath.yarn).where(among(InBath.lot, "ids"), InBath.struck.is_(None)),
    "bath": select(InBath.yarn).join(DyeLot, DyeLot.id == InBath.lot).where(
        among(DyeLot.bath, "ids"), InBath.struck.is_(None)),
    "load": select(InLoad.yarn).where(among(InLoad.load, "ids"), InLoad.struck.is_(None)),
    "yarn": select(Yarn.id).where(among(Yarn.id, "ids")),
}
_STEPS = select(Load.id, Load.step).where(among(Load.id, "ids"))
WITH_YARN_ABOVE = ("lot", "bath", "load", "yarn")


def web(connection: Connection, centre: Centre) -> Web:
    """All that lies above and below the thing in the middle."""
    cones = _cones(connection, centre)
    down = _below(connection, centre, cones)
    here = _ids(connection, _STARTS[centre.kind], centre.things) if centre.kind in _STARTS else []
    there = leaves(connection, down)
    fill = ("fill", centre.things[0]) if centre.kind == "fill" and centre.things else None
    plain = plain_skeins(connection, there, here)
    asked = {plain.get(leaf.yarn, leaf.yarn) for leaf in there}
    found = thread(connection, asked.union(here), fill)
    made = Web(centre, found, {leaf.yarn: leaf for leaf in there},
               _sources(connection, centre, cones), plain)
    loads = {number for own in found.own.values() for kind, number in own if kind == "load"}
    made.steps = dict(connection.execute(
        _STEPS, {"ids": listed(load for load in loads if load)}).all())
    made.kinds = kinds_of_yarn(connection, found, found.count.keys() - {
        leaf.yarn for leaf in there if leaf.kind == "skein"})
    down &= found.count.keys()
    down -= _of_something_else(made, down)
    for row in sorted(down - plain.keys()):
        _lead_on(made, row, down)
    for skein, parent in plain.items():
        if skein in made.leaves:
            add(made.right, (made.stations(parent)[-1], key("left", skein)), {parent: 1})
    up = set(above(connection, here)) if centre.kind in WITH_YARN_ABOVE else set()
    for row in sorted(up & found.count.keys()):
        _lead_here(made, row)
    lead_from_makers(connection, made)
    return made


def _of_something_else(made: Web, down: Collection[int]) -> set[int]:
    """Rows below that were told to be of something else, so that nothing of it is in them.

    What is left of a row may be so where the row is not: then that leaf alone is left out.
    """
    if not made.found.told:
        return set()
    asking = Asking(made.found, made.sources)

    def none_of_it(row: int, count: int) -> bool:
        sure = asking.of({row: count})
        return bool(sure.of) and not sure.most
    left = known_as({leaf.yarn: leaf.count for leaf in made.leaves.values()}, made.plain)
    gone = {row for row, count in left.items() if none_of_it(row, count)}
    made.leaves = {yarn: leaf for yarn, leaf in made.leaves.items()
                   if made.plain.get(yarn, yarn) not in gone}
    return {row for row in down if none_of_it(row, made.found.count[row])}


def _ids(connection: Connection, question: Select[int], things: Iterable[int]) -> list[int]:
    return list(connection.execute(question, {"ids": listed(things)}).scalars())


def _cones(connection: Connection, centre: Centre) -> list[int]:
    question = _CONES.get(centre.kind)
    return [] if question is None else _ids(connection, question, centre.things)


def _below(connection: Connection, centre: Centre, cones: Iterable[int]) -> set[int]:
    if centre.kind == "delivery":
        return {row for cone in cones for row in below(connection, "cone", cone)}
    return {row for thing in centre.things for row in below(connection, centre.kind, thing)}


def _sources(
    connection: Connection, centre: Centre, cones: Iterable[int]
) -> frozenset[Thing]:
    if centre.kind == "delivery":
        return frozenset(("cone", cone) for cone in cones)
    fills = {fill for lot in centre.things for fill in fills_of(connection, lot)
             } if centre.kind == "supplier_lot" else set()
    return frozenset([*((centre.kind, thing) for thing in centre.things),
                      *(("fill", fill) for fill in fills)])


def _lead_on(made: Web, row: int, down: Collection[int]) -> None:
    """From the thing in the middle, or from what this row came out of, to all its stations."""
    chain, rows = made.stations(row), {row: made.found.count[row]}
    first = chain.index(HERE) if HERE in chain else len(chain)
    for thing in sorted(made.source_of(row), key=str):
        first = min(first, _enter(made, row, chain, thing))
    sources = [one for one in made.found.sources.get(row, ()) if one.parent in down]
    if HERE not in chain:
        for source in sources:
            gone = rows if len(made.found.sources[row]) == 1 else {
                source.parent: source.took or source.gave}
            add(made.right, (made.stations(source.parent)[-1], chain[0]), gone)
            first = 0
    for link in pairwise(chain[first:]):
        add(made.right, link, rows)
    leaf = made.leaves.get(row)
    if leaf is not None and chain[-1] != key("left", row):
        add(made.right, (chain[-1], key("left", row)), {row: leaf.count})


def _enter(made: Web, row: int, chain: Sequence[str], thing: Thing) -> int:
    """The way in from a thing in the middle that is no station of this row; where it comes in."""
    kind, rows = thing[0], {row: made.found.count[row]}
    if kind in ("lot", "load", "yarn"):
        return len(chain)
    if kind == "cone":
        place, way = 0, [key("cone", thing[1])] if made.centre.kind == "delivery" else []
    elif kind == "supplier_lot":
        place, way = 0, [key("cone", number) for one, number in made.found.own[row]
                         if one == "cone"]
    else:
        place = next((n for n, one in enumerate(chain) if kind_of(one) == "lot"), 0)
        way = [key("fill", thing[1])] if made.centre.kind == "supplier_lot" else []
    for station in way or [HERE]:
        if station != HERE:
            add(made.right, (HERE, station), rows)
        add(made.right, (station, chain[place]), rows)
    return place


def _lead_here(made: Web, row: int) -> None:
    """From what this row came out of, through its stations, on towards the thing in the middle."""
    chain, rows = _as_far_as_here(made, row), {row: made.found.count[row]}
    for kind, number in made.found.own.get(row, {}):
        if kind == "cone":
            add(made.left, (key("cone", number), chain[0]), rows)
    for source in made.found.sources.get(row, ()):
        parent = made.stations(source.parent)
        if parent[-1] == key("left", source.parent):
            parent = parent[:-1] or [key("yarn", source.parent)]
        add(made.left, (parent[-1], chain[0]), {source.parent: source.took or source.gave})
    for link in pairwise(chain):
        add(made.left, link, rows)


def _as_far_as_here(made: Web, row: int) -> list[str]:
    chain = made.stations(row)
    if made.centre.kind == "bath" and made.source_of(row):
        place = next(n for n, one in enumerate(chain) if kind_of(one) == "lot")
        return [*chain[:place], HERE]
    return chain[:chain.index(HERE) + 1] if HERE in chain else chain
