"""Chance as an argument: what the papers name is drawn as named, all else as the seed has it."""

from collections.abc import Collection
from random import Random
from typing import Any

from app.calculations.codes import code_of


class Chance(Random):
    """Draws codes and marks; those that the studio's papers name are kept for their own bath."""

    def __init__(self, seed: int, named: Collection[str] = ()) -> None:
        super().__init__(seed)
        self._kept = {drawn_of(code) for code in named if code_of(code)}
        self._next: list[str] = []

    def will_draw(self, codes: Collection[str]) -> None:
        """The next lots get these codes: a code's drawn characters are its fifth and sixth."""
        self._next += [drawn_of(code) for code in codes]

    def choice(self, seq: Any) -> Any:
        """What was named, if anything was; else one of those that nobody named.

        Raises LookupError where the named one is not free.
        """
        if self._next:
            wanted = self._next.pop(0)
            if wanted not in seq:
                raise LookupError(f"{wanted} is not among what may be drawn")
            return wanted
        return super().choice([one for one in seq if one not in self._kept])


def drawn_of(code: str) -> str:
    """The part of a lot's code that is drawn: year and week stand before it, the check after."""
    return code[4:6]
