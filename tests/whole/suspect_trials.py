"""How well a way of naming the cause does over many studios, and its table.

`python -m tests.whole.suspect_trials 200 7` prints it for 200 studios of each number of causes.
"""

import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import count as count_from
from random import Random

from app.calculations.evidence import NONE, Evidence, Seen, Suspect
from app.calculations.next_looks import next_looks
from app.calculations.plain_tests import plain_tests
from app.calculations.suspects import Word, rank
from tests.whole.planted_causes import Studio, planted

MOST_LOOKS = 24

Naming = Callable[[Evidence], tuple[Sequence[Suspect], bool]]
"""The suspects, the first first, and whether the first is called the cause."""
Choosing = Callable[[Evidence], Sequence[str]]
"""The names of the skeins to look at next; none when there is nothing to look at."""


def by_ranking(evidence: Evidence) -> tuple[Sequence[Suspect], bool]:
    """Our ranking: called from "likely" on."""
    ranking = rank(evidence)
    named = [one.suspect for one in ranking.ranked if one.suspect != NONE]
    return named, ranking.ranked[0].word is Word.LIKELY and ranking.ranked[0].suspect != NONE


def by_rates(evidence: Evidence) -> tuple[Sequence[Suspect], bool]:
    """The plain rate: faulty of all that surely went through it, of those with two faulty or more.

    A rate alone is never sure, so the first is always called.
    """
    sure = {suspect: one.sure for suspect, one in evidence.exposures().items()}

    def order(suspect: Suspect) -> tuple[bool, Fraction, Suspect]:
        seen = sure[suspect]
        return seen.faulty < 2, -Fraction(seen.faulty, max(seen.total, 1)), suspect

    return sorted(sure, key=order), True


def by_test(evidence: Evidence) -> tuple[Sequence[Suspect], bool]:
    """Fisher's exact test: called where it is below 0.05 after Benjamini and Hochberg."""
    tested = plain_tests(evidence)
    return [one.suspect for one in tested], tested[0].adjusted < 0.05


def by_what_it_decides(evidence: Evidence) -> Sequence[str]:
    """The group that our next look names first."""
    looks = next_looks(evidence)
    return looks[0].skeins[: looks[0].count] if looks else ()


def at_random(dice: Random) -> Choosing:
    """Three skeins that nobody has looked at."""
    def chosen(evidence: Evidence) -> Sequence[str]:
        names = [one.name for one in evidence.skeins if one.seen in (Seen.SILENT, Seen.UNSEEN)]
        return dice.sample(names, min(3, len(names)))
    return chosen


@dataclass(frozen=True, slots=True)
class Score:
    """Over so many studios: how often the cause was first, in the first three, called, wrong.

    `looks` are the skeins looked at in each studio.
    """

    studios: int
    first: int
    in_three: int
    called: int
    wrong: int
    looks: tuple[int, ...]

    def __add__(self, other: "Score") -> "Score":
        return Score(
            self.studios + other.studios, self.first + other.first,
            self.in_three + other.in_three, self.called + other.called,
            self.wrong + other.wrong, self.looks + other.looks,
        )

    @property
    def right_when_called(self) -> float:
        """The share of those called that are a true cause."""
        return 1 - self.wrong / self.called

    def row(self, name: str) -> str:
        """One line of the table; all but the number of cases and of looks in per cent."""
        shares = ((self.first, self.studios), (self.in_three, self.studios),
                  (self.called, self.studios), (self.wrong, self.called))
        parts = [f"{name:42}{self.studios:5}"]
        parts += [f"{100 * part / whole if whole else 0:8.1f}" for part, whole in shares]
        return "".join([*parts, f"{sum(self.looks) / len(self.looks):8.1f}",
                        f"{sorted(self.looks)[len(self.looks) // 2]:8}"])


HEAD = f"{'':42}cases   first   in 3  called   wrong   looks  median"


def score(studios: Iterable[Studio], naming: Naming, choosing: Choosing | None = None) -> Score:
    """Names the cause in every studio, after looks until one is called if somebody looks."""
    total = Score(0, 0, 0, 0, 0, ())
    for studio in studios:
        total += _course(studio, naming, choosing)
    return total


def _course(studio: Studio, naming: Naming, choosing: Choosing | None) -> Score:
    """Looks go on, a few at a time, until a suspect is called or enough have been looked at."""
    looks = 0
    while True:
        named, sure = naming(studio.evidence)
        more = choosing and not sure and looks < MOST_LOOKS
        names = choosing(studio.evidence) if choosing and more else ()
        if not names:
            right = named[0] in studio.causes
            in_three = any(one in studio.causes for one in named[:3])
            return Score(1, right, in_three, sure, sure and not right, (looks,))
        studio, looks = studio.looked_at(names), looks + len(names)


def studios_with(faults: int, count: int, seed: int) -> list[Studio]:
    """So many studios with so many causes, each from its own seed."""
    made: list[Studio] = []
    for place in count_from(seed):
        studio = planted(Random(place), faults)
        made += [studio] if studio else []
        if len(made) == count:
            break
    return made


def table(count: int, seed: int) -> Iterator[str]:
    """The whole comparison, line by line, over so many studios for each number of causes."""
    yield HEAD
    for faults in (1, 2, 3):
        studios = studios_with(faults, count, seed + 100_000 * faults)
        apart = [one for studio in studios for one in studio.kept_apart()]
        for words, cases in (("lumped", studios), ("kept apart", apart)):
            if faults == 1 and words == "kept apart":
                continue
            name = f"{faults} {words}: "
            yield score(cases, by_ranking).row(name + "ranking")
            yield score(cases, by_rates).row(name + "plain rates")
            yield score(cases, by_test).row(name + "exact test")
            yield score(cases, by_ranking, by_what_it_decides).row(name + "ranking, next looks")
            dice = at_random(Random(seed))
            yield score(cases, by_ranking, dice).row(name + "ranking, any skeins")
            yield score(cases, by_test, dice).row(name + "exact test, any skeins")


if __name__ == "__main__":
    for line in table(int(sys.argv[1]), int(sys.argv[2])):
        sys.stdout.write(line + "\n")
        sys.stdout.flush()
