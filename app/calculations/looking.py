"""What a look at some skeins may show: for each suspect, how likely so many are found faulty.

A sold and silent skein is a little less likely faulty than one nobody has asked about. Skeins of
one pool are not independent of one another: what one turns out to be changes what the rest are.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import comb, exp

from app.calculations.evidence import Evidence, Pooled, Seen, Skein, Suspect, Tally
from app.calculations.fault_settings import Rates
from app.calculations.placements import chance_of
from app.calculations.weight_of_evidence import cases, pool_logs, shared_rate


@dataclass(frozen=True, slots=True)
class Picked:
    """The skeins to be looked at from the side of one suspect: shares of 0 and 1 are sure.

    All of them are silent or all unseen; `pools` says how many are of which pool as seen before.
    """

    seen: Seen
    shares: tuple[tuple[Fraction, int], ...]
    pools: tuple[tuple[Pooled, int], ...]


def picked(evidence: Evidence, skeins: Sequence[Skein]) -> Mapping[Suspect | None, Picked]:
    """What each suspect has to do with these skeins; under None what any other suspect has."""
    among: dict[Suspect, Counter[Fraction]] = {}
    for skein in skeins:
        for suspect in skein.through:
            among.setdefault(suspect, Counter())[Fraction(1)] += 1
        for suspect, share in skein.shares.items():
            among.setdefault(suspect, Counter())[share] += 1
    pooled = _pooled(evidence, {skein.name for skein in skeins})
    seen, all_told = skeins[0].seen, len(skeins)
    result: dict[Suspect | None, Picked] = {None: Picked(seen, ((Fraction(0), all_told),), ())}
    for suspect in {*among, *pooled}:
        shares, pools = among.get(suspect, Counter()), pooled.get(suspect, ())
        others = all_told - shares.total() - sum(count for _, count in pools)
        shares[Fraction(0)] += others
        kept = tuple(sorted((share, count) for share, count in shares.items() if count))
        result[suspect] = Picked(seen, kept, tuple(pools))
    return result


def _pooled(evidence: Evidence, names: set[str]) -> Mapping[Suspect, list[tuple[Pooled, int]]]:
    found: dict[Suspect, list[tuple[Pooled, int]]] = {}
    for pool in evidence.pools:
        if count := len(pool.skeins & names):
            for suspect, pooled in evidence.seen_of(pool).items():
                found.setdefault(suspect, []).append((pooled, count))
    return found


@lru_cache(maxsize=4096)
def may_show(what: Picked, rates: Rates) -> tuple[tuple[float, ...], ...]:
    """For 0, 1, ... of the skeins the chance that so many are found faulty, in every case."""
    parts: list[list[list[float]]] = []
    for share, count in what.shares:
        parts.append([
            _so_many(shared_rate(case, share), count, what.seen, rates) for case in cases(rates)
        ])
    for pool, count in what.pools:
        parts.append(_out_of_a_pool(pool, count, what.seen, rates))
    shown = [[1.0] for _ in cases(rates)]
    for part in parts:
        shown = [_together(one, other) for one, other in zip(shown, part, strict=True)]
    return tuple(zip(*shown, strict=True))


def _so_many(rate: Fraction, count: int, seen: Seen, rates: Rates) -> list[float]:
    good = float(chance_of(Seen.GOOD, rate, rates.tells) / chance_of(seen, rate, rates.tells))
    return [comb(count, n) * (1 - good) ** n * good ** (count - n) for n in range(count + 1)]


def _out_of_a_pool(pool: Pooled, count: int, seen: Seen, rates: Rates) -> list[list[float]]:
    """The pool as it would be seen then, against the pool as it is seen now."""
    keeps_still = 1 - rates.tells if seen is Seen.SILENT else Fraction(1)
    now = pool_logs(pool, rates)
    before = Tally(silent=count) if seen is Seen.SILENT else Tally(unseen=count)
    by_number = []
    for n in range(count + 1):
        then = Pooled(pool.seen - before + Tally(faulty=n, good=count - n), pool.given)
        ways = float(comb(count, n) * keeps_still**n)
        by_number.append([
            ways * exp(log_then - log_now)
            for log_then, log_now in zip(pool_logs(then, rates), now, strict=True)
        ])
    return [list(row) for row in zip(*by_number, strict=True)]


def _together(one: Sequence[float], other: Sequence[float]) -> list[float]:
    result = [0.0] * (len(one) + len(other) - 1)
    for n, a in enumerate(one):
        for m, b in enumerate(other):
            result[n + m] += a * b
    return result
