"""Square codes: their size in modules, and modules of whole dots."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.calculations.codes import Kind, numbered
from app.documents.square_codes import Symbol, matrix, to_dot, whole_dots


def test_a_mark_is_a_qr_code_of_version_one() -> None:
    code = matrix("2615R6F-7M", Symbol.QR)
    assert (code.across, code.quiet) == (21, 4)


def test_a_journal_head_takes_the_larger_qr_code() -> None:
    assert matrix("E41207-" + "0123456789ABCDEF" * 4, Symbol.QR).across == 33


@given(
    st.sampled_from([kind for kind in Kind if kind not in (Kind.LOT, Kind.SKEIN)]),
    st.integers(0, 999_999),
)
def test_every_plate_wears_a_data_matrix_of_twelve(kind: Kind, number: int) -> None:
    code = matrix(numbered(kind, number).text, Symbol.DATA_MATRIX)
    assert (code.across, code.quiet) == (12, 1)


@pytest.mark.parametrize(("dpi", "dots"), [(203, 4), (300, 6), (305, 6), (600, 12)])
def test_a_module_is_the_fewest_whole_dots_that_make_half_a_millimetre(dpi: int, dots: int) -> None:
    assert whole_dots(0.5, dpi) == pytest.approx(dots * 25.4 / dpi)


@given(st.floats(0, 300), st.sampled_from([203, 300, 600]))
def test_a_place_moves_to_a_dot_and_not_farther_than_half_of_one(place: float, dpi: int) -> None:
    moved, dot = to_dot(place, dpi), 25.4 / dpi
    assert abs(moved - place) <= dot / 2 + 1e-9
    assert moved / dot == pytest.approx(round(moved / dot))
