"""The first day: old lots keep their codes, jars their lots, and nobody invents a cone."""

import pytest
from sqlalchemy import select

from app.lookups.cones import cone_facts
from app.lookups.things import by_code
from app.problems import Refused
from app.records import Fill, FillPart, SupplierLot
from app.work.jars import JarIn, open_jar, supplier_lot
from app.work.opening_stock import OldLot, open_lot
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import Studio


def old(studio: Studio, code: str = "OLD-77", count: int = 4) -> OldLot:
    return OldLot(code, studio.version, 1, count)


def test_an_old_lot_is_a_pile_whose_cones_are_not_known(studio: Studio) -> None:
    done = studio.done(open_lot, old(studio), 100_000)
    assert done.said == "opened old lot OLD-77: 4 skeins"
    assert [(k.word, k.basis) for k in studio.origins(done.answer)] == [("not known", "stated")]
    assert {key: (a.count, a.mg) for key, a in studio.present().items()} == {
        ("piled", "skein"): (4, 400_000)}
    studio.check()


def test_an_old_code_is_found_however_it_is_written_and_is_taken_once(studio: Studio) -> None:
    studio.do(open_lot, old(studio, "old 77"), 100_000)
    assert studio.book.ask(by_code, "OLD77") is not None
    with pytest.raises(Refused, match="Lot OLD·77 is in the book already"):
        studio.do(open_lot, old(studio, "OLD·77"), 100_000)
    with pytest.raises(Refused, match="is in the book already"):
        studio.do(open_lot, old(studio, " - "), 100_000)


def test_tags_of_an_old_lot_carry_its_code(studio: Studio) -> None:
    pile = studio.do(open_lot, old(studio), 100_000)
    studio.tag(pile, 4)
    assert {key[0]: a.count for key, a in studio.present().items()} == {"table": 4}
    marks = [mark for (mark,) in studio.book.ask(
        lambda c: c.exec_driver_sql("SELECT mark FROM tag").all())]
    assert all(mark.startswith("OLD77-") for mark in marks)
    assert len(set(marks)) == 4


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


def test_a_part_cone_of_the_first_day_is_a_delivery_of_its_own_kind(studio: Studio) -> None:
    came = (ConeIn(700_000, 64_000, None),)
    (cone,) = studio.do(receive, DeliveryIn(
        "", "", "Tarnfield 4-ply", studio.clock.now, came, opening_stock=True))
    facts = studio.book.ask(cone_facts, cone)
    assert (facts.opening_stock, facts.batch, facts.supplier) == (True, None, "not stated")
