"""A small studio for tests: good defaults, and short ways to do the usual deeds."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any

from sqlalchemy import select

from app.calculations.codes import Kind
from app.lookups.certainty import Link, links
from app.lookups.present import Amount, leaves, totals
from app.lookups.recent import head
from app.lookups.tagging import marks_for, pile_facts
from app.lookups.thread import thread
from app.lookups.walks import below
from app.records import DyeLot, Yarn
from app.store.book import Book, Done
from app.store.deed import By
from app.store.journal import verify
from app.work.bases import BaseWords, PutUpWords, describe_base
from app.work.bundling import make_plates
from app.work.dyeing import BathIn, into_bath, name_colourway
from app.work.finishing import finish
from app.work.mixing import mix, split
from app.work.people import enrol
from app.work.receiving import ConeIn, DeliveryIn, receive
from app.work.tagging import Printing, apply_tag, print_tags
from app.work.winding import Drawn, Wound, wind
from tests.sums import adds_up

EACH_MG, LONG_MM = 103_125, 412_500  # one wound skein of Tarnfield: 275 turns of 1.50 m, 250 tex


class Clock:
    """A minute passes at every look; a test may set it."""

    def __init__(self, now: datetime = datetime(2026, 4, 6, 8, tzinfo=UTC)) -> None:
        self.now = now

    def __call__(self) -> datetime:
        self.now += timedelta(minutes=1)
        return self.now


def tarnfield(**changes: Any) -> BaseWords:
    """The house base of the demo studio."""
    words: dict[str, Any] = {
        "name": "Tarnfield 4-ply",
        "fibre": "100 % wool",
        "millitex": 250_000,
        "oil_permille": 20,
        "relax_permille": 30,
        "put_ups": (
            PutUpWords("skein", 275, 1500, 100_000, 388_000),
            PutUpWords("mini", 55, 1500, 20_000, 77_600),
        ),
        "care": "Hand wash 30 °C, dry flat, do not tumble.",
    }
    return BaseWords(**{**words, **changes})


class Studio:
    """Deeds in short; every one goes through the book."""

    version, recipe, discs, pot, pot2 = 1, 1, tuple(range(1, 21)), 21, 22

    def __init__(self, book: Book, furnished: bool = False) -> None:
        self.book, self.by, self.random = book, By("OW", "desk"), Random(7)
        self.clock: Clock = book.clock  # type: ignore[assignment]
        if furnished:
            self.clock.now += timedelta(minutes=5)
        else:
            self.do(enrol, "OW", "Osk Wray")
            self.do(describe_base, tarnfield())
            self.do(name_colourway, "Sluice Keeper's Glove", "#1B856E")
            self.do(make_plates, Kind.DISC, range(31, 51))
            self.do(make_plates, Kind.POT, [1, 2])

    def do(self, work: Callable[..., Any], *args: Any, **more: Any) -> Any:
        """The answer of one deed."""
        return self.done(work, *args, **more).answer

    def done(self, work: Callable[..., Any], *args: Any, **more: Any) -> Done[Any]:
        """One deed with what is said of it."""
        return self.book.do(work, *args, by=more.pop("by", self.by), **more)

    def cones(self, count: int, base: str = "Tarnfield 4-ply", **changes: Any) -> list[int]:
        """Cones of a delivery, 1,520 g with a centre of 64 g."""
        came = tuple(ConeIn(1_520_000, 64_000, **{"batch": "A-203", **changes})
                     for _ in range(count))
        return self.do(receive, DeliveryIn("Aske Mill", "2241", base, self.clock.now, came))

    def cone(self) -> int:
        """One cone."""
        return self.cones(1)[0]

    def wind(self, cone: int, count: int, tie: str = "red", disc: int | None = None) -> int:
        """Skeins of one cone, as one group."""
        wound = Wound((Drawn(cone, count * LONG_MM),), count, "skein", tie)
        return self.do(wind, [wound], disc)[0]

    def join(self, draws: Sequence[tuple[int, int]], tie: str = "red and yellow") -> int:
        """One skein over a join of two cones."""
        return self.do(wind, [Wound(tuple(Drawn(*draw) for draw in draws), 1, "skein", tie)])[0]

    def dye(self, *yarn: int, pot: int | None = None) -> int:
        """One bath; its (first) lot."""
        return self.do(into_bath, BathIn(yarn, self.recipe, pot), self.random)["lots"][0]

    def finish(self, yarn: int, **ties: int) -> list[int]:
        """The count by tie colour; its piles."""
        return self.do(finish, [yarn], ties)

    def tag(self, pile: int, count: int, **more: Any) -> list[int]:
        """Print so many tags for a pile and tie them on; the skeins."""
        return [self.do(apply_tag, tag) for tag in self.print(pile, count, **more)]

    def print(self, pile: int, count: int, **more: Any) -> list[int]:
        """Print so many tags for a pile; the tags."""
        lot = self.book.ask(pile_facts, pile).lot or "0000000"
        marks = self.book.ask(marks_for, lot, count, self.random)
        return self.do(print_tags, Printing(pile, marks, "{}", "swing tag", **more))

    def origins(self, yarn: int, kind: str = "cone") -> tuple[Link, ...]:
        """Where a row comes from."""
        return self.book.ask(lambda c: links(thread(c, [yarn]), yarn, kind))

    def mix(self, *yarn: int) -> int:
        """These met and cannot be told apart any more: one row."""
        return self.do(mix, yarn)

    def split(self, yarn: int, *counts: int) -> list[int]:
        """One row in several."""
        return self.do(split, yarn, counts)

    def tagged(self, cone: int, count: int) -> tuple[int, list[int]]:
        """The whole way of so many skeins of one cone: their lot, and the tagged skeins."""
        group = self.wind(cone, count)
        lot, (pile,) = self.dye(group), self.finish(group, red=count)
        return lot, self.tag(pile, count)

    def undo(self, seq: int = 0) -> None:
        """Take a deed back, the last one if none is named."""
        self.book.undo(seq or self.last(), by=self.by)

    def last(self) -> int:
        """The number of the newest entry."""
        return self.book.ask(head)[0]

    def code(self, lot: int) -> str | None:
        """A lot's code."""
        return self.book.ask(
            lambda c: c.execute(select(DyeLot.code).where(DyeLot.id == lot)).scalar_one()
        )

    def check(self) -> None:
        """Counts and milligrams add up, and the journal replays to these very rows."""
        self.book.ask(adds_up)
        self.book.ask(verify)

    def present(self, kind: str = "", thing: int = 0) -> dict[tuple[str, str], Amount]:
        """Totals of the present states: of everything, or below one thing."""

        def look(connection: Any) -> dict[tuple[str, str], Amount]:
            ids = (
                below(connection, kind, thing)
                if kind
                else connection.execute(select(Yarn.id).where(Yarn.struck.is_(None))).scalars()
            )
            return dict(totals(leaves(connection, ids)))

        return self.book.ask(look)
