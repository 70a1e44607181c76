"""The chance that a redye comes near a lot, from what was read of the colourway's other lots."""

from dataclasses import dataclass
from fractions import Fraction

from sqlalchemy import Connection, select

from app.calculations.cards import compared
from app.calculations.reorder import redye_chance
from app.lookups.shades import lots_read, newest, read_of_lots
from app.records import DyeLot

NEAR = 1.0
"""CIEDE2000 that counts as near enough."""


@dataclass(frozen=True, slots=True)
class RedyeHistory:
    """Of so many other lots that were read, how many lie near this one; it is never promised."""

    near: int
    lots: int

    def chance(self, tries: int = 1) -> Fraction | None:
        """None where nothing was read: nobody can say."""
        return redye_chance(self.near, self.lots, tries) if self.lots else None

    @property
    def words(self) -> str:
        """'4 of 11 lots came within 1.0; reckoned 38 % in one try, 60 % in two; never promised'."""
        one, two = self.chance(), self.chance(2)
        if one is None or two is None:
            return "no other lot was read, so nobody can say how likely it is; never promised"
        return (f"{self.near} of {self.lots} lots came within {NEAR}; reckoned {_percent(one)} in "
                f"one try, {_percent(two)} in two; never promised")


def redye_history(connection: Connection, lot: int) -> RedyeHistory:
    """The other lots of the colourway on this base, held against this one."""
    row = connection.execute(
        select(DyeLot.colourway, DyeLot.base).where(DyeLot.id == lot)).one()
    read = read_of_lots(connection, lots_read(connection, row.colourway, row.base))
    this = newest(read.get(lot, ()))
    found = [compared(this, newest(cards)) for other, cards in read.items() if other != lot]
    apart = [one.decisive.ciede2000 for one in found if one is not None]
    return RedyeHistory(sum(far <= NEAR for far in apart), len(apart))


def _percent(chance: Fraction) -> str:
    return f"{float(chance):.0%}".replace("%", " %")
