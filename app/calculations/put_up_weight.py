"""The weight of a put-up, judged without accusing the winder of the weather.

A reading is first brought to the standard regain, then held against the European rule for
prepackages (Directive 76/211/EEC, Annex I, from memory). Regains are fractions.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from enum import StrEnum
from statistics import mean, stdev

from app.calculations.moisture import at_regain, regain_at_humidity, regain_of_reading

MOST_BELOW_T1 = Decimal("0.025")

# Above so many grams nominal: a fraction of the nominal weight, and grams besides.
_TOLERABLE_ERRORS = (
    (1000, Decimal("0.015"), 0),
    (500, Decimal(0), 15),
    (300, Decimal("0.03"), 0),
    (200, Decimal(0), 9),
    (100, Decimal("0.045"), 0),
    (50, Decimal(0), Decimal("4.5")),
    (0, Decimal("0.09"), 0),
)


@dataclass(frozen=True, slots=True)
class RoomRegain:
    """The regain of the yarn in the room today, and whether it was only estimated."""

    regain: Decimal
    estimated: bool


class Verdict(StrEnum):
    """How a weight stands to the nominal weight, T1 and T2."""

    FULL = "full weight"
    LIGHT = "light, but tolerable"
    TOO_LIGHT = "too light: few may be"
    FAR_TOO_LIGHT = "far too light: none may be"


@dataclass(frozen=True, slots=True)
class CheckedWeight:
    """One put-up's weight at the standard regain, and what it is worth."""

    standard_g: Decimal
    verdict: Verdict
    estimated: bool

    @property
    def sell_as_g(self) -> int:
        """The whole grams that may honestly be printed on it."""
        return int(self.standard_g.to_integral_value(ROUND_FLOOR))


@dataclass(frozen=True, slots=True)
class CheckedBatch:
    """The weights of a batch of equal put-ups, all at the standard regain."""

    count: int
    mean_g: Decimal
    deviation_g: Decimal | None  # not known of a single one
    below_t1: int
    below_t2: int
    passes: bool


def by_reference_skein(reading_g: Decimal, dry_g: Decimal) -> RoomRegain:
    """The room's regain, from the skein of known dry mass that hangs by the balance."""
    return RoomRegain(regain_of_reading(reading_g, dry_g), estimated=False)


def by_humidity(humidity: Decimal, table: Sequence[tuple[Decimal, Decimal]]) -> RoomRegain:
    """The room's regain, estimated from its relative humidity."""
    return RoomRegain(regain_at_humidity(humidity, table), estimated=True)


def tolerable_error_g(nominal_g: Decimal) -> Decimal:
    """How far below its nominal weight a prepackage may be; percentages up to the next 0.1 g."""
    rate, fixed_g = next((r, g) for above_g, r, g in _TOLERABLE_ERRORS if nominal_g > above_g)
    return (nominal_g * rate + fixed_g).quantize(Decimal("0.1"), ROUND_CEILING)


def check_weight(
    reading_g: Decimal, nominal_g: Decimal, room: RoomRegain, standard_regain: Decimal
) -> CheckedWeight:
    """One put-up judged as it would weigh at the standard regain."""
    standard_g = at_regain(reading_g, room.regain, standard_regain)
    return CheckedWeight(standard_g, _verdict(standard_g, nominal_g), room.estimated)


def check_batch(standard_g: Sequence[Decimal], nominal_g: Decimal) -> CheckedBatch:
    """A batch judged as a whole: the average, the few that may be light, and none far too light."""
    verdicts = [_verdict(weight, nominal_g) for weight in standard_g]
    below_t2 = verdicts.count(Verdict.FAR_TOO_LIGHT)
    below_t1 = verdicts.count(Verdict.TOO_LIGHT) + below_t2
    mean_g = mean(standard_g)
    return CheckedBatch(
        count=len(standard_g),
        mean_g=mean_g,
        deviation_g=stdev(standard_g) if len(standard_g) > 1 else None,
        below_t1=below_t1,
        below_t2=below_t2,
        passes=mean_g >= nominal_g and below_t1 <= MOST_BELOW_T1 * len(standard_g) and not below_t2,
    )


def _verdict(standard_g: Decimal, nominal_g: Decimal) -> Verdict:
    error_g = tolerable_error_g(nominal_g)
    if standard_g >= nominal_g:
        return Verdict.FULL
    if standard_g >= nominal_g - error_g:
        return Verdict.LIGHT
    if standard_g >= nominal_g - 2 * error_g:
        return Verdict.TOO_LIGHT
    return Verdict.FAR_TOO_LIGHT
