"""Whoever's turn it is: their initials, what they find in the book, and the deed they do."""

from collections.abc import Callable, Collection, Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from decimal import Decimal
from itertools import count
from pathlib import Path
from random import Random
from typing import Any

from sqlalchemy import Connection, select

from app.calculations.codes import Kind, numbered
from app.calculations.units import millimetres
from app.demo.chance import Chance
from app.demo.sources import Line
from app.lookups.discs import yarn_on_disc
from app.lookups.now import NOW
from app.lookups.present import leaves
from app.lookups.things import by_code
from app.lookups.walks import below
from app.problems import NotFound
from app.records import Base, Colourway, DyeLot, Tag, TagOn, Whereabouts
from app.store.book import Book
from app.store.deed import By

TOKENS = "quernlow"
"""Every token of the demo begins so: by it a book of the demo is known."""


class Clock:
    """The studio's clock: as late as the line that is lived, and some seconds a deed."""

    def __init__(self, now: datetime) -> None:
        self.now = now

    def __call__(self) -> datetime:
        self.now += timedelta(seconds=12)
        return self.now


@dataclass(frozen=True, slots=True)
class TagSheet:
    """Tags as they left the printer: of which lot, on which stock, how many."""

    lot: str
    stock: str
    count: int
    pdf: bytes


@dataclass(frozen=True, slots=True)
class Bottle:
    """A 1 % stock that stands ready: of which fill, since which day, and what is left in it."""

    stock: int
    fill: int
    made: int
    left_ul: int


@dataclass(slots=True)
class Hands:
    """The book with the person before it, and what they keep in mind from one line to the next."""

    book: Book
    clock: Clock
    folder: Path
    chance: Chance
    """Draws codes and marks."""
    whim: Random
    """Decides what does not matter: which lot is sold, where a cone's end goes."""
    balance: Random
    """Decides the last hundredths of a gram in a cup."""
    by: By = By("OW", "desk")
    happened: datetime | None = None
    """When what is written now was, where it was not just now."""
    named_cones: Collection[int] = ()
    named_lots: Collection[str] = ()
    cords: dict[str, int] = field(default_factory=dict)
    """The disc that hangs on a cord of the plan."""
    lots: dict[str, int] = field(default_factory=dict)
    """The lot that a cord of the plan became, and those that have a code of their own."""
    reels: dict[str, int] = field(default_factory=dict)
    """The cone of each base that is on the reel."""
    jars: dict[str, int] = field(default_factory=dict)
    """The jar of each dye."""
    bottles: dict[str, Bottle] = field(default_factory=dict)
    """The stock that stands ready of each dye."""
    instead: dict[str, tuple[str, str]] = field(default_factory=dict)
    """For the next bath of a colourway: the dye that is asked, and the one that is taken."""
    painted: dict[str, int] = field(default_factory=dict)
    """The board that a cord of the plan was laid on."""
    washes: dict[int, int] = field(default_factory=dict)
    """The wash that a row was last in."""
    kits: dict[str, int] = field(default_factory=dict)
    kept: dict[str, list[int]] = field(default_factory=dict)
    """Tags that were printed and lie ready, by the name that a paper gives them."""
    sheets: list[TagSheet] = field(default_factory=list)
    findings: list[str] = field(default_factory=list)
    _plates: dict[str, int] = field(default_factory=dict)
    _numbers: "count[int]" = field(default_factory=lambda: count(1))

    def do(self, work: Callable[..., Any], *args: Any, **more: Any) -> Any:
        """One deed; its answer."""
        done = self.book.do(work, *args, by=self.by, token=self.token(), happened=self.happened,
                            **more)
        self.findings += done.findings
        return done.answer

    def token(self) -> str:
        """The next token."""
        return f"{TOKENS}-{next(self._numbers):05}"

    def now(self) -> datetime:
        """The moment that is written of."""
        return self.happened or self.clock.now

    def thing(self, kind: Kind, number: int) -> int:
        """A numbered thing of the studio; raises NotFound."""
        code = numbered(kind, number).text
        if code not in self._plates:
            found = self.book.ask(by_code, code)
            if found is None:
                raise NotFound(f"There is no {kind} {number} in this studio.")
            self._plates[code] = found.id
        return self._plates[code]

    def lot(self, code: str) -> int:
        """A lot by its code, or by the cord of the plan that became it; raises NotFound."""
        if code in self.lots:
            return self.lots[code]
        found = self.book.ask(by_code, code)
        if found is None or found.kind != "lot":
            raise NotFound(f"There is no lot {code} in this studio.")
        return found.id

    def on(self, disc: int) -> list[int]:
        """What hangs on a disc."""
        return self.book.ask(yarn_on_disc, self.thing(Kind.DISC, disc),
                             self.happened or NOW)

    def discs(self, line: Line) -> list[int]:
        """The discs that a line names, by number or by cord of the plan."""
        cords = [*line.get("cords", ()), *([line["cord"]] if "cord" in line else ())]
        numbers = [*line.get("discs", ()), *([line["disc"]] if "disc" in line else ())]
        return [*numbers, *(self.cords[cord] for cord in cords)]

    def yarn(self, line: Line) -> list[int]:
        """The rows that a line names, by disc, by cord, or by their lot while it is in work."""
        named = [*line.get("lots", ()), *([line["lot"]] if "lot" in line else ())]
        rows = [row for disc in self.discs(line) for row in self.on(disc)]
        return rows + [row for code in named for row in self.book.ask(in_work, self.lot(code))]

    def skeins(self, lot: int, states: Sequence[str] = ("shelf",)) -> list[int]:
        """Tagged skeins of a lot that are in one of these states."""
        return self.book.ask(tagged, lot, states)

    def kept_lots(self) -> list[int]:
        """Lots of which only what is written goes."""
        return sorted(lot for name, lot in self.lots.items() if name in self.named_lots)

    def place(self, line: Line) -> int:
        """The shelf that a line names."""
        return self.thing(Kind.SHELF, line["shelf"])


@dataclass(frozen=True, slots=True)
class LotFacts:
    """A lot's bath, base and colourway."""

    bath: int | None
    base: str
    colourway: str


def lot_facts(connection: Connection, lot: int) -> LotFacts:
    """What a lot is."""
    row = connection.execute(
        select(DyeLot.bath, Base.name.label("base"), Colourway.name.label("colourway"))
        .join(Base, Base.id == DyeLot.base).join(Colourway, Colourway.id == DyeLot.colourway)
        .where(DyeLot.id == lot)).one()
    return LotFacts(row.bath, row.base, row.colourway)


def in_work(connection: Connection, lot: int) -> list[int]:
    """The rows of a lot that wear no tags yet."""
    found = leaves(connection, below(connection, "lot", lot))
    return [leaf.yarn for leaf in found if leaf.state in ("in work", "piled")]


def tagged(connection: Connection, lot: int, states: Iterable[str]) -> list[int]:
    """The skeins of a lot by their tags that are in one of these states."""
    return list(connection.execute(
        select(TagOn.yarn).join(Tag, Tag.id == TagOn.tag)
        .join(Whereabouts, Whereabouts.yarn == TagOn.yarn)
        .where(Tag.lot == lot, TagOn.until.is_(None), TagOn.struck.is_(None),
               Whereabouts.until.is_(None), Whereabouts.struck.is_(None),
               Whereabouts.state.in_(list(states)))
        .order_by(TagOn.yarn)).scalars())


def mm(metres: float) -> int:
    """Metres of a paper in whole millimetres."""
    return millimetres(Decimal(str(metres)))
