"""What the desk asks the book about the thing in hand, as one question."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from app.exchange.tracing import Traced, traced
from app.lookups.batches import Batch, batches_of
from app.lookups.destinations import Destinations, destinations
from app.lookups.ecru import Ecru, ecru_of
from app.lookups.holds import HoldFacts, live_holds
from app.lookups.pools import Apart, Pool, pool_above, told_singly
from app.lookups.pots import Relatives, relatives
from app.lookups.recent import EntryRow
from app.lookups.recognising import StillToSay, still_to_say
from app.lookups.shelves import ShelfNow, shelf_with
from app.lookups.story import story
from app.lookups.things import Found
from app.lookups.thread import Thing
from app.lookups.untagged import LotMeant, OfLot, lot_meant, untagged_like, untagged_of
from app.scanning.resolve import Resolution, resolve

_YARN_OF = {"cone": "cone", "lot": "lot", "skein": "yarn"}
"""Things that have yarn below them, and what the book calls each as a source."""


@dataclass(frozen=True, slots=True)
class InHand:
    """One thing with all that the book says of it."""

    found: Found
    traced: Traced
    there: Destinations | None
    pool: Pool | None
    """What one skein came out of, where the way to its cone parts."""
    singly: Mapping[Thing, Apart]
    """Of several skeins: the things that each is known to come from, or not."""
    relatives: Relatives
    holds: tuple[HoldFacts, ...]
    """Those that stop yarn of it, and those that were placed on it."""
    story: tuple[EntryRow, ...]
    shelf: ShelfNow | None = None
    still: StillToSay | None = None
    tagless: OfLot | None = None
    batches: tuple[Batch, ...] = ()
    ecru: Ecru | None = None

    @property
    def source(self) -> tuple[str, int] | None:
        """What a hold on it is placed on; none where it has no yarn of its own."""
        kind = _YARN_OF.get(self.found.kind)
        return None if kind is None else (kind, self.found.id)


@dataclass(frozen=True, slots=True)
class Answer:
    """What a text stands for, and if that is one thing, the thing."""

    text: str
    resolution: Resolution
    in_hand: InHand | None


def find(connection: Any, text: str, typed: bool, at: datetime) -> Answer:
    """What was scanned or typed, with all the book says of it if it is one thing."""
    resolution = resolve(connection, text, typed)
    found = resolution.found
    return Answer(text, resolution, None if found is None else look_at(connection, found, at))


def look_at(connection: Any, found: Found, at: datetime) -> InHand:
    """All the book says of this thing."""
    kind = _YARN_OF.get(found.kind)
    one = traced(connection, found, at)
    placed = (hold for hold in live_holds(connection) if hold.source == (kind, found.id))
    return InHand(
        found,
        one,
        None if kind is None else destinations(connection, kind, found.id),
        pool_above(connection, found.id) if found.kind == "skein" else None,
        {} if found.kind in ("cone", "skein") else told_singly(connection, found, at),
        relatives(connection, found.id) if found.kind == "lot" else Relatives((), ()),
        tuple(dict.fromkeys((*placed, *one.holds))),
        story(connection, found, at),
        shelf_with(connection, found.code) if found.kind == "shelf" else None,
        still_to_say(connection, found, at),
        _tagless(connection, found),
        batches_of(connection, found, at),
        ecru_of(connection, found.id) if found.kind == "cone" else None,
    )


def _tagless(connection: Any, found: Found) -> OfLot | None:
    if found.kind == "lot":
        return untagged_of(connection, found.id)
    return untagged_like(connection, found.id) if found.kind == "skein" else None


def which_lot(connection: Any, text: str) -> LotMeant | Resolution:
    """The lot that was scanned or typed, by its code or a tag of it; else why there is none."""
    told = resolve(connection, text, True, frozenset({"lot", "skein", "tag"}))
    meant = None if told.found is None else lot_meant(connection, told.found)
    return meant or told
