"""Answers stay quick as the book grows: each question reads a few rows by an index."""

import re
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from sqlalchemy import Connection, Select, event, func, select, text

from app.lookups.agreed import agreed_lines, offers_of
from app.lookups.became import became
from app.lookups.bleeding import bled
from app.lookups.bought import bought_by, sold_without_a_name
from app.lookups.bundles import bundles_now
from app.lookups.certainty import held_by
from app.lookups.cones import cone_facts
from app.lookups.counter import at_counter
from app.lookups.customer_data import customer_data
from app.lookups.customers import order_numbered
from app.lookups.destinations import destinations
from app.lookups.finished import scanned_tag
from app.lookups.finishing import expected_by_tie
from app.lookups.graph import graph
from app.lookups.graph_web import Centre
from app.lookups.instead import instead_of
from app.lookups.jar_gaps import jars_that_were_swapped
from app.lookups.kit_patterns import kits_now, patterns_now
from app.lookups.kits import bag_scanned
from app.lookups.left_to_sell import left_to_sell, wanting
from app.lookups.load_warnings import before_load
from app.lookups.loads import wet_work
from app.lookups.lot_lines import lot_lines, lots_named, sisters_left
from app.lookups.lot_shade import lot_shade
from app.lookups.nearest_lots import nearest_lots
from app.lookups.origins import origins
from app.lookups.pot_steps import pots_at_work
from app.lookups.present import _LEAVES, has_a_place, leaves
from app.lookups.rails import dry_at
from app.lookups.redyes_asked import redyes_asked
from app.lookups.reorder import Asked, reorder
from app.lookups.rinsing import rinsing
from app.lookups.shade_drift import drift_of
from app.lookups.shade_map import shade_map
from app.lookups.shelves import on_shelf
from app.lookups.skeins import named_by_tag
from app.lookups.tag_counts import lot_tag_counts
from app.lookups.tagging import marks_for, pile_facts, piles_waiting
from app.lookups.things import by_beginning, by_code, lot_found, of_lot
from app.lookups.thread import thread
from app.lookups.ties import open_ties, tie_of
from app.lookups.to_inspect import lot_before, to_inspect
from app.lookups.together import in_one_water
from app.lookups.told_faults import not_seen_good
from app.lookups.trail import trail
from app.lookups.trays import trays_now
from app.lookups.two_lots import unsettled
from app.lookups.walks import ABOVE, BELOW
from app.records import Tag, Yarn
from app.store.book import Book
from app.store.dialect import listed
from app.store.journal import verify
from app.work.kit_patterns import PatternIn, PlaceIn, write_pattern
from app.work.selling import know_customer
from tests.calculations.shades import TEAL
from tests.large_book import analysed, copy_of
from tests.lookups.cards import read_lot, read_standard
from tests.makers import Clock, Studio
from tests.store.test_dialect import KEPT

SKEINS = 3_120
BIG = {"yarn", "part", "draw", "in_bath", "in_load", "tag", "tag_on", "whereabouts", "deed",
       "touched", "sighting", "report", "cause"}


@pytest.fixture(scope="module")
def large(studio_file: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Studio]:
    """Three thousand skeins and more, once for all these questions."""
    book = Book(copy_of(studio_file, tmp_path_factory.mktemp("large")), Clock())
    yield with_cards(analysed(Studio(book, furnished=True), SKEINS))
    book.close()


@pytest.fixture(scope="module")
def small(studio_file: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Studio]:
    """Two cones, three lots, twenty-six skeins."""
    book = Book(copy_of(studio_file, tmp_path_factory.mktemp("small")), Clock())
    yield with_cards(analysed(Studio(book, furnished=True), 26))
    book.close()


def with_cards(studio: Studio) -> Studio:
    """Two lots were read, and the standard; a kit takes the colourway; one customer is known."""
    for lot, name in ((1, "P"), (2, "Q")):
        read_lot(studio, lot, TEAL[name].lab)
    read_standard(studio, TEAL["P"].lab)
    studio.do(write_pattern, PatternIn("cowl", (PlaceIn("A", 2, 1, 1, stand_ins=(1,)),)))
    studio.do(know_customer, "Ada Nygård")
    return studio


def plan(connection: Connection, statement: str, values: Any) -> list[str]:
    rows = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", values)
    return [str(row[3]) for row in rows]


