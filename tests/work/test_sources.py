"""Where a line is taken from, and how much in words."""

import pytest

from app.problems import Refused
from app.store.deed import Deed
from app.work.sources import amount_words, must_be_one_amount, source_in_book
from tests.dyehouse import Dyehouse
from tests.makers import Studio


@pytest.mark.parametrize(("mg", "ul", "words"), [
    (5_120, None, "5.12 g"), (None, 132_400, "132.4 mL"), (0, None, "0 g"),
    (None, None, "nothing"),
])
def test_an_amount_is_said_in_grams_or_millilitres(
    mg: int | None, ul: int | None, words: str
) -> None:
    assert amount_words(mg, ul) == words


def test_powder_is_weighed_and_stock_is_measured() -> None:
    must_be_one_amount(5, None, 1, None)
    must_be_one_amount(None, 5, None, 1)
    must_be_one_amount(None, 5, None, None)
    for given in ((None, 5, 1, None), (5, None, None, 1), (5, 5, None, None), (-1, None, 1, None)):
        with pytest.raises(Refused):
            must_be_one_amount(*given)


def test_no_source_is_none_and_a_jar_is_found_by_its_fill(studio: Studio) -> None:
    house = Dyehouse(studio)

    def dye(deed: Deed, fill: int | None) -> str | None:
        source = source_in_book(deed, fill, None)
        return source and source.dye
    assert studio.do(dye, None) is None
    assert studio.do(dye, house.fills[4]) == "N1 navy"
