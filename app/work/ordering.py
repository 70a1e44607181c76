"""An order written by hand: by telephone, by letter, or because the file said it wrong."""

from dataclasses import dataclass

from sqlalchemy import func, select

from app.calculations.codes import bare_characters
from app.lookups.order_words import read_words, studio_names
from app.problems import Refused
from app.records import CustomerOrder, DyeLot, Personal
from app.store.deed import Deed
from app.work.selling import OrderIn, Wanted, know_customer, order_of, pieces, place_order

MAIL = "mail"
"""The field of a customer by which one order's buyer is known as another's."""


@dataclass(frozen=True, slots=True)
class Said:
    """A line as it was said: what, how many, and the code of a lot where one was named."""

    what: str
    count: int
    lot: str = ""


@dataclass(frozen=True, slots=True)
class HandOrder:
    """An order as it was written; no number takes the next of the studio's own."""

    number: str
    name: str
    mail: str
    lines: tuple[Said, ...]


def order_by_hand(deed: Deed, order: HandOrder) -> int:
    """The order with its lines, read as a file's are. The order.

    A customer is one that the book knows only where the e-mail is the same.
    """
    number = order.number.strip().removeprefix("#") or _next_number(deed)
    names = studio_names(deed.connection)
    wanted = []
    for line in order.lines:
        lot = _lot(deed, line.lot) if line.lot.strip() else None
        read = read_words(line.what, names)
        if lot is None and read.doubt:
            deed.note(f"{read.doubt} It is kept as words.")
        wanted.append(Wanted(line.what, line.count, lot, None, read.colourway, read.base,
                             read.put_up))
    lines = place_order(deed, OrderIn(number, deed.happened, "shop", tuple(wanted),
                                      _customer(deed, order)))
    deed.say(f"wrote order {number}: {pieces(sum(line.count for line in order.lines))}")
    return order_of(deed, lines[0])


def _customer(deed: Deed, order: HandOrder) -> int | None:
    mail = order.mail.strip()
    if mail:
        for row in deed.all(
                select(Personal.customer, Personal.value)
                .where(Personal.field == MAIL, Personal.customer.is_not(None),
                       Personal.value.is_not(None), Personal.struck.is_(None))
                .order_by(Personal.id)):
            if row.value.casefold() == mail.casefold():
                known: int = row.customer
                return known
    name = order.name.strip() or mail
    return know_customer(deed, name, {MAIL: mail} if mail else None) if name else None


def _lot(deed: Deed, code: str) -> int:
    lot: int | None = deed.value(select(DyeLot.id).where(
        DyeLot.code == bare_characters(code), DyeLot.struck.is_(None)))
    if lot is None:
        raise Refused(f"No lot has the code {code.strip()}; nothing was saved.",
                      "Read it once more, or leave the lot open.")
    return lot


def _next_number(deed: Deed) -> str:
    return f"H{(deed.value(select(func.max(CustomerOrder.id))) or 0) + 1}"
