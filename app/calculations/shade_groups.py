"""Shade sorting: the fewest groups in which every pair of lots is within the limit.

Never by chain: each lot close to the next lets the first and the last of a row be far apart. Groups
are a view of the lots there are today; a new lot may cut them anew, so they are never stored.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations

from app.calculations.shade import Colour
from app.calculations.shade_difference import apart
from app.problems import BadInput

MOST_STEPS = 100_000


@dataclass(frozen=True, slots=True)
class Group:
    """Lots that may be sold together, and how far the two least alike of them are apart."""

    lots: tuple[str, ...]
    worst: float


@dataclass(frozen=True, slots=True)
class Sorted:
    """Lots in groups. `fewest` is whether it is proven that no fewer would do."""

    groups: tuple[Group, ...]
    fewest: bool


def shade_groups(
    lots: Mapping[str, Colour], limit: float, most_steps: int = MOST_STEPS
) -> Sorted:
    """The fewest groups of lots, the same ones in whatever order the lots are given.

    Exact for the lots of a colourway (tried with 40). Should the search not end within
    `most_steps`, the best division found so far is given, which still keeps every pair within the
    limit, and `fewest` says that it is not proven.
    """
    if not limit > 0:
        raise BadInput(
            f"The limit of a shade group is given as {limit}, and it must be more than 0.",
            "Set it to the difference that may lie side by side; nothing was sorted.",
        )
    names = sorted(lots)
    table = apart([lots[name] for name in names])
    search = _Search(table, limit, most_steps)
    search.go_on([], frozenset(range(len(names))))
    groups = sorted(sorted(group) for group in search.best)
    return Sorted(
        tuple(
            Group(
                tuple(names[lot] for lot in group),
                max((table[one][other] for one, other in combinations(group, 2)), default=0.0),
            )
            for group in groups
        ),
        fewest=search.steps_left > 0,
    )


class _Search:
    """Puts lot after lot, the one with the least choice first, into the closest group first."""

    def __init__(self, table: list[list[float]], limit: float, most_steps: int) -> None:
        self.table = table
        self.foes = [{o for o, far in enumerate(row) if far > limit} for row in table]
        self.best: list[set[int]] = [{lot} for lot in range(len(table))]
        self.least = len(self._all_strangers())
        self.steps_left = most_steps

    def go_on(self, groups: list[set[int]], left: frozenset[int]) -> None:
        """Tries every way to place those that are left, as long as it may become the best."""
        self.steps_left -= 1
        if not left:
            self.best = [set(group) for group in groups]
            return
        lot = max(left, key=lambda one: (self._closed(one, groups), len(self.foes[one]), -one))
        for group in sorted(groups, key=lambda one: max(self.table[lot][o] for o in one)):
            if not group & self.foes[lot]:
                group.add(lot)
                self._step(groups, left - {lot})
                group.remove(lot)
        if self._is_over(len(groups) + 1):
            return
        self._step([*groups, {lot}], left - {lot})

    def _step(self, groups: list[set[int]], left: frozenset[int]) -> None:
        if not self._is_over(len(groups)):
            self.go_on(groups, left)

    def _is_over(self, groups: int) -> bool:
        """Whether so many groups are no gain, or the best is proven, or the steps are used up."""
        return groups >= len(self.best) or len(self.best) == self.least or self.steps_left <= 0

    def _closed(self, lot: int, groups: list[set[int]]) -> int:
        return sum(bool(group & self.foes[lot]) for group in groups)

    def _all_strangers(self) -> list[int]:
        """Lots of which no two may meet: there are at least as many groups."""
        found: list[int] = []
        for lot in sorted(range(len(self.foes)), key=lambda one: -len(self.foes[one])):
            if self.foes[lot].issuperset(found):
                found.append(lot)
        return found
