"""How to measure out a little dye: weigh it, or take it from a stock, diluted as often as needed.

What may be read from a balance or a glass is never less than its step allows (2 %, common
practice, no source: a syringe marked every 0.1 mL gives 5 mL and more, one part made up to ten
comes next). Volumes are whole marks of a glass that is there.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import combinations_with_replacement, product
from math import prod

from app.calculations.balances import LINE_TOLERANCE, Balance, to_step
from app.calculations.given import more_than_nothing
from app.calculations.stock import (
    Bottle,
    diluted_percent,
    dye_in_stock_g,
    percent_made_up,
    powder_for_stock_g,
    stock_ml,
)
from app.problems import Refused

MOST_DILUTIONS = 3
STOCK_PERCENTS = tuple(map(Decimal, ("1", "2", "0.5")))  # the usual one first
TIMES = (10, 5, 4, 2, 20, 25, 50, 100)  # the usual dilution first
ROUND_ML = tuple(map(Decimal, (10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000)))


@dataclass(frozen=True, slots=True)
class Glass:
    """A cylinder, syringe or flask: what it holds and how far apart its marks are."""

    holds_ml: Decimal
    mark_ml: Decimal

    def __post_init__(self) -> None:
        more_than_nothing("volume of the glass", self.holds_ml, "mL")
        more_than_nothing("distance of its marks", self.mark_ml, "mL")

    @property
    def least_ml(self) -> Decimal:
        """The least that may be measured in it."""
        return self.mark_ml / LINE_TOLERANCE

    def can_measure(self, ml: Decimal) -> bool:
        """Whether this volume may be measured in it, also after going to the nearest mark."""
        at_mark = to_step(ml, self.mark_ml)
        return self.least_ml <= min(ml, at_mark) and max(ml, at_mark) <= self.holds_ml


@dataclass(frozen=True, slots=True)
class Weighing:
    """The powder itself can be weighed."""

    powder_g: Decimal
    given_g: Decimal  # of dye as strong as the standard
    doubt: Decimal  # what the reading may be off, as a fraction


@dataclass(frozen=True, slots=True)
class MakeUp:
    """A stock to make first: so much powder, made up with water to so much."""

    powder_g: Decimal
    to_ml: Decimal
    percent: Decimal


@dataclass(frozen=True, slots=True)
class Dilution:
    """Take so much of the solution before, make it up with water to so much."""

    take_ml: Decimal
    to_ml: Decimal
    percent: Decimal  # afterwards


@dataclass(frozen=True, slots=True)
class Pouring:
    """The powder is too little to weigh: this much of a stock gives it.

    `make_up` is None when a bottle that stands ready is used. `doubt` is the worst that all
    readings together may be off, as a fraction of what is given.
    """

    make_up: MakeUp | None
    stock_percent: Decimal
    dilutions: tuple[Dilution, ...]
    take_ml: Decimal
    given_g: Decimal
    doubt: Decimal

    @property
    def from_bottle_ml(self) -> Decimal:
        """What is taken from the stock itself."""
        return self.dilutions[0].take_ml if self.dilutions else self.take_ml


def how_to_measure(
    dye_g: Decimal,
    strength: Decimal,
    balance: Balance,
    glasses: Sequence[Glass],
    bottles: Sequence[Bottle] = (),
) -> Weighing | Pouring:
    """The simplest honest way to this much dye (as strong as the standard).

    Refused when no balance, bottle or glass that is there can do it: nobody is told to weigh less
    than the balance's minimum.
    """
    more_than_nothing("dye", dye_g, "g")
    more_than_nothing("strength of the powder", strength)
    powder_g = dye_g / strength
    if balance.can_weigh(powder_g):
        shown_g = balance.readable_g(powder_g)
        return Weighing(shown_g, shown_g * strength, balance.doubt_at(shown_g))
    way = _from_bottles(dye_g, bottles, glasses) or _from_new_stock(
        dye_g, strength, balance, glasses
    )
    if way is None:
        raise Refused(
            f"{dye_g.normalize():f} g of dye cannot be measured with this balance and these "
            "glasses; nothing was weighed.",
            "Fetch a finer balance, or a syringe and a cylinder with finer marks.",
        )
    return way


def pour_from(bottle: Bottle, dye_g: Decimal, glasses: Sequence[Glass]) -> Pouring | None:
    """This much dye from one bottle, with the fewest dilutions; None where it cannot be measured.

    For those who work from stock even where the powder could be weighed.
    """
    more_than_nothing("dye", dye_g, "g")
    for count in range(MOST_DILUTIONS + 1):
        for times in combinations_with_replacement(TIMES, count):
            way = _diluted(bottle, times, dye_g, glasses)
            if way is not None and way.from_bottle_ml <= bottle.left_ml:
                return way
    return None


def _from_bottles(
    dye_g: Decimal, bottles: Sequence[Bottle], glasses: Sequence[Glass]
) -> Pouring | None:
    ways = [pour_from(bottle, dye_g, glasses) for bottle in bottles]
    return min(
        (way for way in ways if way is not None),
        key=lambda way: (len(way.dilutions), way.doubt),
        default=None,
    )


def _from_new_stock(
    dye_g: Decimal, strength: Decimal, balance: Balance, glasses: Sequence[Glass]
) -> Pouring | None:
    """From the stock of the usual percent and the smallest volume that needs fewest dilutions."""
    ways = []
    for percent, to_ml in product(STOCK_PERCENTS, ROUND_ML):
        powder_g = powder_for_stock_g(to_ml, percent, strength)
        glass = _on_a_mark(to_ml, glasses)
        if glass is None or not balance.can_weigh(powder_g):
            continue
        shown_g = balance.readable_g(powder_g)
        made = MakeUp(shown_g, to_ml, percent_made_up(shown_g, to_ml, strength))
        way = pour_from(Bottle(made.percent, to_ml), dye_g, glasses)
        if way is not None:
            off = (1 + balance.doubt_at(shown_g)) / (1 - glass.mark_ml / to_ml)
            ways.append(replace(way, make_up=made, doubt=(1 + way.doubt) * off - 1))
    return min(ways, key=lambda way: len(way.dilutions), default=None)


def _diluted(
    bottle: Bottle, times: Sequence[int], dye_g: Decimal, glasses: Sequence[Glass]
) -> Pouring | None:
    """The way by these dilutions, where every volume can be measured."""
    percent = bottle.percent / prod(times)
    wanted_ml = stock_ml(dye_g, percent)
    glass = _finest(wanted_ml, glasses)
    if glass is None:
        return None
    take_ml = to_step(wanted_ml, glass.mark_ml)
    volumes = _volumes(times, take_ml, glasses)
    if volumes is None:
        return None
    off = 1 + glass.mark_ml / take_ml
    for part_ml, whole_ml in volumes:
        off *= _reading_off(part_ml, whole_ml, glasses)
    return Pouring(
        make_up=None,
        stock_percent=bottle.percent,
        dilutions=_dilutions(bottle.percent, volumes),
        take_ml=take_ml,
        given_g=dye_in_stock_g(take_ml, percent),
        doubt=off - 1,
    )


_Volumes = list[tuple[Decimal, Decimal]]  # the part taken, and what it is made up to


def _volumes(times: Sequence[int], needed_ml: Decimal, glasses: Sequence[Glass]) -> _Volumes | None:
    """The smallest volumes that reach, found from the last dilution back to the first."""
    volumes: _Volumes = []
    for factor in reversed(times):
        wholes = (ml for ml in ROUND_ML if ml >= needed_ml and _on_a_mark(ml, glasses))
        whole_ml = next((ml for ml in wholes if _on_a_mark(ml / factor, glasses)), None)
        if whole_ml is None:
            return None
        needed_ml = whole_ml / factor
        volumes.insert(0, (needed_ml, whole_ml))
    return volumes


def _dilutions(percent: Decimal, volumes: _Volumes) -> tuple[Dilution, ...]:
    dilutions = []
    for part_ml, whole_ml in volumes:
        percent = diluted_percent(part_ml, percent, whole_ml)
        dilutions.append(Dilution(part_ml, whole_ml, percent))
    return tuple(dilutions)


def _reading_off(part_ml: Decimal, whole_ml: Decimal, glasses: Sequence[Glass]) -> Decimal:
    """The factor by which one dilution may be too strong when each reading is a mark off."""
    part, whole = _on_a_mark(part_ml, glasses), _on_a_mark(whole_ml, glasses)
    assert part is not None  # _volumes chose only what can be measured
    assert whole is not None
    return (1 + part.mark_ml / part_ml) / (1 - whole.mark_ml / whole_ml)


def _finest(ml: Decimal, glasses: Sequence[Glass]) -> Glass | None:
    return min(
        (glass for glass in glasses if glass.can_measure(ml)),
        key=lambda glass: glass.mark_ml,
        default=None,
    )


def _on_a_mark(ml: Decimal, glasses: Sequence[Glass]) -> Glass | None:
    return _finest(ml, [glass for glass in glasses if ml % glass.mark_ml == 0])
