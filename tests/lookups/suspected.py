"""The worked example of the trade, lived in a book: 32 skeins of three cones, four lots, two loads.

Common practice, no source. As tests/calculations/suspect_cases.py says them, here by the deeds that
a studio would do.
"""

from datetime import timedelta
from typing import Any

from sqlalchemy import select

from app.records import Yarn
from app.store.book import By
from app.work.dyeing import BathIn, into_bath
from app.work.people import enrol
from app.work.receiving import ConeIn, DeliveryIn, receive
from app.work.reporting import FaultIn, report_fault, seen_good
from app.work.weighing import close_weighing
from app.work.winding import Drawn, Wound, wind
from tests.deeds import into_load, send
from tests.dyehouse import Dyehouse
from tests.makers import LONG_MM, Studio

WINDER = By("WN", "reel")


class ThirtyTwo:
    """The skeins of each place, in the order of the example: L1, L2 W1, L2 W2, L3, L4."""

    def __init__(self, studio: Studio) -> None:
        self.studio, self.house = studio, Dyehouse(studio)
        studio.do(enrol, "WN", "Wenna Nance")
        net_1516_g = ConeIn(1_580_000, 64_000, "A-203")
        self.a, self.b, self.c = studio.do(receive, DeliveryIn(
            "Aske Mill", "2242", "Tarnfield 4-ply", studio.clock.now, (net_1516_g,) * 3))
        self.skeins: dict[str, list[int]] = {}
        mixed = [self._wind(self.a, 6), self._wind(self.b, 6)]
        second, third = self._wind(self.a, 8), self._wind(self.b, 6)
        studio.clock.now += timedelta(days=1)
        fourth = self._wind(self.c, 6)
        self.lots = {"L1": self._dye(1, *mixed), "L2": self._dye(2, second),
                     "L3": self._dye(1, third), "L4": self._dye(2, fourth)}
        pool = studio.mix(*mixed)
        one, other = studio.split(second, 4, 4)
        self.washes = {"W1": studio.do(into_load, "wash", [pool, one]),
                       "W2": studio.do(into_load, "wash", [other, third, fourth])}
        self._to_the_table({"L1": pool, "L2 W1": one, "L2 W2": other, "L3": third, "L4": fourth})

    def _wind(self, cone: int, count: int) -> int:
        wound = Wound((Drawn(cone, count * LONG_MM),), count, "skein", "red")
        row: int = self.studio.do(wind, [wound], by=WINDER)[0]
        return row

    def _dye(self, jar: int, *yarn: int) -> int:
        weighing = self.house.begin()
        self.house.take(weighing, self.house.fills[jar], 5_117)
        self.studio.do(close_weighing, weighing)
        bath = BathIn(yarn, self.house.recipe, None, weighing)
        lot: int = self.studio.do(into_bath, bath, self.studio.random)["lots"][0]
        return lot

    def _to_the_table(self, rows: dict[str, int]) -> None:
        """Two rails take turns in every lot."""
        halves: dict[str, tuple[int, int]] = {}
        for place, row in rows.items():
            count = {"L1": 6, "L2 W1": 2, "L2 W2": 2, "L3": 3, "L4": 3}[place]
            left, right = self.studio.split(row, count, count)
            halves[place] = left, right
        for rail in (0, 1):
            self.studio.do(into_load, "rail", [half[rail] for half in halves.values()])
        for place, (left, right) in halves.items():
            tagged = [self._tag(half) for half in (left, right)]
            self.skeins[place] = [one for pair in zip(*tagged, strict=True) for one in pair]

    def _tag(self, half: int) -> list[int]:
        count = self.studio.book.ask(lambda c: _members(c, half))
        (pile,) = self.studio.finish(half, red=count)
        return self.studio.tag(pile, count)

    def found(self, letters: dict[str, str], fault: str = "streak") -> None:
        """All are sold; what was seen of them, a letter each: faulty, good, silent."""
        for place, row in letters.items():
            skeins = self.skeins[place]
            faulty = [one for one, letter in zip(skeins, row, strict=True) if letter == "f"]
            good = [one for one, letter in zip(skeins, row, strict=True) if letter == "g"]
            self.studio.do(send, skeins)
            if faulty:
                self.studio.do(report_fault, FaultIn(fault, "customer"), faulty)
            if good:
                self.studio.do(seen_good, good, "customer")

    def looked_at(self, place: str, faulty: int, good: int) -> None:
        """Some silent ones of a place were looked at since."""
        skeins = self.skeins[place]
        report = self.studio.do(report_fault, FaultIn("streak", "customer"), skeins[:faulty])
        self.studio.do(seen_good, skeins[faulty:faulty + good], "customer", report)


def _members(connection: Any, row: int) -> int:
    return int(connection.execute(select(Yarn.count).where(Yarn.id == row)).scalar_one())
