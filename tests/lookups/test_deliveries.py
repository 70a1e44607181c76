"""What came in at the door and what is left of it."""

from app.lookups.deliveries import (
    at_the_door,
    batches_of,
    last_deliveries,
    on_hand,
    on_hand_by_base,
)
from app.work.bases import describe_base
from app.work.receiving import ConeIn, DeliveryIn, receive
from app.work.winding import end_cone
from tests.makers import LONG_MM, tarnfield

SOCK = "Downholm Sock"


def delivery(studio, note, *cones_in, supplier="Aske Mill", base="Tarnfield 4-ply", **more):
    """The cones of one delivery."""
    return studio.do(receive, DeliveryIn(supplier, note, base, studio.clock.now, cones_in, **more))


def plain(**changes):
    return ConeIn(**{"gross_mg": 1_462_000, "tare_mg": 64_000, "batch": "A-203"} | changes)


def test_the_last_deliveries_come_newest_first_with_their_cones_and_net_weight(studio):
    delivery(studio, "2241", plain(), plain())
    delivery(studio, "shelf", plain(batch=None), supplier="", opening_stock=True)
    newest, older = studio.book.ask(last_deliveries)
    assert (newest.note_no, newest.supplier, newest.opening_stock) == ("shelf", "not stated", True)
    assert (older.note_no, older.cones, older.net_mg) == ("2241", 2, 2 * 1_398_000)
    assert [row.note_no for row in studio.book.ask(last_deliveries, 1)] == ["shelf"]


def test_a_delivery_that_was_taken_back_is_shown_no_more(studio):
    delivery(studio, "2241", plain())
    studio.undo()
    assert studio.book.ask(last_deliveries) == ()
    assert studio.book.ask(on_hand) == ()


def test_a_cone_on_hand_says_what_it_gives_and_whether_it_was_begun(studio):
    first, second = delivery(studio, "2241", plain(moisture_permille=130), plain())
    studio.wind(first, 6, "green")
    begun, fresh = studio.book.ask(on_hand)
    assert (begun.skeins, begun.begun, begun.tie) == (7, True, "green")
    assert (fresh.id, fresh.begun, fresh.tie, fresh.batch) == (second, False, None, "A-203")


def test_the_two_threads_of_a_join_are_nobodys_own(studio):
    first, second = studio.cones(2)
    studio.join([(first, LONG_MM - 9_000), (second, 9_000)])
    assert [cone.tie for cone in studio.book.ask(on_hand)] == [None, None]


def test_a_finished_cone_is_on_hand_no_more(studio):
    first, second = studio.cones(2)
    studio.do(end_cone, first, 4_000)
    assert [cone.id for cone in studio.book.ask(on_hand)] == [second]


def test_cones_on_hand_are_counted_by_base(studio):
    studio.do(describe_base, tarnfield(name=SOCK, millitex=238_000))
    first, _ = studio.cones(2)
    delivery(studio, "2242", plain(), base=SOCK)
    studio.wind(first, 13)
    sock, tarn = studio.book.ask(on_hand_by_base)
    assert (sock.base, sock.cones, sock.begun) == (SOCK, 1, 0)
    assert (tarn.base, tarn.cones, tarn.begun, tarn.skeins) == ("Tarnfield 4-ply", 2, 1, 13)


def test_the_door_offers_known_suppliers_and_the_next_free_number(studio):
    assert studio.book.ask(at_the_door).next_cone == 1
    delivery(studio, "2241", plain(number=114), plain())
    delivery(studio, "7", plain(), supplier="Tarn Spinners")
    door = studio.book.ask(at_the_door)
    assert (door.suppliers, door.next_cone) == (("Aske Mill", "Tarn Spinners"), 117)


def test_batches_of_a_supplier_come_newest_first_without_the_unstated(studio):
    delivery(studio, "2241", plain(), plain(batch="A-204"), plain(batch=None))
    assert studio.book.ask(batches_of, "Aske Mill") == ("A-204", "A-203")
    assert studio.book.ask(batches_of, "nobody") == ()
