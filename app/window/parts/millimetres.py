"""Lengths on paper as people write them, in millimetres: one, one with its sign, or two."""

import re

from app.problems import BadInput

_ONE = r"(\d{1,4}(?:[.,]\d{1,3})?)\s*(?:mm)?"
_LENGTH = re.compile(rf"\s*([+\-−–]?)\s*{_ONE}\s*")
_PAIR = re.compile(rf"\s*{_ONE}\s*(?:[×x*/;]|\s)\s*{_ONE}\s*", re.IGNORECASE)


def read_mm(text: str) -> float:
    """`38.1`, `38,1 mm`: a length that is not below zero."""
    length = read_signed_mm(text)
    if length < 0:
        raise BadInput(f"{text.strip()} is below zero.", "Write a length in millimetres.")
    return length


def read_signed_mm(text: str) -> float:
    """`-2.1`, `+1,4 mm`, `0`: a length with its sign."""
    if not text.strip():
        raise BadInput("Nothing is written here yet.", "Write millimetres, like 2.1.")
    match = _LENGTH.fullmatch(text)
    if match is None:
        raise BadInput(f"“{text.strip()}” is no length.", "Write millimetres, like 2.1 or -2.1.")
    length = _number(match[2])
    return -length if match[1] in ("-", "−", "–") else length


def read_pair(text: str) -> tuple[float, float]:
    """`63.5 × 38.1`, `70 x 50`, `0 23,5`: across, then down."""
    match = _PAIR.fullmatch(text)
    if match is None:
        raise BadInput(f"“{text.strip()}” is no pair of lengths." if text.strip()
                       else "Nothing is written here yet.",
                       "Write across × down in millimetres, like 63.5 × 38.1.")
    return _number(match[1]), _number(match[2])


def pair_words(pair: tuple[float, float]) -> str:
    """'63.5 × 38.1'."""
    return f"{pair[0]:g} × {pair[1]:g}"


def signed_words(length_mm: float) -> str:
    """'+1.4 mm', '−2.1 mm', '0 mm'."""
    return f"{length_mm:+.4g} mm".replace("-", "−") if round(length_mm, 3) else "0 mm"


def _number(written: str) -> float:
    return float(written.replace(",", "."))
