"""What was seen of a fault, and what every skein went through: the counts that suspects rest on.

A suspect is any one thing that many skeins share: a cone, a lot, a bath, a jar fill, a wash load, a
rail, a winder's day. A skein went through it surely; or it is one of a pool of which so many did
(nobody can tell which, but the count is exact); or only a share of it did (a join, or a pool of
pools whose counts are no longer exact).
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from fractions import Fraction

from app.problems import BadInput


class Seen(StrEnum):
    """What is known of one skein about one kind of fault."""

    FAULTY = "faulty"
    GOOD = "good"
    SILENT = "silent"
    """Sold, and the buyer said nothing: most buyers of a faulty skein say nothing too."""
    UNSEEN = "not seen"
    """Not sold and not looked at: it says nothing at all."""


@dataclass(frozen=True, slots=True, order=True)
class Suspect:
    """One thing that may have spoiled what went through it; its name is its own within its kind."""

    kind: str
    name: str

    def __str__(self) -> str:
        return f"{self.kind} {self.name}"


NONE = Suspect("none", "of these")


@dataclass(frozen=True, slots=True)
class Skein:
    """One skein: what was seen of it, what it surely went through, and of what it has a share.

    `faults` are the kinds of fault found on it where there are several; see `kept_apart`.
    """

    name: str
    seen: Seen
    through: frozenset[Suspect] = frozenset()
    shares: Mapping[Suspect, Fraction] = field(default_factory=dict)
    faults: frozenset[str] = frozenset()

    def __post_init__(self) -> None:
        for suspect, share in self.shares.items():
            if not 0 <= share <= 1 or suspect in self.through:
                raise _cannot_be(f"{self.name} has a share of {share} in {suspect}")


@dataclass(frozen=True, slots=True)
class Pool:
    """Skeins that cannot be told apart, and how many of all of them went through each suspect.

    Members that are no longer listed (lost, discarded) still count in `size`.
    """

    skeins: frozenset[str]
    given: Mapping[Suspect, int]
    size: int

    def __post_init__(self) -> None:
        if len(self.skeins) > self.size:
            raise _cannot_be(f"a pool of {self.size} lists {len(self.skeins)} skeins")
        for suspect, given in self.given.items():
            if not 0 <= given <= self.size:
                raise _cannot_be(f"{given} of a pool of {self.size} went through {suspect}")


@dataclass(frozen=True, slots=True)
class Tally:
    """Skeins by what was seen of them."""

    faulty: int = 0
    good: int = 0
    silent: int = 0
    unseen: int = 0

    @property
    def total(self) -> int:
        """All of them."""
        return self.faulty + self.good + self.silent + self.unseen

    def __add__(self, other: "Tally") -> "Tally":
        return Tally(*(mine + theirs for mine, theirs in zip(self, other, strict=True)))

    def __sub__(self, other: "Tally") -> "Tally":
        return Tally(*(mine - theirs for mine, theirs in zip(self, other, strict=True)))

    def __iter__(self) -> Iterator[int]:
        yield from (self.faulty, self.good, self.silent, self.unseen)


def tally(seen: Iterable[Seen]) -> Tally:
    """Counts skeins by what was seen of them."""
    counted = Counter(seen)
    return Tally(*(counted[one] for one in Seen))


@dataclass(frozen=True, slots=True)
class Pooled:
    """What was seen of one pool, of which so many went through a suspect."""

    seen: Tally
    given: int


@dataclass(frozen=True, slots=True)
class Exposure:
    """All skeins from the side of one suspect. The four parts together are all skeins there are."""

    sure: Tally
    others: Tally
    pools: tuple[Pooled, ...] = ()
    shared: tuple[tuple[Seen, Fraction], ...] = ()

    @property
    def may_be_its_faulty(self) -> int:
        """How many faulty skeins went through it, surely or perhaps."""
        pooled = sum(min(pool.seen.faulty, pool.given) for pool in self.pools)
        return self.sure.faulty + pooled + sum(seen is Seen.FAULTY for seen, _ in self.shared)


@dataclass(frozen=True, slots=True)
class Evidence:
    """All skeins in question and their pools. Refused where two of its facts contradict."""

    skeins: Sequence[Skein]
    pools: Sequence[Pool] = ()
    _seen: Mapping[str, Seen] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        named = {skein.name: skein.seen for skein in self.skeins}
        object.__setattr__(self, "_seen", named)
        if len(named) < len(self.skeins):
            raise _cannot_be("one skein is listed twice")
        ways = Counter[tuple[str, Suspect]]()
        for pool in self.pools:
            if strangers := sorted(pool.skeins - named.keys()):
                raise _cannot_be(f"a pool holds {strangers[0]}, which is not among the skeins")
            ways.update((name, suspect) for name in pool.skeins for suspect in pool.given)
        for skein in self.skeins:
            known = (*skein.through, *skein.shares) if ways else ()
            ways.update({(skein.name, one): 1 for one in known if (skein.name, one) in ways})
        for (name, suspect), times in ways.items():
            if times > 1:
                raise _cannot_be(f"{name} is tied to {suspect} in two ways")

    def exposures(self) -> Mapping[Suspect, Exposure]:
        """Every suspect with what was seen of the skeins on either side of it, by kind and name."""
        whole = tally(skein.seen for skein in self.skeins)
        sure: defaultdict[Suspect, list[Seen]] = defaultdict(list)
        shared: defaultdict[Suspect, list[tuple[Seen, Fraction]]] = defaultdict(list)
        pools: defaultdict[Suspect, list[Pooled]] = defaultdict(list)
        others: defaultdict[Suspect, Tally] = defaultdict(lambda: whole)
        for skein in self.skeins:
            for suspect in skein.through:
                sure[suspect].append(skein.seen)
            for suspect, share in skein.shares.items():
                shared[suspect].append((skein.seen, share))
        for pool in self.pools:
            listed = tally(self._seen[name] for name in pool.skeins)
            for suspect, pooled in self.seen_of(pool).items():
                pools[suspect].append(pooled)
                others[suspect] -= listed
        return {
            suspect: Exposure(
                tally(sure[suspect]),
                others[suspect] - tally((*sure[suspect], *(seen for seen, _ in shared[suspect]))),
                tuple(pools[suspect]),
                tuple(sorted(shared[suspect])),
            )
            for suspect in sorted({*sure, *shared, *pools})
        }

    def seen_of(self, pool: Pool) -> Mapping[Suspect, Pooled]:
        """What is seen of one pool, for each suspect that some of it went through."""
        members = tally(self._seen[name] for name in pool.skeins)
        gone = Tally(unseen=pool.size - len(pool.skeins))
        return {one: Pooled(members + gone, given) for one, given in pool.given.items()}


def kept_apart(evidence: Evidence) -> Mapping[str, Evidence]:
    """The evidence for each kind of fault that was found, by its name.

    Who found one fault on a skein may not have looked for another: for the other it is not seen.
    """
    kinds = sorted({fault for skein in evidence.skeins for fault in skein.faults})
    return {
        fault: Evidence([_as_to(fault, skein) for skein in evidence.skeins], evidence.pools)
        for fault in kinds
    }


def _as_to(fault: str, skein: Skein) -> Skein:
    if skein.seen is Seen.FAULTY and fault not in skein.faults:
        return replace(skein, seen=Seen.UNSEEN)
    return skein


def _cannot_be(what: str) -> BadInput:
    return BadInput(
        f"These facts cannot be: {what}.", "Look at the counts again; nothing was reckoned."
    )
