"""What really is on the tables: every skein by itself, with its real cones, lots and way."""

from collections import Counter
from collections.abc import Iterable
from copy import deepcopy
from dataclasses import dataclass, field
from fractions import Fraction

from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, Link
from app.lookups.thread import LiveHold


@dataclass
class Skein:
    """One skein that nobody can tell from its neighbours, but that is itself all the same."""

    tie: str
    cones: dict[int | None, Fraction]
    met: dict[tuple[str, int | None], int] = field(default_factory=dict)
    """Lots and loads, each with the row that it was in then; -1 for what it came with."""
    rows: list[int] = field(default_factory=list)
    state: str = "in work"

    def origins(self, kind: str, row: int) -> list[int | None]:
        """Its cones; the lots or loads it had been in when it became this row, or while it was."""
        if kind == "cone":
            return list(self.cones)
        been = {-1, *self.rows[:self.rows.index(row) + 1]}
        return [thing for (one, thing), at in self.met.items() if one == kind and at in been]


class World:
    """The hidden truth: which skeins each row of the book really holds."""

    def __init__(self) -> None:
        self.skeins: list[Skein] = []
        self.inside: dict[int, list[int]] = {}
        """Every row that was ever made, with the skeins it was born with."""
        self.open: dict[int, list[int]] = {}
        """Rows that were not used up yet, with what is left in them."""
        self.kind: dict[int, str] = {}
        self.cleared: set[tuple[int, int]] = set()

    def copy(self) -> "World":
        """This world, to come back to."""
        return deepcopy(self)

    def wound(self, row: int, count: int, tie: str, cones: dict[int | None, Fraction]) -> None:
        """New skeins of one origin."""
        first = len(self.skeins)
        self.skeins += [Skein(tie, dict(cones)) for _ in range(count)]
        self.become(row, range(first, first + count), "group")

    def stranger(self, tie: str) -> int:
        """A skein that turns up and that nobody booked."""
        self.skeins.append(Skein(tie, {None: Fraction(1)}, {("lot", None): -1}))
        return len(self.skeins) - 1

    def become(self, row: int, skeins: Iterable[int], kind: str, state: str = "") -> None:
        """These skeins are this row now."""
        self.inside[row], self.kind[row] = list(skeins), kind
        for skein in self.inside[row]:
            self.skeins[skein].rows.append(row)
            self.skeins[skein].state = state or ("piled" if kind == "pile" else "in work")
        if not state or kind == "skein":
            self.open[row] = list(self.inside[row])

    def states(self) -> Counter[str]:
        """How many skeins really are where."""
        return Counter(skein.state for skein in self.skeins)

    def disagrees(self, row: int, kind: str, links: Iterable[Link]) -> str | None:
        """What the book says of a row that is not so; none where the truth lies within it."""
        true: Counter[int | None] = Counter()
        for skein in self.inside[row]:
            true.update(self.skeins[skein].origins(kind, row))
        said = {link.thing: link for link in links}
        for thing in true.keys() - said.keys():
            return f"row {row}: {kind} {thing} is in it and not listed"
        for thing, link in said.items():
            if not link.least <= true[thing] <= link.most:
                return f"row {row}: {true[thing]} of {kind} {thing}, said {link}"
            if link.word in (KNOWN, PARTLY, NOT_KNOWN) and true[thing] != link.of:
                return f"row {row}: not all are of {kind} {thing}, said {link}"
        return None

    def must_be_held(self, row: int, hold: LiveHold) -> bool:
        """Whether a skein of this row really comes from what is held, and was not cleared."""
        kind, source = hold.source
        for number in self.open.get(row, ()):
            skein = self.skeins[number]
            real = skein.rows if kind == "yarn" else skein.origins(kind, row)
            if source in real and not any(
                (hold.id, passed) in self.cleared for passed in skein.rows
            ):
                return True
        return False
