"""How sure is it? Exact counts through pools: least, most and expected, for one question at a time.

For n members of a pool of N that are not told apart, holding between L and M members with the
thing: at least max(0, L - (N - n)) and at most min(n, M) of the n carry it; the expected number is
n/N of those in the pool (hypergeometric mean).
"""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor

from app.lookups.thread import Source, Thing, Thread
from app.records import stronger_first

KNOWN, PARTLY, POOL, NOT_KNOWN = "known", "partly", "one of a pool", "not known"

Said = Mapping[int, tuple[int, str]]

_NOTHING_ABOVE: Thing = ("", None)


@dataclass(frozen=True, slots=True)
class Tally:
    """Of some members: how many carry the thing, and how many members' metres are of it."""

    least: Fraction
    most: Fraction
    expected: Fraction
    metres: Fraction

    def __add__(self, other: "Tally") -> "Tally":
        return Tally(self.least + other.least, self.most + other.most,
                     self.expected + other.expected, self.metres + other.metres)

    def times(self, factor: Fraction) -> "Tally":
        """The tally of `factor` as many members of the same make."""
        return Tally(self.least * factor, self.most * factor, self.expected * factor,
                     self.metres * factor)


NOTHING = Tally(Fraction(0), Fraction(0), Fraction(0), Fraction(0))


@dataclass(frozen=True, slots=True)
class Link:
    """Some members and one thing above them: in a word, in counts, and how it is known."""

    thing: int | None
    word: str
    least: int
    most: int
    expected: Fraction
    of: int
    share: Fraction
    """Of the metres of the members that carry it."""
    basis: str
    fits: bool = True
    """False where more was told than the pool held: the counts do not fit."""


@dataclass(frozen=True, slots=True)
class _Asked:
    yarn: int
    members: int
    said: Said
    row: int = 0
    """Their own row, where they were told apart of the yarn."""


def tally(thread: Thread, members: Mapping[int, int], thing: Thing) -> Tally:
    """Of so many members of these rows, {yarn: members}: how many carry the thing.

    Parts of one pool that are asked together are added first, so that all of them are the whole.
    """
    return _tally(thread, _asked(thread, members), thing)


def _asked(thread: Thread, members: Mapping[int, int]) -> list[_Asked]:
    """Where a whole row is asked for, those of its members that were told apart count as told.

    Fewer members than the row had are those that are left of it: they were not told.
    """
    asked = []
    for yarn, count in members.items():
        one = _Asked(yarn, count, {})
        asked += _told_apart(thread, one, yarn) if count == thread.count[yarn] else [one]
    return asked


def told_apart(thread: Thread, members: Mapping[int, int]) -> dict[int, int]:
    """The same members: those told apart by rows of their own, the others by the row asked for."""
    apart = Counter[int]()
    for one in _asked(thread, members):
        apart[one.row or one.yarn] += one.members
    return dict(apart)


def _told_apart(thread: Thread, one: _Asked, within: int) -> list[_Asked]:
    if within not in thread.divided:
        return [one]
    pool = _look_through(thread, one, _NOTHING_ABOVE)[0]
    told = [
        row for row, pools in thread.told.items()
        if pool in pools and row != within and within in _upwards(thread, row)
    ]
    apart = []
    for row in told:
        said = {**one.said, **thread.told[row]}
        apart += _told_apart(thread, _Asked(one.yarn, thread.count[row], said, row), row)
    left = one.members - sum(thread.count[row] for row in told)
    return [*apart, replace(one, members=left)] if left > 0 else apart


def parting(thread: Thread, yarn: int) -> int:
    """The row above where the way parts and nobody told which way, or where the thread begins."""
    return _look_through(thread, _Asked(yarn, 1, {}), _NOTHING_ABOVE)[0]


def _tally(thread: Thread, asked: Sequence[_Asked], thing: Thing) -> Tally:
    total, urns = NOTHING, Counter[int]()
    for one in asked:
        yarn, found = _look_through(thread, one, thing)
        if found is not None:
            total += Tally(Fraction(1), Fraction(1), Fraction(1), found).times(
                Fraction(one.members)
            )
        elif thread.sources.get(yarn):
            urns[yarn] += one.members
    for pool, members in urns.items():
        total += of_all_in(thread, pool, members, thing)
    return total


def _look_through(thread: Thread, one: _Asked, thing: Thing) -> tuple[int, Fraction | None]:
    """Go up while there is one way; the row where it parts, or the share where the thing is met."""
    yarn, said = one.yarn, dict(one.said)
    while True:
        said |= thread.told.get(yarn, {})
        own, sources = thread.own[yarn].get(thing), thread.sources.get(yarn, ())
        if own is not None:
            return yarn, own.share
        if yarn in said:
            yarn = said[yarn][0]
        elif len(sources) == 1 and sources[0].one_of_these:
            yarn = sources[0].parent
        else:
            return yarn, None


