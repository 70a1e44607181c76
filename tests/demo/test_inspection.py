"""The shade check of the weeks: what is planted reads as written, all else lies near."""

from random import Random

import pytest

from app.calculations.codes import Kind, numbered
from app.calculations.shade_difference import ciede2000
from app.demo.inspection import NOISE, off_by
from app.lookups.agreed import apart_by_card
from app.lookups.kit_patterns import kits_now, patterns_now
from app.lookups.lot_shade import lot_shade
from app.lookups.nearest_lots import nearest_lots
from app.lookups.reorder import Asked, reorder
from app.lookups.shade_drift import drift_of
from app.lookups.shades import newest, read_of_cone, read_of_lots
from app.lookups.things import by_code
from app.store.book import Book
from tests.calculations.shades import DRY


def lot(book: Book, code: str) -> int:
    found = book.ask(by_code, code)
    assert found is not None
    return found.id


def test_a_steady_dyers_lots_lie_0_2_to_0_6_from_the_standard() -> None:
    for lab in ((25.1, 8.0, -20.5), (74.1, -15.5, -12.8), (9.2, 2.9, -1.7)):
        for seed in range(20):
            far = ciede2000(lab, off_by(lab, Random(seed)))
            assert NOISE[0] - 0.02 <= far <= NOISE[1] + 0.02


@pytest.mark.parametrize(("one", "other", "printed"), [
    ("2606H3W", "2612F5F", "2.57"), ("2612F5F", "2613Y8T", "0.30"),
    ("2609M2M", "2610W76", "2.15"), ("2606H3W", "2615R6F", "0.10"), ("2614K14", "2614M32", "0.6")])
def test_planted_lots_are_so_far_apart(
    demo_book: Book, one: str, other: str, printed: str
) -> None:
    found = demo_book.ask(apart_by_card, [lot(demo_book, one), lot(demo_book, other)])
    assert found
    assert f"{found.decisive.ciede2000:.{len(printed) - 2}f}" == printed


def test_one_lot_has_two_looks_and_two_cones_two_ecrus(demo_book: Book) -> None:
    blue = lot(demo_book, "2610X4K")
    cards = newest(demo_book.ask(read_of_lots, [blue])[blue])
    right = cards[DRY, ""]
    (stained,) = [one for (_, zone), one in cards.items() if zone]
    assert f"{ciede2000(right.lab, stained.lab):.2f}" == "2.96"
    ecru = [demo_book.ask(read_of_cone, lot(demo_book, numbered(Kind.CONE, number).text))[0]
            for number in (52, 53)]
    assert f"{ciede2000(ecru[0].colour.lab, ecru[1].colour.lab):.2f}" == "2.34"


def test_the_weak_jars_two_lots_are_sold_together_and_not_with_the_others(
    demo_book: Book,
) -> None:
    weak = lot(demo_book, "2612F5F")
    card = newest(demo_book.ask(read_of_lots, [weak])[weak])[DRY, ""]
    with demo_book.reading() as c:
        base = c.exec_driver_sql("SELECT base FROM dye_lot WHERE id = ?", (weak,)).scalar_one()
        near = nearest_lots(c, card, base, but=(weak,))
    assert near[0].line.code == "2613Y8T"
    assert near[0].judged.shown == "looks the same"


def test_the_short_reorder_is_answered_by_the_kit_or_the_old_lot(demo_book: Book) -> None:
    found = demo_book.ask(reorder, Asked(lot=lot(demo_book, "2615R6F"), skeins=2),
                          demo_book.clock())
    assert (found.free, found.wanted) == (1, 2)
    assert any("in kit Lock-Gate Mitts, not sold: open it" in way.words for way in found.ways)
    (near,) = [way for way in found.ways if way.lot == lot(demo_book, "2606H3W")
               and way.way == "nearest lot"]
    assert near.words.startswith("26·06·H3W, Sluice Keeper’s Glove, 4 free: 0.1 ± 0.5")


def test_nine_cowls_are_possible_and_the_brown_is_short_by_three(demo_book: Book) -> None:
    (cowl,) = demo_book.ask(patterns_now)
    found = demo_book.ask(kits_now, cowl, 12)
    assert (cowl.price, found.possible, found.shortest) == (12_900, 9, ("C",))
    assert [(one.role, one.skeins) for one in found.short if one.role == "C"] == [("C", 3)]


def test_the_colourway_that_is_held_against_the_last_lot_drifts(demo_book: Book) -> None:
    cat = lot(demo_book, "2616HX8")
    found = demo_book.ask(lot_shade, cat)
    assert found.from_standard
    with demo_book.reading() as c:
        colourway, base = c.exec_driver_sql(
            "SELECT colourway, base FROM dye_lot WHERE id = ?", (cat,)).one()
        steps = drift_of(c, colourway, base)
    far = [one.from_standard.ciede2000 for one in steps if one.from_standard]
    assert max(far[:-5]) < 0.7
    assert [f"{one:.1f}" for one in far[-5:]] == ["0.5", "1.0", "1.5", "2.0", "2.5"]
    last = demo_book.ask(lot_shade, steps[-1].lot)
    assert any("It drifts" in finding for finding in last.findings)
