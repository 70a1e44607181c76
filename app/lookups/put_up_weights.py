"""What put-ups weigh at the tag table, and the moisture of the room they are weighed in."""

import json
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from sqlalchemy import Connection, bindparam, select

from app.calculations.fibre_tables import regain_by_humidity
from app.calculations.put_up_weight import (
    CheckedBatch,
    CheckedWeight,
    RoomRegain,
    by_humidity,
    check_batch,
    check_weight,
)
from app.calculations.regain_class import regain_class
from app.calculations.units import grams
from app.lookups.certainty import links, nearest
from app.lookups.rails import READ_FOR
from app.lookups.studio import setting
from app.lookups.thread import Thread, thread
from app.lookups.walks import below
from app.problems import NotFound
from app.records import BaseVersion, DeedRow, PutUp, PutUpWeight, RoomReading, Yarn
from app.store.dialect import among, listed

REFERENCE_SKEINS = "reference skeins"
"""The setting with the dry mass of each, in milligrams by its kind of fibre."""


@dataclass(frozen=True, slots=True)
class RoomNow:
    """The regain of one kind of fibre in the room, in per mille; none where nothing told it today.

    `how` is what told it: a reference skein, or the room's humidity by the table.
    """

    fibre: str
    permille: int | None = None
    how: str = ""
    at: datetime | None = None
    humidity_permille: int | None = None

    @property
    def regain(self) -> RoomRegain | None:
        """As the weight check wants it."""
        return None if self.permille is None else _regain(self.permille, self.how)


@dataclass(frozen=True, slots=True)
class Weighed:
    """One weight as it is kept, with the room as it was told then."""

    row: int
    yarn: int
    mg: int
    room: RoomNow


@dataclass(frozen=True, slots=True)
class LotWeights:
    """All that was weighed of one put-up of a lot, each at the standard regain."""

    batch: CheckedBatch | None
    """None where no weight can be judged."""
    weather_not_known: int
    sold_as_less: int


@dataclass(frozen=True, slots=True)
class ToWeigh:
    """Yarn that is weighed: what its put-up should weigh, and by which moisture that is agreed."""

    yarn: int
    fibre: str
    put_up: str
    nominal_mg: int | None
    """What its tag says; none where the put-up is not described, or two bases lie together."""
    nominal_mm: int | None
    standard_permille: int
    room: RoomNow
    dry_mg: int | None
    """Of the reference skein of its fibre, if it was weighed dry."""
    lot: LotWeights

    def checked(self, mg: int, room: RoomNow | None = None) -> CheckedWeight | None:
        """A weight as it would be at the standard regain; none where that cannot be told."""
        regain = (room or self.room).regain
        if regain is None or self.nominal_mg is None:
            return None
        return check_weight(grams(mg), grams(self.nominal_mg), regain,
                            Decimal(self.standard_permille) / 1000)


_READ = (
    select(RoomReading.value, DeedRow.happened)
    .join(DeedRow, DeedRow.seq == RoomReading.deed)
    .where(RoomReading.kind == bindparam("kind"), RoomReading.fibre == bindparam("fibre"),
           RoomReading.struck.is_(None), DeedRow.happened <= bindparam("at"))
    .order_by(DeedRow.happened.desc(), RoomReading.id.desc()).limit(1)
)
_DESCRIBED = (
    select(BaseVersion.fibre, BaseVersion.regain_permille, PutUp.nominal_mg,
           PutUp.nominal_mm)
    .outerjoin(PutUp, (PutUp.base_version == BaseVersion.id)
               & (PutUp.name == bindparam("put_up")))
    .where(among(BaseVersion.id, "ids"))
)
_WEIGHED = (
    select(PutUpWeight.yarn, PutUpWeight.mg, PutUpWeight.regain_permille, PutUpWeight.regain_from,
           PutUpWeight.sell_as_mg, Yarn.kind)
    .join(Yarn, Yarn.id == PutUpWeight.yarn)
    .where(among(PutUpWeight.yarn, "ids"), PutUpWeight.struck.is_(None),
           Yarn.put_up == bindparam("put_up"))
    .order_by(PutUpWeight.id)
)

_ONE = select(PutUpWeight.yarn, PutUpWeight.mg, PutUpWeight.regain_permille,
              PutUpWeight.regain_from).where(
    PutUpWeight.id == bindparam("row"), PutUpWeight.struck.is_(None))


