"""More of the same lot: what is needed, and all there is to offer, in the order it is offered."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from decimal import ROUND_CEILING, Decimal

from sqlalchemy import Connection, bindparam, select

from app.calculations.cards import Cards, Compared, compared, plain_card
from app.calculations.fewest_lots import LotSet, Offered, fewest_lots
from app.calculations.reorder import ALLOWANCE, Blending, Need, need, still_needed_m
from app.calculations.shade_words import Bands
from app.lookups.counter import at_counter
from app.lookups.left_to_sell import left_of
from app.lookups.lot_lines import LotLine, sisters_left
from app.lookups.nearest_lots import nearest_lots
from app.lookups.redyes import redye_history
from app.lookups.reorder_ways import (
    Other,
    Way,
    all_new,
    blend,
    other_design,
    other_lot,
    redye,
    same_lot,
    substitute,
)
from app.lookups.shade_bands import shade_bands
from app.lookups.shades import newest, read_of_lots
from app.lookups.stand_ins import stand_ins
from app.problems import BadInput
from app.records import BASES, BaseVersion, DyeLot, PutUp

NEAREST = 40
"""Lots that a quantity is put together from."""
SHOWN = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a customer wants more of: so many, or metres, or the rest of a piece.

    `used` skeins made the share `done` of the piece. `basis` is how their lot is known: scanned
    where its tag was read, stated where they say so.
    """

    lot: int
    skeins: int | None = None
    metres: Decimal | None = None
    used: Decimal | None = None
    done: Decimal | None = None
    put_up: str = "skein"
    allowance: Decimal = ALLOWANCE
    blending: Blending | None = None
    basis: str = "scanned"

    def __post_init__(self) -> None:
        if self.basis not in BASES:
            raise ValueError(f"no such basis: {self.basis}")


@dataclass(frozen=True, slots=True)
class Reorder:
    """The answer. `fewest` is the fewest lots for it where no single lot has enough."""

    wanted: int
    need: Need | None
    """Where it was reckoned from metres."""
    free: int
    ways: tuple[Way, ...]
    fewest: LotSet | None
    basis: str
    """How the lot that all of it is held against is known; nothing here makes it surer."""

    @property
    def enough(self) -> bool:
        """Whether the lot itself has enough that lies free."""
        return self.free >= self.wanted

    @property
    def only_just(self) -> bool:
        """Whether one more is to be offered, on return terms."""
        return self.need is not None and self.need.only_just()


_PUT_UP = (
    select(PutUp.nominal_mm).join(BaseVersion, BaseVersion.id == PutUp.base_version)
    .where(BaseVersion.base == bindparam("base"), PutUp.name == bindparam("put_up"),
           PutUp.struck.is_(None), BaseVersion.struck.is_(None))
    .order_by(BaseVersion.number.desc()).limit(1)
)


def reorder(connection: Connection, asked: Asked, now: datetime) -> Reorder:
    """All that can be offered, as things stand; `now` is the hour by the clock on the wall."""
    lot = connection.execute(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id == asked.lot)).one()
    each_mm = connection.execute(
        _PUT_UP, {"base": lot.base, "put_up": asked.put_up}).scalar()
    wanted, reckoned = _wanted(asked, each_mm)
    at = at_counter(connection, asked.lot)
    free = left_of(connection, [asked.lot], asked.put_up)[asked.lot].count
    cards = newest(read_of_lots(connection, [asked.lot]).get(asked.lot, ()))
    bands = shade_bands(connection)
    others = _others(connection, asked, lot.base, cards, bands)
    offered = [one for one in others if one.made][:SHOWN] + [
        one for one in others if not one.made][:SHOWN]
    ways = (
        *same_lot(at, asked.put_up, free, now),
        *(other_lot(one) for one in offered),
        *blend(others, asked.blending, bands),
        other_design(others, bands),
        *(substitute(one) for one in stand_ins(connection, lot.colourway, lot.base,
                                               asked.put_up)[:SHOWN]),
        redye(redye_history(connection, asked.lot), now),
        all_new(_whole(asked, wanted), [(one.line, one.free) for one in others]),
    )
    fewest = None if free >= wanted else _fewest(wanted, free, at.line, cards, others)
    return Reorder(wanted, reckoned, free, ways, fewest, asked.basis)


def _wanted(asked: Asked, each_mm: int | None) -> tuple[int, Need | None]:
    if asked.skeins is not None:
        if asked.skeins < 1:
            raise BadInput("Nothing is wanted; nothing was looked for.", "Say how many.")
        return asked.skeins, None
    if each_mm is None:
        raise BadInput(f"How long a {asked.put_up} is, is not known; nothing was reckoned.",
                       "Say how many are wanted.")
    each_m = Decimal(each_mm) / 1000
    metres = asked.metres
    if metres is None:
        if asked.used is None or asked.done is None:
            raise BadInput("Nothing is wanted; nothing was looked for.",
                           "Say how many, how many metres, or how much of the piece is done.")
        metres = still_needed_m(asked.used, each_m, asked.done)
    reckoned = need(metres, each_m, asked.allowance)
    return max(reckoned.skeins, 1), reckoned


def _whole(asked: Asked, wanted: int) -> int:
    """All skeins of the piece."""
    used = asked.used or Decimal(0)
    return wanted + int(used.to_integral_value(ROUND_CEILING))


def _others(
    connection: Connection, asked: Asked, base: int, cards: Cards, bands: Bands
) -> list[Other]:
    """Sisters and near lots with some left of the put-up, those first that are nearest."""
    made = {look.line.lot: Other(look.line, 0, "sister" if look.fills_known else "may be a sister")
            for look in sisters_left(connection, asked.lot)}
    found = dict(made)
    colour = plain_card(cards)
    if colour is not None:
        for one in nearest_lots(connection, colour, base, most=NEAREST, but=(asked.lot,)):
            found.setdefault(one.line.lot, Other(one.line, 0, ""))
    left = left_of(connection, found, asked.put_up)
    read = read_of_lots(connection, found)
    told = [_told(replace(one, free=left[lot].count), compared(cards, newest(read.get(lot, ()))),
                  bands)
            for lot, one in found.items() if left[lot].count]
    return sorted(told, key=lambda one: (one.far, one.line.lot))


def _told(other: Other, against: Compared | None, bands: Bands) -> Other:
    if against is None:
        return other
    return replace(other, difference=against.decisive, judged=against.judged(bands))


def _fewest(
    wanted: int, free: int, line: LotLine, cards: Cards, others: Sequence[Other]
) -> LotSet | None:
    """The fewest lots for the quantity, held against what the customer has of the lot already."""
    colour = plain_card(cards)
    if colour is None:
        return None
    lots = [Offered(line.shown, free, colour)] + [
        Offered(one.line.shown, one.free, one.difference.other) for one in others
        if one.difference and one.difference.other.viewing == colour.viewing]
    return fewest_lots(lots, wanted, {f"{line.shown} in hand": colour})
