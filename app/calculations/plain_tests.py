"""Plain ways to compare suspects, set beside the ranking: rates, and Fisher's exact test.

Fisher's exact test (R. A. Fisher, The Design of Experiments, 1935) asks how likely it is that
so many faulty skeins lie among the touched ones by chance alone. Of many suspects some look guilty
by chance, so the values are adjusted after Benjamini and Hochberg (J. R. Statist. Soc. B 57, 1995,
289-300). Exact fractions throughout. Only skeins that were looked at count, as silence is no look;
skeins that went through a suspect only perhaps (pools, shares) are left out.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import comb

from app.calculations.evidence import Evidence, Suspect, Tally


@dataclass(frozen=True, slots=True)
class Tested:
    """One suspect by plain arithmetic.

    `rate` is faulty skeins among all that surely went through it (none if none did), silent and
    unseen ones counted as if they were good; `chance` is Fisher's one-sided value, `adjusted` the
    same after Benjamini and Hochberg over all suspects.
    """

    suspect: Suspect
    rate: Fraction | None
    others_rate: Fraction | None
    chance: Fraction
    adjusted: Fraction


def plain_tests(evidence: Evidence) -> tuple[Tested, ...]:
    """Every suspect, the one that chance explains least first."""
    exposures = evidence.exposures()
    chances = {
        suspect: more_than_by_chance(
            one.sure.faulty, one.sure.good, one.others.faulty, one.others.good
        )
        for suspect, one in exposures.items()
    }
    adjusted = _adjusted(chances)
    tested = [
        Tested(suspect, _rate(one.sure), _rate(one.others), chances[suspect], adjusted[suspect])
        for suspect, one in exposures.items()
    ]
    return tuple(sorted(tested, key=lambda one: (one.chance, -(one.rate or 0), one.suspect)))


def more_than_by_chance(faulty: int, good: int, others_faulty: int, others_good: int) -> Fraction:
    """Fisher's exact test, one-sided: so many faulty on this side, or more, the sums given."""
    tables = _tables(faulty, good, others_faulty, others_good)
    return Fraction(
        sum(ways for here, ways in tables.items() if here >= faulty), sum(tables.values())
    )


def apart_by_chance(faulty: int, good: int, others_faulty: int, others_good: int) -> Fraction:
    """Fisher's exact test, two-sided: all tables that are no more likely than this one."""
    tables = _tables(faulty, good, others_faulty, others_good)
    return Fraction(
        sum(ways for ways in tables.values() if ways <= tables[faulty]), sum(tables.values())
    )


def adjusted_for_many(chances: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """Benjamini and Hochberg: each value as it counts beside the others, in the order given.

    Calling all below 0.05 guilty, no more than one in twenty of those called is expected innocent.
    """
    order = sorted(range(len(chances)), key=lambda place: chances[place])
    adjusted = list(chances)
    least = Fraction(1)
    for place in reversed(range(len(order))):
        least = min(least, chances[order[place]] * len(order) / (place + 1))
        adjusted[order[place]] = least
    return tuple(adjusted)


def _adjusted(chances: Mapping[Suspect, Fraction]) -> Mapping[Suspect, Fraction]:
    return dict(zip(chances, adjusted_for_many(list(chances.values())), strict=True))


def _tables(faulty: int, good: int, others_faulty: int, others_good: int) -> Mapping[int, int]:
    """The ways to each number of faulty ones on this side, all four sums as they are."""
    here, all_faulty, all_good = faulty + good, faulty + others_faulty, good + others_good
    return {
        n: comb(all_faulty, n) * comb(all_good, here - n)
        for n in range(max(0, here - all_good), min(all_faulty, here) + 1)
    }


def _rate(seen: Tally) -> Fraction | None:
    return Fraction(seen.faulty, seen.total) if seen.total else None