def slow(steps: list[str]) -> list[str]:
    """Steps that grow with the book."""
    return [
        step for step in steps
        if "BLOOM" in step or "AUTOMATIC" in step
        or ((scanned := re.match(r"SCAN (\w+)", step)) and scanned[1] in BIG)
    ]


def kept_plan(large: Studio, question: Select[Any]) -> list[str]:
    compiled = question.compile(large.book.engine)
    values = tuple(listed(range(1, 40)) if name == "ids" else 1
                   for name in compiled.positiontup or ())
    return large.book.ask(lambda c: plan(c, str(compiled), values))


def test_the_book_is_large_and_its_statistics_are_there(large: Studio) -> None:
    rows = large.book.ask(lambda c: c.execute(text(
        "SELECT tbl, stat FROM sqlite_stat1 WHERE idx = 'ix_part_up'")).all())
    assert int(rows[0].stat.split()[0]) > SKEINS
    assert large.book.ask(verify).rows > 5 * SKEINS


READY = {name: KEPT[name] for name in KEPT if name.split(".")[0] in ("walks", "thread", "present")}


@pytest.mark.parametrize("name", READY)
def test_nothing_big_is_read_through_for(large: Studio, name: str) -> None:
    assert slow(kept_plan(large, READY[name])) == []


def test_the_test_itself_sees_a_table_that_is_read_through(large: Studio) -> None:
    assert slow(kept_plan(large, select(Tag.id).where(Tag.words == "x"))) == ["SCAN tag"]
    filtered = """WITH RECURSIVE up(node) AS (SELECT ? UNION SELECT p.parent FROM up
        JOIN part p ON p.child = up.node AND p.struck IS NULL) SELECT node FROM up"""
    assert len(READY) > 12
    assert ABOVE in READY.values()
    assert set(BELOW.values()) <= set(READY.values())
    assert _LEAVES in READY.values()
    assert large.book.ask(lambda c: c.exec_driver_sql(filtered, (1,)).all())


Question = Callable[[Connection, Studio, dict[str, int]], Any]

