"""Parts rounded so that they add up on paper as they do in the book."""

from collections.abc import Sequence


def adding_up(parts: Sequence[int], step: int) -> tuple[int, ...]:
    """Whole steps for each part, no part off by a step, that add up to their rounded sum.

    The largest remainders are rounded up (Hamilton's method); parts are not below nothing.
    """
    whole = [part // step for part in parts]
    up = (2 * sum(parts) + step) // (2 * step) - sum(whole)
    largest = sorted(range(len(parts)), key=lambda n: -(parts[n] % step))[:up]
    return tuple(steps + (n in largest) for n, steps in enumerate(whole))
