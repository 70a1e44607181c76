"""The same beliefs the long way: every placement of every pool, every skein, nothing lumped.

Shares no code with what it checks but the records of what was seen.
"""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import combinations, product

from hypothesis import strategies as st

from app.calculations.evidence import NONE, Evidence, Pool, Seen, Skein, Suspect

HIGH = ((0.3, 0.10), (0.45, 0.15), (0.6, 0.20), (0.75, 0.25), (0.9, 0.30))
LOW = ((0.005, 0.30), (0.01, 0.30), (0.02, 0.25), (0.04, 0.15))
PRIORS = {"cone": 30, "lot": 20, "wash load": 20, "none": 5}


def joint(evidence: Evidence, seen: Sequence[Seen]) -> dict[Suspect, float]:
    """Prior times the chance that the skeins, in their order, are seen so; not made to be 1."""
    suspects = {one for skein in evidence.skeins for one in (*skein.through, *skein.shares)}
    suspects |= {one for pool in evidence.pools for one in pool.given}
    result = {}
    for suspect in (*sorted(suspects), NONE):
        of_kind = sum(one.kind == suspect.kind for one in suspects) or 1
        result[suspect] = PRIORS[suspect.kind] / of_kind * _chance(evidence, seen, suspect)
    return result


def beliefs_by_hand(evidence: Evidence) -> dict[Suspect, float]:
    """The chance of each suspect."""
    weights = joint(evidence, [skein.seen for skein in evidence.skeins])
    whole = sum(weights.values())
    return {one: weight / whole for one, weight in weights.items()}


def after_a_look(
    evidence: Evidence, names: Sequence[str], faulty: int
) -> tuple[float, dict[Suspect, float]]:
    """How likely so many of these are found faulty, and the chances that this would leave."""
    now = [skein.seen for skein in evidence.skeins]
    places = [n for n, skein in enumerate(evidence.skeins) if skein.name in names]
    whole = sum(joint(evidence, now).values())
    added: dict[Suspect, float] = {}
    for chosen in combinations(places, faulty):
        then = list(now)
        kept_still = 1.0
        for place in places:
            then[place] = Seen.FAULTY if place in chosen else Seen.GOOD
            if place in chosen and now[place] is Seen.SILENT:
                kept_still *= 0.75
        for suspect, weight in joint(evidence, then).items():
            added[suspect] = added.get(suspect, 0) + kept_still * weight
    total = sum(added.values())
    return total / whole, {one: weight / total for one, weight in added.items()}


def _chance(evidence: Evidence, seen: Sequence[Seen], suspect: Suspect) -> float:
    total, ways = 0.0, 0
    for touched in _placements(evidence.pools, suspect):
        ways += 1
        shares = [_share(skein, suspect, touched) for skein in evidence.skeins]
        for (high, one), (low, other) in product(HIGH, LOW):
            chance = one * other
            for share, what in zip(shares, seen, strict=True):
                rate = share * high + (1 - share) * low
                chance *= {Seen.FAULTY: rate, Seen.GOOD: 1 - rate, Seen.UNSEEN: 1,
                           Seen.SILENT: 1 - rate / 4}[what]
            total += chance
    return total / ways


def _share(skein: Skein, suspect: Suspect, touched: frozenset[str]) -> float:
    if skein.name in touched or suspect in skein.through:
        return 1.0
    return float(skein.shares.get(suspect, 0))


def _placements(pools: Sequence[Pool], suspect: Suspect) -> Iterator[frozenset[str]]:
    """Every way to say which members went through it; those that are gone have a place too."""
    choices = []
    for pool in pools:
        if suspect in pool.given:
            gone = [f"gone {n}" for n in range(pool.size - len(pool.skeins))]
            choices.append(list(combinations([*sorted(pool.skeins), *gone], pool.given[suspect])))
    for chosen in product(*choices):
        yield frozenset(name for names in chosen for name in names)


CONES = [Suspect("cone", name) for name in "AB"]
THINGS = [Suspect("lot", "1"), Suspect("lot", "2"), Suspect("wash load", "1")]


@st.composite
def small_evidence(draw: st.DrawFn) -> Evidence:
    """Up to seven skeins, two pools of two cones, perhaps a join, in lots and a wash load."""
    sizes: Mapping[str, int] = {"p": draw(st.integers(0, 3)), "q": draw(st.integers(0, 2)),
                                "s": draw(st.integers(1, 2))}
    skeins = []
    for place, size in sizes.items():
        for n in range(size):
            through, shares = draw(st.sets(st.sampled_from(THINGS))), {}
            if place == "s" and draw(st.booleans()):
                shares = {CONES[0]: Fraction(3, 5), CONES[1]: Fraction(2, 5)}
            elif place == "s":
                through |= {draw(st.sampled_from(CONES))}
            seen = draw(st.sampled_from(Seen))
            skeins.append(Skein(f"{place}{n}", seen, frozenset(through), shares))
    pools = []
    for place in "pq":
        names = frozenset(skein.name for skein in skeins if skein.name[0] == place)
        size = len(names) + draw(st.integers(0, 2))
        given = draw(st.integers(0, size))
        pools.append(Pool(names, {CONES[0]: given, CONES[1]: size - given}, size))
    return Evidence(skeins, pools)
