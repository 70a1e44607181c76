"""Fibres of one kind take up water alike; a blend has a reference skein of its own."""

import pytest

from app.calculations.regain_class import regain_class


@pytest.mark.parametrize(("fibre", "kind"), [
    ("100 % wool", "wool"), ("60 % wool, 40 % virgin wool", "wool"),
    ("20 % polyamide, 80 % wool", "wool and polyamide"), ("100 % cotton", "cotton"),
    ("60 % wool, 40 % qiviut", "wool and qiviut"), ("what the farm had", "what the farm had"),
])
def test_a_kind_of_fibre_is_named_by_its_greatest_share_first(fibre: str, kind: str) -> None:
    assert regain_class(fibre) == kind
