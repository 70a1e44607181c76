"""The bath of a lot as it was: pot, times, cords, what was read, done and poured in."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, select
from sqlalchemy.orm import aliased

from app.calculations.codes import shown
from app.records import (
    Base,
    Bath,
    BathReading,
    BottleSet,
    DeedRow,
    DyeLot,
    InBath,
    OnBoard,
    OnBundle,
    Plate,
    PlateStay,
    Step,
    Weighing,
    Yarn,
)


@dataclass(frozen=True, slots=True)
class CordIn:
    """A row of yarn that went into a bath; the disc is none where it wore none."""

    yarn: int
    disc: str | None
    count: int
    put_up: str
    mg: int
    tie: str | None
    base: str
    lot: int
    lot_code: str


@dataclass(frozen=True, slots=True)
class BathRead:
    """What one person entered at the pot in one go; what was not read is none."""

    at: datetime
    person: str
    done: str
    decidegrees: int | None
    ph_centi: int | None
    clearness: int | None
    water_ml: int | None


@dataclass(frozen=True, slots=True)
class Painting:
    """A board of a painted lot: its number, and the set of bottles."""

    board: str | None
    bottle_set: int


@dataclass(frozen=True, slots=True)
class LotBath:
    """One bath; no pot means a steamer run, or that nobody said which pot it was."""

    bath: int
    recipe_version: int
    weighing: int | None
    pot: str | None
    begun: datetime
    person: str
    lifted: datetime | None
    lifted_by: str | None
    bath_ml: int | None
    """As the weigh-out has it."""
    dry_mg: int | None
    """What was weighed out for."""
    dry_basis: str | None
    pick_up_permille: int | None
    cords: tuple[CordIn, ...]
    readings: tuple[BathRead, ...]
    boards: tuple[Painting, ...]


_LIFTED = aliased(DeedRow)
_BATH = (
    select(Bath.id, Bath.recipe_version, Bath.weighing, Plate.code, DeedRow.happened,
           DeedRow.person, _LIFTED.happened.label("lifted"), _LIFTED.person.label("lifted_by"),
           Weighing.bath_ml, Weighing.dry_mg, Weighing.dry_basis, Weighing.pick_up_permille)
    .join(DeedRow, DeedRow.seq == Bath.deed).outerjoin(_LIFTED, _LIFTED.seq == Bath.lifted)
    .outerjoin(Plate, Plate.id == Bath.plate).outerjoin(Weighing, Weighing.id == Bath.weighing)
)
_CORDS = (
    select(Yarn.id, Yarn.count.label("members"), Yarn.put_up, Yarn.mg, Yarn.tie, Base.name,
           InBath.lot, DyeLot.code)
    .join(InBath, InBath.yarn == Yarn.id).join(DyeLot, DyeLot.id == InBath.lot)
    .join(Base, Base.id == Yarn.base).where(InBath.struck.is_(None)).order_by(InBath.id)
)
_DISCS = (
    select(OnBundle.yarn, Plate.code)
    .join(PlateStay, PlateStay.bundle == OnBundle.bundle)
    .join(Plate, Plate.id == PlateStay.plate)
    .where(OnBundle.struck.is_(None), PlateStay.struck.is_(None))
    .order_by(PlateStay.since.desc())
)


def lot_bath(connection: Connection, bath: int) -> LotBath | None:
    """One bath as it was, or none."""
    row = connection.execute(_BATH.where(Bath.id == bath, Bath.struck.is_(None))).first()
    if row is None:
        return None
    return LotBath(
        row.id, row.recipe_version, row.weighing, row.code and str(int(row.code[1:-1])),
        row.happened, row.person, row.lifted, row.lifted_by, row.bath_ml, row.dry_mg,
        row.dry_basis, row.pick_up_permille,
        cords_in(connection, DyeLot.bath == bath, row.happened), _readings(connection, bath),
        _boards(connection, bath))


def cords_in(connection: Connection, chosen: Any, at: datetime) -> tuple[CordIn, ...]:
    """The rows that went into these lots, each with the disc it wore at that moment."""
    rows = connection.execute(_CORDS.where(chosen)).all()
    worn = dict(connection.execute(_DISCS.where(
        OnBundle.yarn.in_([row.id for row in rows]), PlateStay.since <= at,
        PlateStay.until.is_(None) | (PlateStay.until > at))).all())
    return tuple(
        CordIn(row.id, worn[row.id][1:-1] if row.id in worn else None, row.members, row.put_up,
               row.mg, row.tie, row.name, row.lot, shown(row.code or "no code yet"))
        for row in rows)


def _readings(connection: Connection, bath: int) -> tuple[BathRead, ...]:
    found: dict[int, list[Row[*tuple[Any, ...]]]] = {}
    for row in connection.execute(
            select(BathReading.deed, BathReading.kind, BathReading.value, DeedRow.happened,
                   DeedRow.person)
            .join(DeedRow, DeedRow.seq == BathReading.deed)
            .where(BathReading.bath == bath, BathReading.struck.is_(None))
            .order_by(DeedRow.happened, BathReading.id)):
        found.setdefault(row.deed, []).append(row)
    words = dict(connection.execute(select(Step.id, Step.words)).all())
    together = []
    for rows in found.values():
        read = {row.kind: row.value for row in rows}
        together.append(BathRead(
            rows[0].happened, rows[0].person, words.get(read.get("step done", 0), ""),
            read.get("decidegrees"), read.get("pH centi"), read.get("clearness"),
            read.get("water ml")))
    return tuple(together)


def _boards(connection: Connection, bath: int) -> tuple[Painting, ...]:
    rows = connection.execute(
        select(Plate.code, BottleSet.number).select_from(OnBoard)
        .join(BottleSet, BottleSet.id == OnBoard.bottle_set)
        .outerjoin(Plate, Plate.id == OnBoard.board)
        .where(OnBoard.bath == bath, OnBoard.struck.is_(None)).order_by(OnBoard.id))
    return tuple(dict.fromkeys(
        Painting(code and str(int(code[1:-1])), number) for code, number in rows))
