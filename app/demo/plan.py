"""A regular week: every bath of the list is wound, dyed, washed, hung, counted, tagged, shelved."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from itertools import groupby
from typing import Any

PALE = ("Moth at the Window", "Paper Ticket", "Whey Blue")
"""Washed by themselves: each shows every stain."""
TRAY = "tray"
STEPS = ("dyed", "lifted", "washed", "counted", "shelved")
"""How far a bath goes by the plan; what comes after is written out."""
Planned = tuple[datetime, Mapping[str, Any]]


@dataclass(frozen=True, slots=True)
class Bath:
    """One cord of the list: so many skeins of a base in a pot on a day; `code` where it is named.

    Two on one day in one pot are companions.
    """

    day: date
    pot: str
    colourway: str
    base: str
    skeins: int
    code: str = ""
    cones: Mapping[int, int] = field(default_factory=dict)
    """{number of the cone: skeins}, where it matters which."""
    until: str = "shelved"

    @property
    def cord(self) -> str:
        """What the cord is called in the plan."""
        return f"{self.day} {self.pot} {self.base}"

    def goes(self, step: str) -> bool:
        """Whether the plan takes it so far."""
        return STEPS.index(step) <= STEPS.index(self.until)


def planned(baths: Sequence[Bath]) -> Iterator[Planned]:
    """What has to be done for these baths, each line at its moment."""
    by_day: dict[date, list[Bath]] = defaultdict(list)
    for bath in baths:
        by_day[bath.day].append(bath)
    for day, of_day in by_day.items():
        yield from _wound(worked(day, -1), of_day)
        yield from _dyed(day, of_day)
        yield from _washed(worked(day, 1), of_day)
        yield from _finished(worked(day, 3), of_day)


def worked(day: date, days: int) -> date:
    """So many working days later, or earlier."""
    step = 1 if days > 0 else -1
    for _ in range(abs(days)):
        day += timedelta(days=step)
        while day.isoweekday() > 5:
            day += timedelta(days=step)
    return day


def _from(day: date, hour: int, minute: int, every: int) -> Iterator[datetime]:
    """Moments of a day, so many minutes apart."""
    at = datetime.combine(day, time(hour, minute), UTC)
    while True:
        yield at
        at += timedelta(minutes=every)


def _wound(day: date, baths: Sequence[Bath]) -> Iterator[Planned]:
    for at, bath in zip(_from(day, 8, 20, 37), baths, strict=False):
        yield at, {"do": "wind planned", "by": "WN", "cord": bath.cord, "base": bath.base,
                   "skeins": bath.skeins, "cones": bath.cones}
    yield next(_from(day, 16, 25, 1)), {
        "do": "load", "by": "WS", "step": "soak", "vessel": 1,
        "cords": [bath.cord for bath in baths]}


def _dyed(day: date, baths: Sequence[Bath]) -> Iterator[Planned]:
    pots = groupby(baths, lambda bath: bath.pot)
    for number, (at, (pot, companions)) in enumerate(zip(_from(day, 8, 14, 13), pots,
                                                         strict=False)):
        together = list(companions)
        if pot == TRAY:
            yield from _painted(at, together)
            continue
        yield at, {"do": "dye", "by": ("DA", "DB")[number % 2],
                   "cords": [bath.cord for bath in together],
                   "codes": [bath.code for bath in together],
                   "colourway": together[0].colourway, "pot": int(pot)}
        yield at + timedelta(minutes=97), {
            "do": "read", "by": ("DA", "DB")[number % 2], "cord": together[0].cord}


def _painted(at: datetime, baths: Sequence[Bath]) -> Iterator[Planned]:
    """Laid on a board each and painted, half an hour before they stand in the steamer."""
    cords = [bath.cord for bath in baths]
    yield at - timedelta(minutes=30), {"do": "paint", "by": "DB", "cords": cords,
                                       "colourway": baths[0].colourway}
    yield at, {"do": "steam", "by": "DB", "cords": cords, "steamer": 1}


def _washed(day: date, baths: Sequence[Bath]) -> Iterator[Planned]:
    first = {bath.pot: bath for bath in baths if bath.goes("lifted")}
    for at, bath in zip(_from(day, 7, 31, 4), first.values(), strict=False):
        yield at, {"do": "lift", "by": "WS", "cord": bath.cord}
    washed = [bath for bath in baths if bath.goes("washed")]
    for number, (at, load) in enumerate(zip(_from(day, 8, 50, 19), _apart(washed), strict=False)):
        cords = [bath.cord for bath in load]
        yield at, {"do": "load", "by": "WS", "step": "wash", "cords": cords,
                   "vessel": 3 + number % 3}
        yield at + timedelta(hours=2), {
            "do": "load", "by": "WS", "step": "rail", "cords": cords,
            "rail": 1 + (day.toordinal() + number) % 6}
    if washed:
        yield next(_from(day, 10, 35, 1)), {
            "do": "load", "by": "WS", "step": "spin", "vessel": 7,
            "cords": [bath.cord for bath in washed]}


def _apart(baths: Sequence[Bath]) -> Iterator[list[Bath]]:
    """Pale ones one by one, the others by twos."""
    dark = [bath for bath in baths if bath.colourway not in PALE]
    yield from ([bath] for bath in baths if bath.colourway in PALE)
    yield from (dark[start:start + 2] for start in range(0, len(dark), 2))


def _finished(day: date, baths: Sequence[Bath]) -> Iterator[Planned]:
    counted = [bath for bath in baths if bath.goes("counted")]
    for at, bath in zip(_from(day, 8, 35, 11), counted, strict=False):
        yield at, {"do": "count", "by": "TW", "cord": bath.cord}
        yield at + timedelta(minutes=4), {"do": "inspect", "by": "DA", "cord": bath.cord}
    shelved = [bath for bath in baths if bath.goes("shelved")]
    for at, bath in zip(_from(day, 10, 5, 32), shelved, strict=False):
        yield at, {"do": "tags", "by": "LP", "cord": bath.cord}
        yield at + timedelta(minutes=26), {"do": "shelve", "by": "LP", "cord": bath.cord}

