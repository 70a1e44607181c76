"""The size of a square code in whole printer dots against the table of print rules.

Dots of print heads: read at barcodefactory.com and blog.uniquepos.com. Quiet zone of 4 modules:
ISO/IEC 18004, from memory. `RULES` says where in the program each rule is kept.
"""

from importlib import import_module

import pytest

from app.documents.paper import Paper
from app.documents.square_codes import MODULE_MM, Symbol, matrix, whole_dots
from tests.published.published_values import rows_of

RULES = {
    "QR quiet zone": "app.documents.square_codes:Symbol",
    "Print head": "app.documents.square_codes:whole_dots",
    "ISO/IEC 15415 parameters (matrix symbols)": "app.documents.proof:prove",
}
"""A rule of the table, and where it is kept: a proof asks for the first parameter, decode."""
NOT_OURS = {
    "ISO/IEC 15415 overall grade": "a grade needs a verifier's lamp and aperture; none is claimed",
    "GS1 grade notation": "no grade is claimed",
    "GS1 2D X-dimension rule": "our codes are plain text, no GS1 keys",
    "GS1 QR X, retail point of sale": "no GS1 keys; our 0.5 mm lies inside it all the same",
    "GS1 QR X, general distribution": "no GS1 keys, and nothing is scanned on a conveyor",
    "Linear GS1-128 quiet zone, for contrast": "no bar codes are printed",
}
SIZES = rows_of("qr_module_sizes")


def test_every_rule_of_the_table_has_its_place_or_its_reason() -> None:
    assert {row["item"] for row in rows_of("print_rules")} == {*RULES, *NOT_OURS}
    for place in RULES.values():
        module, _, name = place.partition(":")
        assert hasattr(import_module(module), name)


@pytest.mark.parametrize("row", SIZES, ids=lambda row: f"{row['dpi']}-{row['dots_per_module']}")
def test_a_module_asked_for_at_its_size_takes_its_whole_dots(row: dict[str, str]) -> None:
    """At the head's own dots a millimetre; the nominal dots an inch are up to 1.6 % fewer."""
    per_mm, dots = int(row["dots_per_mm"]), int(row["dots_per_module"])
    x_mm = float(row["X_mm"])
    exact = whole_dots(dots / per_mm, 25.4 * per_mm)
    assert exact == pytest.approx(x_mm, rel=0.002)
    nominal = whole_dots(dots * 25.4 / int(row["dpi"]), int(row["dpi"]))
    assert nominal == pytest.approx(x_mm, rel=0.017)
    for version in (2, 3, 4, 5):
        side = (17 + 4 * version + 2 * Symbol.QR.value) * dots / per_mm
        assert side == pytest.approx(float(row[f"side_v{version}_mm"]), abs=0.006)


@pytest.mark.parametrize(("dpi", "dots"), [(203, 4), (300, 6), (600, 12)])
def test_our_least_module_is_whole_dots_and_lies_in_the_range_of_shops(dpi: int, dots: int) -> None:
    module = whole_dots(MODULE_MM, dpi)
    assert module == pytest.approx(dots * 25.4 / dpi)
    assert 0.396 <= MODULE_MM <= module <= 0.990


def test_a_code_claims_four_modules_of_white_on_every_side() -> None:
    paper = Paper("Test", dpi=300)
    dark = paper.code((100, 80), "2615R6F-7M")
    [(_, claimed)] = paper.codes[0]
    module = (dark.right - dark.left) / matrix("2615R6F-7M", Symbol.QR).across
    edges = [abs(a - b) for a, b in zip(claimed, dark, strict=True)]
    assert edges == pytest.approx([4 * module] * 4)
