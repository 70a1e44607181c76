"""The nearest lots that have some left, nearest first."""

from app.lookups.nearest_lots import nearest_lots
from app.work.holding import hold
from app.work.selling import sell
from tests.calculations.shades import SHOP, TEAL, colour
from tests.lookups.cards import read_lot
from tests.lookups.shop import shelved
from tests.makers import Studio

P = TEAL["P"]


def test_lots_with_some_left_come_nearest_first_each_with_its_number(studio: Studio) -> None:
    found = shelved(studio, 2, 3, 4, 1)
    for (lot, _), name in zip(found, "TQPV", strict=True):
        read_lot(studio, lot, TEAL[name].lab)
    t, q, p, v = (lot for lot, _ in found)
    near = studio.book.ask(nearest_lots, P, 1, but=(p,))
    assert [(one.line.lot, one.line.left.count) for one in near] == [(q, 3), (t, 2), (v, 1)]
    assert str(near[0].difference) == "0.5 ± 0.5"
    assert near[0].judged.at_worst == "alternate two rows for 6–8 cm"
    assert [one.line.lot for one in studio.book.ask(nearest_lots, P, 1, within=1.0)] == [p, q]
    assert [one.line.lot for one in studio.book.ask(nearest_lots, P, 1, most=1)] == [p]


def test_what_is_sold_held_or_looked_at_otherwise_is_passed_over(studio: Studio) -> None:
    (sold, skeins), (held, _), (shop, _), (kept, _) = shelved(studio, 1, 1, 1, 1)
    for lot in (sold, held, kept):
        read_lot(studio, lot, P.lab)
    read_lot(studio, shop, P.lab, SHOP)
    studio.do(sell, skeins)
    studio.do(hold, "lot", held, "stain")
    assert [one.line.lot for one in studio.book.ask(nearest_lots, P, 1)] == [kept]
    assert studio.book.ask(nearest_lots, P, 2) == ()


def test_a_lots_newest_card_counts(studio: Studio) -> None:
    ((lot, _),) = shelved(studio, 1)
    read_lot(studio, lot, P.lab)
    read_lot(studio, lot, TEAL["V"].lab)
    (near,) = studio.book.ask(nearest_lots, colour(*TEAL["V"].lab), 1)
    assert near.difference.ciede2000 == 0
