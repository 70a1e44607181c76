"""A colourway's lots in groups that may be sold together, and its drift."""

from app.lookups.shade_sorting import drift_of, shade_sorting
from app.work.selling import sell
from tests.calculations.shades import SHOP, TEAL
from tests.lookups.cards import dyed, read_lot, read_standard
from tests.lookups.shop import shelved
from tests.makers import Studio


def test_eight_teal_lots_give_four_groups_with_what_is_free_of_each(studio: Studio) -> None:
    found = shelved(studio, *range(1, 9))
    lots = dict(zip("PQRSTUVW", (lot for lot, _ in found), strict=True))
    for name, lot in lots.items():
        read_lot(studio, lot, TEAL[name].lab)
    sorting = studio.book.ask(shade_sorting, 1, 1, 1.0)
    names = {lot: name for name, lot in lots.items()}
    assert [("".join(sorted(names[line.lot] for line in group.lots)), group.free)
            for group in sorting.groups] == [("TV", 12), ("PQU", 9), ("W", 8), ("RS", 7)]
    assert sorting.fewest
    assert all(group.worst <= 1.0 for group in sorting.groups)
    studio.do(sell, found[7][1])
    read_lot(studio, lots["V"], TEAL["V"].lab, SHOP)
    again = studio.book.ask(shade_sorting, 1, 1, 1.0)
    assert sum(len(group.lots) for group in again.groups) == 7


def test_a_lot_that_was_not_read_is_named_and_not_sorted(studio: Studio) -> None:
    (one, _), (other, _) = shelved(studio, 1, 1)
    nothing = studio.book.ask(shade_sorting, 1, 1)
    assert (nothing.viewing, nothing.groups, len(nothing.not_read)) == (None, (), 2)
    read_lot(studio, one, TEAL["P"].lab)
    sorting = studio.book.ask(shade_sorting, 1, 1)
    assert [line.lot for line in sorting.not_read] == [other]


def test_drift_is_told_lot_by_lot_from_the_standard_and_from_the_last(studio: Studio) -> None:
    assert studio.book.ask(drift_of, 1, 1) == ()
    read_standard(studio, TEAL["P"].lab)
    for name in "PQRST":
        read_lot(studio, dyed(studio), TEAL[name].lab)
    steps = studio.book.ask(drift_of, 1, 1)
    assert [f"{one.from_standard.ciede2000:.1f}" for one in steps if one.from_standard] == [
        "0.0", "0.5", "1.0", "1.7", "2.4"]
    assert [one.from_last and f"{one.from_last.ciede2000:.2f}" for one in steps] == [
        None, "0.47", "0.57", "0.66", "0.70"]
