"""The ways to serve somebody who wants more of a lot, each with its words and its number."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from app.calculations.moments import day_words
from app.calculations.reorder import Blending
from app.calculations.shade_difference import Difference
from app.calculations.shade_words import USUAL, Bands, Judged
from app.lookups.counter import AtCounter, Tagged
from app.lookups.lot_lines import LotLine
from app.lookups.redyes import RedyeHistory

ENDS_SOON = timedelta(days=3)
FEWEST_TO_REDYE, DAYS_TO_REDYE = 3, 10
"""Skeins that a pot is worth lighting for, and working days. Common practice, no source."""


class Does(StrEnum):
    """What is done at the counter where a way is taken."""

    KEEP = "keep"
    """Put by, or promised on an order."""
    OPEN_KIT = "open a kit"
    SHELVE = "lay on a shelf"
    END_PUT_BY = "end a put-by"
    NOTE = "note for the dyer"
    NOT_HERE = "not here"


@dataclass(frozen=True, slots=True)
class Way:
    """One thing that may be offered: how many it gives, and how far it is from the lot.

    `certainty` says what the words rest on. No difference where nothing was measured. `of` are the
    skeins that it speaks of, where it does not speak of all that lie free of a lot.
    """

    way: str
    words: str
    certainty: str
    skeins: int = 0
    lot: int | None = None
    difference: Difference | None = None
    does: Does = Does.KEEP
    of: tuple[Tagged, ...] = ()


@dataclass(frozen=True, slots=True)
class Other:
    """Another lot with some left: made alike or not, and how far off it is if both were read."""

    line: LotLine
    free: int
    """Of the put-up that is wanted."""
    made: str
    """'sister', 'may be a sister', or ''."""
    difference: Difference | None = None
    judged: Judged | None = None

    @property
    def far(self) -> float:
        """The difference to decide on; a lot that was not read comes last."""
        return float("inf") if self.difference is None else self.difference.at_worst


def same_lot(at: AtCounter, put_up: str, free: int, now: datetime) -> tuple[Way, ...]:
    """Free ones, and then those that lie where they can still be had; none that are held."""
    places = Counter(one.place_words for one in at.free if one.put_up == put_up)
    ways = [_same(f"{free} free: " + ", ".join(
        f"{count} on {place}" for place, count in places.items()), free, Does.KEEP,
        lot=at.line.lot)] if free else []
    others = [one for one in at.skeins if one.put_up == put_up and not one.holds and not one.void]
    for (does, where, _), some in _elsewhere(others, now).items():
        ways.append(_same(f"{len(some)} {where}", len(some), does, some))
    return tuple(ways)


def _same(
    words: str, skeins: int, does: Does, of: Sequence[Tagged] = (), lot: int | None = None
) -> Way:
    return Way("same lot", words, "the same lot, by their tags", skeins, lot, does=does,
               of=tuple(of))


_Where = tuple[Does, str, int | None]
"""What is done, where they are, and in which bag or for whom, which are not opened together."""


def _elsewhere(skeins: Sequence[Tagged], now: datetime) -> dict[_Where, list[Tagged]]:
    found: dict[_Where, list[Tagged]] = {}
    for one in skeins:
        where = _where(one, now)
        if where is not None:
            found.setdefault(where, []).append(one)
    return found


def _where(one: Tagged, now: datetime) -> _Where | None:
    if one.state == "kit":
        return Does.OPEN_KIT, f"in kit {one.kit}, not sold: open it", one.kit_id
    if one.state == "table":
        return Does.SHELVE, ("on the table, new or brought back: look at it and put it on a "
                             "shelf"), None
    if one.state == "put by" and one.ends is not None and one.ends <= now + ENDS_SOON:
        ends = "is over" if one.ends <= now else f"ends on {day_words(one.ends)}"
        return Does.END_PUT_BY, f"put by, and that {ends}: ask", one.customer
    if one.state == "fair":
        return Does.NOT_HERE, "at a fair, if they come back: ask who stands there", None
    return None


def other_lot(other: Other) -> Way:
    """A sister, or the next lot by its number."""
    named = f"{other.line.shown}, {other.line.colourway}, {other.free} free"
    way = "sister lot" if other.made else "nearest lot"
    if other.difference is None or other.judged is None:
        return Way(way, f"{named}: {other.made}, not measured against it: hold them side by side",
                   "made alike, not measured", other.free, other.line.lot)
    worst = other.judged.at_worst
    doubt = "" if worst is other.judged.shown else f"; as the readings may err, {worst}"
    made = f" ({other.made})" if other.made else ""
    return Way(way, f"{named}{made}: {other.difference}, {other.judged.shown}{doubt}", "measured",
               other.free, other.line.lot, other.difference)


def blend(
    others: Sequence[Other], blending: Blending | None, bands: Bands = USUAL
) -> tuple[Way, ...]:
    """By alternate rows, with the nearest lot where it is near enough."""
    near = next((one for one in others if one.difference
                 and one.difference.ciede2000 <= bands.throughout), None)
    if near is None or near.difference is None:
        return ()
    if blending is None:
        zone = "two rows of each in turn for 6–8 cm; with the gauge and the width of the piece " \
               "the metres to keep back can be told"
    else:
        zone = (f"two rows of each in turn over {blending.rows} rows; "
                f"{blending.each_m:.0f} m of each lot must be left, so before the old one is "
                "finished")
    return (Way("blend", f"With {near.line.shown}, {near.difference} from it: {zone}", "measured",
                near.free, near.line.lot, near.difference),)


def other_design(others: Sequence[Other], bands: Bands = USUAL) -> Way:
    """Cuffs, yoke or a stripe: there the difference may be seen."""
    plain = next((one for one in others if one.difference
                  and bands.throughout < one.difference.ciede2000 <= bands.second), None)
    if plain is None:
        return Way("other design", "Another colour for cuffs, yoke or a stripe: look at the "
                   "shelves together", "a matter of taste", does=Does.NOT_HERE)
    return Way("other design", f"{plain.line.shown} for cuffs, yoke or a stripe: "
               f"{plain.difference}, plainly another", "measured", plain.free, plain.line.lot,
               plain.difference)


@dataclass(frozen=True, slots=True)
class StandIn:
    """A lot of a colourway that a kit's pattern allows in the place of the one that is wanted."""

    pattern: str
    line: LotLine
    free: int


