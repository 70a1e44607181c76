"""Jars: a refill is a new fill with what was left; its strength is asked again."""

from datetime import timedelta
from fractions import Fraction

import pytest
from sqlalchemy import select

from app.lookups.fills import shares_of
from app.lookups.jars import jar_now, jars_now
from app.problems import NotFound, Refused
from app.records import Fill, FillPart, SupplierLot
from app.work.jars import (
    JarIn,
    NewJar,
    Refill,
    open_jar,
    open_new_jar,
    refill,
    say_strength,
    set_reorder,
    supplier_lot,
    weigh_jar,
)
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.fixture
def house(studio: Studio) -> Dyehouse:
    """Four jars of 500 g."""
    return Dyehouse(studio)


def test_a_jar_is_opened_with_what_is_in_it(studio: Studio) -> None:
    studio.cone()
    lots = [studio.do(supplier_lot, 1, said) for said in ("p", "q", "p")]
    assert lots[0] == lots[2] != lots[1]
    done = studio.done(open_jar, JarIn(1, "B1 turquoise", ((lots[0], 140_000), (lots[1], 500_000)),
                                       780))
    assert done.said == "opened jar 1, B1 turquoise: 640 g"
    fill = studio.book.ask(lambda c: c.execute(select(Fill)).one())
    assert (fill.number, fill.mg, fill.strength_permille) == (1, 640_000, 780)
    parts = studio.book.ask(lambda c: c.execute(select(FillPart.mg).order_by(FillPart.id)).all())
    assert [mg for (mg,) in parts] == [140_000, 500_000]
    with pytest.raises(Refused, match="There is a jar 1 already"):
        studio.do(open_jar, JarIn(1, "N1", ((lots[0], 1_000),)))
    with pytest.raises(Refused, match="400 % of the standard is no strength"):
        studio.do(open_jar, JarIn(2, "N1", ((lots[0], 1_000),), 4000))


@pytest.mark.parametrize("parts", [(), ((1, 0),), ((1, -5),)])
def test_an_empty_jar_is_not_opened(studio: Studio, parts: tuple[tuple[int, int], ...]) -> None:
    with pytest.raises(Refused, match="A jar is opened with what is in it"):
        studio.do(open_jar, JarIn(2, "N1", parts))


def test_a_batch_that_was_not_stated_is_a_batch_of_its_own(studio: Studio) -> None:
    studio.cone()
    unsaid = [studio.do(supplier_lot, 1, None) for _ in range(2)]
    assert unsaid[0] == unsaid[1]
    assert studio.book.ask(lambda c: c.execute(
        select(SupplierLot.said).where(SupplierLot.id == unsaid[0])).scalar()) is None


def test_140_g_old_and_500_g_new_are_22_and_78_per_cent(house: Dyehouse) -> None:
    studio = house.studio
    weighing = house.begin()
    house.take(weighing, house.fills[1], 360_000)
    done = studio.done(refill, 1, Refill("q", 500_000))
    assert done.said == "refilled jar 1, B1 turquoise: fill 2, 140 g left and 500 g new"
    assert done.findings == (
        "The strength of fill 2 is not known: weigh it out as it is, or dye a sample against the "
        "standard and say its strength.",)
    now = house.jar(1)
    assert (now.number, now.filled_mg, now.left_mg) == (2, 640_000, 640_000)
    assert now.strength_permille is None
    assert [(part.said, round(part.share * 100)) for part in now.parts] == [("p", 22), ("q", 78)]
    assert sum(part.share for part in now.parts) == 1
    studio.do(say_strength, 1, 960)
    assert house.jar(1).strength_permille == 960
    studio.undo()
    assert house.jar(1).strength_permille is None


def test_a_refill_taken_back_leaves_the_old_fill_and_its_number_unused(house: Dyehouse) -> None:
    house.studio.do(refill, 1, Refill("q", 500_000))
    house.studio.undo()
    assert (house.jar(1).fill, house.jar(1).left_mg) == (house.fills[1], 500_000)
    house.studio.do(refill, 1, Refill("q", 500_000))
    assert house.jar(1).number == 3
    house.studio.check()


def test_a_rest_that_was_weighed_counts_and_its_gap_is_said(house: Dyehouse) -> None:
    studio = house.studio
    done = studio.done(refill, 1, Refill("q", 500_000, left_mg=492_300, strength_permille=1000))
    assert done.findings == (
        "Jar 1 weighs 492.3 g, 500 g by its lines: 7.7 g less. Another jar that is off the other "
        "way by as much was scanned in its place.",)
    assert house.jar(1).filled_mg == 992_300
    assert [part.share for part in house.jar(1).parts] == [
        Fraction(4923, 9923), Fraction(5000, 9923)]


