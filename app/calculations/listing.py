"""Several things in one sentence."""

from collections.abc import Iterable


def listing(things: Iterable[str]) -> str:
    """'A, B and C'; nothing for none."""
    said = list(things)
    return " and ".join(filter(None, (", ".join(said[:-1]), *said[-1:])))
