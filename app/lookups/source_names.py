"""What can be held or recalled, by the names people know it by."""

from collections.abc import Collection, Iterator

from sqlalchemy import Connection, func, select

from app.calculations.codes import shown
from app.lookups.skeins import last_marks
from app.lookups.suspect_names import named
from app.lookups.thread import Thing
from app.records import DyeLot, Supplier, SupplierLot
from app.store.dialect import among, listed

_BATCHES = (
    select(SupplierLot.id, SupplierLot.said, Supplier.name)
    .join(Supplier, Supplier.id == SupplierLot.supplier).where(among(SupplierLot.id, "ids"))
)
_BATHS = (
    select(DyeLot.bath, func.min(DyeLot.code))
    .where(among(DyeLot.bath, "ids"), DyeLot.struck.is_(None)).group_by(DyeLot.bath)
)


def source_names(connection: Connection, things: Collection[Thing]) -> dict[Thing, str]:
    """'cone C·0114·F', 'wash load 12 (tub 2, 3 Mar)', 'batch 7731 of Aske Mill', 'a bath'."""
    names = {thing: f"a {thing[0]}" for thing in things}
    names.update((thing, str(one)) for thing, one in named(connection, things, {}).items())
    names.update(_others(connection, things))
    return names


def _others(connection: Connection, things: Collection[Thing]) -> Iterator[tuple[Thing, str]]:
    for number, said, supplier in connection.execute(_BATCHES, _ids(things, "supplier_lot")):
        yield ("supplier_lot", number), f"batch {said or 'not stated'} of {supplier}"
    for bath, code in connection.execute(_BATHS, _ids(things, "bath")):
        if code is not None:
            yield ("bath", bath), f"the bath of lot {shown(code)}"
    rows = [number for kind, number in things if kind == "yarn" and number is not None]
    marks = last_marks(connection, rows)
    for row in rows:
        yield ("yarn", row), f"skein {marks[row]}" if row in marks else "some skeins"


def _ids(things: Collection[Thing], kind: str) -> dict[str, str]:
    return {"ids": listed(number for one, number in things if one == kind and number is not None)}
