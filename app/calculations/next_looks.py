"""Which skeins to look at next: those whose looks would decide most between the suspects.

Skeins are alike where they went through the same suspects still in question. For each such group
every outcome of a look at a few of its skeins is weighed: how likely it is, and what it would make
of the ranking. The group with the largest expected drop in uncertainty comes first.
"""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import log2
from operator import mul

from app.calculations.evidence import NONE, Evidence, Seen, Skein, Suspect
from app.calculations.fault_settings import Settings
from app.calculations.looking import Picked, may_show, picked
from app.calculations.suspects import Word, word_for
from app.calculations.weight_of_evidence import beliefs

Beliefs = Mapping[Suspect, Sequence[float]]


@dataclass(frozen=True, slots=True)
class Outcome:
    """So many of those looked at are faulty: how likely that is, and the chances it would leave.

    `likely` is the suspect that would then be called so, none if it would not be decided.
    """

    faulty: int
    chance: float
    chances: Mapping[Suspect, float]
    likely: Suspect | None

    def first(self, count: int = 3) -> tuple[tuple[Suspect, float], ...]:
        """The suspects that would then be the most likely."""
        return tuple(sorted(self.chances.items(), key=lambda one: (-one[1], one[0]))[:count])


@dataclass(frozen=True, slots=True)
class Look:
    """Some skeins that are alike, how many of them to look at, and what that would decide.

    `shared` is what sets them apart from all others that could be looked at; if `only` is not so,
    others share it too, and the names alone say which are meant. `decides` is the expected drop in
    uncertainty, in bits.
    """

    seen: Seen
    skeins: tuple[str, ...]
    count: int
    shared: tuple[Suspect, ...]
    only: bool
    decides: float
    outcomes: tuple[Outcome, ...]


def next_looks(
    evidence: Evidence,
    settings: Settings | None = None,
    fault: str | None = None,
    can_be_seen: Collection[str] | None = None,
) -> tuple[Look, ...]:
    """Groups of skeins worth a look, the one that decides most first; none if none can be seen.

    `can_be_seen` names the skeins that can be looked at; without it, all that nobody has looked
    at. Of two that decide alike, skeins that are not sold come first.
    """
    settings = (settings or Settings()).of(fault)
    believed = beliefs(evidence, settings, fault)
    its_faulty = {one: seen.may_be_its_faulty for one, seen in evidence.exposures().items()}
    open_to_look = [
        skein for skein in evidence.skeins
        if skein.seen in (Seen.SILENT, Seen.UNSEEN)
        and (can_be_seen is None or skein.name in can_be_seen)
    ]
    looks = [
        _look(evidence, believed, its_faulty, group, open_to_look, settings)
        for group in _alike(evidence, believed, open_to_look, settings)
    ]
    order = {Seen.UNSEEN: 0, Seen.SILENT: 1}
    return tuple(
        sorted(looks, key=lambda look: (-round(look.decides, 9), order[look.seen], look.skeins))
    )


def uncertainty(chances: Collection[float]) -> float:
    """The entropy of chances that make 1, in bits: 0 when decided, 1 between two as likely."""
    return -sum(chance * log2(chance) for chance in chances if chance > 0)


def _alike(
    evidence: Evidence, believed: Beliefs, skeins: Sequence[Skein], settings: Settings
) -> list[list[Skein]]:
    """Skeins seen alike that have the same to do with every suspect still in question."""
    open_still = {one for one, row in believed.items() if sum(row) >= settings.in_question}
    pools: defaultdict[str, list[int]] = defaultdict(list)
    for number, pool in enumerate(evidence.pools):
        if open_still & pool.given.keys():
            for name in pool.skeins:
                pools[name].append(number)
    groups: defaultdict[tuple[object, ...], list[Skein]] = defaultdict(list)
    for skein in skeins:
        shares = frozenset(pair for pair in skein.shares.items() if pair[0] in open_still)
        mark = (skein.seen, skein.through & open_still, shares, tuple(pools[skein.name]))
        groups[mark].append(skein)
    return list(groups.values())


def _look(
    evidence: Evidence,
    believed: Beliefs,
    its_faulty: Mapping[Suspect, int],
    group: Sequence[Skein],
    open_to_look: Sequence[Skein],
    settings: Settings,
) -> Look:
    count = min(settings.looks, len(group))
    what = picked(evidence, group[:count])
    outcomes = _outcomes(believed, what, its_faulty, count, settings)
    now = uncertainty([sum(row) for row in believed.values()])
    then = sum(one.chance * uncertainty(one.chances.values()) for one in outcomes)
    shared, only = set_apart(group, open_to_look)
    names = tuple(skein.name for skein in group)
    return Look(group[0].seen, names, count, shared, only, now - then, outcomes)


def _outcomes(
    believed: Beliefs,
    what: Mapping[Suspect | None, Picked],
    its_faulty: Mapping[Suspect, int],
    count: int,
    settings: Settings,
) -> tuple[Outcome, ...]:
    strangers = may_show(what[None], settings.rates)
    joint = {}
    for suspect, row in believed.items():
        mine = what.get(suspect)
        shown = may_show(mine, settings.rates) if mine else strangers
        joint[suspect] = [sum(map(mul, row, of_so_many)) for of_so_many in shown]
    outcomes = []
    for n in range(count + 1):
        chance = sum(row[n] for row in joint.values())
        chances = {one: row[n] / chance for one, row in joint.items()}
        first = min(chances, key=lambda one: (-chances[one], one))
        faulty = its_faulty.get(first, 0) + (n if first in what else 0)
        likely = word_for(chances[first], faulty, settings) is Word.LIKELY
        outcomes.append(Outcome(n, chance, chances, first if likely else None))
    return tuple(outcomes)


SAID_FIRST = ("lot", "wash load", "cone", "jar fill", "rail", "winder-day")


def set_apart(
    group: Sequence[Skein], all_of_them: Sequence[Skein]
) -> tuple[tuple[Suspect, ...], bool]:
    """What all of a group went through and others did not, and whether it names only the group.

    Begins with their lot, if they are of one, and adds whatever leaves out the most others.
    """
    inside = {skein.name for skein in group}
    outside = [
        skein for skein in all_of_them
        if skein.name not in inside and skein.seen is group[0].seen
    ]
    common = frozenset.intersection(*(skein.through for skein in group)) - {NONE}
    left = sorted(common, key=_said)
    said = [one for one in left[:1] if one.kind == SAID_FIRST[0]]
    outside = [skein for skein in outside if skein.through.issuperset(said)]
    while outside and left:
        best = min(left, key=lambda one: sum(one in skein.through for skein in outside))
        fewer = [skein for skein in outside if best in skein.through]
        if len(fewer) == len(outside):
            break
        said, outside = [*said, best], fewer
    return tuple(said), not outside


def _said(suspect: Suspect) -> tuple[int, Suspect]:
    kinds = SAID_FIRST
    return (kinds.index(suspect.kind) if suspect.kind in kinds else len(kinds)), suspect
