"""Yarn counts against ASTM D2260-03(2013), Table 1 and "Examples of Table 1 use".

Read at astm.org and globalspec, where not marked "from memory" or "computed" in the tables; exact
factors follow from the international yard and pound of 1959. ISO 1144 and ISO 2947 were not read.
"""

from decimal import Decimal
from fractions import Fraction

import pytest

from app.calculations.units import GRAMS_AN_OUNCE, METRES_A_YARD, yards
from app.calculations.yarn_count import System, count_of, read_count, tex_of, tex_of_put_up
from tests.published.published_values import rows_of

SYSTEMS = {
    "tex": System.TEX,
    "denier": System.DENIER,
    "dtex": System.DTEX,
    "American grain count": System.GRAINS,
    "Metric count Nm": System.NM,
    "Cotton count NeC": System.NEC,
    "Worsted count NeW": System.NEW,
    "Woollen run (US) Nar": System.RUN,
    "Woollen cut (US) / linen lea NeL": System.LEA,
    "Woollen Yorkshire skein Ny": System.YORKSHIRE,
    "Woollen Galashiels cut": System.GALASHIELS,
    "Woollen West of England": System.WEST_OF_ENGLAND,
    "Woollen Dewsbury": System.DEWSBURY,
    "Yards per pound": System.YARDS_A_POUND,
}
CONSTANTS = rows_of("yarn_count_constants")
EXAMPLES = {row["case"]: row for row in rows_of("yarn_count_examples")}


def test_every_system_of_ours_has_a_published_factor() -> None:
    assert {SYSTEMS[row["system"]] for row in CONSTANTS} == set(System)


@pytest.mark.parametrize("row", CONSTANTS, ids=lambda row: row["system"])
def test_the_factor_is_exact(row: dict[str, str]) -> None:
    system = SYSTEMS[row["system"]]
    assert tex_of(Fraction(1), system) == Fraction(row["k_exact_fraction"])
    ratio = tex_of(Fraction(2), system) / tex_of(Fraction(1), system)
    assert ratio == (2 if row["kind"] == "direct" else Fraction(1, 2))


@pytest.mark.parametrize(
    ("system", "printed"),
    [
        (System.NEC, "0.590541"),
        (System.NEW, "0.885812"),
        (System.RUN, "0.310034"),
        (System.LEA, "1.65352"),
        (System.YARDS_A_POUND, "496.055"),
    ],
)
def test_the_six_figures_printed_for_one_metric_count_come_out(
    system: System, printed: str
) -> None:
    """ASTM D2260 Table 1, factor x metric count; read at astm.org."""
    ours = count_of(tex_of(Fraction(1), System.NM), system)
    assert f"{float(ours):.6g}" == printed


@pytest.mark.parametrize(
    ("case", "value", "given", "asked"),
    [
        ("cotton count to worsted count", 10, System.NEC, System.NEW),
        ("tex to cotton count", 30, System.TEX, System.NEC),
        ("linen lea from cotton count", 1, System.NEC, System.LEA),
        ("run from cotton count", 1, System.NEC, System.RUN),
        ("run from worsted count", 1, System.NEW, System.RUN),
    ],
)
def test_the_published_conversions_come_out(
    case: str, value: int, given: System, asked: System
) -> None:
    printed = Decimal(EXAMPLES[case]["value"].split()[0])
    ours = float(count_of(tex_of(Fraction(value), given), asked))
    assert round(ours, -int(printed.as_tuple().exponent)) == float(printed)


LABELS = [row for case, row in EXAMPLES.items() if case.startswith("label yardage")]


@pytest.mark.parametrize("row", LABELS, ids=lambda row: row["case"])
def test_a_label_of_grams_and_metres_gives_each_count(row: dict[str, str]) -> None:
    """Computed from the exact constants."""
    g, m = (Decimal(part.split()[0]) for part in row["input"].split(" / "))
    tex = tex_of_put_up(g, m)
    ours = {
        "tex": tex,
        "m/kg": count_of(tex, System.NM) * 1000,
        "yd": Fraction(m) / Fraction(METRES_A_YARD),
        "yd/lb": count_of(tex, System.YARDS_A_POUND),
        "NeC": count_of(tex, System.NEC),
        "NeW": count_of(tex, System.NEW),
    }
    assert len(LABELS) == 5
    quantities = row["output_quantity"].split("; ")
    for quantity, value in zip(quantities, row["value"].split("; "), strict=True):
        decimals = len(value.partition(".")[2])
        assert f"{float(ours[quantity]):.{decimals}f}" == value, quantity
    assert yards(m) == round(float(ours["yd"]))


@pytest.mark.parametrize(
    ("case", "written"),
    [
        ("plied yarn Nm 28/2 (= 2/28)", "Nm 28/2"),
        ("plied yarn Nm 28/2 (= 2/28)", "Nm 2/28"),
        ("plied yarn Nm 16/4", "Nm 16/4"),
        ("plied yarn NeW 2/24", "NeW 2/24"),
        ("plied yarn NeC 8/2", "NeC 8/2"),
    ],
)
def test_a_plied_count_gives_its_resultant_tex(case: str, written: str) -> None:
    """Notation of ISO 1139 from memory; twist contraction ignored."""
    assert f"{float(read_count(written).tex):.4f}" == EXAMPLES[case]["value"]


def test_a_skein_of_100_m_weighing_25_31_g_is_253_1_tex() -> None:
    """Mass per length as ISO 2060 defines it; computed."""
    row = EXAMPLES["skein test, skein of 100 m weighs 25.31 g"]
    assert tex_of_put_up(Decimal("25.31"), Decimal(100)) == Fraction(row["value"])


def test_yards_and_ounces_are_exact() -> None:
    assert Decimal(EXAMPLES["yards to metres, 437 yd"]["value"]) == 437 * METRES_A_YARD
    assert Decimal(EXAMPLES["4 oz skein"]["value"]) == 4 * GRAMS_AN_OUNCE
