"""Cords that wear a disc: what hangs on them, and how far they are."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, or_, select

from app.calculations.codes import shown
from app.lookups.certainty import held_by, links_of
from app.lookups.discs import bundle_on, yarn_on_bundle
from app.lookups.finishing import Expected, expected_by_tie
from app.lookups.now import NOW
from app.lookups.thread import thread
from app.records import (
    Base,
    Bath,
    Colourway,
    Cone,
    DyeLot,
    Plate,
    PlateStay,
    Yarn,
)
from app.store.dialect import among, listed

WOUND, IN_POT, LIFTED, PILED = "wound", "in the pot", "lifted", "counted"


@dataclass(frozen=True, slots=True)
class BundleFacts:
    """One cord: its disc, its yarn, where it stands in the work."""

    disc: int
    number: str
    since: datetime
    rows: tuple[int, ...]
    count: int
    put_up: str
    base: str
    mg: int
    ties: tuple[Expected, ...]
    cones: tuple[str, ...]
    stage: str
    lot: str | None
    colourway: str | None
    swatch: str | None
    held: bool


def bundle_facts(connection: Connection, disc: int, at: datetime) -> BundleFacts | None:
    """The cord this disc hangs on at that moment, or none."""
    bundle = bundle_on(connection, disc, at)
    rows = [] if bundle is None else yarn_on_bundle(connection, bundle, at)
    if bundle is None or not rows:
        return None
    plate = connection.execute(
        select(Plate.code, PlateStay.since).join(PlateStay, PlateStay.plate == Plate.id)
        .where(Plate.id == disc, PlateStay.bundle == bundle, PlateStay.struck.is_(None))
        .order_by(PlateStay.since.desc())
    ).first()
    yarn = connection.execute(
        select(Yarn.count.label("members"), Yarn.mg, Yarn.put_up, Yarn.kind, Base.name)
        .join(Base, Base.id == Yarn.base).where(among(Yarn.id, "ids")), {"ids": listed(rows)}
    ).all()
    found = thread(connection, rows)
    cones = [link.thing for link in links_of(found, {r: found.count[r] for r in rows}, "cone")]
    codes = connection.execute(
        select(Cone.code).where(Cone.id.in_([cone for cone in cones if cone]))).scalars().all()
    stage, lot = _stage(connection, rows, {one.kind for one in yarn})
    return BundleFacts(
        disc=disc, number=plate.code[1:-1] if plate else "", since=plate.since if plate else at,
        rows=tuple(rows), count=sum(one.members for one in yarn), put_up=yarn[0].put_up,
        base=" and ".join(dict.fromkeys(one.name for one in yarn)),
        mg=sum(one.mg for one in yarn), ties=expected_by_tie(connection, rows),
        cones=tuple(shown(code) for code in codes), stage=stage,
        lot=shown(lot.code or "no code yet") if lot else None,
        colourway=lot.name if lot else None, swatch=lot.swatch if lot else None,
        held=any(held_by(found, row) for row in rows),
    )


@dataclass(frozen=True, slots=True)
class _Lot:
    code: str | None
    name: str
    swatch: str | None


def _stage(
    connection: Connection, rows: list[int], kinds: set[str]
) -> tuple[str, _Lot | None]:
    found = thread(connection, rows)
    lots = [link.thing for link in links_of(found, {r: found.count[r] for r in rows}, "lot")
            if link.thing]
    row = connection.execute(
        select(DyeLot.code, Colourway.name, Colourway.swatch, DyeLot.bath, Bath.lifted)
        .join(Colourway, Colourway.id == DyeLot.colourway)
        .outerjoin(Bath, Bath.id == DyeLot.bath)
        .where(DyeLot.id.in_(lots)).order_by(DyeLot.id.desc())
    ).first()
    lot = _Lot(row.code, row.name, row.swatch) if row else None
    if kinds == {"pile"}:
        return PILED, lot
    if row is None:
        return WOUND, None
    return (LIFTED if row.lifted or row.bath is None else IN_POT), lot


def bundles_now(connection: Connection, at: datetime) -> tuple[BundleFacts, ...]:
    """All cords that wear a disc at that moment, by its number."""
    open_now = PlateStay.until.is_(None)  # few rows, which an index keeps together
    hung = open_now if at is NOW else or_(open_now, PlateStay.until > at)
    discs = connection.execute(
        select(Plate.id).join(PlateStay, PlateStay.plate == Plate.id)
        .where(PlateStay.struck.is_(None), PlateStay.since <= at, hung)
        .order_by(Plate.code)
    ).scalars().all()
    found = (bundle_facts(connection, disc, at) for disc in discs)
    return tuple(one for one in found if one is not None)
