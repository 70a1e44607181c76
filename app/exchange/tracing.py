"""All that the book says of one thing: where it comes from, where it is, how sure, in sentences."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection

from app.calculations.moments import day_words
from app.lookups.certainty import KNOWN, NOT_KNOWN, POOL, Link, held_by, link_of, links_of
from app.lookups.cones import ConeFacts, cone_facts
from app.lookups.holds import HoldFacts, live_holds
from app.lookups.origins import Origin, certainty_words, members_of, origins
from app.lookups.present import Leaf, each_once, leaves, without_finds
from app.lookups.recent import head
from app.lookups.studio import setting
from app.lookups.things import Found
from app.lookups.thread import Thread, thread
from app.lookups.trail import Stop, trail
from app.lookups.walks import below

STATE_WORDS = {
    "table": "on the table", "shelf": "on a shelf", "kit": "in a kit", "fair": "at a fair",
    "piled": "counted and not tagged", "in work": "in work",
}
KIND_WORDS = {"lot": "dye lot", "version": "base", "skein": "tagged skein"}
_OWN_KIND = {"cone": "cone", "lot": "lot", "skein": "yarn"}
_COUNTED = ("cone", "lot")
"""Of these it is said how many of what is left come from the thing."""
_ABOVE = {"cone": ("version",), "lot": ("cone", "lot", "version")}
_BORN = {"cone": "have yarn of it", "lot": "went into its bath", "disc": "hang on it now",
         "tag": "were in its pile"}


@dataclass(frozen=True, slots=True)
class Now:
    """Skeins in one state, and how many of these come from the thing; none: all of them."""

    state: str
    put_up: str
    count: int
    mg: int
    link: Link | None

    @property
    def words(self) -> str:
        """'on the table', 'on the table, as minis': the state as a person says it."""
        state = STATE_WORDS.get(self.state, self.state)
        if self.put_up == "skein":
            return state
        return f"{state}, as {f'a {self.put_up}' if self.count == 1 else f'{self.put_up}s'}"

    @property
    def counted(self) -> str:
        """'8', '6 of 12', '6 to 7 of 12': how many of them come from the thing."""
        if self.link is None or self.link.least == self.count:
            return str(self.count)
        return f"{_range(self.link)} of {self.count}"


@dataclass(frozen=True, slots=True)
class Traced:
    """A thing with both ends of its thread."""

    found: Found
    at: datetime
    studio: str
    born: int
    """Skeins that the thing stood for when they were made."""
    came: str
    origins: tuple[Origin, ...]
    """What lies above it."""
    went_into: tuple[Origin, ...]
    """The lots that its yarn became, where it is older than they."""
    left: Mapping[int, int]
    """What there is of it now: {row: members}."""
    now: tuple[Now, ...]
    together: Now | None
    sure: int
    """Of those there are: how many surely come from the cone, or have cones that are known."""
    stops: tuple[Stop, ...]
    holds: tuple[HoldFacts, ...]
    entry: int
    journal_head: str


def traced(connection: Connection, found: Found, at: datetime) -> Traced:
    """Both ends of the thread of a thing, as the book stands."""
    members = members_of(connection, found, at)
    ids = {row for yarn in members for row in below(connection, "yarn", yarn)}
    above = thread(connection, ids)
    own = _OWN_KIND.get(found.kind)
    left = [leaf for leaf in leaves(connection, ids)  # others were told to be of something else
            if own not in _COUNTED or _link(above, [leaf], own, found.id)]
    there = without_finds(left)
    reached = {hold for leaf in left for hold in held_by(above, leaf.yarn)}
    entry, journal_head = head(connection)
    met = origins(connection, members)
    higher = _ABOVE.get(found.kind, ("cone", "lot", "load", "version"))
    return Traced(
        found, at, setting(connection, "name"), sum(members.values()), _came(connection, found),
        tuple(one for one in met if one.kind in higher and (one.kind, one.id) != (own, found.id)),
        tuple(one for one in met if one.kind == "lot") if found.kind == "cone" else (),
        {leaf.yarn: leaf.count for leaf in there},
        tuple(_by_state(above, each_once(left), own, found.id)),
        _amount(above, "together", "skein", there, own, found.id) if there else None,
        sum(leaf.count for leaf in there if _is_sure(above, leaf, found)),
        trail(connection, found, at),
        tuple(hold for hold in live_holds(connection)
              if hold.id in reached or hold.source == (own, found.id)),
        entry, journal_head)


def sentences(one: Traced) -> tuple[tuple[str, str], ...]:
    """What a person wants to know first, each with its label."""
    said = [("Came", one.came), ("From", _from(one)), ("Became", _became(one)), ("Now", _now(one)),
            ("How sure", _how_sure(one))]
    said += [("HOLD", f"{hold.on} since {day_words(hold.since)}: {hold.why}. Ask {hold.ask}.")
             for hold in one.holds]
    return tuple((label, words) for label, words in said if words)


def _by_state(
    above: Thread, left: Iterable[Leaf], own: str | None, thing: int
) -> Iterator[Now]:
    groups: dict[tuple[str, str], list[Leaf]] = {}
    for leaf in left:
        groups.setdefault((leaf.state, leaf.put_up), []).append(leaf)
    for (state, put_up), some in groups.items():
        yield _amount(above, state, put_up, some, own, thing)


def _amount(
    above: Thread, state: str, put_up: str, some: Collection[Leaf], own: str | None, thing: int
) -> Now:
    link = _link(above, some, own, thing) if own in _COUNTED else None
    return Now(state, put_up, sum(leaf.count for leaf in some), sum(leaf.mg for leaf in some), link)


def _link(above: Thread, some: Iterable[Leaf], own: str, thing: int) -> Link | None:
    return link_of(above, {leaf.yarn: leaf.count for leaf in some}, (own, thing))


def _came(connection: Connection, found: Found) -> str:
    if found.kind != "cone":
        return ""
    cone = cone_facts(connection, found.id)
    how = "counted as opening stock" if cone.opening_stock else f"note {cone.note_no}"
    batch = f"batch {cone.batch}" if cone.batch else "batch not stated"
    return (f"{day_words(cone.arrived)} from {cone.supplier}, {how}, {batch}, "
            f"{cone.net_mg / 1000:g} g net; {_left(cone)}.")


def _left(cone: ConeFacts) -> str:
    if cone.overdrawn:
        return "more was counted than it held, so what is left on it is not known"
    return f"{cone.left_mm // 1000:,} m are left on it"


def _is_sure(above: Thread, leaf: Leaf, found: Found) -> bool:
    links = links_of(above, {leaf.yarn: leaf.count}, "cone")
    if found.kind == "cone":
        return any(link.thing == found.id and link.least == leaf.count for link in links)
    return not {link.word for link in links} & {POOL, NOT_KNOWN}


def _from(one: Traced) -> str:
    """The cones and lots above it: of one skein how sure, of several how many."""
    parts = []
    for origin in (origin for origin in one.origins if origin.kind in ("lot", "cone")):
        words = f" ({origin.words})" if origin.kind == "lot" else ""
        thing = f"{KIND_WORDS.get(origin.kind, origin.kind)} {origin.code}{words}"
        if origin.link.word == KNOWN:
            parts.append(thing)
        elif origin.link.of == 1:
            parts.append(f"{thing}, {origin.sure}")
        else:
            parts.append(f"{_range(origin.link)} of {origin.link.of} from {thing}")
    return f"{'; '.join(parts)}." if parts else ""


def _became(one: Traced) -> str:
    if not one.born or one.found.kind == "skein":
        return ""
    lots = ", ".join(f"{_range(lot.link)} in dye lot {lot.code} ({lot.words})"
                     for lot in one.went_into if lot.id is not None)
    skeins = "1 skein" if one.born == 1 else f"{one.born} skeins"
    undyed = one.born - sum(lot.link.most for lot in one.went_into)
    lots += f", {undyed} not dyed yet" if lots and undyed > 0 else ""
    return f"{skeins} {_BORN.get(one.found.kind, 'here')}{f': {lots}' if lots else ''}."


def _now(one: Traced) -> str:
    return ", ".join(f"{now.counted} {now.words}" for now in one.now) + "." if one.now else ""


def _range(link: Link) -> str:
    return str(link.least) if link.least == link.most else f"{link.least} to {link.most}"


def _how_sure(one: Traced) -> str:
    """Of all that may come from a cone, how many do; of a lot, how many cones are known."""
    if one.together is None:
        return ""
    link, count = one.together.link, one.together.count
    if one.found.kind != "cone" or link is None:
        known = {0: f"none of the {count}", count: f"all {count}"}.get(
            one.sure, f"{one.sure} of {count}")
        return f"the cone is known of {known}." if count > 1 else ""
    if link.word == KNOWN:
        return f"known: all {count} come from it."
    if 0 < one.sure < count:
        least, most = link.least - one.sure, link.most - one.sure
        rest = str(least) if least == most else f"{least} to {most}"
        return f"{one.sure} surely come from it, and {rest} of {count - one.sure} others."
    return f"{certainty_words(link)}."
