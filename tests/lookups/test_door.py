"""What the door asks before and after cones come in."""

from app.lookups.door import (
    BaseNow,
    CameBefore,
    bases_now,
    came_before,
    cone_cards,
    numbers_taken,
)
from app.work.bases import describe_base
from app.work.receiving import ConeIn, DeliveryIn, receive
from tests.makers import Studio, tarnfield

HOUSE = ("2241", "Tarnfield 4-ply")


def test_a_base_is_told_by_its_newest_description(studio: Studio) -> None:
    studio.do(describe_base, tarnfield(millitex=248_000, fibre="95 % wool, 5 % nylon"))
    studio.do(describe_base, tarnfield(name="Downholm Sock", millitex=238_000))
    assert studio.book.ask(bases_now) == (
        BaseNow("Downholm Sock", "100 % wool", 238_000),
        BaseNow("Tarnfield 4-ply", "95 % wool, 5 % nylon", 248_000),
    )


def test_a_description_that_was_taken_back_is_not_told(studio: Studio) -> None:
    done = studio.done(describe_base, tarnfield(millitex=248_000))
    studio.undo(done.seq)
    assert [base.millitex for base in studio.book.ask(bases_now)] == [250_000]


def test_a_note_is_known_by_its_number_and_base_whoever_sent_it(studio: Studio) -> None:
    assert studio.book.ask(came_before, *HOUSE) == ()
    first = studio.clock.now
    studio.cones(3)
    studio.cones(2)
    other = DeliveryIn("Withybank", *HOUSE, studio.clock.now, (ConeIn(1_462_000, 64_000, None),))
    studio.do(receive, other)
    assert studio.book.ask(came_before, *HOUSE) == (
        CameBefore("Aske Mill", first, 5), CameBefore("Withybank", other.arrived, 1))
    assert studio.book.ask(came_before, "2242", HOUSE[1]) == ()
    assert studio.book.ask(came_before, HOUSE[0], "Downholm Sock") == ()


def test_a_delivery_that_was_taken_back_did_not_come_before(studio: Studio) -> None:
    studio.cones(3)
    studio.undo()
    assert studio.book.ask(came_before, *HOUSE) == ()


def test_cards_come_in_the_order_of_the_cones_and_go_with_them(studio: Studio) -> None:
    cones = studio.cones(2)
    cards = studio.book.ask(cone_cards, cones)
    assert [(card.code[:5], card.base, card.batch, card.gross_mg, card.tare_mg)
            for card in cards] == [("C0001", "Tarnfield 4-ply", "A-203", 1_520_000, 64_000),
                                   ("C0002", "Tarnfield 4-ply", "A-203", 1_520_000, 64_000)]
    studio.undo()
    assert studio.book.ask(cone_cards, cones) == ()


def test_a_number_is_taken_until_its_delivery_is_taken_back(studio: Studio) -> None:
    studio.cones(1, number=114)
    assert studio.book.ask(numbers_taken) == {114}
    studio.undo()
    assert studio.book.ask(numbers_taken) == frozenset()