def test_nothing_left_by_the_book_is_said_and_the_new_lot_stands_alone(house: Dyehouse) -> None:
    house.take(house.begin(), house.fills[1], 500_000)
    done = house.studio.done(refill, 1, Refill("q", 500_000))
    assert "By its lines nothing was left in jar 1" in done.findings[0]
    assert [part.said for part in house.jar(1).parts] == ["q"]


def test_a_mixture_keeps_until_the_earlier_day(house: Dyehouse) -> None:
    now = house.studio.clock.now
    house.studio.do(refill, 1, Refill(None, 1_000, expires=now + timedelta(days=30)))
    house.studio.do(refill, 1, Refill("r", 1_000, expires=now + timedelta(days=300)))
    assert house.jar(1).expires == now + timedelta(days=30)
    assert {part.said for part in house.jar(1).parts} == {"p", None, "r"}
    house.studio.do(refill, 1, Refill("s", 1_000, left_mg=0))
    assert house.jar(1).expires is None


def test_a_lot_of_the_book_is_named_by_its_number(house: Dyehouse) -> None:
    other = house.studio.do(supplier_lot, house.maker, "z")
    house.studio.do(refill, 1, Refill(other, 500_000))
    assert {part.supplier_lot for part in house.jar(1).parts} == {
        other, house.jar(2).parts[0].supplier_lot}
    with pytest.raises(NotFound, match="This maker's lot is not in the book"):
        house.studio.do(refill, 1, Refill(99, 500_000))


def test_a_jar_on_the_balance_says_its_gap(house: Dyehouse) -> None:
    done = house.studio.done(weigh_jar, 1, 499_800)
    assert (done.said, done.findings) == ("weighed jar 1: 499.8 g", ())
    house.take(house.begin(), house.fills[1], 93_300)
    assert house.jar(1).left_mg == 406_500
    assert "7.7 g less" in house.studio.done(weigh_jar, 1, 398_800).findings[0]
    assert (house.jar(1).left_mg, house.jar(1).booked_mg) == (398_800, 406_700)
    house.studio.undo()
    assert house.jar(1).left_mg == 406_500
    assert "1 g more" in house.studio.done(weigh_jar, 2, 501_000).findings[0]


def test_more_is_bought_below_a_weight(house: Dyehouse) -> None:
    assert house.studio.done(set_reorder, 1, 500_001).said == "jar 1: buy below 500.001 g"
    assert [jar.jar for jar in house.studio.book.ask(jars_now) if jar.to_buy] == [1]
    house.studio.do(set_reorder, 1, None)
    assert not house.jar(1).to_buy
    house.studio.undo()
    assert house.jar(1).to_buy


@pytest.mark.parametrize(("work", "more", "what"), [
    (refill, Refill("q", 0), "A refill weighs something"),
    (refill, Refill("q", 1, left_mg=-1), "A refill weighs something"),
    (refill, Refill("q", 1, strength_permille=0), "is no strength of a dye"),
    (weigh_jar, -1, "Nothing weighs less than nothing"),
    (set_reorder, 0, "More is bought before nothing is left"),
    (say_strength, 3001, "is no strength of a dye"),
])
def test_what_cannot_be_is_refused_and_nothing_of_it_kept(
    house: Dyehouse, work: object, more: object, what: str
) -> None:
    before = house.jar(1)
    with pytest.raises(Refused, match=what):
        house.studio.do(work, 1, more)  # type: ignore[arg-type]
    assert house.jar(1) == before
    with pytest.raises(NotFound, match="This jar is not in the book"):
        house.studio.do(set_reorder, 99, 5)
    assert house.studio.book.ask(jar_now, 99) is None
    assert house.studio.book.ask(shares_of, house.fills[1])[0].share == 1


def test_a_new_jar_brings_its_maker_into_the_book_and_needs_its_dye(house: Dyehouse) -> None:
    house.studio.do(open_new_jar, NewJar(5, " T1  tan ", "Osk Dyes", "77-A", 250_000))
    found = house.jar(5)
    assert (found.dye, found.filled_mg, found.strength_permille) == ("T1 tan", 250_000, None)
    assert [(part.supplier, part.said) for part in found.parts] == [("Osk Dyes", "77-A")]
    with pytest.raises(Refused, match="which dye"):
        house.studio.do(open_new_jar, NewJar(6, " ", "Osk Dyes", None, 1_000))
