"""A customer wants more of a lot: how much, how much to keep for blending, and the redye's chance.

Allowances are fractions, lengths metres unless their name says cm. Common practice, no source.
"""

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from fractions import Fraction

from app.calculations.given import a_share, more_than_nothing, not_below_nothing
from app.problems import BadInput

ALLOWANCE = Decimal("0.05")
SPARE_OF_A_SKEIN = Decimal("0.1")


@dataclass(frozen=True, slots=True)
class Need:
    """What a piece needs, allowance included: metres, and skeins as reckoned."""

    metres: Decimal
    exact: Decimal

    @property
    def skeins(self) -> int:
        """Whole skeins."""
        return int(self.exact.to_integral_value(ROUND_CEILING))

    def only_just(self, spare: Decimal = SPARE_OF_A_SKEIN) -> bool:
        """Whether hardly anything is left of the last skein: offer one more, on return terms."""
        return self.skeins - self.exact < spare


def need(metres: Decimal, m_per_skein: Decimal, allowance: Decimal = ALLOWANCE) -> Need:
    """The skeins for so many metres of knitting."""
    not_below_nothing("length needed", metres, "m")
    more_than_nothing("length of a skein", m_per_skein, "m")
    not_below_nothing("allowance", allowance)
    wanted_m = metres * (1 + allowance)
    return Need(wanted_m, wanted_m / m_per_skein)


def still_needed_m(used_skeins: Decimal, m_per_skein: Decimal, share_done: Decimal) -> Decimal:
    """The metres the rest of the piece takes, when so many skeins made so much of it."""
    more_than_nothing("number of skeins used", used_skeins)
    more_than_nothing("length of a skein", m_per_skein, "m")
    a_share("share of the piece that is done", share_done)
    more_than_nothing("share of the piece that is done", share_done)
    used_m = used_skeins * m_per_skein
    return used_m / share_done - used_m


@dataclass(frozen=True, slots=True)
class Fabric:
    """How a piece is knitted: gauge in 10 cm, and the yarn in one stitch."""

    stitches: Decimal
    rows: Decimal
    cm_a_stitch: Decimal

    def __post_init__(self) -> None:
        more_than_nothing("number of stitches in 10 cm", self.stitches)
        more_than_nothing("number of rows in 10 cm", self.rows)
        more_than_nothing("yarn in a stitch", self.cm_a_stitch, "cm")


@dataclass(frozen=True, slots=True)
class Blending:
    """A zone in which two lots alternate: so many rows, and what must be left of each lot."""

    rows: int
    m_a_row: Decimal

    @property
    def all_m(self) -> Decimal:
        """The yarn of the whole zone."""
        return self.rows * self.m_a_row

    @property
    def each_m(self) -> Decimal:
        """What to keep back of each lot; ask before the old one is finished."""
        return self.all_m / 2


def blending(fabric: Fabric, round_cm: Decimal, zone_cm: Decimal) -> Blending:
    """The zone of so many centimetres, on a piece of so many centimetres round."""
    more_than_nothing("width of the piece", round_cm, "cm")
    more_than_nothing("height of the zone", zone_cm, "cm")
    rows = (zone_cm * fabric.rows / 10).to_integral_value(ROUND_CEILING)
    return Blending(int(rows), round_cm * fabric.stitches / 10 * fabric.cm_a_stitch / 100)


def redye_chance(near: int, lots: int, tries: int = 1) -> Fraction:
    """The chance that one of so many new dyeings comes near enough; it is never promised.

    From the colourway's own history, `near` of its `lots` being near enough, by the rule of
    succession: (near + 1) / (lots + 2), each failed try counted before the next.
    """
    if not (0 <= near <= lots and tries >= 1):
        raise BadInput(
            f"{near} of {lots} lots in {tries} tries cannot be.",
            "Count the lots that were near enough among all lots of the colourway.",
        )
    missed = Fraction(1)
    for failed in range(tries):
        missed *= 1 - Fraction(near + 1, lots + failed + 2)
    return 1 - missed
