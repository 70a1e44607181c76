"""What may go in the place of a lot on hold: lots on its base that look as it does."""

from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.cards import plain_card
from app.calculations.shade_difference import Difference
from app.calculations.shade_words import Judged
from app.lookups.lot_lines import LotLine, lot_lines
from app.lookups.nearest_lots import nearest_lots
from app.lookups.offers import Offer, free_of_lots
from app.lookups.shade_bands import shade_bands
from app.lookups.shades import newest, read_of_lots
from app.records import DyeLot

_LOOKED_AT = 300  # newest lots of a colourway on a base


@dataclass(frozen=True, slots=True)
class Instead:
    """A lot with enough that lies free; no difference where it was not read as the held one was."""

    line: LotLine
    offer: Offer
    difference: Difference | None = None
    judged: Judged | None = None

    @property
    def words(self) -> str:
        """'26·06·H3W: 4 on shelf 003, 0.1 ± 0.5, looks the same'."""
        if self.difference is None or self.judged is None:
            return f"{self.offer.words}, not measured: hold them side by side"
        return f"{self.offer.words}, {self.difference}, {self.judged.shown}"


def instead_of(
    connection: Connection, lot: int, wanted: int, put_up: str | None = None
) -> tuple[Instead, ...]:
    """Lots within what alternate rows still hide, nearest first; then those that were not read.

    Only lots that have all that is wanted, on the same base; of those without a card only the same
    colourway.
    """
    of = connection.execute(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id == lot)).one()
    cards = newest(read_of_lots(connection, [lot]).get(lot, ()))
    within = shade_bands(connection).two_rows
    colour = plain_card(cards)
    near = () if colour is None else nearest_lots(
        connection, colour, of.base, within=within, but=(lot,))
    same = connection.execute(
        select(DyeLot.id).where(DyeLot.colourway == of.colourway, DyeLot.base == of.base,
                                DyeLot.id != lot, DyeLot.struck.is_(None))
        .order_by(DyeLot.id.desc()).limit(_LOOKED_AT)).scalars().all()
    read = read_of_lots(connection, same) if cards else {}
    unread = lot_lines(connection, [one for one in same if one not in read])
    lines = (*(one.line for one in near), *unread)
    offers = free_of_lots(connection, {line.lot: line.code for line in lines}, put_up)
    found = (*(Instead(one.line, offers[one.line.lot], one.difference, one.judged)
               for one in near), *(Instead(line, offers[line.lot]) for line in unread))
    return tuple(one for one in found if one.offer.count >= wanted)
