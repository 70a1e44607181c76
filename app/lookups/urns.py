"""Pools whose members nobody can tell apart, with exact counts of what went in where there are."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from app.lookups.certainty import left_in_urn, of_all_in
from app.lookups.thread import Thing, Thread


@dataclass(frozen=True, slots=True)
class Urn:
    """The members of a pool that were not told apart, and how many of them carry each thing.

    A thing that all or none carry, or whose count is not exact, is not listed.
    """

    pool: int
    size: int
    given: Mapping[Thing, int]


def urn(thread: Thread, pool: int, things: Iterable[Thing]) -> Urn:
    """What is left in a pool, as an urn."""
    size = sum(left_in_urn(thread, pool, source) for source in thread.sources[pool])
    given = {}
    for thing in things:
        got = of_all_in(thread, pool, size, thing)
        if got.least == got.most == got.metres and 0 < got.least < size:
            given[thing] = int(got.least)
    return Urn(pool, size, given)
