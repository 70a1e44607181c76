"""Short ways to do deeds of the later steps in tests."""

from collections.abc import Sequence

from app.store.deed import Deed
from app.work import loading, moving, selling


def into_load(deed: Deed, step: str, yarn: Sequence[int] = (), disc: int | None = None) -> int:
    """Rows, or what hung on a disc then, go into one wash, soak, spin, rail or steamer run."""
    return loading.into_load(deed, step, discs=[disc] if disc else (), yarn=yarn)


def customer(deed: Deed, name: str) -> int:
    """Someone who buys."""
    return selling.know_customer(deed, name)


def erase(deed: Deed, customer: int) -> None:
    """On request: value and salt go, the digest stays."""
    selling.forget_customer(deed, customer)


def send(deed: Deed, skeins: Sequence[int], customer: int | None = None) -> int:
    """These go out with an order; no customer means that nobody knows to whom."""
    return selling.sell(deed, skeins, customer)


def put(deed: Deed, skeins: Sequence[int], state: str, place: int | None = None) -> None:
    """On the table, on a shelf, at a fair, lost, given away."""
    moving.move(deed, skeins, moving.To(state, place=place))
