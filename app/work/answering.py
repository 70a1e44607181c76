"""What a customer took of what was offered, and what is done for it at once, as one deed."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from sqlalchemy import select

from app.records import CustomerOrder, OrderLine
from app.store.deed import Deed
from app.work.kits import open_kit
from app.work.moving import To, end_put_by, move
from app.work.offering import OfferIn, agree_line, offered
from app.work.serving import Buyer, keep_for, known, promise


def keep_offered(
    deed: Deed, said: OfferIn, tagged: Sequence[int], until: datetime, buyer: Buyer,
    place: int | None = None, basis: str = "scanned",
) -> None:
    """They take so many of what was offered, and it is put by for them until a day."""
    customer = known(deed, buyer)
    offered(deed, replace(said, customer=customer))
    keep_for(deed, tagged, until, Buyer(customer), place, basis)


def promise_offered(
    deed: Deed, said: OfferIn, lot: int, count: int, buyer: Buyer, put_up: str = "skein"
) -> str:
    """They take so many of a lot on an order; of another lot than theirs they agreed. Its number.
    """
    customer = known(deed, buyer)
    offered(deed, replace(said, customer=customer))
    number = promise(deed, lot, count, Buyer(customer), put_up)
    if lot != said.lot:
        promised = deed.said
        agree_line(deed, _line_of(deed, number), "customer agreed")
        deed.say(f"{promised}; the customer agreed to this lot")
    return number


def _line_of(deed: Deed, number: str) -> int:
    line: int = deed.value(
        select(OrderLine.id).join(CustomerOrder, CustomerOrder.id == OrderLine.customer_order)
        .where(CustomerOrder.number == number, CustomerOrder.struck.is_(None)))
    return line


def open_kit_offered(
    deed: Deed, said: OfferIn, kit: int, place: int, basis: str = "scanned"
) -> None:
    """A bag is opened for them: its skeins lie on this shelf."""
    offered(deed, said)
    open_kit(deed, kit, place, basis)


def shelve_offered(
    deed: Deed, said: OfferIn, tagged: Sequence[int], place: int, basis: str = "scanned"
) -> None:
    """What lay on the table was looked at and lies on this shelf."""
    offered(deed, said)
    move(deed, tagged, To("shelf", place=place, basis=basis))


def end_put_by_offered(
    deed: Deed, said: OfferIn, tagged: Sequence[int], place: int | None = None
) -> None:
    """They for whom it was put by do not want it any more: it lies on its shelf for this one."""
    offered(deed, said)
    end_put_by(deed, tagged, place)
