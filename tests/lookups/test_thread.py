"""What lies above some yarn, read in a few statements whatever its size."""

from fractions import Fraction

from sqlalchemy import Connection, event

from app.lookups.thread import Own, Source, Thread, live_holds, thread
from app.work.holding import clear, hold, lift_hold
from app.work.mixing import recognise
from app.work.opening_stock import OldLot, open_lot
from tests.deeds import into_load
from tests.makers import Studio


def read(studio: Studio, *yarn: int) -> Thread:
    return studio.book.ask(thread, yarn)


def statements(studio: Studio, *yarn: int) -> int:
    seen: list[str] = []

    def look(connection: Connection) -> None:
        def heard(_c: object, _cursor: object, statement: str, *_rest: object) -> None:
            seen.append(statement)
        event.listen(studio.book.engine, "before_cursor_execute", heard)
        thread(connection, yarn)
        event.remove(studio.book.engine, "before_cursor_execute", heard)
    studio.book.ask(look)
    return len(seen)


def test_all_rows_above_are_read_and_none_beside(studio: Studio) -> None:
    group, other = studio.wind(studio.cone(), 4), studio.wind(studio.cone(), 4)
    left, right = studio.split(group, 1, 3)
    found = read(studio, left)
    assert dict(found.count) == {left: 1, group: 4}
    assert found.sources[left] == (Source(group, 1, 1, "counted"),)
    assert found.divided == {group}
    assert {other, right}.isdisjoint(found.count)


def test_a_row_carries_its_cone_words_lots_and_loads(studio: Studio) -> None:
    cone = studio.cone()
    group = studio.wind(cone, 4)
    lot, wash = studio.dye(group), studio.do(into_load, "wash", [group])
    assert read(studio, group).own[group] == {
        ("yarn", group): Own(Fraction(1), "scanned"), ("cone", cone): Own(Fraction(1), "scanned"),
        ("version", studio.version): Own(Fraction(1), "scanned"),
        ("supplier_lot", 1): Own(Fraction(1), "scanned"),
        ("lot", lot): Own(Fraction(1), "scanned"), ("load", wash): Own(Fraction(1), "scanned"),
        ("bath", 1): Own(Fraction(1), "scanned"), ("fill", None): Own(Fraction(1), "scanned")}


def test_the_shares_of_a_join_are_those_of_its_metres(studio: Studio) -> None:
    one, two = studio.cones(2)
    join = studio.join([(one, 255_200), (two, 157_300)])
    own = read(studio, join).own[join]
    assert own["cone", one].share + own["cone", two].share == 1
    assert own["cone", one].share == Fraction(2552, 4125)
    assert own["version", studio.version].share == 1


def test_what_begins_without_a_cone_carries_not_known(studio: Studio) -> None:
    pile = studio.do(open_lot, OldLot("OLD-77", studio.version, 1, 4), 100_000)
    own = read(studio, pile).own[pile]
    assert own["cone", None].basis == "stated"
    assert ("lot", None) not in own
    assert ("lot", 1) in own


def test_an_undone_link_does_not_count(studio: Studio) -> None:
    a, b = studio.wind(studio.cone(), 2), studio.wind(studio.cone(), 2)
    pool = studio.mix(a, b)
    studio.undo()
    assert dict(read(studio, pool).sources) == {}
    assert dict(read(studio, a).count) == {a: 2}


def test_what_was_told_apart_of_the_asked_row_is_read_and_of_another_row_is_not(
    studio: Studio,
) -> None:
    a, b = studio.wind(studio.cone(), 3), studio.wind(studio.cone(), 2)
    pool = studio.mix(a, b)
    one, rest = studio.split(pool, 1, 4)
    studio.do(recognise, one, pool, a)
    assert dict(read(studio, pool).count) == {pool: 5, a: 3, b: 2, one: 1}
    assert dict(read(studio, rest).count) == {rest: 4, pool: 5, a: 3, b: 2}
    assert read(studio, rest).off == {(pool, a): 1}


def test_the_number_of_statements_does_not_grow_with_the_yarn(studio: Studio) -> None:
    few = studio.wind(studio.cone(), 4)
    many = studio.mix(*(studio.wind(cone, 4) for cone in studio.cones(12)))
    parts = studio.split(many, *[1] * 48)
    assert statements(studio, few) == statements(studio, many) == statements(studio, *parts) == 8


def test_holds_that_stand_are_read_with_what_was_cleared_of_them(studio: Studio) -> None:
    cone, group = studio.cone(), 1
    studio.wind(cone, 3)
    lot = studio.dye(group)
    first = studio.do(hold, "cone", cone, "oil")
    second = studio.do(hold, "lot", lot, "bleeds")
    studio.do(clear, first, group, "lamp: clean")
    found = studio.book.ask(live_holds)
    assert [(one.id, one.source, one.cleared) for one in found] == [
        (first, ("cone", cone), {group}), (second, ("lot", lot), set())]
    studio.do(lift_hold, second, "fast now")
    assert [one.id for one in studio.book.ask(live_holds)] == [first]
