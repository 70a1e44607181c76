"""The trail of a thing: the thread as one line from delivery to customer, with counts."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from sqlalchemy import Connection, func, select

from app.calculations.codes import shown
from app.calculations.moments import short_day
from app.lookups.certainty import KNOWN, NOT_KNOWN, PARTLY, POOL, Link, held_by, links_of
from app.lookups.origins import members_of
from app.lookups.present import Leaf, leaves
from app.lookups.things import Found
from app.lookups.thread import Thread, thread
from app.lookups.walks import below
from app.records import (
    Cone,
    Delivery,
    DyeLot,
    InBath,
    Load,
    OnBundle,
    Plate,
    PlateStay,
    Tag,
    TagOn,
    Yarn,
)
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Stop:
    """A station of the trail; `certainty` and `note` are of the yarn that leads to it."""

    kind: str
    code: str
    count: str
    certainty: str = KNOWN
    note: str = ""
    held: str = ""
    """'here' where the hold was placed, 'below' on what it reaches."""
    here: bool = False
    link: str = ""
    """The code to scan to go there; nothing where it has none."""


@dataclass(frozen=True, slots=True)
class _Line:
    """What a trail is drawn from: rows below the thing, and all that lies above them."""

    thing: Found
    members: Mapping[int, int]
    found: Thread
    leaves: tuple[Leaf, ...]

    @property
    def ends(self) -> Mapping[int, int]:
        """What is left below the thing, {row: members}."""
        return {leaf.yarn: leaf.count for leaf in self.leaves} or self.members


def trail(connection: Connection, thing: Found, at: datetime) -> tuple[Stop, ...]:
    """The stations of a thing in the order of the work; those it never met are left out."""
    members = members_of(connection, thing, at)
    if not members:
        return _bare_cone(connection, thing) if thing.kind == "cone" else ()
    ids = {row for yarn in members for row in below(connection, "yarn", yarn)}
    line = _Line(thing, members, thread(connection, ids), leaves(connection, ids))
    stops = [
        *_cones(connection, line), *_discs(connection, line), *_lots(connection, line),
        *_loads(connection, line), *_piles(connection, line), *_tags(connection, line),
        *_now(line),
    ]
    return tuple(_marked(connection, line, stops))


_STOPS_OF = {
    "cone": ("cones",), "lot": (), "load": ("soak", "wash", "spin", "rail", "steamer"),
    "yarn": ("now",),
}
"""Stations where a hold hangs that have no code of their own."""


def _marked(connection: Connection, line: _Line, stops: Sequence[Stop]) -> Iterator[Stop]:
    """The one in hand, and HOLD: where it was placed, and on all below it."""
    ids = {hold for row in line.ends for hold in held_by(line.found, row)}
    sources = [hold.source for hold in line.found.holds if hold.id in ids]
    codes = {_code_of(connection, *source) for source in sources} - {None}
    kinds = {stop for kind, _ in sources for stop in _STOPS_OF[kind]}
    held = ""
    for stop in stops:
        placed = stop.link in codes or stop.kind in kinds
        held = "here" if placed else "below" if held else ""
        yield replace(stop, held=held, here=bool(stop.link) and stop.link == line.thing.code)


def _code_of(connection: Connection, kind: str, thing: int | None) -> str | None:
    if kind == "cone":
        return connection.execute(select(Cone.code).where(Cone.id == thing)).scalar()
    if kind == "lot":
        return connection.execute(select(DyeLot.code).where(DyeLot.id == thing)).scalar()
    return None


def _bare_cone(connection: Connection, thing: Found) -> tuple[Stop, ...]:
    cone = connection.execute(
        select(Delivery.arrived, Delivery.kind, Delivery.id)
        .join(Cone, Cone.delivery == Delivery.id).where(Cone.id == thing.id)).one()
    return (
        Stop(cone.kind, short_day(cone.arrived), _count(_cones_in(connection, cone.id), "cone")),
        Stop("cone", thing.shown, "nothing wound yet", here=True, link=thing.code),
    )


def _cones(connection: Connection, line: _Line) -> Iterable[Stop]:
    links = links_of(line.found, line.members, "cone")
    known = [link.thing for link in links if link.thing is not None]
    rows = {row.id: row for row in connection.execute(
        select(Cone.id, Cone.code, Cone.delivery, Delivery.arrived, Delivery.kind)
        .join(Delivery, Delivery.id == Cone.delivery).where(among(Cone.id, "ids")),
        {"ids": listed(known)})}
    if not rows:
        yield Stop("cone", "?", "not known", NOT_KNOWN)
        return
    deliveries = {row.delivery: row for row in rows.values()}
    first = next(iter(deliveries.values()))
    yield (Stop(first.kind, short_day(first.arrived),
                _count(_cones_in(connection, first.delivery), "cone"))
           if len(deliveries) == 1 else
           Stop("deliveries", str(len(deliveries)), f"from {short_day(first.arrived)}"))
    if line.thing.kind == "cone":
        yield Stop("cone", line.thing.shown, _count(sum(line.members.values()), "skein"),
                   link=line.thing.code)
        return
    codes = [rows[thing].code for thing in known]
    unknown = "" if len(known) == len(links) else ", some not known"
    yield Stop("cone" if len(codes) == 1 else "cones",
               shown(codes[0]) if len(codes) == 1 else f"{len(codes)} cones",
               _split(links) + unknown, link=codes[0] if len(codes) == 1 else "")


def _split(links: tuple[Link, ...]) -> str:
    if len(links) == 1:
        return _count(links[0].of, "skein")
    if all(link.least == link.most for link in links):
        return " + ".join(str(link.least) for link in links)
    return f"{links[0].least} to {links[0].most} of {links[0].of}"


def _sure(line: _Line, kind: str) -> tuple[str, str]:
    """The certainty that the members' leaves keep about a kind, and the note over the yarn."""
    links = links_of(line.found, line.members, kind)
    words = {link.word for link in links}
    if POOL in words:
        singles = [links_of(line.found, {leaf.yarn: leaf.count}, kind) for leaf in line.leaves]
        if any(len(each) > 1 for each in singles):
            return POOL, f"one of {len(links)}, {_split(links)}"
        return KNOWN, ""
    if PARTLY in words:
        return PARTLY, " / ".join(f"{round(link.share * 100)} %" for link in links)
    return (NOT_KNOWN, "") if words == {NOT_KNOWN} else (KNOWN, "")


