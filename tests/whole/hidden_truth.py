"""What really is on the tables: every skein by itself, with its real cones, lots and way."""

from collections import Counter
from collections.abc import Iterable
from copy import deepcopy
from dataclasses import dataclass, field, replace
from datetime import datetime
from fractions import Fraction

from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, Link
from app.lookups.finishing import NO_TIE
from app.lookups.present import NOT_MATCHED
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
    put_up: str = "skein"

    def origins(self, kind: str, row: int) -> list[int | None]:
        """Its cones; the lots or loads it had been in when it became this row, or while it was."""
        if kind == "cone":
            return list(self.cones)
        been = {-1, *self.rows[:self.rows.index(row) + 1]}
        return [thing for (one, thing), at in self.met.items() if one == kind and at in been]


@dataclass
class Line:
    """A line of an order, and the rows that are taken for it or went out with it."""

    order: str
    wanted: int
    lot: int | None
    put_up: str | None
    known: bool
    """Whether the buyer is known."""
    taken: set[int] = field(default_factory=set)
    sent: set[int] = field(default_factory=set)
    over: bool = False

    @property
    def open(self) -> int:
        """How many it still wants."""
        return 0 if self.over else max(0, self.wanted - len(self.sent | self.taken))


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
        self.tag_lot: dict[int, int] = {}
        """The lot that the tag on a row says."""
        self.since: dict[int, datetime] = {}
        """When a row came to where it is."""
        self.ends: dict[int, datetime] = {}
        """Until when a row is put by."""
        self.lines: dict[int, Line] = {}
        self.kits: dict[int, list[int]] = {}
        """Kit bags that are closed, with their rows."""
        self.seconds: set[int] = set()
        self.pieces: dict[int, range] = {}
        self.beside: dict[int, int] = {}
        """Finds that were not matched, each with the skein it really is."""

    def copy(self) -> "World":
        """This world, to come back to."""
        return deepcopy(self)

    def wound(self, row: int, count: int, tie: str, cones: dict[int | None, Fraction]) -> None:
        """New skeins of one origin."""
        first = len(self.skeins)
        self.skeins += [Skein(tie, dict(cones)) for _ in range(count)]
        self.become(row, range(first, first + count), "group")

    def stranger(self, tie: str, put_up: str = "skein", lot: int | None = None) -> int:
        """A skein that turns up and that nobody booked, or one from before the book."""
        self.skeins.append(Skein(tie, {None: Fraction(1)}, {("lot", lot): -1}, put_up=put_up))
        return len(self.skeins) - 1

    def meet(self, row: int, kind: str, thing: int) -> None:
        """All that this row was born with was in a bath or load, and what was cut of it too."""
        for skein in self.inside[row]:
            for one in (skein, *self.pieces.get(skein, ())):
                self.skeins[one].met[kind, thing] = row

    def put_up(self, row: int) -> str:
        """The put-up of what is in a row."""
        return self.skeins[self.open[row][0]].put_up

    def become(self, row: int, skeins: Iterable[int], kind: str, state: str = "") -> None:
        """These skeins are this row now."""
        self.inside[row], self.kind[row] = list(skeins), kind
        for skein in self.inside[row]:
            self.skeins[skein].rows.append(row)
            self.skeins[skein].state = state or ("piled" if kind == "pile" else "in work")
        if not state or kind == "skein":
            self.open[row] = list(self.inside[row])

    def tagged(self, pile: int, real: int, row: int, at: datetime) -> None:
        """One of this pile is this row from now on; its tie is cut."""
        self.open[pile].remove(real)
        if not self.open[pile]:
            del self.open[pile]
        self.become(row, [real], "skein", state="table")
        self.skeins[real].tie, self.since[row] = NO_TIE, at

    def states(self) -> Counter[tuple[str, str]]:
        """How many skeins really are where; a find that is not matched is counted once more."""
        really = Counter((skein.state, skein.put_up) for skein in self.skeins if skein.state)
        return really + Counter((NOT_MATCHED, self.skeins[skein].put_up)
                                for skein in self.beside.values())

    def of(self, row: int) -> Skein:
        """The one skein that this row is."""
        (skein,) = self.open[row]
        return self.skeins[skein]

    def cut(self, row: int, pile: int, count: int) -> None:
        """The skein of this row is no more; its pieces have been where it had been."""
        whole = self.of(row)
        first = len(self.skeins)
        self.skeins += [replace(whole, met=dict(whole.met), rows=list(whole.rows), put_up="mini")
                        for _ in range(count)]
        whole.state = ""
        self.pieces[self.open[row][0]] = pieces = range(first, first + count)
        self.gone([row])
        self.become(pile, pieces, "pile")

    def gone(self, rows: Iterable[int]) -> None:
        """These rows are nothing of their own any more, and no line's."""
        for row in rows:
            self.open.pop(row, None)
            self.leave(row)

    def leave(self, row: int) -> None:
        """Where it was it is not any more; what was sent stays sent with its line."""
        for line in self.lines.values():
            line.taken.discard(row)
        for kit, inside in list(self.kits.items()):
            if row in inside:
                del self.kits[kit]

    def go(self, rows: Iterable[int], state: str, at: datetime) -> None:
        """These single skeins are there from now on."""
        for row in rows:
            self.leave(row)
            self.of(row).state, self.since[row] = state, at

    def short(self, lot: int, shelf: Iterable[int]) -> int:
        """How many of what was promised of a lot cannot be filled from these rows on the shelf."""
        free = Counter(self.of(row).put_up for row in shelf)
        named: Counter[str | None] = Counter()
        for line in self.lines.values():
            if line.lot == lot:
                named[line.put_up] += line.open
        spare = sum(max(0, free[put_up] - named[put_up]) for put_up in free)
        missing = sum(max(0, named[put_up] - free[put_up]) for put_up in named if put_up)
        return missing + max(0, named[None] - spare)

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
