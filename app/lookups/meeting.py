"""What is about to meet in one bath or heap: what looks wrong, and how it can be told afterwards.

Only what a person can still change is warned of; what goes into the bath all the same is recorded.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.lookups.bundles import IN_POT, LIFTED, PILED, BundleFacts, bundle_facts
from app.lookups.certainty import Link, links_of
from app.lookups.discs import disc_of
from app.lookups.now import NOW
from app.lookups.present import leaves
from app.lookups.thread import thread
from app.lookups.walks import below
from app.records import Bath, Cone, DyeLot, InBath, Yarn
from app.store.dialect import among, listed

_WORDS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}


@dataclass(frozen=True, slots=True)
class Heap:
    """Yarn that met: its rows with their counts, and how a skein of it is told."""

    rows: tuple[int, ...]
    counts: tuple[int, ...]
    told: str
    """'known: all of C·0114·F', or 'one of two, 7 + 5'."""
    discs: tuple[str, ...]
    bases: int


def heap(connection: Connection, rows: Sequence[int]) -> Heap:
    """Rows pushed together: how each of their skeins will be told."""
    counts = dict(connection.execute(
        select(Yarn.id, Yarn.count).where(among(Yarn.id, "ids")), {"ids": listed(rows)}).all())
    cones = links_of(thread(connection, rows), counts, "cone")
    discs = dict.fromkeys(number for row in rows if (number := disc_of(connection, row)))
    bases = connection.execute(
        select(Yarn.base).where(among(Yarn.id, "ids")).distinct(), {"ids": listed(rows)}).all()
    return Heap(tuple(rows), tuple(counts[row] for row in rows), _told(connection, cones),
                tuple(discs), len(bases))


def rows_in_bath(connection: Connection, bath: int) -> tuple[int, ...]:
    """The rows that lie in a bath now: those that went in, or what they became in it."""
    went_in = connection.execute(
        select(InBath.yarn).join(DyeLot, DyeLot.id == InBath.lot)
        .where(DyeLot.bath == bath, InBath.struck.is_(None))
    ).scalars().all()
    ids = {row for yarn in went_in for row in below(connection, "yarn", yarn)}
    return tuple(leaf.yarn for leaf in leaves(connection, ids) if leaf.kind == "group")


def before_bath(
    connection: Connection, discs: Sequence[int], pot: int | None, at: datetime = NOW
) -> tuple[str, ...]:
    """What looks wrong about these cords in this pot, while there is time to take one out."""
    found = (bundle_facts(connection, disc, at) for disc in discs)
    cords = [cord for cord in found if cord is not None]
    return (
        *_full(connection, pot), *_same_ties(connection, cords), *_bases(cords),
        *(words for cord in cords for words in _of_cord(cord)),
    )


def _full(connection: Connection, pot: int | None) -> Iterator[str]:
    codes = connection.execute(
        select(DyeLot.code).join(Bath, Bath.id == DyeLot.bath)
        .where(Bath.plate == pot, Bath.lifted.is_(None), Bath.struck.is_(None))
    ).scalars().all() if pot is not None else ()
    if codes:
        lots = listing(shown(code or "a lot without a code yet") for code in codes)
        were, are = ("was", "is it") if len(codes) == 1 else ("were", "are they")
        yield f"{lots} {were} not lifted out of this pot: which bucket {are} in?"


def _same_ties(connection: Connection, cords: Iterable[BundleFacts]) -> Iterator[str]:
    rows = [row for cord in cords for row in cord.rows]
    alike: dict[tuple[int, str], dict[int, int]] = defaultdict(dict)
    for row, base, tie, count in connection.execute(
        select(Yarn.id, Yarn.base, Yarn.tie, Yarn.count).where(among(Yarn.id, "ids")),
        {"ids": listed(rows)},
    ):
        if tie is not None:
            alike[base, tie][row] = count
    found = thread(connection, rows)
    for (_, tie), members in alike.items():
        origins = {frozenset(link.thing for link in links_of(found, {row: count}, "cone"))
                   for row, count in members.items()}
        cones = links_of(found, members, "cone")
        if len(origins) > 1:
            yield (f"{tie.capitalize()} ties of {_number(len(cones))} cones, {_counts(cones)}: "
                   "keep their cords closed, else each skein is one of "
                   f"{_number(len(cones))}.")


def _bases(cords: Sequence[BundleFacts]) -> Iterator[str]:
    bases = dict.fromkeys(cord.base for cord in cords)
    if len(bases) > 1:
        yield (f"{listing(bases)} in one bath: companion lots, each with its own code.")


def _of_cord(cord: BundleFacts) -> Iterator[str]:
    if cord.held:
        yield f"HOLD lies on disc {cord.number}: in the bath it goes on, marked."
    if cord.stage in (IN_POT, LIFTED):
        yield f"Disc {cord.number} is {cord.lot} already: in again makes another lot, an overdye."
    if cord.stage == PILED:
        yield f"Disc {cord.number} is the card of a pile that was counted: is it the right disc?"


def _told(connection: Connection, cones: Sequence[Link]) -> str:
    if len(cones) == 1:
        code = connection.execute(
            select(Cone.code).where(Cone.id == cones[0].thing)).scalar()
        return f"known: all of {shown(code)}" if code else "of no known cone"
    return f"one of {_number(len(cones))}, {_counts(cones)}"


def _counts(cones: Iterable[Link]) -> str:
    return " + ".join(
        str(link.least) if link.least == link.most else f"{link.least} to {link.most}"
        for link in cones
    )


def _number(count: int) -> str:
    return _WORDS.get(count, str(count))
