"""Which thing spoiled these skeins? The suspects ranked, in words first, with reasons as counts.

One cause is assumed: each suspect is weighed as if it alone had spoiled what is spoiled beyond the
common rate, so two kinds of fault must be run apart (`kept_apart`), and faulty skeins that the
first suspect never touched are counted. The silence of buyers is weighed as little as it says.
"""

from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from enum import StrEnum

from app.calculations.evidence import NONE, Evidence, Exposure, Seen, Suspect
from app.calculations.fault_settings import Settings
from app.calculations.weight_of_evidence import beliefs


class Word(StrEnum):
    """What may be said of one suspect."""

    LIKELY = "likely"
    POSSIBLE = "possible"
    HARDLY = "hardly"


@dataclass(frozen=True, slots=True)
class Ranked:
    """A suspect, the word for it, the counts it rests on, and its chance (0 to 1).

    `alike` are suspects that touched the very same skeins: no look at any skein tells them apart.
    The exposure is none for "none of these".
    """

    suspect: Suspect
    word: Word
    exposure: Exposure | None
    chance: float
    alike: tuple[Suspect, ...] = ()


@dataclass(frozen=True, slots=True)
class Ranking:
    """All suspects, the most likely first, under the assumption of a single cause.

    `to_look_at` are the suspects that may be it and are still there themselves (the rest of a cone
    on the shelf, a jar in the cupboard): seeing the thing beats all arithmetic. `unexplained` is
    how many faulty skeins surely never went through the first.
    `only_the_things_can_tell` is whether the first is not likely alone, but is with those that
    touched the same skeins: no further skein decides between them, a look at the things may.
    """

    ranked: tuple[Ranked, ...]
    to_look_at: tuple[Suspect, ...]
    unexplained: int
    only_the_things_can_tell: bool

    @property
    def decided(self) -> bool:
        """Whether one suspect is likely."""
        return self.ranked[0].word is Word.LIKELY and self.ranked[0].suspect != NONE


def rank(
    evidence: Evidence,
    settings: Settings | None = None,
    fault: str | None = None,
    still_there: Collection[Suspect] = (),
) -> Ranking:
    """Ranks all suspects of this evidence, "none of these" among them.

    `fault` is the kind of fault, which shifts the priors; `still_there` the things that can
    themselves be looked at. Of two as likely, the kind and the name decide the order.
    """
    settings = (settings or Settings()).of(fault)
    exposures = evidence.exposures()
    faulty = sum(skein.seen is Seen.FAULTY for skein in evidence.skeins)
    alike = _touched_the_same(evidence)
    chances = {one: sum(row) for one, row in beliefs(evidence, settings, fault).items()}

    def word(suspect: Suspect, chance: float) -> Word:
        exposure = exposures.get(suspect)
        return word_for(chance, exposure.may_be_its_faulty if exposure else faulty, settings)

    ranked = tuple(
        Ranked(one, word(one, chance), exposures.get(one), chance, alike.get(one, ()))
        for one, chance in sorted(chances.items(), key=lambda pair: (-pair[1], pair[0]))
    )
    first = ranked[0]
    together = first.chance + sum(chances[other] for other in first.alike)
    return Ranking(
        ranked,
        tuple(one.suspect for one in ranked
              if one.suspect in still_there and one.word is not Word.HARDLY),
        first.exposure.others.faulty if first.exposure else 0,
        first.word is not Word.LIKELY and word(first.suspect, together) is Word.LIKELY,
    )


def word_for(chance: float, faulty: int, settings: Settings) -> Word:
    """The word for a chance of 0 to 1 that rests on so many faulty skeins."""
    if chance >= settings.likely and faulty >= settings.least_faulty:
        return Word.LIKELY
    return Word.POSSIBLE if chance >= settings.possible else Word.HARDLY


def _touched_the_same(evidence: Evidence) -> Mapping[Suspect, tuple[Suspect, ...]]:
    """For each suspect the others that touched the very same skeins, in the same way."""
    marks: defaultdict[Suspect, set[tuple[object, ...]]] = defaultdict(set)
    for skein in evidence.skeins:
        for suspect in skein.through:
            marks[suspect].add((skein.name,))
        for suspect, share in skein.shares.items():
            marks[suspect].add((skein.name, share))
    for pool in evidence.pools:
        for suspect, given in pool.given.items():
            marks[suspect].add((pool.skeins, given, pool.size))
    same: defaultdict[frozenset[tuple[object, ...]], list[Suspect]] = defaultdict(list)
    for suspect in sorted(marks):
        same[frozenset(marks[suspect])].append(suspect)
    return {
        one: tuple(other for other in group if other != one)
        for group in same.values() for one in group
    }
