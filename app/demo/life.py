"""The studio's weeks lived from its papers, line by line, through the program's own deeds."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from random import Random

from sqlalchemy import event
from sqlalchemy.engine.interfaces import DBAPIConnection

from app import paths
from app.demo import desk, finishing, inspection, making, painting, shop, weighing
from app.demo.chance import Chance
from app.demo.hands import TOKENS, Clock, Hands, TagSheet
from app.demo.opening import open_studio
from app.demo.sources import Line, Moment, cones_named, lots_named, moments
from app.problems import Refused
from app.store.book import Book
from app.store.deed import By
from app.store.upgrade import upgrade_book

NAME = "Quernlow Dyeyard"
SEED = 2026
FIRST_TOKEN = f"{TOKENS}-00001"
"""The token of the first entry: by it a book of the demo is known."""

_DOOR, _WINDING, _POTS, _WET, _TABLE, _TAGGING, _SHOP, _DESK, _BALANCE, _SHADE = (
    "receiving", "winding", "pots", "wash and dry", "finishing", "tagging", "counter", "desk",
    "weighing", "shade check")
_DOING: Mapping[str, tuple[str, Callable[[Hands, Line], None]]] = {
    "take in": (_DOOR, making.take_note_in), "wind": (_WINDING, making.wind_cone),
    "wind planned": (_WINDING, making.wind_planned), "join": (_WINDING, making.wind_join),
    "end cone": (_WINDING, making.end), "dye": (_POTS, making.dye),
    "paint": (_POTS, painting.paint), "steam": (_POTS, painting.steam),
    "step": (_POTS, making.tick_off),
    "read": (_POTS, making.read_pot), "lift": (_POTS, making.lift_bath),
    "bleeds": (_WET, finishing.bleeds), "name lot": (_POTS, making.name_pending),
    "load": (_WET, finishing.load), "split": (_WET, finishing.split_cord),
    "mix": (_WET, finishing.mix_cords), "count": (_TABLE, finishing.count),
    "tags": (_TAGGING, finishing.tags), "tags again": (_TAGGING, finishing.tags_again),
    "spoil": (_TAGGING, finishing.spoil),
    "tag in place": (_TAGGING, finishing.tag_in_place), "shelve": (_TAGGING, finishing.shelve),
    "show": (_SHOP, finishing.show), "seconds": (_TABLE, finishing.seconds),
    "make small": (_TABLE, finishing.make_small), "gather": (_TABLE, finishing.gather_seconds),
    "web orders": (_SHOP, shop.web_orders), "order": (_SHOP, shop.order),
    "pack": (_SHOP, shop.pack), "take": (_SHOP, shop.take),
    "send": (_SHOP, shop.send_order),
    "walk in": (_SHOP, shop.walk_in), "sell down": (_SHOP, shop.sell_down),
    "put by": (_SHOP, shop.keep), "kit": (_SHOP, shop.kit), "open kit": (_SHOP, shop.kit_opened),
    "sell kit": (_SHOP, shop.kit_sold), "fair": (_SHOP, shop.to_fair),
    "at the fair": (_SHOP, shop.at_fair), "back": (_SHOP, shop.back),
    "back untagged": (_SHOP, shop.back_untagged), "price": (_DESK, desk.price),
    "hold": (_DESK, desk.put_hold), "lift hold": (_DESK, desk.lift_the_hold),
    "find": (_DESK, desk.find_skein), "is missing": (_DESK, desk.match_missing),
    "standards": (_SHADE, inspection.read_standards), "inspect": (_SHADE, inspection.inspect),
    "read shade": (_SHADE, inspection.read_card), "kit pattern": (_DESK, inspection.kit_pattern),
    "wears another's": (_DESK, desk.wears_anothers), "leaves": (_DESK, desk.leave),
    "recipes": (_DESK, weighing.recipes_from), "refill": (_BALANCE, weighing.refill_jar),
    "take instead": (_BALANCE, weighing.take_instead),
    "strength": (_BALANCE, weighing.strength), "weigh jars": (_BALANCE, weighing.weigh_jars),
}
"""Every word of the papers, with the station it is done at."""


@dataclass(frozen=True, slots=True)
class Lived:
    """What the book itself does not keep of the weeks: the sheets, what was refused, the hour."""

    sheets: tuple[TagSheet, ...]
    findings: tuple[str, ...]
    refusals: tuple[str, ...]
    until: datetime


def live(
    path: Path, seed: int = SEED, folder: Path = paths.DEMO_DATA,
    say: Callable[[str], None] = lambda _week: None,
) -> Lived:
    """A new book at this path with all that the papers of a folder tell.

    The seed draws codes, marks and all that does not matter; `say` hears each week begin.
    """
    lines = moments(folder)
    first = lines[0].at.replace(hour=7, minute=0)
    upgrade_book(path, first)
    clock = Clock(first)
    book = Book(path, clock, Random(f"{seed} salts"))
    event.listen(book.engine, "connect", _hurry)
    hands = Hands(
        book, clock, folder, Chance(seed, lots_named(lines)), Random(f"{seed} whim"),
        Random(f"{seed} balance"),
        named_cones=cones_named(lines), named_lots=lots_named(lines))
    refusals, week = [], 0
    try:
        open_studio(hands)
        for moment in lines:
            if moment.at.isocalendar().week != week:
                week = moment.at.isocalendar().week
                say(f"week {week} of {moment.at.year}")
            refusals += _live(hands, moment)
    finally:
        book.close()
    return Lived(tuple(hands.sheets), tuple(hands.findings), tuple(refusals), clock.now)


def _hurry(raw: DBAPIConnection, _record: object) -> None:
    """No deed waits for the disk: a demo that was cut short is thrown away and made anew."""
    raw.cursor().execute("PRAGMA synchronous = OFF")


def _live(hands: Hands, moment: Moment) -> list[str]:
    """One line; what was refused where the line says so. Raises what no line expects."""
    line = moment.line
    station, doing = _DOING[line["do"]]
    hands.clock.now = _clock_shows(line) or max(moment.at, hands.clock.now)
    hands.by, hands.happened = By(line["by"], station), line.get("happened")
    try:
        doing(hands, line)
    except Refused as refusal:
        if line.get("refused", "\0") not in refusal.what:
            raise
        return [refusal.what]
    if "refused" in line:
        raise LookupError(f"“{line['refused']}” was to be refused on {moment.at}.")
    return []


def _clock_shows(line: Line) -> datetime | None:
    """What a clock shows that went wrong."""
    return line["clock"].astimezone(UTC) if "clock" in line else None
