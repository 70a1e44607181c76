"""What comes back from a buyer: with its tag it is itself again, without one it is one of those."""

from collections.abc import Sequence

from sqlalchemy import select

from app.lookups.skeins import then_of
from app.problems import NotFound, Refused
from app.records import CustomerOrder, OrderLine, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.dividing import mark_of, skeins
from app.work.matching import find, is_one_of
from app.work.moving import WORDS, To, move


def came_back(deed: Deed, tagged: Sequence[int], order: str | None = None) -> None:
    """Skeins with their tags are on the table again, to be looked at before they are shelved.

    Marked: one that was never sold, or was not sent with the order that was named.
    """
    rows = list(dict.fromkeys(tagged))
    sent_with = set() if order is None else set(_sent_with(deed, order))
    for row in rows:
        then = then_of(deed.connection, row, deed.happened)
        if then not in (None, "sent", "fair"):
            deed.note(f"{mark_of(deed, row)} comes back and was never sold: it was {WORDS[then]}.")
        elif order is not None and row not in sent_with:
            deed.note(f"{mark_of(deed, row)} was not sent with order {order}: look whose it is.")
    move(deed, rows, To("table"))
    deed.say(f"{skeins(len(rows))} came back" + (f" of order {order}" if order else ""))


def came_back_untagged(
    deed: Deed, base: int, mg: int, order: str, put_up: str = "skein"
) -> int:
    """A skein without its tag comes back: one of those of this base that the order sent. The find.

    Which of them stays not known; that it is one of them is what the customer says.
    """
    sent = [row for (row,) in deed.all(
        select(Yarn.id).join(Whereabouts, Whereabouts.yarn == Yarn.id)
        .where(Yarn.id.in_(_sent_with(deed, order)), Yarn.base == base,
               Yarn.put_up == put_up, Whereabouts.state == "sent", Whereabouts.until.is_(None),
               Whereabouts.struck.is_(None)).order_by(Yarn.id))]
    if not sent:
        raise Refused(f"No {put_up} of this base is with the buyer of order {order}; nothing was "
                      "saved.", "Choose another order, or keep it as a find that is not matched.")
    found = find(deed, base, mg, put_up)
    is_one_of(deed, found, sent)
    deed.say(f"1 {put_up} without a tag came back: one of {skeins(len(sent), put_up)} of order "
             f"{order}, as stated")
    return found


def _sent_with(deed: Deed, order: str) -> list[int]:
    """All skeins ever sent with an order; raises NotFound where there is no such order."""
    row = deed.value(select(CustomerOrder.id).where(
        CustomerOrder.number == order, CustomerOrder.struck.is_(None)))
    if row is None:
        raise NotFound(f"There is no order {order}; nothing was saved.", "Look it up by its buyer.")
    return [yarn for (yarn,) in deed.all(
        select(Whereabouts.yarn).join(OrderLine, OrderLine.id == Whereabouts.line)
        .where(OrderLine.customer_order == row, Whereabouts.state == "sent",
               Whereabouts.struck.is_(None)))]
