"""The stages of the work that some yarn went through, each with the rows that were there."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, func, select

from app.calculations.codes import shown
from app.calculations.moments import short_day
from app.lookups.certainty import Link, links_of
from app.lookups.present import Leaf
from app.lookups.things import Found
from app.lookups.thread import Thread
from app.records import (
    Cone,
    Delivery,
    DyeLot,
    InBath,
    InLoad,
    Load,
    OnBundle,
    Plate,
    PlateStay,
    Tag,
    TagOn,
    Yarn,
)
from app.store.dialect import among, listed

_MOST_LOTS = 3


@dataclass(frozen=True, slots=True)
class Line:
    """What a trail is drawn from: the thing, all below it, and all that lies above that."""

    thing: Found
    members: Mapping[int, int]
    below: frozenset[int]
    found: Thread
    leaves: tuple[Leaf, ...]

    @property
    def ends(self) -> Mapping[int, int]:
        """What is left below the thing, {row: members}."""
        return {leaf.yarn: leaf.count for leaf in self.leaves} or self.members

    @property
    def scope(self) -> frozenset[int]:
        """The rows that belong to the trail: of a cone only what came out of it."""
        return self.below if self.thing.kind == "cone" else frozenset(self.found.count)


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage: what it is called, its code, how many, and the rows that were there."""

    kind: str
    code: str
    count: str
    rows: tuple[int, ...] = ()
    link: str = ""


def stages(connection: Connection, line: Line) -> list[Stage]:
    """The stages in the order of the work; those that were never met are left out."""
    return [
        *_cones(connection, line), *_discs(connection, line), *_lots(connection, line),
        *_loads(connection, line), *_piles(connection, line), *_tags(connection, line),
        *_now(line),
    ]


def bare_cone(connection: Connection, thing: Found) -> Iterator[Stage]:
    """A cone of which nothing was wound yet."""
    if thing.kind == "cone":
        cone = connection.execute(
            select(Delivery.arrived, Delivery.kind, Delivery.id)
            .join(Cone, Cone.delivery == Delivery.id).where(Cone.id == thing.id)).one()
        yield Stage(cone.kind, short_day(cone.arrived), _cones_in(connection, cone.id))
        yield Stage("cone", thing.shown, "nothing wound yet", link=thing.code)


def split_words(links: tuple[Link, ...]) -> str:
    """How members are shared among things: '12 skeins', '7 + 5', '0 to 4 of 12'."""
    if len(links) == 1:
        return _count(links[0].of, "skein")
    if all(link.least == link.most for link in links):
        return " + ".join(str(link.least) for link in links)
    return f"{links[0].least} to {links[0].most} of {links[0].of}"


def _cones(connection: Connection, line: Line) -> Iterator[Stage]:
    links = links_of(line.found, line.members, "cone")
    rows = {row.id: row for row in connection.execute(
        select(Cone.id, Cone.code, Cone.delivery, Delivery.arrived, Delivery.kind)
        .join(Delivery, Delivery.id == Cone.delivery).where(among(Cone.id, "ids")),
        {"ids": listed(link.thing for link in links if link.thing is not None)})}
    if not rows:
        yield Stage("cone", "?", "not known", tuple(line.members))
        return
    of_cone = line.thing.kind == "cone"
    deliveries = {row.delivery: row for row in rows.values()
                  if not of_cone or row.id == line.thing.id}
    first = next(iter(deliveries.values()))
    yield (Stage(first.kind, short_day(first.arrived), _cones_in(connection, first.delivery))
           if len(deliveries) == 1 else
           Stage("deliveries", str(len(deliveries)), f"from {short_day(first.arrived)}"))
    if of_cone or len(links) == 1:
        code = line.thing.code if of_cone else next(iter(rows.values())).code
        count = sum(line.members.values())
        yield Stage("cone", shown(code), _count(count, "skein"), link=code)
        return
    unknown = "" if len(rows) == len(links) else ", some not known"
    yield Stage("cones", _count(len(rows), "cone"), split_words(links) + unknown)


def _discs(connection: Connection, line: Line) -> Iterator[Stage]:
    worn = connection.execute(
        select(Plate.code, OnBundle.yarn).join(PlateStay, PlateStay.plate == Plate.id)
        .join(OnBundle, OnBundle.bundle == PlateStay.bundle)
        .join(Yarn, Yarn.id == OnBundle.yarn)
        .where(among(OnBundle.yarn, "ids"), OnBundle.struck.is_(None), PlateStay.struck.is_(None),
               Yarn.kind == "group")
        .order_by(Plate.code), {"ids": listed(line.scope)}).all()
    codes = list(dict.fromkeys(code for code, _ in worn))
    if codes:
        named = ", ".join(code[1:-1] for code in codes[:2]) + (" …" if len(codes) > 2 else "")
        yield Stage("disc" if len(codes) == 1 else "discs", named,
                    _count(sum(line.members.values()), "skein"),
                    tuple(yarn for _, yarn in worn if yarn in line.found.count),
                    codes[0] if len(codes) == 1 else "")


