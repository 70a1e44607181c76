"""What was offered and agreed to is kept; a name never is."""

import pytest

from app.lookups.agreed import agreed_lines, offers_of
from app.problems import NotFound, Refused
from app.work.offering import OfferIn, agree_line, offered
from app.work.selling import know_customer
from tests.lookups.cards import dyed
from tests.lookups.shop import ordered, shelved
from tests.makers import Studio


def test_an_offer_is_kept_with_its_answer_and_without_the_name(studio: Studio) -> None:
    lot, other = dyed(studio), dyed(studio)
    ada = studio.do(know_customer, "Ada Nygård")
    done = studio.done(offered, OfferIn(lot, 2, "nearest lot", "thinks it over", other, 10, ada))
    assert "Ada" not in done.said
    assert done.said.startswith("offered for 2 of 26·15·")
    (kept,) = studio.book.ask(offers_of, lot)
    assert (kept.way, kept.ciede2000, kept.answer, kept.customer) == (
        "nearest lot", 0.1, "thinks it over", ada)
    studio.undo()
    assert studio.book.ask(offers_of, lot) == ()
    studio.check()


@pytest.mark.parametrize(("said", "why"), [
    (OfferIn(1, 2, "a photo", "taken"), "no way to offer"),
    (OfferIn(1, 2, "redye", "perhaps"), "no way to offer, or no answer"),
    (OfferIn(1, 0, "redye", "taken"), "Nothing was wanted"),
    (OfferIn(9, 1, "redye", "taken"), "lot is not in the book"),
    (OfferIn(1, 1, "sister lot", "taken", 9), "lot is not in the book"),
    (OfferIn(1, 1, "redye", "taken", customer=9), "customer is not in the book"),
])
def test_what_was_never_offered_is_refused(studio: Studio, said: OfferIn, why: str) -> None:
    dyed(studio)
    with pytest.raises((Refused, NotFound), match=why):
        studio.do(offered, said)


def test_a_line_from_two_lots_is_settled_by_a_word_and_the_last_word_counts(
    studio: Studio,
) -> None:
    shelved(studio, 2)
    (line,) = ordered(studio, "1187", 3)
    assert studio.book.ask(agreed_lines, [line]) == {}
    assert studio.done(agree_line, line, "customer agreed").said == (
        "order 1187, a line from two lots: customer agreed")
    studio.do(agree_line, line, "rows card put in")
    assert studio.book.ask(agreed_lines, [line])[line].how == "rows card put in"
    with pytest.raises(Refused, match="who agreed"):
        studio.do(agree_line, line, "nobody minds")
    with pytest.raises(NotFound, match="line is not in the book"):
        studio.do(agree_line, 99, "customer agreed")
