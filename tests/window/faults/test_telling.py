"""What a customer brings is told at the counter, and what came back is seen good."""

from app.lookups.reports import reports
from app.lookups.skeins import named_by_tag
from app.window.faults.fault_card import FaultCard
from app.work.selling import OrderIn, Wanted, place_order
from tests.deeds import customer, send
from tests.window.benches.at_work import DONE, FAULT, GOOD, plate
from tests.window.faults.told import card_of, seen

PNG = b"\x89PNG\r\n\x1a\n" + b"\0" * 40


def test_what_a_customer_brings_is_told_at_the_counter(work):
    """A photo goes with it; the bench waits behind the card; one on the table is seen good."""
    studio = work.studio
    _, skeins = studio.tagged(studio.cone(), 3)
    ada = studio.do(customer, "Ada Nygård")
    order = OrderIn("1201", studio.clock.now, "web", (Wanted("a skein", 2),), ada)
    studio.do(place_order, order)
    studio.do(send, skeins[:2], ada)
    marks = [one.mark for one in studio.book.ask(named_by_tag, skeins).values()]
    work.scan(GOOD)
    assert "No skein is in hand" in work.trouble
    work.scan(marks[0], FAULT)
    assert isinstance(card_of(work), FaultCard)
    assert card_of(work).isVisible()
    assert not work.bench.hand.isVisible()
    work.window.reception.pictured(PNG)
    assert card_of(work).taken.text() == "1 photo with it."
    work.scan(plate(1), marks[1], DONE)
    assert work.said == "streak on 2 skeins, with 1 picture"
    assert work.bench.hand.isVisible()
    (told,) = studio.book.ask(reports)
    assert (told.fault, told.seen_at, told.faulty, told.photos) == ("streak", "counter", 2, 1)
    work.scan(marks[2])
    work.press("F9")
    assert work.said == "seen good: 1 skein"
    assert seen(work)[-1] == (skeins[2], 0, "return")
