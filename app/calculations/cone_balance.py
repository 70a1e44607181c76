"""The mass balance of a cone: what came off it against what was booked.

Common practice, no source.
"""

from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Decimal
from enum import StrEnum

WARN_ABOVE = Decimal("0.01")  # of the cone


class Gap(StrEnum):
    """What an unexplained mass looks like."""

    NONE = "nothing to speak of"
    NOT_BOOKED = "not booked"
    BOOKED_TWICE = "booked twice, or from another cone"
    NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Drawn:
    """Things of one sort that came off the cone: skeins, minis, waste, the tail."""

    what: str
    count: int
    each_g: Decimal

    @property
    def total_g(self) -> Decimal:
        """Their mass together."""
        return self.count * self.each_g


@dataclass(frozen=True, slots=True)
class ConeBalance:
    """A cone's fibre at standard regain, and all that was booked from it."""

    fibre_g: Decimal
    drawn: tuple[Drawn, ...]
    skein_g: Decimal

    @property
    def unexplained_g(self) -> Decimal:
        """What the cone held and no one booked; below nothing when more was booked than it held."""
        return self.fibre_g - sum((part.total_g for part in self.drawn), Decimal(0))

    @property
    def skeins_amiss(self) -> int:
        """The whole skeins nearest to the unexplained mass; below nothing when too many."""
        return int((self.unexplained_g / self.skein_g).to_integral_value(ROUND_HALF_EVEN))

    @property
    def gap(self) -> Gap:
        """What the unexplained mass looks like; only a hint of where to look."""
        room_g = self.fibre_g * WARN_ABOVE
        if abs(self.unexplained_g) <= room_g:
            return Gap.NONE
        if abs(self.unexplained_g - self.skeins_amiss * self.skein_g) > room_g:
            return Gap.NOT_KNOWN
        return Gap.NOT_BOOKED if self.skeins_amiss > 0 else Gap.BOOKED_TWICE