def of_all_in(thread: Thread, pool: int, members: int, thing: Thing) -> Tally:
    """Of so many members of a pool that were not told apart: how many carry the thing."""
    sources = thread.sources[pool]
    urn = {source.parent: left_in_urn(thread, pool, source) for source in sources}
    if members > sum(urn.values()):  # more was told than the pool held: these counts do not fit
        urn = {source.parent: source.gave for source in sources}
    whole = [_Asked(s.parent, urn[s.parent], {}) for s in sources if s.one_of_these]
    inside = _tally(thread, whole, thing)
    for source in sources:
        if not source.one_of_these:
            cut = _tally(thread, [_Asked(source.parent, source.took, {})], thing)
            inside += cut.times(Fraction(source.gave, source.took))
    size = max(members, sum(urn.values()))
    part = inside.times(Fraction(members, size))
    return Tally(max(Fraction(0), inside.least - (size - members)),
                 min(Fraction(members), inside.most), part.expected, part.metres)


def left_in_urn(thread: Thread, pool: int, source: Source) -> int:
    """Members of a pool from one parent that were not told apart."""
    return max(0, source.gave - thread.off.get((pool, source.parent), 0))


def counts_fit(thread: Thread, pool: int) -> bool:
    """Whether no more of a parent was told at this pool than went into it."""
    return all(
        thread.off.get((pool, source.parent), 0) <= source.gave
        for source in thread.sources.get(pool, ())
    )


def links(thread: Thread, yarn: int, kind: str, members: int | None = None) -> tuple[Link, ...]:
    """Every thing of a kind that members of this row may carry, surest first."""
    return links_of(thread, {yarn: members or thread.count[yarn]}, kind)


def links_of(thread: Thread, members: Mapping[int, int], kind: str) -> tuple[Link, ...]:
    """Every thing of a kind that members of these rows, {yarn: members}, may carry."""
    things = {thing for own in thread.own.values() for thing in own if thing[0] == kind}
    found = (link_of(thread, members, thing) for thing in things)
    return tuple(sorted(filter(None, found), key=lambda link: (-link.expected, link.thing or 0)))


def link_of(thread: Thread, members: Mapping[int, int], thing: Thing) -> Link | None:
    """How members of these rows, {yarn: members}, come from one thing; none where none can."""
    of, got = sum(members.values()), tally(thread, members, thing)
    if not got.most:
        return None
    bases = [basis_of(thread, one.yarn, thing, one.said) for one in _asked(thread, members)]
    return Link(
        thing[1], _word(got, of, thing[1]), floor(got.least), ceil(got.most), got.expected, of,
        got.metres / got.expected if got.expected else got.metres,
        max((basis for basis in bases if basis), key=stronger_first, default="stated"),
        all(counts_fit(thread, pool) for pool, _ in thread.off))


def _word(got: Tally, of: int, thing: int | None) -> str:
    if got.least < of:
        return POOL
    if thing is None:
        return NOT_KNOWN
    return KNOWN if got.metres == of else PARTLY


def ways(thread: Thread, yarn: int, said: Said) -> Iterator[tuple[int, str, Said]]:
    """The parents a member of this row may have come from, given what was told."""
    said, sources = {**said, **thread.told.get(yarn, {})}, thread.sources.get(yarn, ())
    told = said.get(yarn)
    left = [source for source in sources if left_in_urn(thread, yarn, source) > 0]
    for source in (left or sources) if told is None else sources:
        if told is None:
            yield source.parent, source.basis, said
        elif told[0] == source.parent:
            yield source.parent, max(source.basis, told[1], key=stronger_first), said


def _upwards(
    thread: Thread, yarn: int, ends: Callable[[int], bool] = lambda _row: False
) -> Iterator[int]:
    """The rows on all ways up, each once however many ways lead to it, to where a way ends."""
    met, waiting = set(), list[tuple[int, Said]]([(yarn, {})])
    while waiting:
        row, said = waiting.pop()
        here = (row, frozenset(said.items()))
        if here not in met:
            met.add(here)
            yield row
            if not ends(row):
                waiting += [(parent, told) for parent, _, told in ways(thread, row, said)]


def nearest(thread: Thread, yarn: int, kind: str) -> frozenset[int | None]:
    """The first things of a kind met on each way up: the lots that may name a tag."""
    def things(row: int) -> list[int | None]:
        return [number for found, number in thread.own[row] if found == kind]
    return frozenset(
        thing for row in _upwards(thread, yarn, lambda row: bool(things(row)))
        for thing in things(row))


def basis_of(thread: Thread, yarn: int, thing: Thing, said: Said) -> str | None:
    """How the link to a thing is known: as strong as the weakest link on its weakest way."""
    known: dict[tuple[int, frozenset[tuple[int, tuple[int, str]]]], str | None] = {}

    def weakest(row: int, told: Said) -> str | None:
        own, here = thread.own[row].get(thing), (row, frozenset(told.items()))
        if own is not None:
            return own.basis
        if here not in known:
            above = [(weakest(p, s), basis) for p, basis, s in ways(thread, row, told)]
            known[here] = max((max(found, basis, key=stronger_first) for found, basis in above
                               if found), key=stronger_first, default=None)
        return known[here]
    return weakest(yarn, said)


def held_by(thread: Thread, yarn: int) -> tuple[int, ...]:
    """The live holds whose source lies above this row on a way that was not cleared."""
    return tuple(
        hold.id for hold in thread.holds
        if any(hold.reaches & thread.own[row].keys()
               for row in _upwards(thread, yarn, hold.cleared.__contains__)
               if row not in hold.cleared)
    )
