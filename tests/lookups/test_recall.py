"""Recall: disjoint and complete, by buyer and place, and how many of each are hit."""

from fractions import Fraction

import pytest

from app.lookups.certainty import POOL, Link, held_by
from app.lookups.destinations import destinations
from app.lookups.fills import fills_of
from app.lookups.recall import RecallList, hit_words, recall_list
from app.lookups.skeins import last_marks
from app.lookups.thread import thread
from app.lookups.walks import below
from app.store.book import Book
from app.work.holding import hold
from app.work.jars import Refill, refill, supplier_lot
from tests.deeds import customer, put, send
from tests.dyehouse import Dyehouse
from tests.makers import EACH_MG, Studio


def test_a_cone_in_a_mixed_pot_is_told_by_buyer_with_what_is_likely(studio: Studio) -> None:
    """Twelve of one pot, seven of A and five of B: a buyer of four has likely one or two of B."""
    a, b = studio.cones(2)
    pool = studio.mix(studio.wind(a, 7), studio.wind(b, 5))
    studio.dye(pool)
    skeins = studio.tag(studio.finish(pool, red=12)[0], 12)
    ada = studio.do(customer, "Ada Nygård")
    studio.do(send, skeins[:4], ada)
    studio.do(send, skeins[4:6])
    studio.do(put, skeins[6:8], "shelf", studio.pot)
    found = studio.book.ask(recall_list, "cone", b)
    first = found.rows[0]
    assert (first.name, first.count, first.hit_words) == (
        "Ada Nygård", 4, "likely 1 to 2 of the 4")
    assert first.hit.expected == Fraction(20, 12)
    assert len(first.marks) == 4
    assert adds_up(found) == (12, 12 * EACH_MG)
    assert found.accounted == 10
    assert (found.together.least, found.together.most) == (5, 5)  # type: ignore[union-attr]


def adds_up(found: RecallList) -> tuple[int, int]:
    assert sum(row.count for row in found.rows) == found.count
    assert sum(row.mg for row in found.rows) == found.mg
    return found.count, found.mg


def test_what_is_sure_what_is_partly_and_what_may_be_lie_on_one_shelf_in_rows_of_their_own(
    studio: Studio
) -> None:
    """Whoever fetches them knows by their marks which are which; the sums are the same."""
    a, b = studio.cones(2)
    _, sure = studio.tagged(b, 3)
    pool = studio.mix(studio.wind(a, 4), studio.wind(b, 4))
    studio.dye(pool)
    perhaps = studio.tag(studio.finish(pool, red=8)[0], 8)
    joined = studio.join([(a, 255_200), (b, 157_300)], "red")
    studio.dye(joined)
    partly = studio.tag(studio.finish(joined, red=1)[0], 1)
    studio.do(put, [*sure, *perhaps[:5], *partly], "shelf", studio.pot)
    found = studio.book.ask(recall_list, "cone", b)
    marks = studio.book.ask(last_marks, [*sure, *perhaps, *partly])
    rows = {(row.state, frozenset(row.marks)): row.of_it for row in found.rows}
    assert [(row.state, row.count) for row in found.rows] == [
        ("shelf", 3), ("shelf", 1), ("shelf", 5), ("table", 3)]
    assert {(state, frozenset(marks[one] for one in some)): words for state, some, words in (
        ("shelf", sure, "all 3"), ("shelf", partly, "this one, 38 % of its metres"),
        ("shelf", perhaps[:5], "likely 2 to 3 of the 5"),
        ("table", perhaps[5:], "likely 1 to 2 of the 3 (at least one: 93 %, expected 1.50)"))
    } == rows
    assert adds_up(found) == (12, 12 * EACH_MG)


def test_a_batch_reaches_every_skein_of_its_cones(studio: Studio) -> None:
    one, two = studio.cones(2)
    studio.tagged(one, 3)
    studio.wind(two, 2)
    (other,) = studio.cones(1, batch="B-9")
    studio.wind(other, 4)
    found = studio.book.ask(recall_list, "supplier_lot", 1)
    assert adds_up(found)[0] == 5
    assert {row.state for row in found.rows} == {"table", "in work"}
    assert [row.hit_words for row in found.rows] == ["all 2", "all 3"]


def test_a_makers_powder_reaches_all_lots_its_fills_dyed_as_a_hold_on_it_does(
    studio: Studio
) -> None:
    house = Dyehouse(studio)
    house.dye(house.weighed())
    studio.do(refill, 1, Refill("q", 500_000))
    after = house.dye(house.weighed())
    q = studio.do(supplier_lot, house.maker, "q")
    rows = {one: {row.yarn for row in studio.book.ask(destinations, "supplier_lot", one).rows}
            for one in (1, q)}
    assert rows[q] == set(studio.book.ask(below, "lot", after))
    found = studio.book.ask(recall_list, "supplier_lot", q)
    assert (adds_up(found)[0], [row.hit_words for row in found.rows]) == (2, ["all 2"])
    for one in (q, 1):
        studio.do(hold, "supplier_lot", one, "recalled by its maker")
        whole = studio.book.ask(thread, rows[1] | rows[q])
        assert rows[one] <= {row for row in whole.count if held_by(whole, row)}


def test_every_makers_powder_of_the_demo_is_listed_as_its_fills_are(demo_book: Book) -> None:
    powders = demo_book.ask(lambda c: c.exec_driver_sql(
        "SELECT DISTINCT supplier_lot FROM fill_part WHERE supplier_lot > 0").scalars().all())
    for powder in powders[::3]:
        listed = demo_book.ask(recall_list, "supplier_lot", powder)
        by_fill = {row.yarn for fill in demo_book.ask(fills_of, powder)
                   for row in demo_book.ask(destinations, "fill", fill).rows}
        assert {row.yarn for row in
                demo_book.ask(destinations, "supplier_lot", powder).rows} == by_fill
        assert listed.count > 0


def test_nothing_of_it_is_an_empty_list(studio: Studio) -> None:
    found = studio.book.ask(recall_list, "cone", studio.cone())
    assert (found.rows, found.count, found.together) == ((), 0, None)


@pytest.mark.parametrize(("least", "most", "expected", "of", "words"), [
    (4, 4, 4, 4, "all 4"), (1, 1, 1, 1, "this one"), (2, 2, 2, 4, "2 of the 4"),
    (0, 4, Fraction(5, 3), 4, "likely 1 to 2 of the 4"), (0, 2, 1, 2, "likely 1 of the 2"),
    (0, 1, Fraction(1, 2), 1, "perhaps this one"),
])
def test_how_many_are_hit_in_words(
    least: int, most: int, expected: Fraction, of: int, words: str
) -> None:
    link = Link(1, POOL, least, most, Fraction(expected), of, Fraction(1), "scanned")
    assert hit_words(link) == words
