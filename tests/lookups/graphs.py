"""Branching trails read shortly: stations by kind, name, count and how sure."""

from collections import Counter

from app.lookups.graph import Graph, Knot, graph
from app.lookups.graph_web import Centre
from tests.deeds import into_load, put
from tests.makers import Studio


def trail_of(
    studio: Studio, kind: str, *things: int, opened: frozenset[str] = frozenset(),
    short: bool = False,
) -> Graph:
    """The branching trail round these things."""
    return studio.book.ask(graph, Centre(kind, things), None, opened, short=short)


def said(knot: Knot) -> tuple[str, str, int, str]:
    """(kind, side, how many, how sure)."""
    return knot.named.kind, knot.side, knot.count, knot.sure.word


def stations(found: Graph) -> set[tuple[str, str, int, str]]:
    """Every station of it."""
    return {said(knot) for knot in found.knots}


def of_kind(found: Graph, kind: str) -> Knot:
    """The one station of a kind."""
    (knot,) = [one for one in found.knots if one.named.kind == kind]
    return knot


def sure(found: Graph, start: str, end: str) -> str:
    """How sure the yarn between two stations is, by their keys."""
    return next(one.sure.word for one in found.strands if (one.start, one.end) == (start, end))


def ends(found: Graph) -> Counter[tuple[str, str, int]]:
    """What there is at the right end: in what state, how put up, how many."""
    starts = {one.start for one in found.strands}
    return Counter((knot.named.kind, knot.put_up, knot.count) for knot in found.knots
                   if knot.side == "to" and knot.key not in starts)


def mixed_pot(studio: Studio) -> tuple[list[int], int, list[int]]:
    """7 skeins of one cone and 5 of another mixed, dyed, washed and tagged; 4 lie elsewhere.

    The cones, the lot, and the skeins.
    """
    cones = studio.cones(2)
    pool = studio.mix(studio.wind(cones[0], 7), studio.wind(cones[1], 5))
    lot = studio.dye(pool)
    studio.do(into_load, "wash", [pool])
    (pile,) = studio.finish(pool, red=12)
    skeins = studio.tag(pile, 12)
    studio.do(put, skeins[:4], "given")
    return cones, lot, skeins
