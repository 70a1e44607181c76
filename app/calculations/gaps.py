"""What does not add up in a book, and what it is worth where a price is known.

Common practice, no source: a jar's gap counts from 2 g and 1 % of what it should hold, a cone's
from 1 % of its fibre.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

CONE, JAR, CORD, TAG, STOCK = "cone", "jar", "cord", "tags", "stock"
JAR_MG, JAR_SHARE = 2_000, Decimal("0.01")


@dataclass(frozen=True, slots=True)
class Gap:
    """One gap. Of weight or count what is not known is none; `price` is of all of it, in hundredths
    of the studio's currency: below nothing where there is more than was booked, none where no price
    is known."""

    kind: str
    name: str
    code: str
    """What is opened to look at it."""
    mg: int | None
    """Milligrams that are missing; below nothing, there is more than was booked."""
    count: int | None
    looks_like: str
    price: int | None


def jar_gap_counts(gap_mg: int, expected_mg: int) -> bool:
    """Whether a jar is further off than weighing and spilling make it."""
    return abs(gap_mg) > JAR_MG + abs(expected_mg) * JAR_SHARE


def ranked(gaps: Iterable[Gap]) -> tuple[Gap, ...]:
    """The dearest first; those without a known price after them, the heaviest first."""
    return tuple(sorted(gaps, key=lambda one: (
        one.price is None, -(abs(one.price) if one.price is not None else 0),
        -abs(one.mg or 0), -abs(one.count or 0), one.name)))


def worth(gaps: Iterable[Gap]) -> tuple[int, int]:
    """What is missing at its price, and how many of the gaps have no known price."""
    some = tuple(gaps)
    return (sum(max(0, one.price) for one in some if one.price is not None),
            sum(1 for one in some if one.price is None))
