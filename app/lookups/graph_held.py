"""What is on hold of a branching trail: where a hold was placed, and how much it reaches."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from app.lookups.certainty import held_by
from app.lookups.graph_web import HERE, Web, kind_of, number_of

_KINDS = {"left": "yarn"}
_MAY_BE_BELOW = ("yarn", "lot", "bath", "load", "left")


@dataclass(frozen=True, slots=True)
class HeldHere:
    """`where`: 'here' on what a hold was placed on, 'below' on what it reaches, of which so many.
    """

    where: str = ""
    reached: int = 0


FREE = HeldHere()


@dataclass(frozen=True, slots=True)
class Held:
    """What holds reach in one trail, asked of many rows."""

    made: Web
    _may: dict[int, bool] = field(default_factory=dict)

    def here(
        self, station: str, stations: Collection[str], rows: Mapping[int, int]
    ) -> HeldHere:
        """What is on hold of a station, or of the `stations` that are folded into it."""
        if not self.made.found.holds:
            return FREE
        centre = self.made.centre
        placed = ({(centre.kind, one) for one in centre.things} if station == HERE else
                  {(_KINDS.get(kind_of(one), kind_of(one)), number_of(one)) for one in stations})
        kinds = {centre.kind} if station == HERE else {kind_of(one) for one in stations}
        reached = sum(count for row, count in rows.items() if self.reaches(row)
                      ) if kinds.intersection(_MAY_BE_BELOW) else 0
        if any(hold.source in placed for hold in self.made.found.holds):
            return HeldHere("here", reached)
        return HeldHere("below", reached) if reached else FREE

    def reaches(self, row: int) -> bool:
        """Whether a hold reaches this row."""
        return self._may_be(row) and bool(held_by(self.made.found, row))

    def _may_be(self, row: int) -> bool:
        """Whether a source of a hold lies above a row on any way, told or not."""
        thread, waiting = self.made.found, [row]
        while waiting:
            here = waiting[-1]
            parents = [source.parent for source in thread.sources.get(here, ())]
            unknown = [parent for parent in parents if parent not in self._may]
            if here in self._may or not unknown:
                own = thread.own.get(here, {}).keys()
                self._may[here] = any(self._may[parent] for parent in parents) or any(
                    hold.reaches & own for hold in thread.holds)
                waiting.pop()
            else:
                waiting += unknown
        return self._may[row]
