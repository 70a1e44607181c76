"""The pool that one skein came out of: of how many, and how many of each origin."""

from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection

from app.lookups.certainty import Link, links_of, parting
from app.lookups.origins import KINDS
from app.lookups.thread import Thing, thread


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
