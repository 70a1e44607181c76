"""In the place of a held lot: lots on its base within what alternate rows hide, with the number."""

from app.calculations.codes import shown
from app.lookups.instead import instead_of
from app.lookups.offers import free_of_lots
from app.work.holding import hold
from tests.lookups.cards import read_lot
from tests.lookups.shop import shelved
from tests.makers import Studio

HELD, NEAR, FAR = (48.3, -36.6, 3.3), (48.2, -36.6, 3.3), (52.3, -36.6, 5.3)


def test_near_lots_come_with_their_number_and_then_those_that_were_not_read(
    studio: Studio,
) -> None:
    (held, _), (near, _), (far, _), (unread, _) = shelved(studio, 2, 3, 3, 2)
    for lot, lab in ((held, HELD), (near, NEAR), (far, FAR)):
        read_lot(studio, lot, lab)
    studio.do(hold, "lot", held, "weak jar")
    found = studio.book.ask(instead_of, held, 2)
    assert [one.line.lot for one in found] == [near, unread]
    assert found[0].words == (f"{shown(studio.code(near))}: 3 on shelf 004, 0.1 ± 0.5, looks the "
                              "same")
    assert found[1].words.endswith(": 2 on shelf 006, not measured: hold them side by side")
    assert [one.line.lot for one in studio.book.ask(instead_of, held, 3)] == [near]
    assert studio.book.ask(instead_of, held, 9) == ()
    assert studio.book.ask(instead_of, held, 1, "mini") == ()


def test_of_a_lot_without_a_card_all_of_its_colourway_are_offered_unmeasured(
    studio: Studio,
) -> None:
    (held, _), (other, _) = shelved(studio, 2, 3)
    read_lot(studio, other, NEAR)
    (one,) = studio.book.ask(instead_of, held, 1)
    assert (one.line.lot, one.difference) == (other, None)


def test_what_lies_free_of_a_lot_and_where(studio: Studio) -> None:
    ((lot, _),) = shelved(studio, 3)
    offer = studio.book.ask(free_of_lots, {lot: studio.code(lot)}, "skein")[lot]
    assert (offer.count, offer.places) == (3, (("shelf 003", 3),))
    assert studio.book.ask(free_of_lots, {lot: studio.code(lot)}, "mini")[lot].count == 0
