"""What may go in the place of a lot on hold: lots on its base that look as it does."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.cards import plain_card
from app.calculations.shade_difference import Difference
from app.calculations.shade_words import USUAL, Judged
from app.lookups.lot_lines import LotLine, lot_lines
from app.lookups.nearest_lots import nearest_lots
from app.lookups.offers import Offer, free_of
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
    found = [
        Instead(near.line, offer, near.difference, near.judged)
        for colour in (plain_card(cards),) if colour is not None
        for near in nearest_lots(connection, colour, of.base, within=USUAL.two_rows, but=(lot,))
        for offer in _enough(connection, near.line, wanted, put_up)]
    same = connection.execute(
        select(DyeLot.id).where(DyeLot.colourway == of.colourway, DyeLot.base == of.base,
                                DyeLot.id != lot, DyeLot.struck.is_(None))
        .order_by(DyeLot.id.desc()).limit(_LOOKED_AT)).scalars().all()
    read = read_of_lots(connection, same) if cards else {}
    unread = [Instead(line, offer)
              for line in lot_lines(connection, [one for one in same if one not in read])
              for offer in _enough(connection, line, wanted, put_up)]
    return (*found, *unread)


def _enough(
    connection: Connection, line: LotLine, wanted: int, put_up: str | None
) -> Sequence[Offer]:
    offer = free_of(connection, line.lot, line.code, put_up)
    return (offer,) if offer.count >= wanted else ()
