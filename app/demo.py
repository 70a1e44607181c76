"""The invented studio: its papers are lived through the program's own deeds; same seed, same book.
"""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from itertools import count
from pathlib import Path
from random import Random
from typing import Any

from app import paths
from app.calculations.codes import Kind, numbered
from app.calculations.units import milligrams, millimetres
from app.exchange.tag_printing import LotOrder, OnStock, print_for_lot
from app.exchange.taking_in import Said, look_at, take_in
from app.lookups.discs import yarn_on_disc
from app.lookups.pots import pots_now, recipes
from app.lookups.reel import OnReel, on_reel
from app.lookups.tagging import pile_facts
from app.lookups.things import by_code
from app.problems import NotFound, Refused
from app.store.book import Book
from app.store.deed import By
from app.store.upgrade import upgrade_book
from app.work.bases import BaseWords, PutUpWords, describe_base
from app.work.bundling import add_to_cord, make_plates
from app.work.dyeing import BathIn, into_bath, lift, name_colourway
from app.work.finishing import finish
from app.work.holding import hold
from app.work.mixing import mix, split
from app.work.people import enrol
from app.work.studio import choose
from app.work.tagging import apply_tag, spoil_tags
from app.work.winding import Drawn, Wound, end_cone, wind

NAME = "Quernlow Dyeyard"
FIRST_MORNING = datetime(2026, 3, 13, 8, tzinfo=UTC)
SEED = 2026
FIRST_TOKEN = "quernlow-00001"
"""The token of the first entry: by it a book of the demo is known."""

_STATIONS = {
    "take in": "receiving", "wind": "winding", "join": "winding", "end cone": "winding",
    "dye": "pots", "lift": "pots", "split": "wash and dry", "mix": "wash and dry",
    "count": "finishing", "tags": "tagging", "hold": "desk",
}
Line = Mapping[str, Any]
"""One line of the studio's days: when, who, what, and with what."""


@dataclass(frozen=True, slots=True)
class TagSheet:
    """Tags as they left the printer: of which lot, on which stock, how many."""

    lot: str
    stock: str
    count: int
    pdf: bytes


@dataclass(slots=True)
class Lived:
    """What was done in the studio's days."""

    clock: "Clock"
    notes: int = 0
    cones: int = 0
    skeins: int = 0
    lots: list[str] = field(default_factory=list)
    tied_on: int = 0
    sheets: list[TagSheet] = field(default_factory=list)
    findings: list[str] = field(default_factory=list)
    refusals: list[str] = field(default_factory=list)
    held: str = ""
    """The code of the cone on hold."""


class Clock:
    """The studio's clock: as late as the line that is lived, and some seconds a deed."""

    def __init__(self) -> None:
        self.now = FIRST_MORNING

    def __call__(self) -> datetime:
        self.now += timedelta(seconds=12)
        return self.now


def live(path: Path, seed: int = SEED) -> Lived:
    """A new book at this path with all that happened; the seed draws codes and marks."""
    upgrade_book(path, FIRST_MORNING)
    studio = tomllib.loads((paths.DEMO_DATA / "studio.toml").read_text("utf-8"))
    days = tomllib.loads((paths.DEMO_DATA / "days.toml").read_text("utf-8"))["days"]
    clock = Clock()
    book = Book(path, clock)
    try:
        hands = _Hands(book, clock, Random(seed))
        hands.set_up(studio)
        for day in days:
            for line in day["deeds"]:
                hands.live(day["date"], line)
    finally:
        book.close()
    return hands.lived


