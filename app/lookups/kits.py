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
    lot: str
    """Its code; empty where the lot has none yet."""
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
    pattern: int | None = None

    @property
    def shown(self) -> str:
        """Its code as people read it, and its name."""
        return f"{shown(self.code)}, {self.name}"

    @property
    def gone(self) -> tuple[str, str] | None:
        """Why it can be neither sold nor opened, and what to do; none where it stands there."""
        if self.order:
            return (f"Kit {self.shown}, was sold with order {self.order}.",
                    "What comes back of it is scanned by its tags.")
        if not self.skeins:
            return (f"Kit {self.shown}, was opened: nothing is in it.",
                    "Scan the tags of its skeins.")
        return None


_IN_IT = (
    select(Whereabouts.yarn, Whereabouts.state, Tag.mark, DyeLot.code, Colourway.name, Yarn.put_up,
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
    bag = connection.execute(select(Kit.code, Kit.name, Kit.pattern).where(Kit.id == kit)).one()
    here = _IN_IT.where(Whereabouts.kit == kit)
    sold = connection.execute(here.where(Whereabouts.state == "sent")).all()
    rows = sold or connection.execute(
        here.where(Whereabouts.state == "kit", Whereabouts.until.is_(None))).all()
    skeins = tuple(_in_bag(row) for row in rows)
    found = None if sold else thread(connection, [one.yarn for one in skeins])
    held = {hold for one in skeins for hold in held_by(found, one.yarn)} if (
        found and found.holds) else set()
    return KitNow(kit, bag.code, bag.name, skeins, sold[0].number if sold else None,
                  hold_facts(connection, sorted(held)), bag.pattern)


def bag_scanned(connection: Connection, code: str) -> KitNow | None:
    """The bag with this code; none where no kit ever had it."""
    kit = connection.execute(
        select(Kit.id).where(Kit.code == code, Kit.struck.is_(None))).scalar()
    return None if kit is None else kit_now(connection, kit)


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
    return InBag(row.yarn, row.mark, row.code or "", row.name, row.base, row.put_up)
