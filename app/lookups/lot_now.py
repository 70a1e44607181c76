"""Where the skeins of a lot are now, in totals; who bought them stands as a customer's number."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.destinations import Destination, destinations
from app.lookups.stays import NOWHERE, Stay, stays_of
from app.records import Second
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class NowAt:
    """So many skeins in one state at one place, or gone with one order."""

    state: str
    put_up: str
    place: str | None
    order: str | None
    customer: int | None
    least: int
    most: int
    """More than `least` where other lots lie among them and nobody can tell."""
    mg: int
    since: datetime | None


@dataclass(frozen=True, slots=True)
class LotNow:
    """All that is left of a lot; seconds are among them."""

    rows: tuple[NowAt, ...]
    seconds: int

    @property
    def count(self) -> int:
        """All skeins that may be of the lot."""
        return sum(row.most for row in self.rows)


_SECONDS = select(Second.yarn).where(among(Second.yarn, "ids"), Second.struck.is_(None))


def lot_now(connection: Connection, lot: int) -> LotNow:
    """What is left of a lot, by state, place and order."""
    found = destinations(connection, "lot", lot).rows
    ids = {"ids": listed(row.yarn for row in found)}
    stays = stays_of(connection, (row.yarn for row in found))
    groups: dict[tuple[object, ...], list[Destination]] = {}
    for row in found:
        stay = stays.get(row.yarn, NOWHERE)
        key = (row.state, row.put_up, stay.place, stay.order, stay.customer)
        groups.setdefault(key, []).append(row)
    return LotNow(tuple(_together(rows, stays) for rows in groups.values()),
                  len(connection.execute(_SECONDS, ids).all()))


def _together(rows: list[Destination], stays: Mapping[int, Stay]) -> NowAt:
    stay = stays.get(rows[0].yarn, NOWHERE)
    since = [one.since for row in rows if (one := stays.get(row.yarn)) and one.since]
    return NowAt(rows[0].state, rows[0].put_up, stay.place, stay.order, stay.customer,
                 sum(row.link.least for row in rows), sum(row.link.most for row in rows),
                 sum(row.mg for row in rows), max(since, default=None))
