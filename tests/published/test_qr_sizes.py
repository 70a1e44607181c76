"""The size of a QR code against ISO/IEC 18004's capacity table, and whether our codes fit.

Versions 1 to 5 were read in a manual's copy of the table, version 6 in part and from memory; every
cell is tried here with the library that draws our codes. Payload sizes were computed with another.
"""

import pytest
import qrcode
from qrcode import constants
from qrcode.exceptions import DataOverflowError

from app.calculations.codes import Kind, numbered, read
from tests.published.published_values import rows_of

LEVELS = {
    "L": constants.ERROR_CORRECT_L,
    "M": constants.ERROR_CORRECT_M,
    "Q": constants.ERROR_CORRECT_Q,
    "H": constants.ERROR_CORRECT_H,
}
CAPACITIES = rows_of("qr_capacity")
PAYLOADS = rows_of("qr_payload_sizes")
QUIET_MODULES = 2 * 4


def modules(text: str, version: int, level: str) -> int:
    """The side of the code in modules; raises DataOverflowError when the text does not fit."""
    code = qrcode.QRCode(version, LEVELS[level], border=0, mask_pattern=0)
    code.add_data(text, optimize=0)
    code.make(fit=False)
    return len(code.get_matrix())


@pytest.mark.parametrize("row", CAPACITIES, ids=lambda row: f"{row['version']}-{row['ec']}")
def test_as_many_characters_fit_as_the_table_says_and_not_one_more(row: dict[str, str]) -> None:
    version, level = int(row["version"]), row["ec"]
    for mode, character in (("numeric", "7"), ("alphanumeric", "K"), ("byte", "k")):
        most = int(row[mode])
        assert modules(character * most, version, level) == int(row["modules"])
        with pytest.raises(DataOverflowError):
            modules(character * (most + 1), version, level)


@pytest.mark.parametrize("row", PAYLOADS, ids=lambda row: f"{row['chars']}-{row['ec']}")
def test_a_payload_takes_the_version_that_another_library_took(row: dict[str, str]) -> None:
    version = int(row["version"])
    side = modules(row["payload"], version, row["ec"])
    assert side == int(row["modules"]) == int(row["modules_with_quiet_zone"]) - QUIET_MODULES
    if version > 1:
        with pytest.raises(DataOverflowError):
            modules(row["payload"], version - 1, row["ec"])


@pytest.mark.parametrize(
    "text",
    ["2619K44", "2619K44-7M", numbered(Kind.CONE, 114).text, numbered(Kind.SHEET, 999_999).text],
)
def test_every_code_of_ours_fits_version_1_q_in_the_alphanumeric_mode(text: str) -> None:
    (capacity,) = (row for row in CAPACITIES if (row["version"], row["ec"]) == ("1", "Q"))
    assert len(text) <= int(capacity["alphanumeric"]) == 16
    assert modules(read(text).text, 1, "Q") == 21


def test_with_its_quiet_zone_and_modules_of_half_a_millimetre_a_mark_is_14_5_mm_wide() -> None:
    """Quiet zone of 4 modules: ISO/IEC 18004, from memory."""
    assert (modules("2619K44-7M", 1, "Q") + QUIET_MODULES) * 0.5 == 14.5
