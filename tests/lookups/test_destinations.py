"""Where to: all that may come of a thing, and the numbers add up."""

from fractions import Fraction

from app.lookups.destinations import Destinations, destinations
from app.lookups.present import Amount
from app.work.holding import hold
from app.work.matching import find, is_one_of
from tests.deeds import customer, into_load, send
from tests.makers import EACH_MG, Studio


def mixed_lot(studio: Studio) -> tuple[int, int, int, list[int]]:
    """7 skeins of cone 1 and 5 of cone 2 in one lot, tagged; 4 of them are sold."""
    one, two = studio.cones(2)
    pool = studio.mix(studio.wind(one, 7), studio.wind(two, 5))
    lot = studio.dye(pool)
    skeins = studio.tag(studio.finish(pool, red=12)[0], 12)
    studio.do(send, skeins[:3], studio.do(customer, "Ada Nygård"))
    studio.do(send, skeins[3:4])
    return one, two, lot, skeins


def to(studio: Studio, kind: str, thing: int) -> Destinations:
    return studio.book.ask(destinations, kind, thing)


def test_a_cone_in_a_mixed_pot_leads_to_all_twelve_and_says_how_many_are_its(
    studio: Studio,
) -> None:
    _, two, _, _ = mixed_lot(studio)
    found = to(studio, "cone", two)
    assert found.count == 12
    assert found.together is not None
    assert (found.together.least, found.together.most, found.together.expected) == (5, 5, 5)
    assert {row.link.expected for row in found.rows} == {Fraction(5, 12)}
    assert found.totals == {
        ("sent, buyer known", "skein"): Amount(3, 3 * EACH_MG),
        ("sent, buyer not known", "skein"): Amount(1, EACH_MG),
        ("table", "skein"): Amount(8, 8 * EACH_MG)}


def test_a_lot_a_load_and_a_row_lead_down_too(studio: Studio) -> None:
    _, _, lot, skeins = mixed_lot(studio)
    wash = studio.do(into_load, "wash", [skeins[4]])
    assert to(studio, "lot", lot).count == 12
    assert [row.yarn for row in to(studio, "load", wash).rows] == [skeins[4]]
    assert [row.yarn for row in to(studio, "yarn", skeins[0]).rows] == [skeins[0]]


def test_each_destination_shows_its_mark_state_and_certainty(studio: Studio) -> None:
    _, skeins = studio.tagged(studio.cone(), 2)
    (first, second) = to(studio, "cone", 1).rows
    assert first.mark is not None
    assert first.mark.startswith("26·15·")
    assert (first.yarn, first.state, first.link.word, first.held) == (
        skeins[0], "table", "known", False)
    assert second.mark != first.mark


def test_what_was_not_tagged_has_no_mark_and_is_there_all_the_same(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 3)
    (row,) = to(studio, "cone", cone).rows
    assert (row.mark, row.state, row.count) == (None, "in work", 3)


def test_a_hold_shows_on_all_it_reaches(studio: Studio) -> None:
    _, two, lot, _ = mixed_lot(studio)
    studio.do(hold, "cone", two, "yellow ecru")
    assert all(row.held for row in to(studio, "lot", lot).rows)


def test_what_was_told_not_to_be_of_it_is_left_out(studio: Studio) -> None:
    one, two = studio.cones(2)
    pool = studio.mix(studio.wind(one, 7, "red"), studio.wind(two, 5, "blue"))
    studio.finish(pool, red=7, blue=4)
    found = to(studio, "cone", two)
    assert [(row.state, row.count, row.link.word) for row in found.rows] == [
        ("missing at a count", 1, "known"), ("piled", 4, "known")]


def test_masses_and_counts_of_all_cones_of_a_lot_add_up_to_the_lot(studio: Studio) -> None:
    one, two, lot, _ = mixed_lot(studio)
    whole = to(studio, "lot", lot)
    parts = [to(studio, "cone", cone).together for cone in (one, two)]
    assert sum(part.expected for part in parts if part) == whole.count == 12
    assert sum(row.mg for row in whole.rows) == 12 * EACH_MG


def test_nothing_comes_of_a_cone_that_was_not_wound(studio: Studio) -> None:
    found = to(studio, "cone", studio.cone())
    assert (found.rows, dict(found.totals), found.together, found.count) == ((), {}, None, 0)


def test_an_undone_winding_leads_nowhere(studio: Studio) -> None:
    cone = studio.cone()
    studio.wind(cone, 3)
    studio.undo()
    assert to(studio, "cone", cone).rows == ()


def test_a_find_that_is_one_of_the_sold_is_counted_with_it_once(studio: Studio) -> None:
    cone = studio.cone()
    _, skeins = studio.tagged(cone, 5)
    order = studio.do(send, skeins[:2])
    found = studio.do(find, 1, 97_000)
    studio.do(is_one_of, found, skeins[:2])
    below = studio.book.ask(destinations, "cone", cone)
    assert [row.yarn for row in below.rows if row.again] == [found]
    assert below.together is not None
    assert (order, below.count, below.together.of) == (1, 5, 5)
    assert sum(amount.count for amount in below.totals.values()) == 5
