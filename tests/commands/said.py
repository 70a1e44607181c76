"""What came of words on the command line."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Said:
    """How a word ended, and what it said where."""

    code: int
    out: str
    err: str


Say = Callable[..., Said]
