"""What a disc hangs on at a moment, and what is on that cord."""

from datetime import datetime

from sqlalchemy import Connection, bindparam, or_, select

from app.records import OnBundle, Plate, PlateStay

_BUNDLE = (
    select(PlateStay.bundle)
    .where(PlateStay.plate == bindparam("disc"), PlateStay.struck.is_(None),
           PlateStay.since <= bindparam("at"),
           or_(PlateStay.until.is_(None), PlateStay.until > bindparam("at")))
    .order_by(PlateStay.since.desc()).limit(1)
)
_ON_IT = (
    select(OnBundle.yarn)
    .where(OnBundle.bundle == bindparam("bundle"), OnBundle.struck.is_(None),
           OnBundle.since <= bindparam("at"),
           or_(OnBundle.until.is_(None), OnBundle.until > bindparam("at")))
    .order_by(OnBundle.yarn)
)
_DISC = (
    select(Plate.code).join(PlateStay, PlateStay.plate == Plate.id)
    .join(OnBundle, OnBundle.bundle == PlateStay.bundle)
    .where(OnBundle.yarn == bindparam("yarn"), OnBundle.until.is_(None),
           OnBundle.struck.is_(None), PlateStay.until.is_(None), PlateStay.struck.is_(None))
)


def bundle_on(connection: Connection, disc: int, at: datetime) -> int | None:
    """The bundle this disc hung on at that moment."""
    return connection.execute(_BUNDLE, {"disc": disc, "at": at}).scalar()


def yarn_on_bundle(connection: Connection, bundle: int, at: datetime) -> list[int]:
    """The rows on a bundle at that moment."""
    return list(connection.execute(_ON_IT, {"bundle": bundle, "at": at}).scalars())


def yarn_on_disc(connection: Connection, disc: int, at: datetime) -> list[int]:
    """The rows on this disc at that moment; none where it hung on nothing."""
    bundle = bundle_on(connection, disc, at)
    return [] if bundle is None else yarn_on_bundle(connection, bundle, at)


def disc_of(connection: Connection, yarn: int) -> str | None:
    """The number of the disc that this row wears now, or none."""
    code = connection.execute(_DISC, {"yarn": yarn}).scalar()
    return None if code is None else code[1:-1]
