"""Piles as they lie on the tables: their ties, their lot, their disc, and what was seen in them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.certainty import held_by, nearest
from app.lookups.discs import disc_of, yarn_on_disc
from app.lookups.finishing import expected_by_tie
from app.lookups.now import NOW
from app.lookups.thread import Thread, thread
from app.records import Cone, DeedRow, DyeLot, Yarn
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Pile:
    """So many skeins that were counted together; `ties` are those they wore at the count."""

    id: int
    count: int
    ties: str
    lot: str | None
    disc: str | None
    counted: datetime


_PILES = (
    select(Yarn.id, Yarn.count.label("members"), DeedRow.happened)
    .join(DeedRow, DeedRow.seq == Yarn.deed)
    .where(Yarn.kind == "pile", Yarn.struck.is_(None))
)


def counted_last(connection: Connection, limit: int = 8) -> tuple[Pile, ...]:
    """The piles counted last, the newest first."""
    rows = connection.execute(_PILES.order_by(Yarn.id.desc()).limit(limit)).all()
    return tuple(_pile(connection, row.id, row.members, row.happened) for row in rows)


def piles_on(connection: Connection, disc: int, at: datetime = NOW) -> tuple[Pile, ...]:
    """The piles that have this disc as their card at that moment."""
    rows = connection.execute(
        _PILES.where(among(Yarn.id, "ids")).order_by(Yarn.id),
        {"ids": listed(yarn_on_disc(connection, disc, at))},
    ).all()
    return tuple(_pile(connection, row.id, row.members, row.happened) for row in rows)


def _pile(connection: Connection, pile: int, count: int, counted: datetime) -> Pile:
    found = thread(connection, [pile])
    codes = connection.execute(
        select(DyeLot.code).where(among(DyeLot.id, "ids")),
        {"ids": listed(lot for lot in nearest(found, pile, "lot") if lot)},
    ).scalars().all()
    lot = " or ".join(shown(code or "no code yet") for code in codes)
    return Pile(pile, count, ties_of(connection, pile), lot or None,
                disc_of(connection, pile), counted)


def ties_of(connection: Connection, pile: int) -> str:
    """The ties that the skeins of a pile wore at the count: 'red'."""
    return " and ".join(one.tie for one in expected_by_tie(connection, [pile]) if one.most)


def look_for(connection: Connection, rows: Sequence[int]) -> tuple[str, ...]:
    """What the eyes should look for while this yarn is in hand: joins, and a hold above it."""
    found = thread(connection, rows)
    ties = dict(connection.execute(
        select(Yarn.id, Yarn.tie).where(among(Yarn.id, "ids")).order_by(Yarn.id),
        {"ids": listed(found.count)}).all())
    codes = dict(connection.execute(
        select(Cone.id, Cone.code).where(among(Cone.id, "ids")),
        {"ids": listed(_cones(found))}).all())
    joins = tuple(
        f"1 skein with {ties[row] or 'no'} ties spans a join: {_shares(found, row, codes)}."
        for row in ties if len([thing for thing in found.own[row] if thing[0] == "cone"]) > 1
    )
    held = any(held_by(found, row) for row in rows)
    return (*joins, *(["HOLD lies on this yarn: it goes on, marked."] if held else []))


def _shares(found: Thread, row: int, codes: Mapping[int, str]) -> str:
    return ", ".join(
        f"{shown(codes[cone])} {round(own.share * 100)} %"
        for (kind, cone), own in found.own[row].items() if kind == "cone" and cone
    )


def _cones(found: Thread) -> Iterator[int]:
    for own in found.own.values():
        yield from (thing for kind, thing in own if kind == "cone" and thing is not None)