def substitute(stand_in: StandIn) -> Way:
    """What a kit allows."""
    return Way("kit substitute", f"{stand_in.line.colourway}, {stand_in.line.shown}, "
               f"{stand_in.free} free: kit {stand_in.pattern} allows it",
               "as the pattern says", stand_in.free, stand_in.line.lot)


def redye(history: RedyeHistory, now: datetime) -> Way:
    """A chance, never a promise."""
    until = day_words(working_days_after(now, DAYS_TO_REDYE))
    return Way("redye", f"Dye at least {FEWEST_TO_REDYE} to match, ready by {until}: "
               f"{history.words}", "a chance, never promised", FEWEST_TO_REDYE, does=Does.NOTE)


def all_new(whole: int, lots: Sequence[tuple[LotLine, int]]) -> Way:
    """All of the piece from one other lot; `whole` is the number for it."""
    enough = next(((line, free) for line, free in lots if free >= whole), None)
    if enough is None:
        return Way("all new", f"All {whole} from one new lot: none has so many now, it would have "
                   "to be dyed", "not there yet", does=Does.NOTE)
    line, free = enough
    return Way("all new", f"All {whole} from {line.shown}, {free} free, with part of the price "
               "back for what is returned", "one lot, by their tags", free, line.lot)


def working_days_after(moment: datetime, days: int) -> datetime:
    """So many days later, Saturdays and Sundays not counted."""
    while days:
        moment += timedelta(days=1)
        days -= moment.isoweekday() < 6
    return moment