class _Hands:
    """Whoever's turn it is: reads a line and does it."""

    def __init__(self, book: Book, clock: Clock, random: Random) -> None:
        self.book, self.clock, self.random = book, clock, random
        self.by, self.lived, self._numbers = By("OW", "desk"), Lived(clock), count(1)
        self._doing: dict[str, Callable[[Line], None]] = {
            "take in": self._take_in, "wind": self._wind, "join": self._join,
            "end cone": self._end_cone, "dye": self._dye, "lift": self._lift,
            "split": self._split, "mix": self._mix, "count": self._count, "tags": self._tags,
            "hold": self._hold,
        }

    def set_up(self, studio: Line) -> None:
        """The first morning: who works here, what is dyed, what hangs on the walls."""
        for initials in studio["people"]:
            self._do(enrol, initials)
        self._do(choose, {key: studio[key] for key in ("name", "address", "origin", "differ")})
        for base in studio["bases"]:
            self._do(describe_base, _base_words(base))
        for colourway in studio["colourways"]:
            self._do(name_colourway, colourway["name"], colourway["swatch"])
        for plates in studio["plates"]:
            first, last = plates["numbers"]
            self._do(make_plates, Kind(plates["kind"]), range(first, last + 1),
                     plates.get("words", ""))

    def live(self, day: date, line: Line) -> None:
        """One line of a day; where it says so, it must be refused."""
        self.clock.now = datetime.combine(day, time.fromisoformat(line["at"]), UTC)
        self.by = By(line["by"], _STATIONS[line["do"]])
        try:
            self._doing[line["do"]](line)
        except Refused as refusal:
            if line.get("refused", "\0") not in refusal.what:
                raise
            self.lived.refusals.append(refusal.what)

    def _do(self, work: Callable[..., Any], *args: Any) -> Any:
        done = self.book.do(work, *args, by=self.by, token=self._token())
        self.lived.findings += done.findings
        return done.answer

    def _token(self) -> str:
        return f"quernlow-{next(self._numbers):05}"

    def _thing(self, kind: Kind, number: int) -> int:
        found = self.book.ask(by_code, numbered(kind, number).text)
        if found is None:
            raise NotFound(f"There is no {kind} {number} in this studio.")
        return found.id

    def _on(self, disc: int) -> list[int]:
        return self.book.ask(yarn_on_disc, self._thing(Kind.DISC, disc), self.clock.now)

    def _take_in(self, line: Line) -> None:
        data = (paths.DEMO_DATA / "notes" / line["file"]).read_bytes()
        said = Said(given={"supplier": line["supplier"]})
        arrival = self.book.ask(look_at, data, said, self.clock.now)
        self.lived.cones += len(self._do(take_in, arrival))
        self.lived.notes += 1

    def _wind(self, line: Line) -> None:
        reel = self._reel(line["cone"])
        form = reel.form("skein")
        if form is None:
            raise NotFound(f"Cone {line['cone']} is not sold as skeins.")
        drawn = Drawn(reel.facts.id, line["skeins"] * form.mm)
        wound = Wound((drawn,), line["skeins"], "skein", line.get("tie", reel.tie))
        self._do(wind, [wound], self._thing(Kind.DISC, line["disc"]))
        self.lived.skeins += line["skeins"]

    def _join(self, line: Line) -> None:
        reels = [self._reel(number) for number in line["cones"]]
        draws = tuple(Drawn(reel.facts.id, _mm(metres))
                      for reel, metres in zip(reels, line["metres"], strict=True))
        tie = " and ".join(reel.tie for reel in reels)
        groups = self._do(wind, [Wound(draws, 1, "skein", tie)])
        self._do(add_to_cord, self._thing(Kind.DISC, line["disc"]), groups)
        self.lived.skeins += 1

    def _reel(self, cone: int) -> OnReel:
        reel = self.book.ask(on_reel, numbered(Kind.CONE, cone).text, self.clock.now)
        if reel is None:
            raise NotFound(f"There is no cone {cone} in this studio.")
        return reel

    def _end_cone(self, line: Line) -> None:
        waste_mg = milligrams(Decimal(str(line["waste_g"])))
        self._do(end_cone, self._thing(Kind.CONE, line["cone"]), waste_mg)

    def _dye(self, line: Line) -> None:
        version = next(recipe.version for recipe in self.book.ask(recipes)
                       if recipe.colourway == line["colourway"])
        yarn = tuple(row for disc in line["discs"] for row in self._on(disc))
        bath = BathIn(yarn, version, self._thing(Kind.POT, line["pot"]))
        self.lived.lots += self._do(into_bath, bath, self.random)["codes"]

    def _lift(self, line: Line) -> None:
        pot = numbered(Kind.POT, line["pot"]).text[1:-1]
        self._do(lift, next(full.bath for full in self.book.ask(pots_now) if full.pot == pot))

    def _split(self, line: Line) -> None:
        (yarn,) = self._on(line["disc"])
        self._do(split, yarn, line["counts"], [self._thing(Kind.DISC, d) for d in line["discs"]])

    def _mix(self, line: Line) -> None:
        self._do(mix, [row for disc in line["discs"] for row in self._on(disc)])

    def _count(self, line: Line) -> None:
        self._do(finish, self._on(line["disc"]), line["ties"])

    def _tags(self, line: Line) -> None:
        (lot,) = self.book.ask(pile_facts, self._on(line["disc"])[0]).lots
        if lot is None:
            raise NotFound(f"The lot on disc {line['disc']} is not known.")
        tags = self._print(lot, line)
        spoiled = tags[:line.get("spoiled", 0)]
        if spoiled:
            self._do(spoil_tags, spoiled, "jammed in the printer")
            tags = tags[len(spoiled):] + self._print(lot, line)
        for tag in tags:
            self._do(apply_tag, tag)
        self.lived.tied_on += len(tags)

    def _print(self, lot: int, line: Line) -> list[int]:
        order = LotOrder(lot, OnStock(line["stock"], line.get("first_cell", 1)))
        printed = print_for_lot(self.book, self.by, order, self.random, self._token())
        code = printed.places[0].code.rpartition("-")[0]
        self.lived.sheets.append(TagSheet(code, line["stock"], len(printed.tags), printed.pdf))
        return list(printed.tags)

    def _hold(self, line: Line) -> None:
        self._do(hold, "cone", self._thing(Kind.CONE, line["cone"]), line["why"])
        self.lived.held = numbered(Kind.CONE, line["cone"]).text


def _base_words(base: Line) -> BaseWords:
    put_ups = tuple(
        PutUpWords(one["name"], one["turns"], _mm(one["reel_m"]), milligrams(Decimal(one["g"])),
                   _mm(one["m"]))
        for one in base["put_ups"]
    )
    return BaseWords(
        base["name"], base["fibre"], base["tex"] * 1000, round(base["oil"] * 10),
        round(base["relax"] * 10), put_ups, knit=base["knit"], care=base["care"])


def _mm(metres: float) -> int:
    return millimetres(Decimal(str(metres)))
