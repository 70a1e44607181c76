"""What customers agreed to, and how far apart the lots of one line are."""

from app.lookups.agreed import agreed_lines, apart_by_card, offers_of
from app.work.offering import OfferIn, agree_line, offered
from tests.calculations.shades import SHOP, TEAL
from tests.lookups.cards import dyed, read_lot
from tests.lookups.shop import ordered
from tests.makers import Studio


def test_the_last_offer_comes_first_and_a_redye_names_no_other_lot(studio: Studio) -> None:
    lot = dyed(studio)
    for answer in ("declined", "taken"):
        studio.do(offered, OfferIn(lot, 3, "redye", answer))
    kept = studio.book.ask(offers_of, lot)
    assert [(one.answer, one.other, one.ciede2000, one.person) for one in kept] == [
        ("taken", None, None, "OW"), ("declined", None, None, "OW")]


def test_only_lines_that_were_settled_are_told(studio: Studio) -> None:
    one, other = ordered(studio, "1187", 1, 2)
    studio.do(agree_line, other, "rows card put in")
    assert list(studio.book.ask(agreed_lines, [one, other])) == [other]


def test_the_two_least_alike_lots_of_a_line_are_told_with_their_number(studio: Studio) -> None:
    lots = [dyed(studio) for _ in range(4)]
    for lot, name in zip(lots, "PQT", strict=False):
        read_lot(studio, lot, TEAL[name].lab)
    read_lot(studio, lots[3], TEAL["V"].lab, SHOP)
    found = studio.book.ask(apart_by_card, lots)
    assert found
    assert f"{found.decisive.ciede2000:.1f}" == "2.4"
    assert studio.book.ask(apart_by_card, [lots[0], lots[3]]) is None
