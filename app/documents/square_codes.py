"""Square codes as rows of dark and light, and their size in whole printer dots."""

from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from math import ceil

from ppf.datamatrix import DataMatrix
from qrcode.constants import ERROR_CORRECT_M, ERROR_CORRECT_Q
from qrcode.main import QRCode

MODULE_MM = 0.5  # the least side of one module, on a tag
MM_PER_INCH = 25.4

_MARK_LENGTH = 16  # what a QR code of version 1, level Q holds (ISO/IEC 18004)
_DENSE = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"
_MASK = 1  # fixed, not tried each time: the one of eight that the weakest reader misses least
_PLATE_CODEWORDS = 5  # what a Data Matrix of 12 × 12 holds (ISO/IEC 16022)
_PAD = 129


class Symbol(Enum):
    """What leaves the house wears QR, read by any telephone; what stays wears Data Matrix.

    The value is the white edge that a reader needs, in modules.
    """

    QR = 4
    DATA_MATRIX = 1


@dataclass(frozen=True, slots=True)
class Matrix:
    """One square code: a run is (row, column, length) of dark modules side by side."""

    across: int
    quiet: int
    runs: tuple[tuple[int, int, int], ...]


@lru_cache(maxsize=2048)
def matrix(text: str, symbol: Symbol) -> Matrix:
    """The code for a text: QR 1-Q for marks, 4-M for longer texts; Data Matrix 12 × 12."""
    rows = _qr_rows(text) if symbol is Symbol.QR else _data_matrix_rows(text)
    return Matrix(len(rows), symbol.value, tuple(_dark_runs(rows)))


def fits_a_tag(text: str) -> bool:
    """Whether a text fits the square code of a tag: up to 16 of the signs that QR packs densest.

    QR version 1, level Q, in its alphanumeric mode (ISO/IEC 18004).
    """
    return len(text) <= _MARK_LENGTH and all(sign in _DENSE for sign in text)


def whole_dots(least_mm: float, dpi: int) -> float:
    """The smallest module of whole printer dots that is not under the least, in mm."""
    dot = MM_PER_INCH / dpi
    return ceil(round(least_mm / dot, 2)) * dot


def to_dot(place_mm: float, dpi: int) -> float:
    """The place moved to the nearest printer dot, in mm."""
    dot = MM_PER_INCH / dpi
    return round(place_mm / dot) * dot


def _qr_rows(text: str) -> list[list[bool]]:
    version, level = (1, ERROR_CORRECT_Q) if len(text) <= _MARK_LENGTH else (4, ERROR_CORRECT_M)
    code = QRCode(version, level, border=0, mask_pattern=_MASK)
    code.add_data(text, optimize=0)
    code.make(fit=False)
    return [[bool(module) for module in row] for row in code.modules]


class _Padded(str):
    """A text that fills at least a 12 × 12 code, so that all plates wear one size."""

    def encode(self, encoding: str = "utf-8", errors: str = "strict") -> bytes:
        words = list(super().encode(encoding))
        while len(words) < _PLATE_CODEWORDS:
            words.append(_pad(len(words) + 1, first=_PAD not in words))
        return bytes(words)


def _pad(place: int, *, first: bool) -> int:
    """The filler at a place, scattered as ISO/IEC 16022 asks so that it forms no pattern."""
    return _PAD if first else ((149 * place) % 253 + 1 + _PAD) % 254


def _data_matrix_rows(text: str) -> list[list[bool]]:
    rows = DataMatrix(_Padded(text), codecs=["ascii"]).matrix
    return [[bool(module) for module in row] for row in rows]


def _dark_runs(rows: list[list[bool]]) -> list[tuple[int, int, int]]:
    runs = []
    for r, row in enumerate(rows):
        start = None
        for c, dark in enumerate([*row, False]):
            if dark and start is None:
                start = c
            elif not dark and start is not None:
                runs.append((r, start, c - start))
                start = None
    return runs
