"""What the book answers in a history, and what must be so of the answers in every one."""

from fractions import Fraction
from typing import Any

from sqlalchemy import Connection, select

from app.lookups.certainty import held_by, tally
from app.lookups.destinations import Destinations, destinations
from app.lookups.left_to_sell import left_of
from app.lookups.present import NOT_MATCHED, Amount
from app.lookups.skeins import now_of
from app.lookups.things import Found, by_code, lot_found
from app.lookups.thread import thread
from app.lookups.trail import trail
from app.records import Cone, DyeLot, Load, Tag
from tests.makers import EACH_MG, Studio

Law = tuple[int, int, Fraction]


def said(studio: Studio, yarn: int, kind: str = "cone") -> list[tuple[int | None, str, str]]:
    """Where a row comes from: (thing, word, basis), surest first."""
    return [(link.thing, link.word, link.basis) for link in studio.origins(yarn, kind)]


def law(studio: Studio, yarn: int, cone: int) -> Law:
    """Least, most and expected of a row's members that are of the cone."""
    return next(
        ((link.least, link.most, link.expected) for link in studio.origins(yarn)
         if link.thing == cone), (0, 0, Fraction(0)))


def law_of_all(studio: Studio, skeins: list[int], cone: int) -> Law:
    """The same for several rows together."""
    got = studio.book.ask(lambda c: tally(thread(c, skeins), dict.fromkeys(skeins, 1),
                                          ("cone", cone)))
    return int(got.least), int(got.most), got.expected


def states(studio: Studio, kind: str = "", thing: int = 0) -> dict[str, int]:
    """How many skeins of one put-up are where: of everything, or below one thing."""
    present = studio.present(kind, thing)
    assert len({put_up for _, put_up in present}) <= 1
    return {state: amount.count for (state, _), amount in present.items()}


def skeins(count: int) -> Amount:
    """So many whole skeins of Tarnfield, as wound."""
    return Amount(count, count * EACH_MG)


def left(studio: Studio, lot: int) -> int:
    """How many of a lot may be sold now."""
    return studio.book.ask(left_of, [lot])[lot].count


def held(studio: Studio, rows: list[int]) -> list[int]:
    """Those of these rows that a live hold reaches."""
    return studio.book.ask(lambda c: [row for row in rows if held_by(thread(c, [row]), row)])


def where_to(studio: Studio, kind: str, thing: int) -> Destinations:
    """Everything below a thing."""
    return studio.book.ask(destinations, kind, thing)


def stops(studio: Studio, code: str | None) -> list[tuple[str, str]]:
    """The trail of a thing: (station, count)."""
    found = studio.book.ask(by_code, code or "")
    assert found is not None
    return [(stop.kind, stop.count)
            for stop in studio.book.ask(trail, found, studio.clock.now)]


def agree(studio: Studio) -> None:
    """All sums of the book, and every answer about every thing in it with every other."""
    studio.check()
    things = studio.book.ask(_things)
    for kind, thing in things:
        _adds_up_below(where_to(studio, kind, thing), kind)
    lots = [thing for kind, thing in things if kind == "lot"]
    for lot, of_lot in studio.book.ask(left_of, lots).items():
        assert 0 <= of_lot.count <= len(of_lot.skeins)
        for skein in of_lot.skeins:
            now = studio.book.ask(now_of, skein)
            assert (now.state, now.lot) == ("shelf", lot) if now else False
        assert held(studio, list(of_lot.skeins)) == []
    for found in studio.book.ask(lambda c: [lot_found(c, lot) for lot in lots] + _marked(c)):
        assert studio.book.ask(trail, found, studio.clock.now)


def _things(connection: Connection) -> list[tuple[str, int]]:
    return [(kind, row) for kind, record in (("cone", Cone), ("lot", DyeLot), ("load", Load))
            for row in connection.execute(
                select(record.id).where(record.struck.is_(None))).scalars()]  # type: ignore[attr-defined]


def _marked(connection: Connection) -> list[Found]:
    marks = connection.execute(select(Tag.mark)).scalars().all()
    return [found for mark in marks if (found := by_code(connection, mark)) is not None
            and found.kind == "skein"]


def _adds_up_below(below: Destinations, kind: str) -> None:
    once = [row for row in below.rows if not row.again]
    assert sum(amount.count for amount in below.totals.values()) == below.count
    assert all(state != NOT_MATCHED for state, _ in below.totals)
    for row in below.rows:
        link: Any = row.link
        assert 0 <= link.least <= link.expected <= link.most <= link.of == row.count
    if below.together is not None:
        assert below.together.expected == sum(row.link.expected for row in once)
        assert below.together.least >= sum(row.link.least for row in once)
        assert below.together.most <= sum(row.link.most for row in once)
