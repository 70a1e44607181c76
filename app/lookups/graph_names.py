"""What the stations of a branching trail are called, and what is scanned to open them."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.calculations.codes import shown
from app.calculations.moments import short_day
from app.lookups.graph_web import PART, Web, kind_of, number_of
from app.lookups.present import Leaf
from app.lookups.skeins import last_marks
from app.lookups.stays import NOWHERE, Stay, stays_of
from app.lookups.thread import Thread
from app.records import (
    Bath,
    Colourway,
    Cone,
    DeedRow,
    Delivery,
    DyeLot,
    Fill,
    Jar,
    Load,
    OnBundle,
    Plate,
    PlateStay,
    Supplier,
    SupplierLot,
    Yarn,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Named:
    """What it is, its code or name, a word more, and the code that opens it if it has one."""

    kind: str
    name: str
    note: str = ""
    code: str = ""


_CONES = select(Cone.id, Cone.code).where(among(Cone.id, "ids"))
_LOTS = (
    select(DyeLot.id, DyeLot.code, Colourway.name)
    .join(Colourway, Colourway.id == DyeLot.colourway).where(among(DyeLot.id, "ids"))
)
_FILLS = (
    select(Fill.id, Fill.number, Jar.dye, Jar.code).join(Jar, Jar.id == Fill.jar)
    .where(among(Fill.id, "ids"))
)
_LOADS = (
    select(Load.id, Load.step, Plate.words, Plate.code, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Load.deed).outerjoin(Plate, Plate.id == Load.plate)
    .where(among(Load.id, "ids"))
)
_BATCHES = (
    select(SupplierLot.id, SupplierLot.said, Supplier.name)
    .join(Supplier, Supplier.id == SupplierLot.supplier).where(among(SupplierLot.id, "ids"))
)
_DELIVERIES = select(Delivery.id, Delivery.kind, Delivery.note_no, Delivery.arrived).where(
    among(Delivery.id, "ids"))
_BATHS = (
    select(Bath.id, Plate.code, DeedRow.happened).join(DeedRow, DeedRow.seq == Bath.deed)
    .outerjoin(Plate, Plate.id == Bath.plate).where(among(Bath.id, "ids"))
)
_WORN = (
    select(OnBundle.yarn, func.min(Plate.code).label("code"))
    .join(PlateStay, PlateStay.bundle == OnBundle.bundle)
    .join(Plate, Plate.id == PlateStay.plate)
    .where(among(OnBundle.yarn, "ids"), OnBundle.struck.is_(None), PlateStay.struck.is_(None))
    .group_by(OnBundle.yarn)
)
_ROWS = (
    select(Yarn.id, Yarn.kind, Yarn.tie, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Yarn.deed).where(among(Yarn.id, "ids"))
)
_FACTS = select(Yarn.id, Yarn.kind, Yarn.put_up).where(among(Yarn.id, "ids"))


def kinds_of_yarn(
    connection: Connection, found: Thread, rows: Collection[int]
) -> dict[int, str]:
    """What each of these rows of yarn is, as a stage of the work: 'wound', 'mixed', 'pile'."""
    above = {source.parent for row in rows for source in found.sources.get(row, ())}
    facts = {row.id: row for row in
             connection.execute(_FACTS, {"ids": listed(above.union(rows))})}
    kinds = {}
    for row in rows:
        parents = {facts[source.parent].kind for source in found.sources.get(row, ())
                   if source.parent in facts}
        one = facts[row]
        if one.kind == "group":
            kinds[row] = _kind_of_group(parents, len(found.sources.get(row, ())))
        else:
            kinds[row] = _KINDS.get((one.kind, one.put_up), f"{one.kind} of {one.put_up}s")
    return kinds


_KINDS = {("skein", "skein"): "tagged skein", ("pile", "skein"): "pile",
          ("candidates", "skein"): "one of these", ("find", "skein"): "found without a tag"}


def _kind_of_group(parents: Collection[str], of: int) -> str:
    if not parents:
        return "wound"
    if "skein" in parents:
        return "gathered"
    return "mixed on a cord" if of > 1 else PART


def names(connection: Connection, web: Web, stations: Collection[str]) -> dict[str, Named]:
    """What these stations are called, {station: name}."""
    numbers: dict[str, dict[int, list[str]]] = defaultdict(lambda: defaultdict(list))
    found: dict[str, Named] = {}
    for station in stations:
        number = number_of(station)
        if number is None:
            found[station] = _NOT_KNOWN.get(kind_of(station), Named(kind_of(station), "not known"))
        else:
            numbers[kind_of(station)][number].append(station)
    for kind, ask in _ASKED.items():
        if numbers[kind]:
            for number, name in ask(connection, web, numbers[kind]):
                found |= dict.fromkeys(numbers[kind][number], name)
    return found


_NOT_KNOWN = {"cone": Named("cone", "not known"), "fill": Named("jar fills", "not known")}


def _cones(connection: Connection, _web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    for cone, code in connection.execute(_CONES, {"ids": listed(ids)}):
        yield cone, Named("cone", shown(code), "", code)


def _lots(connection: Connection, _web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    for lot, code, colourway in connection.execute(_LOTS, {"ids": listed(ids)}):
        yield lot, Named("dye lot", shown(code) if code else "no code yet", colourway, code or "")


def _fills(connection: Connection, _web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    for fill, number, dye, code in connection.execute(_FILLS, {"ids": listed(ids)}):
        yield fill, Named("jar fill", f"{dye}, fill {number}", "", code)


def _loads(connection: Connection, _web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    for load, step, words, code, happened in connection.execute(_LOADS, {"ids": listed(ids)}):
        where = words or (code and f"{step} {code[1:-1]}") or f"{step} {load}"
        yield load, Named("wash load" if step == "wash" else step, where,
                          f"{short_day(happened)}, load {load}")


def _batches(connection: Connection, _web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    for lot, said, supplier in connection.execute(_BATCHES, {"ids": listed(ids)}):
        yield lot, Named("maker's batch", said or "not stated", supplier)


def _deliveries(
    connection: Connection, _web: Web, ids: Iterable[int]
) -> Iterator[tuple[int, Named]]:
    for one, kind, note, arrived in connection.execute(_DELIVERIES, {"ids": listed(ids)}):
        yield one, Named(kind, short_day(arrived), f"note {note}" if note else "")


def _baths(connection: Connection, _web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    for bath, code, happened in connection.execute(_BATHS, {"ids": listed(ids)}):
        yield bath, Named("bath", f"pot {code[1:-1]}" if code else f"bath {bath}",
                          short_day(happened))


def _yarn(connection: Connection, web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    asked = list(ids)
    rows = connection.execute(_ROWS, {"ids": listed(asked)}).all()
    worn = dict(connection.execute(_WORN, {"ids": listed(row.id for row in rows)}).all())
    marks = last_marks(connection, [row.id for row in rows if row.kind == "skein"])
    for row in rows:
        mark = marks.get(row.id)
        disc = worn.get(row.id)
        name = mark or (f"disc {disc[1:-1]}" if disc and row.kind == "group" else
                        short_day(row.happened))
        tie = f"{row.tie} tie" if row.tie and row.kind == "group" else ""
        yield row.id, Named(web.kinds.get(row.id, "tagged skein"), name, tie, mark or "")


def _left(connection: Connection, web: Web, ids: Iterable[int]) -> Iterator[tuple[int, Named]]:
    rows = [web.leaves[row] for row in ids]
    marks = last_marks(connection, [leaf.yarn for leaf in rows])
    stays = stays_of(connection, [leaf.yarn for leaf in rows])
    for leaf in rows:
        mark = marks.get(leaf.yarn, "")
        yield leaf.yarn, Named(leaf.state, mark, _where(leaf, stays.get(leaf.yarn, NOWHERE)), mark)


def _where(leaf: Leaf, stay: Stay) -> str:
    """The place, or the order; never a name."""
    if leaf.one_of:
        return "one of the others"
    return stay.place or (f"order {stay.order}" if stay.order else "")


_ASKED = {"cone": _cones, "lot": _lots, "fill": _fills, "load": _loads, "supplier_lot": _batches,
          "delivery": _deliveries, "bath": _baths, "yarn": _yarn, "left": _left}
