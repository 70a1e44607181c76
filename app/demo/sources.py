"""The studio's papers: what they say happened, one line a deed, in the order of time."""

import csv
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import Any

from app.demo.plan import Bath, planned

Line = Mapping[str, Any]
"""One line of the studio's days: who, what, and with what."""


@dataclass(frozen=True, slots=True)
class Moment:
    """A line at its moment."""

    at: datetime
    line: Line


def toml(path: Path) -> Line:
    """A paper in TOML."""
    return tomllib.loads(path.read_text("utf-8"))


def rows(path: Path) -> Iterator[Mapping[str, str]]:
    """The rows of a list with semicolons; none where there is no such list."""
    if path.exists():
        with path.open(encoding="utf-8", newline="") as lines:
            yield from csv.DictReader((one for one in lines if not one.startswith("#")),
                                      delimiter=";")


def moments(folder: Path) -> tuple[Moment, ...]:
    """All lines of all papers in the folder, in the order of time, until the studio closes."""
    studio = toml(folder / "studio.toml")
    papers = [folder / "days.toml", *sorted((folder / "cases").glob("*.toml"))]
    written = [one for paper in papers if paper.exists() for one in _days(toml(paper)["days"])]
    baths = [_bath(row) for row in rows(folder / "baths.csv")]
    regular = [Moment(at, line) for at, line in planned(baths)]
    routine = [one for line in studio.get("routine", ()) for one in _routine(line)]
    orders = [_web(path) for path in sorted((folder / "orders").glob("*.csv"))]
    found = sorted((*written, *regular, *routine, *orders), key=lambda moment: moment.at)
    closes = studio.get("closes", found[-1].at)
    return tuple(moment for moment in found if moment.at <= closes)


def lots_named(found: Iterable[Moment]) -> frozenset[str]:
    """Lots that the papers speak of, by the code they are given at the pot or by their cord."""
    lines = [moment.line for moment in found]
    dyed = {code for line in lines if line["do"] == "dye" for code in line.get("codes", ()) if code}
    return frozenset(dyed | {line["lot"] for line in lines if line["do"] == "make small"})


def cones_named(found: Iterable[Moment]) -> frozenset[int]:
    """Numbers of cones that the papers wind by name: they are left alone until then."""
    return frozenset(number for moment in found for number in _cones_in(moment.line))


def _cones_in(line: Line) -> Iterator[int]:
    cones = line.get("cones", ())
    yield from (cones if isinstance(cones, list | tuple) else cones.keys())
    if line["do"] == "wind" and "cone" in line:
        yield line["cone"]


def _days(days: Iterable[Line]) -> Iterator[Moment]:
    for day in days:
        for line in day["deeds"]:
            at = time.fromisoformat(line["at"])
            yield Moment(datetime.combine(day["date"], at, UTC), line)


def _bath(row: Mapping[str, str]) -> Bath:
    cones = (part.split("x") for part in row["cones"].split())
    return Bath(
        day=date.fromisoformat(row["day"]), pot=row["pot"], colourway=row["colourway"],
        base=row["base"], skeins=int(row["skeins"]), code=row["lot"],
        cones={int(number): int(count) for number, count in cones},
        until=row["until"] or "shelved")


def _routine(routine: Line) -> Iterator[Moment]:
    """A line that is lived every week."""
    day, last = routine["days"]
    while day <= last:
        if day.isoweekday() in routine["weekdays"]:
            yield Moment(datetime.combine(day, routine["at"], UTC), routine["line"])
        day += timedelta(days=1)


def _web(path: Path) -> Moment:
    """A list of the web shop, taken in on the Monday that its name says: web-2026-w09.csv."""
    year, week = path.stem.split("-")[1:]
    monday = date.fromisocalendar(int(year), int(week[1:]), 1)
    return Moment(datetime.combine(monday, time(9, 4), UTC),
                  {"do": "web orders", "by": "OM", "file": path.name})
