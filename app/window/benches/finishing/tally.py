"""The count by tie colour as it grows: by taps, figures, or COUNT plates."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from app.lookups.finishing import Expected

PLATE_MOST = 10  # the largest COUNT plate
_MOST = 99


@dataclass(slots=True)
class TieCount:
    """Skeins with one tie: how many are due (`least` to `most`), how many were counted."""

    tie: str
    least: int
    most: int
    counted: int | None = None
    _adds: bool = False  # a plate of ten was scanned, and more may come
    _typed: bool = False

    @property
    def due(self) -> str:
        """'8', or '5 to 7' where a mixed cord was split."""
        return str(self.least) if self.least == self.most else f"{self.least} to {self.most}"

    @property
    def state(self) -> str:
        """What was counted, in words."""
        if self.counted is None:
            return "not counted yet"
        if self.counted < self.least:
            return f"{self.counted} counted, {self.least - self.counted} missing"
        if self.counted > self.most:
            return f"{self.counted} counted, {self.counted - self.most} too many"
        return f"{self.counted} counted"

    def set(self, number: int) -> None:
        """So many."""
        self.counted = min(max(number, 0), _MOST)
        self._adds = self._typed = False

    def step(self, by: int) -> None:
        """One more or one less than what is there, else than what is due."""
        self.set((self.least if self.counted is None else self.counted) + by)

    def forget(self) -> None:
        """It is to be counted again."""
        self.set(0)
        self.counted = None

    def figure(self, digit: int) -> None:
        """A figure that was typed: 1 and then 2 are twelve."""
        before = self.counted or 0
        self.set(before * 10 + digit if self._typed and before * 10 + digit <= _MOST else digit)
        self._typed = True

    def plate(self, number: int) -> bool:
        """A COUNT plate; True when it is counted: where more than ten are due, ten waits."""
        before = self.counted or 0
        self.set(before + number if self._adds else number)
        self._adds = number == PLATE_MOST and self.most > PLATE_MOST
        return not self._adds


@dataclass(slots=True)
class Tally:
    """All ties of a cord, and the one that is counted now."""

    ties: list[TieCount] = field(default_factory=list)
    at: int = 0

    @classmethod
    def of(cls, expected: Sequence[Expected]) -> "Tally":
        """Nothing is counted yet."""
        return cls([TieCount(one.tie, one.count, one.most) for one in expected])

    @property
    def now(self) -> TieCount:
        """The tie that is counted now."""
        return self.ties[self.at]

    @property
    def open(self) -> list[TieCount]:
        """Ties that were not counted yet."""
        return [tie for tie in self.ties if tie.counted is None]

    @property
    def total(self) -> int:
        """All that was counted so far."""
        return sum(tie.counted or 0 for tie in self.ties)

    def go_to(self, place: int) -> None:
        """Count this tie next."""
        self.at = min(max(place, 0), len(self.ties) - 1)

    def go_on(self) -> None:
        """Count the next tie that was not counted yet, if there is one."""
        order = [*range(self.at, len(self.ties)), *range(self.at)]
        self.at = next((n for n in order if self.ties[n].counted is None), self.at)

    def add_strange(self, tie: str) -> None:
        """A tie that nothing on the cord wears."""
        known = [one.tie for one in self.ties]
        if tie not in known:
            self.ties.append(TieCount(tie, 0, 0))
            known.append(tie)
        self.at = known.index(tie)

    def counted(self) -> dict[str, int]:
        """{tie: skeins} for the book."""
        return {tie.tie: tie.counted for tie in self.ties if tie.counted is not None}