def _discs(connection: Connection, line: _Line) -> Iterable[Stop]:
    worn = connection.execute(
        select(Plate.code).join(PlateStay, PlateStay.plate == Plate.id)
        .join(OnBundle, OnBundle.bundle == PlateStay.bundle)
        .where(among(OnBundle.yarn, "ids"), OnBundle.struck.is_(None), PlateStay.struck.is_(None))
        .distinct(), {"ids": listed(line.found.count)}).scalars().all()
    if worn:
        certainty, note = (KNOWN, "") if line.thing.kind == "cone" else _sure(line, "cone")
        yield Stop("disc" if len(worn) == 1 else "discs",
                   ", ".join(code[1:-1] for code in worn[:2]) + (" …" if len(worn) > 2 else ""),
                   _count(sum(line.members.values()), "skein"), certainty, note,
                   link=worn[0] if len(worn) == 1 else "")


def _lots(connection: Connection, line: _Line) -> Iterable[Stop]:
    links = [link for link in links_of(line.found, line.ends, "lot") if link.thing is not None]
    for link in links[:3]:
        code = connection.execute(
            select(DyeLot.code).where(DyeLot.id == link.thing)).scalar()
        count, certainty = _in_lot(connection, line, link)
        yield Stop("dye lot", shown(code) if code else "no code yet", count, certainty,
                   link=code or "")
    if len(links) > 3:
        yield Stop("dye lots", f"{len(links) - 3} more", "")


def _in_lot(connection: Connection, line: _Line, link: Link) -> tuple[str, str]:
    """How many skeins of a lot are meant: all, or those of the cone in hand."""
    rows = connection.execute(
        select(Yarn.id, Yarn.count).join(InBath, InBath.yarn == Yarn.id)
        .where(InBath.lot == link.thing, InBath.struck.is_(None))).all()
    whole = sum(members for _, members in rows)
    inside = {row: members for row, members in rows if row in line.found.count}
    if line.thing.kind != "cone" or not inside:
        return _count(whole, "skein"), KNOWN
    of_cone = [each for each in links_of(line.found, inside, "cone")
               if each.thing == line.thing.id]
    mixed = any(len(links_of(line.found, {row: n}, "cone")) > 1 for row, n in inside.items())
    count = of_cone[0].most if of_cone else whole
    return (_count(whole, "skein") if count == whole else f"{count} of {whole}",
            POOL if mixed else KNOWN)


def _loads(connection: Connection, line: _Line) -> Iterable[Stop]:
    links = links_of(line.found, line.ends, "load")
    steps = dict(connection.execute(
        select(Load.id, Load.step).where(among(Load.id, "ids")),
        {"ids": listed(link.thing for link in links if link.thing is not None)}).all())
    for step in dict.fromkeys(steps.values()):
        met = [link for link in links if steps.get(link.thing or 0) == step]
        yield Stop(step, f"{step} {met[0].thing}" if len(met) == 1 else f"{len(met)} loads",
                   _split(tuple(met)), POOL if any(m.word == POOL for m in met) else KNOWN)


def _piles(connection: Connection, line: _Line) -> Iterable[Stop]:
    count, born = connection.execute(
        select(func.sum(Yarn.count), func.min(Yarn.deed))
        .where(among(Yarn.id, "ids"), Yarn.kind == "pile", Yarn.struck.is_(None)),
        {"ids": listed(line.found.count)}).one()
    if count:
        missing = sum(leaf.count for leaf in line.leaves if leaf.state == "missing at a count")
        yield Stop("pile", f"{count} counted", f"{missing} missing" if missing else "none missing")


def _tags(connection: Connection, line: _Line) -> Iterable[Stop]:
    printed, hung = connection.execute(
        select(func.count(Tag.id), func.count(TagOn.id))
        .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
        .where(among(Tag.pile, "ids"), Tag.void.is_(None),
               Tag.struck.is_(None)), {"ids": listed(line.found.count)}).one()
    if printed:
        yield Stop("tags", f"{hung} of {printed}", "tied on")


def _now(line: _Line) -> Iterable[Stop]:
    states: dict[str, int] = {}
    for leaf in line.leaves:
        states[leaf.state] = states.get(leaf.state, 0) + leaf.count
    if states:
        most = max(states, key=lambda state: states[state])
        words = {"table": "on the table", "shelf": "on the shelf"}.get(most, most)
        rest = sum(states.values()) - states[most]
        yield Stop("now", f"{states[most]} {words}", f"{rest} elsewhere" if rest else "all of it")


def _cones_in(connection: Connection, delivery: int) -> int:
    return connection.execute(
        select(func.count()).select_from(Cone)
        .where(Cone.delivery == delivery, Cone.struck.is_(None))).scalar_one()


def _count(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"

