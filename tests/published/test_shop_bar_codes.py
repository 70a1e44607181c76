"""Check digits of shop bar codes against GS1's own test values.

Read by git in gs1-syntax-dictionary (lint_csum.c) and the other sources named in the table.
"""

import pytest

from app.calculations.codes import is_shop_bar_code, read
from app.problems import BadInput
from tests.published.published_values import rows_of

ROWS = rows_of("gs1_check_digit")
ARTICLES = [row for row in ROWS if row["key"].startswith("GTIN")]


def test_the_table_holds_every_length_of_an_article_number_right_and_wrong() -> None:
    seen = {(len(row["number"]), row["validity"]) for row in ARTICLES}
    assert seen == {(n, v) for n in (8, 12, 13, 14) for v in ("valid", "invalid")}


@pytest.mark.parametrize("row", ARTICLES, ids=lambda row: row["number"])
def test_an_article_number_is_known_by_its_check_digit(row: dict[str, str]) -> None:
    number = row["number"]
    assert is_shop_bar_code(number) is (row["validity"] == "valid")
    assert is_shop_bar_code(number[:-1] + row["computed_check_digit"])


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["number"])
def test_no_number_of_a_shop_or_a_parcel_is_ever_read_as_a_code_of_ours(
    row: dict[str, str],
) -> None:
    with pytest.raises(BadInput):
        read(row["number"])


def test_a_parcel_number_is_no_article() -> None:
    parcels = [row["number"] for row in ROWS if row["key"] == "SSCC"]
    assert len(parcels) == 2
    assert not any(map(is_shop_bar_code, parcels))
