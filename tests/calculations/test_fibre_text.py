"""Compositions as people write them and as tags print them."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.fibre_text import FibreShare, composition_text, read_composition
from app.problems import BadInput


def shares(*pairs: tuple[str, str]) -> tuple[FibreShare, ...]:
    return tuple(FibreShare(fibre, Decimal(percent)) for percent, fibre in pairs)


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("100 % wool", shares(("100", "wool"))),
        ("80 % wool, 20 % polyamide", shares(("80", "wool"), ("20", "polyamide"))),
        ("80%wool,20%polyamide", shares(("80", "wool"), ("20", "polyamide"))),
        ("20 % polyamide / 80 % wool", shares(("80", "wool"), ("20", "polyamide"))),
        (
            "97,5 % lamb's wool, 2,5 % elastane",
            shares(("97.5", "lamb's wool"), ("2.5", "elastane")),
        ),
        (
            "80 % Down-type wool; 20 % polyamide\n",
            shares(("80", "Down-type wool"), ("20", "polyamide")),
        ),
        ("70 % Wolle, 30 % Flachs (Leinen)", shares(("70", "Wolle"), ("30", "Flachs (Leinen)"))),
        ("50 % laine mérinos, 50 % øye", shares(("50", "laine mérinos"), ("50", "øye"))),
    ],
)
def test_a_composition_is_read_and_put_in_descending_order(
    written: str, read: tuple[FibreShare, ...]
) -> None:
    assert read_composition(written) == read


def test_a_composition_is_printed_with_the_greatest_share_first() -> None:
    assert (
        composition_text(shares(("20.0", "polyamide"), ("80", "wool")))
        == "80 % wool, 20 % polyamide"
    )
    assert composition_text(shares(("100", "wool"))) == "100 % wool"


@pytest.mark.parametrize(
    ("written", "reason"),
    [
        ("", "make 0 %, not 100 %"),
        ("80 % wool", "make 80 %, not 100 %"),
        ("80 % wool, 30 % polyamide", "make 110 %, not 100 %"),
        ("50 % wool, 50 % Wool", "wool twice"),
        ("100 % wool, 0 % silk", "0 %"),
        ("wool", "cannot be read from “wool”"),
        ("80 % wool, polyamide", "cannot be read from “polyamide”"),
        ("80 % , 20 % wool", "cannot be read"),
        ("80 % wool 20 % polyamide", "cannot be read"),
    ],
)
def test_a_composition_that_is_not_whole_is_refused_with_the_reason(
    written: str, reason: str
) -> None:
    with pytest.raises(BadInput, match=reason):
        read_composition(written)


def test_what_was_typed_is_shown_again_from_where_it_cannot_be_read() -> None:
    with pytest.raises(BadInput) as refusal:
        read_composition("80 % wool, some polyamide")
    assert "some polyamide" in refusal.value.what


names = st.lists(
    st.sampled_from(["wool", "polyamide", "silk", "linen", "alpaca wool", "lamb’s wool"]),
    min_size=1,
    unique=True,
)


@given(names, st.data())
def test_whatever_is_printed_reads_back(fibres: list[str], data: st.DataObject) -> None:
    tenths = st.integers(1, 1000 - len(fibres))
    cuts = data.draw(st.sets(tenths, min_size=len(fibres) - 1, max_size=len(fibres) - 1))
    edges = [0, *sorted(cuts), 1000]
    parts = [Decimal(b - a) / 10 for a, b in zip(edges, edges[1:], strict=False)]
    made = tuple(map(FibreShare, fibres, parts))
    read = read_composition(composition_text(made))
    assert sorted(read, key=str) == sorted(made, key=str)
    assert [s.percent for s in read] == sorted((s.percent for s in read), reverse=True)
