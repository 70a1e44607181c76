"""Where a skein is: one place at a time, so that none is sold twice."""

from typing import Any

import pytest
from sqlalchemy.exc import IntegrityError

from app.problems import Refused
from app.records import Kit, Whereabouts
from app.records.whereabouts import STATES
from app.store.deed import Deed
from tests.deeds import put, send
from tests.makers import Studio
from tests.records.forbidden import burnt_for_ever


def begin(deed: Deed, **values: Any) -> None:
    deed.begin(Whereabouts(basis="scanned", **values))


@pytest.mark.parametrize(("values", "constraint"), [
    ({"state": "asleep"}, "ck_whereabouts_state"),
    ({"state": "sent"}, "is_on_an_order"), ({"state": "taken"}, "is_on_an_order"),
    ({"state": "shelf"}, "has_a_place"), ({"state": "fair"}, "has_a_place"),
    ({"state": "kit"}, "is_in_a_kit"),
])
def test_a_state_needs_what_it_stands_on(
    studio: Studio, values: dict[str, str], constraint: str
) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)
    with pytest.raises(IntegrityError, match=constraint):
        studio.do(begin, yarn=skein, **values)


def test_what_lies_on_the_table_is_on_no_order(studio: Studio) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)
    line = studio.do(send, [skein])
    with pytest.raises(IntegrityError, match="is_on_an_order"):
        studio.do(begin, yarn=skein, state="table", line=line)


def test_a_skein_is_in_one_place_whoever_writes_it(studio: Studio) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)

    def past_the_end_of_the_one_before(deed: Deed) -> None:
        stay = Whereabouts(yarn=skein, state="given", basis="scanned")
        stay.since = deed.happened
        deed.add(stay)
    with pytest.raises(Refused, match="done already"):
        studio.do(past_the_end_of_the_one_before)


def test_a_skein_comes_back_and_is_sold_again_honestly(studio: Studio) -> None:
    _, (skein,) = studio.tagged(studio.cone(), 1)
    studio.do(send, [skein])
    studio.do(put, [skein], "table")
    studio.do(send, [skein])
    assert {key[0] for key in studio.present()} == {"sent, buyer not known"}
    studio.check()


def test_a_kit_bag_has_its_code_for_ever(studio: Studio) -> None:
    burnt_for_ever(studio, lambda: Kit(code="N0011"))


def test_the_states_are_those_of_the_trade() -> None:
    assert STATES == ("table", "shelf", "put by", "kit", "taken", "sent", "fair", "lost", "given",
                      "discarded")
