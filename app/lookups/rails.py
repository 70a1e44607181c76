"""When what hangs on the rails should be dry, by the room as it was read that day."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal

from sqlalchemy import Connection, select

from app.calculations.drying import Air, deficit_kpa, hours_to_dry
from app.calculations.moments import moment_words
from app.lookups.discs import disc_of
from app.lookups.loads import WetWork, last_of, wet_work
from app.lookups.walks import above
from app.records import DeedRow, InLoad, Load, LoadReading
from app.store.dialect import among, listed

SPUN, SQUEEZED = Decimal("0.5"), Decimal("1.6")
"""Water held by a skein that was spun, or only squeezed by hand, as a share of its dry weight
(common practice, no source)."""
READ_FOR = timedelta(hours=18)
"""A reading of the room is of its day."""


@dataclass(frozen=True, slots=True)
class Room:
    """The room as it was read: degrees, humidity as a fraction."""

    celsius: Decimal
    humidity: Decimal
    at: datetime

    @property
    def words(self) -> str:
        """'18 °C, 60 %'."""
        return f"{self.celsius.normalize():f} °C, {(self.humidity * 100).normalize():f} %"


_READ = (
    select(LoadReading.load, LoadReading.kind, LoadReading.value, DeedRow.happened, DeedRow.seq)
    .join(DeedRow, DeedRow.seq == LoadReading.deed)
    .where(LoadReading.kind.in_(("room decidegrees", "room permille")),
           LoadReading.struck.is_(None))
    .order_by(DeedRow.happened.desc(), LoadReading.id.desc())
)
_SPUN = (
    select(InLoad.yarn, DeedRow.happened).join(Load, Load.id == InLoad.load)
    .join(DeedRow, DeedRow.seq == InLoad.deed)
    .where(Load.step == "spin", among(InLoad.yarn, "ids"), InLoad.struck.is_(None))
)


def room_at(connection: Connection, at: datetime) -> Room | None:
    """The room as it was read last within the day before that moment, or none."""
    room = _read_by(connection, at)
    return None if room is None or at - room.at > READ_FOR else room


def _read_by(connection: Connection, at: datetime) -> Room | None:
    rows = connection.execute(_READ.where(DeedRow.happened <= at).limit(2)).all()
    read = {row.kind: row.value for row in rows}
    if len(read) < 2 or rows[0].seq != rows[1].seq:
        return None
    return Room(Decimal(read["room decidegrees"]) / 10, Decimal(read["room permille"]) / 1000,
                rows[0].happened)


def dry_at(
    connection: Connection, rows: Sequence[int], at: datetime
) -> Mapping[int, datetime]:
    """{row on a rail: when it should be dry}; without a reading of its day nothing is claimed.

    Reckoned with the fan on, spun where it was, by the room as it was read last, 18 hours before
    the hanging up or after it.
    """
    met = {row: one for row, one in last_of(connection, rows, at).items() if one.step == "rail"}
    spun = _spun(connection, list(met))
    found = {}
    for row, one in met.items():
        room = _read_by(connection, min(at, one.happened + READ_FOR))
        if room is None or abs(room.at - one.happened) > READ_FOR:
            continue
        hours = hours_to_dry(SPUN if row in spun else SQUEEZED,
                             deficit_kpa(room.celsius, room.humidity), Air.FAN.value)
        if hours is not None:
            found[row] = one.happened + timedelta(minutes=round(hours * 60))
    return found


@dataclass(frozen=True, slots=True)
class WashNow:
    """The wet work with its room: when each rail should be dry, by the number of its plate's row.

    `rail_load` is the load that hung up last: a reading of the room is written with it.
    """

    work: WetWork
    room: Room | None
    dry: Mapping[int, datetime]
    rail_load: int | None


def wash_now(connection: Connection, at: datetime, now: datetime) -> WashNow:
    """The places in use, what waits, the hour of each rail by its last cord; the room as of now."""
    work = wet_work(connection, at)
    rows = {row: one.place.id for one in work.places if one.place is not None
            for wet in one.cords if wet.step == "rail" for row in wet.cord.rows}
    dry: dict[int, datetime] = {}
    for row, hour in dry_at(connection, list(rows), at).items():
        dry[rows[row]] = max(hour, dry.get(rows[row], hour))
    loads = [wet.load for one in work.places for wet in one.cords
             if wet.step == "rail" and wet.load is not None]
    return WashNow(work, room_at(connection, now), dry, max(loads, default=None))


def taken_down_early(
    connection: Connection, rows: Sequence[int], at: datetime
) -> Iterator[str]:
    """A sentence for each cord that leaves its rail before the hour at which it should be dry."""
    for row, dry in dry_at(connection, rows, at).items():
        if at < dry:
            disc = disc_of(connection, row)
            what = f"Disc {disc}" if disc else "A cord without a disc"
            yield (f"{what} is reckoned to be dry {moment_words(dry)}: feel the middle of a skein, "
                   "for damp yarn smells and weighs too much.")


def _spun(connection: Connection, rows: Sequence[int]) -> frozenset[int]:
    """Those of which the row itself, or what it came out of, was in a spin."""
    return frozenset(
        row for row in rows
        if connection.execute(_SPUN, {"ids": listed(above(connection, [row]))}).first())