QUESTIONS: dict[str, Question] = {
    "where a skein comes from": lambda c, s, row: origins(c, {row["skein"]: 1}),
    "where a cone went": lambda c, s, row: destinations(c, "cone", 2),
    "where a lot went": lambda c, s, row: destinations(c, "lot", 1),
    "what is left of a lot": lambda c, s, row: leaves(c, range(1, 20)),
    "a thing by its code": lambda c, s, row: by_code(c, "L1"),
    "a thing by the beginning": lambda c, s, row: by_beginning(c, "L1-1234"),
    "the tags of a lot": lambda c, s, row: of_lot(c, 1),
    "the branching trail of a cone": lambda c, s, row: graph(c, Centre("cone", (2,))),
    "the branching trail of a skein": lambda c, s, row: graph(c, Centre("yarn", (row["skein"],))),
    "the trail of a lot": lambda c, s, row: trail(c, lot_found(c, 1), s.clock.now),
    "what a pile needs": lambda c, s, row: pile_facts(c, row["pile"]),
    "new marks": lambda c, s, row: marks_for(c, "L1", 3, s.random),
    "a cone": lambda c, s, row: cone_facts(c, 2),
    "what to count": lambda c, s, row: expected_by_tie(c, [row["group"]]),
    "what was told of a skein": lambda c, s, row: not_seen_good(c, [row["skein"]]),
    "a hold above a skein": lambda c, s, row: held_by(thread(c, [row["skein"]]), row["skein"]),
    "the tie of a cone": lambda c, s, row: tie_of(c, 2, 1),
    "ties in work": lambda c, s, row: open_ties(c, 1, 0),
    "piles that wait": lambda c, s, row: piles_waiting(c),
    "a lot at the counter": lambda c, s, row: at_counter(c, 1),
    "lots of a name, with what is left": lambda c, s, row: lot_lines(c, lots_named(c, "glove")),
    "sister lots with some left": lambda c, s, row: sisters_left(c, 1),
    "what a customer bought": lambda c, s, row: bought_by(c, 1),
    "what was sold without a name": lambda c, s, row: sold_without_a_name(
        c, s.clock.now, s.clock.now, "glove"),
    "an order by its number": lambda c, s, row: order_numbered(c, "1187"),
    "what lies on a shelf": lambda c, s, row: on_shelf(c, 1),
    "the wet work": lambda c, s, row: wet_work(c, s.clock.now),
    "what looks wrong in a load": lambda c, s, row: before_load(
        c, [row["group"]], "wash", s.clock.now),
    "what skeins became": lambda c, s, row: became(c, range(1, 9)),
    "a skein in hand": lambda c, s, row: scanned_tag(c, of_lot(c, 1)[0].code),
    "what is left to sell": lambda c, s, row: left_to_sell(c, 1, "skein"),
    "who was promised some": lambda c, s, row: wanting(c, 1),
    "what tags say": lambda c, s, row: named_by_tag(c, range(1, 40)),
    "a place for a find": lambda c, s, row: has_a_place(c, row["skein"]),
    "cords with discs": lambda c, s, row: bundles_now(c, s.clock.now),
    "how a lot looks": lambda c, s, row: lot_shade(c, 2),
    "the lots nearest to a colour": lambda c, s, row: nearest_lots(c, TEAL["P"], 1),
    "the drift of a colourway": lambda c, s, row: drift_of(c, 1, 1),
    "a colourway's lots as a map": lambda c, s, row: shade_map(c, 2),
    "lots that wait for a verdict": lambda c, s, row: to_inspect(c),
    "the lot before a lot": lambda c, s, row: lot_before(c, 2),
    "what to offer of a lot": lambda c, s, row: reorder(
        c, Asked(lot=2, skeins=99), s.clock.now),
    "how many kits": lambda c, s, row: kits_now(c, patterns_now(c)[0], 12),
    "how a line was settled": lambda c, s, row: agreed_lines(c, [1]),
    "what was not settled of a line": lambda c, s, row: unsettled(c, [1]),
    "what may go in place of a held lot": lambda c, s, row: instead_of(c, 2, 1, "skein"),
    "a bag that was scanned": lambda c, s, row: bag_scanned(c, "N001M"),
    "what is to be dyed for customers": lambda c, s, row: redyes_asked(c),
    "what was offered for a lot": lambda c, s, row: offers_of(c, 1),
    "what is kept of a customer": lambda c, s, row: customer_data(c, 1),
    "the trays": lambda c, s, row: trays_now(c),
    "the pots at their steps": lambda c, s, row: pots_at_work(c),
    "jars that were swapped": lambda c, s, row: jars_that_were_swapped(c),
    "what is not to be in one water": lambda c, s, row: in_one_water(
        c, [row["group"]], "wash", s.clock.now),
    "how a lot bled": lambda c, s, row: bled(c, [1, 2], s.clock.now),
    "when a cord is dry": lambda c, s, row: dry_at(c, [row["group"]], s.clock.now),
    "the rinses of a load": lambda c, s, row: rinsing(c, 1),
    "the tags of a lot, counted": lambda c, s, row: lot_tag_counts(c, 1),
}


def newest(studio: Studio) -> dict[str, int]:
    """The last row of each kind of yarn."""
    question = select(Yarn.kind, func.max(Yarn.id)).group_by(Yarn.kind)
    return dict(studio.book.ask(lambda c: c.execute(question).all()))


def asked(book: Book, question: Callable[[Connection], Any]) -> list[tuple[str, Any]]:
    seen: list[tuple[str, Any]] = []

    def heard(_c: object, _cursor: object, statement: str, values: Any, *_rest: object) -> None:
        seen.append((statement, values))

    def look(connection: Connection) -> None:
        event.listen(book.engine, "before_cursor_execute", heard)
        question(connection)
        event.remove(book.engine, "before_cursor_execute", heard)
    book.ask(look)
    return seen


def answered(studio: Studio, name: str) -> list[tuple[str, Any]]:
    """The statements that this answer takes."""
    rows = newest(studio)
    return asked(studio.book, lambda c: QUESTIONS[name](c, studio, rows))


@pytest.mark.parametrize("name", QUESTIONS)
def test_no_table_is_read_through_to_answer(large: Studio, name: str) -> None:
    steps = [step for statement, values in answered(large, name)
             for step in large.book.ask(lambda c, s=statement, v=values: plan(c, s, v))]
    assert slow(steps) == []


@pytest.mark.parametrize("name", QUESTIONS)
def test_a_hundred_times_the_skeins_take_no_statement_more(
    large: Studio, small: Studio, name: str
) -> None:
    assert len(answered(small, name)) == len(answered(large, name))
