"""Cards as they were read, the newest first."""

from app.lookups.shades import lots_read, newest, read_of_cone, read_of_lots, read_of_standard
from app.work.inspecting import ShadeIn, read_shade
from tests.calculations.shades import DRY, SHOP, colour
from tests.lookups.cards import dyed, read_lot, read_standard
from tests.makers import Studio


def test_a_lots_newest_card_counts_for_each_way_of_looking(studio: Studio) -> None:
    lot = dyed(studio)
    read_lot(studio, lot, (48.9, -36.0, 3.9))
    read_lot(studio, lot, (48.3, -36.6, 3.3), spread=0.41)
    read_lot(studio, lot, (47.0, -30.0, 2.0), SHOP, readings=1)
    read = studio.book.ask(read_of_lots, [lot])[lot]
    assert [(one.came, one.person) for one in read] == [("typed", "OW")] * 3
    cards = newest(read)
    assert set(cards) == {(DRY, ""), (SHOP, "")}
    assert cards[DRY, ""].lab == (48.3, -36.6, 3.3)
    assert cards[DRY, ""].spread == 0.41
    studio.undo(studio.last() - 1)
    assert newest(studio.book.ask(read_of_lots, [lot])[lot])[DRY, ""].lab == (48.9, -36.0, 3.9)


def test_a_standard_and_a_cone_have_cards_of_their_own(studio: Studio) -> None:
    lot, cone = dyed(studio), studio.cone()
    read_standard(studio, (48.3, -36.6, 3.3))
    studio.do(read_shade, ShadeIn(colour(89.6, -2.0, 10.8), cone=cone))
    assert studio.book.ask(read_of_standard, 1, 1)[0].colour.lab == (48.3, -36.6, 3.3)
    assert studio.book.ask(read_of_cone, cone)[0].colour.lab == (89.6, -2.0, 10.8)
    assert studio.book.ask(read_of_lots, [lot]) == {}
    assert studio.book.ask(lots_read, 1, 1) == ()
    read_lot(studio, lot, (48.3, -36.6, 3.3))
    assert studio.book.ask(lots_read, 1, 1) == (lot,)
