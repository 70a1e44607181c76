"""Where to: all made of a cone, lot, bath, fill, load or yarn, where it is now, and how sure."""

from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.certainty import Link, held_by, link_of
from app.lookups.present import Amount, leaves, totals
from app.lookups.thread import thread
from app.lookups.walks import below
from app.records import Tag, TagOn
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Destination:
    """Skeins that may come from the thing: what they are, where, and how sure."""

    yarn: int
    kind: str
    mark: str | None
    state: str
    put_up: str
    count: int
    mg: int
    link: Link
    held: bool
    again: bool = False
    """A find that is one of the other rows: it stands for one of them in every sum."""


@dataclass(frozen=True, slots=True)
class Destinations:
    """All destinations, and their totals by state and put-up: disjoint, and they add up."""

    rows: tuple[Destination, ...]
    totals: Mapping[tuple[str, str], Amount]
    together: Link | None
    """All of them taken together: how many surely, at most and expectedly come from the thing."""

    @property
    def count(self) -> int:
        """Skeins that may come from the thing."""
        return sum(row.count for row in self.rows if not row.again)


_MARKS = (
    select(TagOn.yarn, Tag.mark).join(Tag, Tag.id == TagOn.tag)
    .where(among(TagOn.yarn, "ids"), TagOn.until.is_(None), TagOn.struck.is_(None))
)


def destinations(connection: Connection, kind: str, thing: int) -> Destinations:
    """Everything below a cone, lot, bath, fill, load or yarn that is there, with its certainty."""
    found = leaves(connection, below(connection, kind, thing))
    above = thread(connection, [leaf.yarn for leaf in found], (kind, thing))
    marks = dict(connection.execute(
        _MARKS, {"ids": listed(leaf.yarn for leaf in found)}).all())
    rows, there = [], {leaf.yarn for leaf in found}
    for leaf in found:
        link = link_of(above, {leaf.yarn: leaf.count}, (kind, thing))
        if link is not None:
            mark = marks.get(leaf.yarn)
            rows.append(Destination(
                leaf.yarn, leaf.kind, shown(mark) if mark else None, leaf.state, leaf.put_up,
                leaf.count, leaf.mg, link, bool(held_by(above, leaf.yarn)),
                not there.isdisjoint(leaf.one_of)))
    reached = {row.yarn: row.count for row in rows}
    once = {row.yarn: row.count for row in rows if not row.again}
    return Destinations(
        tuple(rows), totals(leaf for leaf in found if leaf.yarn in reached),
        link_of(above, once, (kind, thing)))
