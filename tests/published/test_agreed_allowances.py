"""Moisture arithmetic and agreed allowances against Regulation (EU) No 1007/2011 and ASTM.

Annex IX, rows 1 to 48, was read in German (English names from memory); Article 19(3) was read in
German; ASTM D1909 in a table that cites it, the rows marked so from memory; ISO 6741-1's formula is
from memory.
"""

from decimal import Decimal

import pytest

from app.calculations.fibre_tables import agreed_allowances, allowance
from app.calculations.moisture import (
    at_regain,
    composition,
    content_of_regain,
    regain_of_content,
    whole_percents,
)
from tests.published.published_values import rows_of

EXAMPLES = {row["case"]: row for row in rows_of("moisture_examples")}
STAPLE = {"discontinuous (staple)": "staple", "discontinuous": "staple"}


def example(start: str) -> Decimal:
    """The value of the one case that begins with these words."""
    (row,) = (row for case, row in EXAMPLES.items() if case.startswith(start))
    return Decimal(row["value"])


def rounded(value: Decimal, like: Decimal) -> Decimal:
    return value.quantize(like)


def test_the_shipped_european_table_is_annex_ix_row_for_row() -> None:
    published = [
        (row["fibre"], STAPLE.get(row["form"], row["form"]), Decimal(row["allowance_percent"]))
        for row in rows_of("eu1007_annex_ix")
    ]
    ours = [(a.fibre, a.form, a.regain * 100) for a in agreed_allowances() if a.rules == "EU"]
    assert len(published) == 55
    assert ours == published


def test_the_shipped_american_table_is_the_one_published_and_keeps_what_is_from_memory() -> None:
    published = rows_of("astm_d1909")
    ours = [a for a in agreed_allowances() if a.rules == "US"]
    assert [(a.fibre, a.regain * 100) for a in ours] == [
        (row["fibre"], Decimal(row["regain_percent"])) for row in published
    ]
    assert [a.source.endswith("from memory") for a in ours] == [
        row["verified"] == "from memory" for row in published
    ]


def test_the_regulations_own_example_uses_these_allowances() -> None:
    """Regulation (EU) No 1007/2011, ternary example; its allowances were read in English."""
    assert allowance("EU", "wool and animal hair", "carded").regain == Decimal("0.17")
    assert allowance("EU", "polyamide or nylon", "staple").regain == Decimal("0.0625")
    assert allowance("EU", "cotton", "normal").regain == Decimal("0.085")


def test_75_g_wool_and_25_g_polyamide_both_dry_are_labelled_77_and_23() -> None:
    """Article 19(3), computed from Annex IX; dry percentages would wrongly print 75 and 25."""
    percents = composition(
        {"wool": Decimal(75), "polyamide": Decimal(25)},
        {
            "wool": allowance("EU", "wool and animal hair", "carded").regain,
            "polyamide": allowance("EU", "polyamide or nylon", "staple").regain,
        },
    )
    (row,) = (row for case, row in EXAMPLES.items() if case.startswith("blend 75 g carded"))
    printed = [f"{fibre} {percent:.2f}" for fibre, percent in percents.items()]
    assert "; ".join(printed) == row["value"]
    assert whole_percents(percents) == {"wool": 77, "polyamide": 23}


def test_a_blend_of_three_takes_each_its_own_allowance() -> None:
    """Computed from Annex IX."""
    percents = composition(
        {"wool": Decimal(75), "polyamide": Decimal(20), "silk": Decimal(5)},
        {
            "wool": allowance("EU", "wool and animal hair", "combed").regain,
            "polyamide": allowance("EU", "polyamide or nylon", "filament").regain,
            "silk": allowance("EU", "silk").regain,
        },
    )
    (row,) = (row for case, row in EXAMPLES.items() if case.startswith("blend 75 combed"))
    printed = [f"{fibre} {percent:.2f}" for fibre, percent in percents.items()]
    assert "; ".join(printed) == row["value"]
    assert sum(whole_percents(percents).values()) == 100


@pytest.mark.parametrize(
    ("content", "start"),
    [
        ("0.12", "regain from moisture content 12.0 %"),
        ("0.1304", "regain from moisture content 13.04 %"),
    ],
)
def test_the_contents_of_astm_d2118_give_the_regains(content: str, start: str) -> None:
    """ASTM D2118 4.3, contents read at astm.org; regains computed."""
    (row,) = (row for case, row in EXAMPLES.items() if case.startswith(start))
    ours = 100 * regain_of_content(Decimal(content))
    assert rounded(ours, example(start)) == example(start)
    assert rounded(ours, Decimal(row["printed_value"])) == Decimal(row["printed_value"])


def test_a_regain_of_18_25_percent_is_a_content_of_15_43() -> None:
    value = example("moisture content from regain")
    assert rounded(100 * content_of_regain(Decimal("0.1825")), value) == value


@pytest.mark.parametrize(
    ("start", "now", "rules", "fibre", "form"),
    [
        ("commercial mass, 1000 g oven-dry", "0", "EU", "wool and animal hair", "combed"),
        ("commercial mass, cone weighs 1000 g", "0.12", "EU", "wool and animal hair", "carded"),
        ("same cone, US wool", "0.12", "US", "wool", ""),
    ],
)
def test_the_commercial_mass_of_a_cone_depends_on_whose_allowance_is_agreed(
    start: str, now: str, rules: str, fibre: str, form: str
) -> None:
    """ISO 6741-1, formula from memory; computed."""
    mass = at_regain(Decimal(1000), Decimal(now), allowance(rules, fibre, form).regain)
    assert rounded(mass, example(start)) == example(start)
