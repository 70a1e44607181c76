"""Kit bags: what is in one, whether it is sold or was opened, and which bears a name."""

from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Row, select

from app.calculations.codes import shown
from app.lookups.certainty import held_by
from app.lookups.holds import HoldFacts, hold_facts
from app.lookups.things import Found
from app.lookups.thread import thread
from app.records import (
    Base,
    Colourway,
    CustomerOrder,
    DyeLot,
    Kit,
    OrderLine,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class InBag:
    """One skein of a kit."""

    yarn: int
    mark: str
    colourway: str
    base: str
    put_up: str


@dataclass(frozen=True, slots=True)
class KitNow:
    """A kit bag as it stands: sold with an order, or with these skeins in it, or opened."""

    id: int
    code: str
    name: str
    skeins: tuple[InBag, ...]
    """What is in it, or was in it when it was sold; nothing where it was opened."""
    order: str | None
    """With which order it was sold."""
    holds: tuple[HoldFacts, ...] = ()

    @property
    def shown(self) -> str:
        """Its code as people read it, and its name."""
        return f"{shown(self.code)}, {self.name}"


_IN_IT = (
    select(Whereabouts.yarn, Whereabouts.state, Tag.mark, Colourway.name, Yarn.put_up,
           Base.name.label("base"), CustomerOrder.number)
    .join(Yarn, Yarn.id == Whereabouts.yarn)
    .join(TagOn, (TagOn.yarn == Whereabouts.yarn) & TagOn.until.is_(None)
          & TagOn.struck.is_(None))
    .join(Tag, Tag.id == TagOn.tag).join(DyeLot, DyeLot.id == Tag.lot)
    .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
    .outerjoin(OrderLine, OrderLine.id == Whereabouts.line)
    .outerjoin(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
    .where(Whereabouts.struck.is_(None)).order_by(Colourway.name, Tag.mark)
)


def kit_now(connection: Connection, kit: int) -> KitNow:
    """One kit bag."""
    bag = connection.execute(select(Kit.code, Kit.name).where(Kit.id == kit)).one()
    here = _IN_IT.where(Whereabouts.kit == kit)
    sold = connection.execute(here.where(Whereabouts.state == "sent")).all()
    rows = sold or connection.execute(
        here.where(Whereabouts.state == "kit", Whereabouts.until.is_(None))).all()
    skeins = tuple(_in_bag(row) for row in rows)
    found = None if sold else thread(connection, [one.yarn for one in skeins])
    held = {hold for one in skeins for hold in held_by(found, one.yarn)} if (
        found and found.holds) else set()
    return KitNow(kit, bag.code, bag.name, skeins, sold[0].number if sold else None,
                  hold_facts(connection, sorted(held)))


def kits_named(connection: Connection, words: str) -> tuple[Found, ...]:
    """Bags that are not sold or opened, in whose name every one of these words stands."""
    asked = words.casefold().split()
    rows = connection.execute(select(Kit.id, Kit.code, Kit.name)
                              .where(Kit.struck.is_(None)).order_by(Kit.code))
    named = [row for row in rows
             if asked and all(word in row.name.casefold() for word in asked)]
    if not named:  # whose whereabouts need not be looked for
        return ()
    full = set(connection.execute(
        select(Whereabouts.kit).distinct()
        .where(among(Whereabouts.kit, "ids"), Whereabouts.state == "kit",
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None)),
        {"ids": listed(row.id for row in named)}).scalars())
    return tuple(Found("kit", row.id, row.code, row.name) for row in named if row.id in full)


def _in_bag(row: Row[*tuple[Any, ...]]) -> InBag:
    return InBag(row.yarn, row.mark, row.name, row.base, row.put_up)
