"""Recall: disjoint and complete, by buyer and place, and how many of each are hit."""

from fractions import Fraction

import pytest

from app.lookups.certainty import POOL, Link
from app.lookups.recall import RecallList, hit_words, recall_list
from tests.deeds import customer, put, send
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
