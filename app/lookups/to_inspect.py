"""Lots that wait for the inspector: out of the pot, no verdict yet; and the lot before a lot."""

from collections.abc import Sequence

from sqlalchemy import Connection, bindparam, select

from app.lookups.lot_lines import LotLine, lot_line
from app.records import Bath, DyeLot, Verdict
from app.store.dialect import among, listed

MOST, LOOKED_AT = 12, 60
"""So many are told, out of so many that were dyed last: an older one is hardly waiting."""

_NEWEST = select(DyeLot.id).order_by(DyeLot.id.desc()).limit(1)
_LIFTED = (
    select(DyeLot.id).join(Bath, Bath.id == DyeLot.bath)
    .where(DyeLot.id > bindparam("after"), DyeLot.code.is_not(None), DyeLot.struck.is_(None),
           Bath.lifted.is_not(None))
)
_DECIDED = select(Verdict.lot).where(among(Verdict.lot, "ids"), Verdict.struck.is_(None))

_BEFORE = (
    select(DyeLot.id)
    .where(DyeLot.colourway == bindparam("colourway"), DyeLot.base == bindparam("base"),
           DyeLot.id < bindparam("lot"), DyeLot.code.is_not(None), DyeLot.struck.is_(None))
    .order_by(DyeLot.id.desc()).limit(1)
)


def to_inspect(connection: Connection) -> tuple[LotLine, ...]:
    """Those that came out of the pot first come first."""
    newest = connection.execute(_NEWEST).scalar() or 0
    lifted: Sequence[int] = connection.execute(
        _LIFTED, {"after": newest - LOOKED_AT}).scalars().all()
    decided = set(connection.execute(_DECIDED, {"ids": listed(lifted)}).scalars())
    waiting = sorted(set(lifted) - decided)[:MOST]
    return tuple(lot_line(connection, lot) for lot in waiting)


def lot_before(connection: Connection, lot: int) -> LotLine | None:
    """The lot of this colourway and base that was dyed before, read or not; none for the first."""
    row = connection.execute(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id == lot)).one()
    before = connection.execute(
        _BEFORE, {"colourway": row.colourway, "base": row.base, "lot": lot}).scalar()
    return None if before is None else lot_line(connection, before)
