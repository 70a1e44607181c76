"""Deeds of steps that have no bench yet, written by tests as the benches will write them."""

from collections.abc import Sequence

from sqlalchemy import select

from app.records import Customer, InLoad, Load, OrderLine, Personal, Whereabouts
from app.store.deed import Deed
from app.work.bundling import yarn_on
from app.work.dividing import must_be_whole
from app.work.people import personal


def into_load(deed: Deed, step: str, yarn: Sequence[int] = (), disc: int | None = None) -> int:
    """Rows, or what hung on a disc then, go into one wash, soak, spin, rail or steamer run."""
    load = deed.add(Load(step=step))
    for row in [*yarn, *(yarn_on(deed, disc) if disc else ())]:
        must_be_whole(deed, row)
        deed.add(InLoad(yarn=row, load=load, basis="scanned"))
    return load


def customer(deed: Deed, name: str) -> int:
    """Someone who buys."""
    row = deed.add(Customer())
    deed.add(personal("name", name, customer=row))
    return row


def erase(deed: Deed, customer: int) -> None:
    """On request: value and salt go, the digest stays."""
    for (row,) in deed.all(select(Personal.id).where(Personal.customer == customer)):
        deed.change(Personal, row, value=None, salt=None)


def send(deed: Deed, skeins: Sequence[int], customer: int | None = None) -> int:
    """These go out with an order; no customer means that nobody knows to whom."""
    line = deed.add(OrderLine(customer=customer, order_no="1001", what="yarn"))
    for skein in skeins:
        deed.begin(Whereabouts(yarn=skein, state="sent", line=line, basis="scanned"))
    return line


def put(deed: Deed, skeins: Sequence[int], state: str, place: int | None = None) -> None:
    """On the table, on a shelf, at a fair, lost, given away."""
    for skein in skeins:
        deed.begin(Whereabouts(yarn=skein, state=state, place=place, basis="scanned"))
