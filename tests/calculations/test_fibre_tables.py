"""The shipped tables about fibres are whole, sourced and rising."""

from decimal import Decimal
from itertools import pairwise

import pytest

from app.calculations.fibre_tables import agreed_allowances, allowance, regain_by_humidity
from app.problems import NotFound


def test_every_allowance_is_named_once_and_says_where_it_is_from() -> None:
    table = agreed_allowances()
    names = [(agreed.rules, agreed.fibre, agreed.form) for agreed in table]
    assert len(set(names)) == len(names) > 60
    assert {agreed.rules for agreed in table} == {"EU", "US"}
    assert all("read in" in a.source or "from memory" in a.source for a in table)
    assert all(0 <= agreed.regain <= Decimal("0.2") for agreed in table)


def test_an_allowance_is_found_by_rules_fibre_and_form() -> None:
    assert allowance("EU", "silk").regain == Decimal("0.11")
    assert allowance("EU", "wool and animal hair", "combed").regain == Decimal("0.1825")
    assert allowance("US", "wool").regain == Decimal("0.136")


def test_a_fibre_the_rules_do_not_know_is_not_found() -> None:
    with pytest.raises(NotFound, match="EU table has no allowance for combed nettle"):
        allowance("EU", "nettle", "combed")


def test_the_humidity_table_rises_and_meets_the_standard_regain_of_wool() -> None:
    """Working estimates of the trade, no source."""
    table = regain_by_humidity("wool")
    assert all(a[0] < b[0] and a[1] < b[1] for a, b in pairwise(table))
    assert dict(table)[Decimal("0.65")] == Decimal("0.16")
    assert dict(table)[Decimal("0.55")] == Decimal("0.135")


def test_a_fibre_without_a_table_is_sent_to_a_reference_skein() -> None:
    with pytest.raises(NotFound) as missing:
        regain_by_humidity("nettle")
    assert "reference skein" in missing.value.next_step
