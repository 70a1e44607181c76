"""The fewest lots that make up a quantity, and of all such sets the one whose lots are closest."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import inf

from app.calculations.given import more_than_nothing, not_below_nothing
from app.calculations.shade import Colour
from app.calculations.shade_difference import apart

MOST_STEPS = 50_000


@dataclass(frozen=True, slots=True)
class Offered:
    """A lot that has skeins left to sell, and its colour."""

    lot: str
    free: int
    colour: Colour

    def __post_init__(self) -> None:
        not_below_nothing(f"number of skeins left of {self.lot}", self.free)


@dataclass(frozen=True, slots=True)
class Pair:
    """Two lots and how far they are apart in CIEDE2000."""

    one: str
    other: str
    ciede2000: float


@dataclass(frozen=True, slots=True)
class LotSet:
    """Lots that together have enough. The worst pair is none for a single lot.

    `closest` is whether it is proven that no set of as few lots is closer.
    """

    lots: tuple[str, ...]
    free: int
    worst: Pair | None
    closest: bool


def fewest_lots(
    offered: Sequence[Offered],
    skeins: int,
    in_hand: Mapping[str, Colour] | None = None,
    most_steps: int = MOST_STEPS,
) -> LotSet | None:
    """The fewest lots with so many skeins, the least alike two of them as close as can be.

    `in_hand` are lots the customer knits with already: they count in the pairs, not in the lots.
    Of sets as close the one with more skeins left wins; the order in which lots are given is
    nothing to it. None if all lots together have too few. Should the search not end within
    `most_steps`, the best set found so far is given, and `closest` says that it is not proven.
    """
    more_than_nothing("number of skeins wanted", skeins)
    lots = sorted((one for one in offered if one.free), key=lambda one: (-one.free, one.lot))
    size = _fewest([one.free for one in lots], skeins)
    if size is None:
        return None
    kept = sorted((in_hand or {}).items())
    names = [*(one.lot for one in lots), *(name for name, _ in kept)]
    table = apart([*(one.colour for one in lots), *(colour for _, colour in kept)])
    search = _Search([one.free for one in lots], table, size, skeins)
    search.run(most_steps)
    members = [*search.best, *range(len(lots), len(names))]
    worst = max(combinations(members, 2), key=lambda pair: table[pair[0]][pair[1]], default=None)
    return LotSet(
        tuple(names[lot] for lot in search.best),
        sum(lots[lot].free for lot in search.best),
        worst and Pair(names[worst[0]], names[worst[1]], table[worst[0]][worst[1]]),
        closest=search.steps_left > 0,
    )


def _fewest(free: Sequence[int], skeins: int) -> int | None:
    """How many lots it takes at least, the largest first."""
    return next((size for size in range(1, len(free) + 1) if sum(free[:size]) >= skeins), None)


class _Search:
    """Takes lot by lot, the largest first, and gives up what cannot be enough or become closer."""

    def __init__(self, free: list[int], table: list[list[float]], size: int, skeins: int) -> None:
        self.free, self.table, self.size, self.skeins = free, table, size, skeins
        self.in_hand = tuple(range(len(free), len(table)))
        self.best: tuple[int, ...] = ()
        self.worst, self.sum = inf, 0
        self.steps_left = 0

    def run(self, most_steps: int) -> None:
        """A good set round each lot first, then every set that may be better."""
        for lot in range(len(self.free)):
            self._round(lot)
        self.steps_left = most_steps
        self._go_on((), self._worst_of(()), list(range(len(self.free))))

    def _round(self, lot: int) -> None:
        """The largest of the lots near this one, seen from near to far until they have enough."""
        seen: list[int] = []
        for near in sorted(range(len(self.free)), key=self.table[lot].__getitem__):
            seen = sorted([*seen, near])[: self.size]
            if sum(self.free[one] for one in seen) >= self.skeins:
                self._keep(tuple(seen))
                return

    def _go_on(self, taken: tuple[int, ...], worst: float, able: list[int]) -> None:
        self.steps_left -= 1
        more, has = self.size - len(taken), sum(self.free[one] for one in taken)
        if not more:
            self._keep(taken)
            return
        for place, lot in enumerate(able):
            largest = able[place : place + more]
            most = has + sum(self.free[one] for one in largest)
            if len(largest) < more or most < self.skeins or self.steps_left <= 0:
                return
            far = [self.table[lot][one] for one in (*taken, *self.in_hand)]
            worse = max([worst, *far])
            if (worse, -most) < (self.worst, -self.sum):
                near = [o for o in able[place + 1 :] if self.table[lot][o] <= self.worst]
                self._go_on((*taken, lot), worse, near)

    def _keep(self, taken: tuple[int, ...]) -> None:
        worst, free = self._worst_of(taken), sum(self.free[lot] for lot in taken)
        if (worst, -free, taken) < (self.worst, -self.sum, self.best):
            self.best, self.worst, self.sum = taken, worst, free

    def _worst_of(self, taken: tuple[int, ...]) -> float:
        members = (*taken, *self.in_hand)
        return max((self.table[a][b] for a, b in combinations(members, 2)), default=0.0)
