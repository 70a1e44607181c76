"""Pools: the one that a skein came out of, and whether the yarn of a thing is in none."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection

from app.lookups.certainty import PARTLY, POOL, Link, links_of, parting
from app.lookups.origins import KINDS, members_of
from app.lookups.present import leaves
from app.lookups.things import Found
from app.lookups.thread import Thing, thread
from app.lookups.walks import below


@dataclass(frozen=True, slots=True)
class Pool:
    """So many that nobody can tell apart, and what each thing above gave to them."""

    count: int
    links: Mapping[Thing, Link]

    def counted(self, kind: str, thing: int | None) -> str:
        """'7 of 12': how many of the pool come from a thing."""
        link = self.links[kind, thing]
        least = str(link.least)
        return f"{least if link.least == link.most else f'{least} to {link.most}'} of {link.of}"


def pool_above(connection: Connection, yarn: int) -> Pool:
    """The pool where the way up from this yarn parts; the yarn itself where it does not."""
    found = thread(connection, [yarn])
    pool = parting(found, yarn)
    members = {pool: found.count[pool]}
    return Pool(found.count[pool], {
        (kind, link.thing): link for kind in KINDS for link in links_of(found, members, kind)
    })


@dataclass(frozen=True, slots=True)
class Apart:
    """Skeins that are known, each for itself, to come from a thing; so many of them partly."""

    count: int
    partly: int


def told_singly(connection: Connection, found: Found, at: datetime) -> Mapping[Thing, Apart]:
    """Things above the yarn of a found thing, where each of its skeins is known to be of them.

    Left out is what any of the skeins may come from, which nobody can tell.
    """
    members = members_of(connection, found, at)
    ids = {row for yarn in members for row in below(connection, "yarn", yarn)}
    rows = {leaf.yarn: leaf.count for leaf in leaves(connection, ids)}
    above = thread(connection, rows)
    sure, partly, in_doubt = Counter[Thing](), Counter[Thing](), set[Thing]()
    for yarn, count in rows.items():
        for kind in KINDS:
            for link in links_of(above, {yarn: count}, kind):
                thing = (kind, link.thing)
                sure[thing] += count
                partly[thing] += count if link.word == PARTLY else 0
                in_doubt |= {thing} if link.word == POOL else set()
    return {thing: Apart(count, partly[thing])
            for thing, count in sure.items() if thing not in in_doubt}