def _lots(connection: Connection, line: Line) -> Iterator[Stage]:
    wanted = [link.thing for link in links_of(line.found, line.ends, "lot") if link.thing]
    for lot in wanted[:_MOST_LOTS]:
        code = connection.execute(select(DyeLot.code).where(DyeLot.id == lot)).scalar()
        rows = connection.execute(
            select(Yarn.id, Yarn.count.label("members")).join(InBath, InBath.yarn == Yarn.id)
            .where(InBath.lot == lot, InBath.struck.is_(None))).all()
        here = {row.id: row.members for row in rows if row.id in line.scope}
        yield Stage("dye lot", shown(code) if code else "no code yet",
                    _of_lot(line, sum(row.members for row in rows), here), tuple(here),
                    code or "")
    if len(wanted) > _MOST_LOTS:
        yield Stage("dye lots", f"{len(wanted) - _MOST_LOTS} more", "")


def _of_lot(line: Line, whole: int, here: Mapping[int, int]) -> str:
    """How many skeins of a lot are meant: all, or those of the cone in hand."""
    of_cone = [link for link in links_of(line.found, here, "cone")
               if line.thing.kind == "cone" and link.thing == line.thing.id]
    count = of_cone[0].most if of_cone else whole
    return _count(whole, "skein") if count == whole else f"{count} of {whole}"


def _loads(connection: Connection, line: Line) -> Iterator[Stage]:
    rows = connection.execute(
        select(Load.step, Load.id, InLoad.yarn).join(InLoad, InLoad.load == Load.id)
        .where(among(InLoad.yarn, "ids"), InLoad.struck.is_(None)).order_by(Load.id),
        {"ids": listed(line.scope)}).all()
    loads: dict[str, list[int]] = defaultdict(list)
    there: dict[str, list[int]] = defaultdict(list)
    for step, load, yarn in rows:
        loads[step] += [] if load in loads[step] else [load]
        there[step].append(yarn)
    links = links_of(line.found, line.ends, "load")
    for step, met in loads.items():
        reached = tuple(link for link in links if link.thing in met)
        yield Stage(step, f"load {met[0]}" if len(met) == 1 else f"{len(met)} loads",
                    _in_loads(reached), tuple(there[step]))


def _in_loads(links: tuple[Link, ...]) -> str:
    """'8 skeins', '5 + 3'; '5 of 8' where some were in none, or some in two."""
    of = links[0].of
    if not all(link.least == link.most for link in links):
        return ", ".join(f"{link.least} to {link.most}" for link in links) + f" of {of}"
    if sum(link.least for link in links) == of:
        return split_words(links)
    return f"{' + '.join(str(link.least) for link in links)} of {of}"


def _piles(connection: Connection, line: Line) -> Iterator[Stage]:
    piles = _around(line, _all_piles(connection, line))
    if piles:
        parents = {source.parent for row in piles for source in line.found.sources.get(row, ())}
        counts = _counts(line, piles)
        missing = sum(leaf.count for leaf in line.leaves if leaf.state == "missing at a count")
        yield Stage("pile", f"{sum(piles[row] for row in counts)} counted",
                    f"{missing} missing" if missing else "none missing",
                    tuple(row for row in piles if row not in parents))


def _all_piles(connection: Connection, line: Line) -> dict[int, int]:
    return dict(connection.execute(
        select(Yarn.id, Yarn.count.label("members"))
        .where(among(Yarn.id, "ids"), Yarn.kind == "pile", Yarn.struck.is_(None)),
        {"ids": listed(line.scope)}).all())


def _around(line: Line, piles: dict[int, int]) -> dict[int, int]:
    """The piles that the thing became; where it became none, the last that it came out of."""
    after = {row: count for row, count in piles.items() if row in line.below}
    if after:
        return after
    before = set().union(*(_above(line, row) & piles.keys() for row in piles))
    return {row: count for row, count in piles.items() if row not in before}


def _counts(line: Line, piles: Mapping[int, int]) -> list[int]:
    """Those that were counted first: what was gathered of them and counted again counts once."""
    return [row for row in piles if not _above(line, row) & piles.keys()]


def _above(line: Line, row: int) -> set[int]:
    met: set[int] = set()
    waiting = [row]
    while waiting:
        parents = {source.parent for source in line.found.sources.get(waiting.pop(), ())} - met
        met |= parents
        waiting += parents
    return met


def _tags(connection: Connection, line: Line) -> Iterator[Stage]:
    printed, hung = connection.execute(
        select(func.count(Tag.id), func.count(TagOn.id))
        .outerjoin(TagOn, (TagOn.tag == Tag.id) & TagOn.until.is_(None) & TagOn.struck.is_(None))
        .where(among(Tag.pile, "ids"), Tag.void.is_(None), Tag.struck.is_(None)),
        {"ids": listed(_around(line, _all_piles(connection, line)))}).one()
    if printed:
        yield Stage("tags", f"{hung} of {printed}", "tied on",
                    tuple(leaf.yarn for leaf in line.leaves if leaf.kind == "skein"))


def _now(line: Line) -> Iterator[Stage]:
    states: dict[str, int] = defaultdict(int)
    for leaf in line.leaves:
        states[leaf.state] += leaf.count
    if states:
        most = max(states, key=lambda state: states[state])
        words = {"table": "on the table", "shelf": "on the shelf"}.get(most, most)
        rest = sum(states.values()) - states[most]
        yield Stage("now", f"{states[most]} {words}", f"{rest} elsewhere" if rest else "all of it",
                    tuple(leaf.yarn for leaf in line.leaves))


def _cones_in(connection: Connection, delivery: int) -> str:
    count = connection.execute(
        select(func.count()).select_from(Cone)
        .where(Cone.delivery == delivery, Cone.struck.is_(None))).scalar_one()
    return _count(count, "cone")


def _count(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
