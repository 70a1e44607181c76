"""How sure the yarn of a branching trail is: in a word and counts, for many rows at once."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from app.lookups.certainty import (
    KNOWN,
    NOT_KNOWN,
    NOTHING,
    PARTLY,
    POOL,
    Tally,
    tally,
)
from app.lookups.thread import Thing, Thread


@dataclass(frozen=True, slots=True)
class Sure:
    """Of so many members, how many are of the thing: at least, at most, expected; and with what
    `share` of their metres."""

    word: str
    least: int
    most: int
    of: int
    share: Fraction = Fraction(1)
    expected: Fraction = Fraction(0)


WHOLLY = Sure(KNOWN, 0, 0, 0)
"""Where no count is asked for: what is as it is."""


@dataclass(frozen=True, slots=True)
class Asking:
    """One question of many rows: how surely they come from one of these things.

    What wholly comes from them on the one way up is most of a large fan, and is met once.
    """

    thread: Thread
    things: frozenset[Thing]
    _met: dict[int, bool] = field(default_factory=dict)

    def of(self, members: Mapping[int, int]) -> Sure:
        """Members of these rows, {row: members}.

        Known are they where each row for itself wholly does or does not; else they are of a pool.
        """
        of = sum(members.values())
        if not of or not self.things:
            return WHOLLY
        rest = {row: count for row, count in members.items() if not self._wholly(row)}
        sure = Fraction(of - sum(rest.values()))
        each = [self._of_row(row, count) for row, count in rest.items()]
        singly = all(found.least == count or not found.most
                     for found, count in zip(each, rest.values(), strict=True))
        whole = sum(each, NOTHING)
        if not singly and len(self.things) == 1:  # parts of one pool: together they are surer
            whole = tally(self.thread, rest, next(iter(self.things)))
        whole += Tally(sure, sure, sure, sure)
        share = whole.metres / whole.expected if whole.expected else Fraction(1)
        return Sure(self._word(whole, singly=singly), _whole(whole.least), -_whole(-whole.most), of,
                    min(share, Fraction(1)), whole.expected)

    def _word(self, whole: Tally, *, singly: bool) -> str:
        if all(number is None for _, number in self.things):
            return NOT_KNOWN
        if not singly:
            return POOL
        return PARTLY if whole.metres < whole.expected else KNOWN

    def _wholly(self, row: int) -> bool:
        """Whether the way up from a row does not part before it meets one of the things."""
        way: list[int] = []
        found = False
        while row not in self._met:
            way.append(row)
            own = self.thread.own.get(row, {})
            found = any(thing in own and own[thing].share == 1 for thing in self.things)
            sources = self.thread.sources.get(row, ())
            if found or len(sources) != 1 or not sources[0].one_of_these:
                break
            row = sources[0].parent
        found = self._met.get(row, found)
        self._met.update(dict.fromkeys(way, found))
        return found

    def _of_row(self, row: int, count: int) -> Tally:
        """Of several things: disjoint if they are yarn, else what is of one may be of another."""
        found = [tally(self.thread, {row: count}, thing) for thing in self.things]
        if len(found) == 1:
            return found[0]
        together, full = sum(found, NOTHING), Fraction(count)
        disjoint = all(kind in ("yarn", "cone") for kind, _ in self.things)
        least = together.least if disjoint else max(one.least for one in found)
        if disjoint and together.metres >= full:  # over a join of two of them: it is wholly of them
            least = full
        return Tally(min(least, full), min(together.most, full), min(together.expected, full),
                     min(together.metres, full))


def _whole(number: Fraction) -> int:
    """Rounded down to whole skeins."""
    return number.numerator // number.denominator


def how_sure(thread: Thread, members: Mapping[int, int], things: Collection[Thing]) -> Sure:
    """How surely members of these rows, {row: members}, come from one of these things."""
    return Asking(thread, frozenset(things)).of(members)
