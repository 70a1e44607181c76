"""What lies on a shelf, by the lots that its tags name."""

from collections.abc import Iterable
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.lookups.things import Found, by_code
from app.lookups.told_faults import ToldFault, not_seen_good
from app.records import Base, Colourway, DyeLot, Plate, Tag, TagOn, Whereabouts, Yarn
from app.store.dialect import among, listed

LIES_THERE = ("shelf", "put by")


@dataclass(frozen=True, slots=True)
class ShelfLot:
    """Skeins, minis or balls of one lot that lie in one place; no lot where they wear no tag."""

    lot: int | None
    code: str | None
    colourway: str | None
    swatch: str | None
    base: str
    put_up: str
    count: int
    put_by: int
    """How many of these are kept for someone."""
    marks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Met:
    """Two lots or more of one colourway, base and put-up in one bin: allowed, and to be said."""

    colourway: str
    base: str
    lots: tuple[ShelfLot, ...]


_ON_SHELF = (
    select(Tag.lot, Tag.mark, DyeLot.code, Colourway.name, Colourway.swatch,
           Base.name.label("base"), Yarn.put_up, Whereabouts.state)
    .join(Yarn, Yarn.id == Whereabouts.yarn).join(Base, Base.id == Yarn.base)
    .outerjoin(TagOn, (TagOn.yarn == Yarn.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
    .outerjoin(Tag, Tag.id == TagOn.tag).outerjoin(DyeLot, DyeLot.id == Tag.lot)
    .outerjoin(Colourway, Colourway.id == DyeLot.colourway)
    .where(Whereabouts.until.is_(None), Whereabouts.struck.is_(None),
           Whereabouts.state.in_(LIES_THERE))
    .order_by(Colourway.name, Tag.lot, Yarn.put_up, Tag.mark)
)


def on_shelf(connection: Connection, place: int) -> tuple[ShelfLot, ...]:
    """What lies there now, lot by lot, those of one colourway beside each other."""
    rows = connection.execute(_ON_SHELF.where(Whereabouts.place == place)).all()
    kinds = dict.fromkeys((row.lot, row.base, row.put_up) for row in rows)
    found = []
    for kind in kinds:
        of = [row for row in rows if (row.lot, row.base, row.put_up) == kind]
        found.append(ShelfLot(
            of[0].lot, of[0].code, of[0].name, of[0].swatch, of[0].base, of[0].put_up, len(of),
            sum(1 for row in of if row.state == "put by"),
            tuple(row.mark for row in of if row.mark)))
    return tuple(found)


def met(lots: Iterable[ShelfLot]) -> tuple[Met, ...]:
    """Where lots of one look lie in one bin: a customer takes them for one."""
    alike: dict[tuple[str, str, str], list[ShelfLot]] = {}
    for one in lots:
        if one.colourway is not None:
            alike.setdefault((one.colourway, one.base, one.put_up), []).append(one)
    return tuple(Met(colourway, base, tuple(of))
                 for (colourway, base, _), of in alike.items() if len(of) > 1)


def shelf_words(connection: Connection, place: int) -> str:
    """'shelf 012, by the window': its number, and the words its plate bears."""
    row = connection.execute(select(Plate.code, Plate.words).where(Plate.id == place)).one()
    return f"shelf {row.code[1:-1]}" + (f", {row.words}" if row.words else "")


@dataclass(frozen=True, slots=True)
class ShelfNow:
    """A shelf by its plate, and what lies on it."""

    id: int
    code: str
    words: str
    lots: tuple[ShelfLot, ...]

    @property
    def count(self) -> int:
        """All that lies there."""
        return sum(one.count for one in self.lots)


def shelf_with(connection: Connection, code: str) -> ShelfNow | None:
    """The shelf whose plate has this code, or none."""
    found = by_code(connection, code)
    if found is None or found.kind != "shelf":
        return None
    return ShelfNow(found.id, found.code, shelf_words(connection, found.id),
                    on_shelf(connection, found.id))


@dataclass(frozen=True, slots=True)
class ForShelf:
    """A tag that was scanned at a shelf: what it stands for, and where its skein is now."""

    found: Found
    state: str | None = None
    place: int | None = None
    told: tuple[ToldFault, ...] = ()
    """Faults that were told of it, where nobody saw it good since."""


def for_shelf(connection: Connection, mark: str) -> ForShelf | None:
    """The tag with this mark and its skein, or none."""
    found = by_code(connection, mark)
    if found is None or found.kind not in ("skein", "tag"):
        return None
    now = None if found.kind == "tag" else connection.execute(
        select(Whereabouts.state, Whereabouts.place)
        .where(Whereabouts.yarn == found.id, Whereabouts.until.is_(None),
               Whereabouts.struck.is_(None))
    ).first()
    if now is None:
        return ForShelf(found)
    told = not_seen_good(connection, [found.id]).get(found.id, ())
    return ForShelf(found, now.state, now.place, told)


def on_table_of(connection: Connection, skeins: Iterable[int]) -> tuple[int, ...]:
    """Of these skeins those that lie on the table still."""
    rows = connection.execute(
        select(Whereabouts.yarn)
        .where(among(Whereabouts.yarn, "ids"), Whereabouts.until.is_(None),
               Whereabouts.struck.is_(None), Whereabouts.state == "table")
        .order_by(Whereabouts.yarn), {"ids": listed(skeins)})
    return tuple(rows.scalars())
