"""How much of the belief each suspect has, at every pair of rates: prior times what was seen.

One cause is assumed to have spoiled whatever is spoiled beyond the common rate. For each suspect
the chances of all skeins are multiplied: faulty at the rate, seen good at 1 - rate, sold and silent
at 1 - tells x rate; the rate is the high one for skeins that went through the suspect, the low one
for the others. Averaged over both rates, as nobody knows them. Sums of logarithms, so that
thousands of skeins do not underflow.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import product
from math import exp, log

from app.calculations.evidence import NONE, Evidence, Exposure, Pooled, Seen, Suspect, Tally, tally
from app.calculations.fault_settings import Rates, Settings, Weighted
from app.calculations.placements import chance_of, log_placed


@dataclass(frozen=True, slots=True)
class Case:
    """One pair of rates and how much it weighs."""

    touched: Fraction
    others: Fraction
    weight: Fraction


@lru_cache
def cases(rates: Rates) -> tuple[Case, ...]:
    """Every rate of the touched skeins with every rate of the others."""
    return tuple(
        Case(high, low, one * other) for (high, one), (low, other) in product(
            rates.touched, rates.others
        )
    )


def shared_rate(case: Case, share: Fraction) -> Fraction:
    """The rate of a skein only so much of which went through the suspect."""
    return share * case.touched + (1 - share) * case.others


def beliefs(
    evidence: Evidence, settings: Settings, fault: str | None = None
) -> Mapping[Suspect, tuple[float, ...]]:
    """For each suspect, and for none of them, its share of the belief in every case; all make 1."""
    exposures = dict(evidence.exposures())
    of_kind = Counter(suspect.kind for suspect in exposures)
    exposures[NONE] = Exposure(Tally(), tally(skein.seen for skein in evidence.skeins))
    of_kind[NONE.kind] = 1
    logs = {}
    for suspect, exposure in exposures.items():
        prior = log(settings.prior(suspect.kind, fault) / of_kind[suspect.kind])
        logs[suspect] = [prior + weight for weight in _log_weights(exposure, settings.rates)]
    most = max(max(weights) for weights in logs.values())
    scaled = {one: [exp(weight - most) for weight in weights] for one, weights in logs.items()}
    whole = sum(map(sum, scaled.values()))
    return {one: tuple(weight / whole for weight in row) for one, row in scaled.items()}


def _log_weights(exposure: Exposure, rates: Rates) -> list[float]:
    """The logarithm of the chance of all that was seen, if this were the cause, in every case."""
    high = [_log_chance(exposure.sure, logs) for logs in _logs_at(rates.touched, rates.tells)]
    low = [_log_chance(exposure.others, logs) for logs in _logs_at(rates.others, rates.tells)]
    weights = [
        weight + one + other
        for weight, (one, other) in zip(_log_of_cases(rates), product(high, low), strict=True)
    ]
    for pool in exposure.pools:
        weights = [a + b for a, b in zip(weights, pool_logs(pool, rates), strict=True)]
    for (seen, share), count in Counter(exposure.shared).items():
        weights = [
            a + count * b for a, b in zip(weights, _share_logs(seen, share, rates), strict=True)
        ]
    return weights


@lru_cache(maxsize=4096)
def pool_logs(pool: Pooled, rates: Rates) -> tuple[float, ...]:
    """The logarithm of the chance of what was seen of a pool, in every case."""
    return tuple(
        log_placed(pool, case.touched, case.others, rates.tells) for case in cases(rates)
    )


@lru_cache(maxsize=4096)
def _share_logs(seen: Seen, share: Fraction, rates: Rates) -> tuple[float, ...]:
    return tuple(
        log(chance_of(seen, shared_rate(case, share), rates.tells)) for case in cases(rates)
    )


@lru_cache
def _log_of_cases(rates: Rates) -> tuple[float, ...]:
    return tuple(log(case.weight) for case in cases(rates))


@lru_cache
def _logs_at(weighted: Weighted, tells: Fraction) -> tuple[tuple[float, ...], ...]:
    """At each rate, the logarithm of the chance that a skein is seen faulty, good, silent, not."""
    return tuple(
        tuple(log(chance_of(seen, rate, tells)) for seen in Seen) for rate, _ in weighted
    )


def _log_chance(seen: Tally, logs: Sequence[float]) -> float:
    return sum(count * one for count, one in zip(seen, logs, strict=True))