def room_now(connection: Connection, fibre: str, at: datetime) -> RoomNow:
    """The room as it was last told that day: by the reference skein, else by its humidity."""
    read = _read(connection, "regain permille", fibre, at)
    if read is not None:
        return RoomNow(fibre, read[0], "reference skein", read[1])
    damp = _read(connection, "room permille", "", at)
    if damp is None:
        return RoomNow(fibre)
    try:
        table = regain_by_humidity(fibre)
    except NotFound:
        return RoomNow(fibre, humidity_permille=damp[0])
    regain = by_humidity(Decimal(damp[0]) / 1000, table).regain
    return RoomNow(fibre, round(regain * 1000), "humidity", damp[1], damp[0])


def weighed(connection: Connection, row: int) -> Weighed:
    """A weight by its row; raises NotFound where it was taken back."""
    found = connection.execute(_ONE, {"row": row}).first()
    if found is None:
        raise NotFound("This weight is not in the book.", "Weigh it again.")
    return Weighed(row, found.yarn, found.mg, RoomNow("", found.regain_permille, found.regain_from))


def to_weigh(connection: Connection, yarn: int, at: datetime) -> ToWeigh:
    """A skein, or a pile of which one lies on the balance."""
    put_up = connection.execute(select(Yarn.put_up).where(Yarn.id == yarn)).scalar()
    if put_up is None:
        raise NotFound("This yarn is not in the book.", "Scan its tag, or the disc of its pile.")
    found = thread(connection, [yarn])
    fibre, standard, nominal_mg, nominal_mm = _described(connection, found, yarn, put_up)
    dry = reference_skeins(connection).get(fibre)
    lots = nearest(found, yarn, "lot")
    only = next(iter(lots)) if len(lots) == 1 else None
    own = LotWeights(None, 0, 0) if only is None or nominal_mg is None else weights_of_lot(
        connection, only, put_up, nominal_mg, standard)
    return ToWeigh(yarn, fibre, put_up, nominal_mg, nominal_mm, standard,
                   room_now(connection, fibre, at), dry, own)


def weights_of_lot(
    connection: Connection, lot: int, put_up: str, nominal_mg: int, standard_permille: int
) -> LotWeights:
    """Every weight of a lot's put-ups of this nominal weight.

    Of a skein that was weighed twice the last counts; one that is sold as less is of no full
    weight and stands beside.
    """
    rows = connection.execute(
        _WEIGHED, {"ids": listed(below(connection, "lot", lot)), "put_up": put_up}).all()
    last = {row.yarn if row.kind == "skein" else -place: row for place, row in enumerate(rows, 1)}
    full = [row for row in last.values() if row.sell_as_mg is None]
    known = [check_weight(grams(row.mg), grams(nominal_mg),
                          _regain(row.regain_permille, row.regain_from),
                          Decimal(standard_permille) / 1000).standard_g
             for row in full if row.regain_permille is not None]
    return LotWeights(check_batch(known, grams(nominal_mg)) if known else None,
                      len(full) - len(known), len(last) - len(full))


def reference_skeins(connection: Connection) -> dict[str, int]:
    """{kind of fibre: the dry mass of its reference skein in milligrams}."""
    kept: dict[str, int] = json.loads(setting(connection, REFERENCE_SKEINS))
    return kept


def _described(
    connection: Connection, found: Thread, yarn: int, put_up: str
) -> tuple[str, int, int | None, int | None]:
    """Its kind of fibre, the regain that is agreed, and what its tag says of weight and length."""
    versions = [link.thing for link in links(found, yarn, "version") if link.thing]
    rows = {(regain_class(row.fibre), row.regain_permille, row.nominal_mg, row.nominal_mm)
            for row in connection.execute(
                _DESCRIBED, {"ids": listed(versions), "put_up": put_up})}
    return rows.pop() if len(rows) == 1 else ("", 0, None, None)


def _regain(permille: int, how: str) -> RoomRegain:
    return RoomRegain(Decimal(permille) / 1000, estimated=how == "humidity")


def _read(
    connection: Connection, kind: str, fibre: str, at: datetime
) -> tuple[int, datetime] | None:
    row = connection.execute(_READ, {"kind": kind, "fibre": fibre, "at": at}).first()
    return None if row is None or at - row.happened > READ_FOR else (row.value, row.happened)
