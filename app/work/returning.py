"""What comes back from a buyer: with its tag it is itself again, without one it is one of those."""

from collections.abc import Collection, Sequence

from sqlalchemy import select

from app.lookups.certainty import held_by
from app.lookups.skeins import named_by_tag, then_of
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.records import CustomerOrder, OrderLine, Second, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.dividing import mark_of, skeins
from app.work.matching import find, is_one_of
from app.work.moving import WORDS, To, call_second, move
from app.work.reporting import FaultIn, report_fault, seen_good

AS_IT_LEFT, WOUND, SMELLS, NOT_YET = LOOKS = (
    "as it left", "was wound", "smells", "not looked at yet")
"""What is seen of a skein that comes back."""
_MAY_BE_SHELVED = (AS_IT_LEFT, WOUND)


def came_back(deed: Deed, tagged: Sequence[int], order: str | None = None) -> None:
    """Skeins with their tags are on the table again, to be looked at before they are shelved.

    Marked: one that was never sold, was not sent with the order that was named, or is on hold.
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
    _note_holds(deed, rows)
    deed.say(f"{skeins(len(rows))} came back" + (f" of order {order}" if order else ""))


def taken_back(
    deed: Deed, tagged: Sequence[int], look: str, order: str | None = None,
    place: int | None = None, basis: str = "scanned",
) -> None:
    """Skeins with their tags came back, and were looked at: was it wound, does it smell?

    As it left, a skein is seen good; one that was wound is a second from now on. Both may lie on a
    shelf again at once, known by `basis`. One that smells is reported and stays on the table.
    Refused: another look.
    """
    if look not in LOOKS:
        raise Refused("This does not say how it looks; nothing was saved.",
                      f"Choose: {', '.join(LOOKS)}.")
    rows = list(dict.fromkeys(tagged))
    came_back(deed, rows, order)
    if look == AS_IT_LEFT:
        seen_good(deed, rows, "return")
    elif look == SMELLS:
        report_fault(deed, FaultIn("smell", "return"), rows)
    elif look == WOUND and (fresh := _not_seconds(deed, rows)):
        call_second(deed, fresh, "was wound by a buyer")
    where = ""
    if place is not None and look in _MAY_BE_SHELVED:
        move(deed, rows, To("shelf", place=place, basis=basis))
        where = ", on a shelf again"
    deed.say(f"{skeins(len(rows))} came back" + (f" of order {order}" if order else "")
             + f": {look}{where}")


def came_back_untagged(
    deed: Deed, base: int, mg: int, order: str, put_up: str = "skein",
    lots: Collection[int] = (),
) -> int:
    """A skein without its tag comes back: one of those of this base that the order sent. The find.

    Where lots are named, its shade says that it is of one of them. Which skein it is stays not
    known; that it is one of them is what the customer says.
    """
    sent = [row for (row,) in deed.all(
        select(Yarn.id).join(Whereabouts, Whereabouts.yarn == Yarn.id)
        .where(Yarn.id.in_(_sent_with(deed, order)), Yarn.base == base,
               Yarn.put_up == put_up, Whereabouts.state == "sent", Whereabouts.until.is_(None),
               Whereabouts.struck.is_(None)).order_by(Yarn.id))]
    if lots:
        tags = named_by_tag(deed.connection, sent)
        sent = [row for row in sent if row in tags and tags[row].lot in lots]
    if not sent:
        of = "base and shade" if lots else "base"
        raise Refused(f"No {put_up} of this {of} is with the buyer of order {order}; nothing was "
                      "saved.", "Choose another order, or keep it as a find that is not matched.")
    found = find(deed, base, mg, put_up)
    is_one_of(deed, found, sent)
    deed.say(f"1 {put_up} without a tag came back: one of {skeins(len(sent), put_up)} of order "
             f"{order}, as stated")
    return found


def _note_holds(deed: Deed, rows: Sequence[int]) -> None:
    found = thread(deed.connection, rows)
    for row in rows if found.holds else ():
        if held_by(found, row):
            deed.note(f"HOLD: {mark_of(deed, row)} may not be sold again: lay it apart, and ask "
                      "who placed the hold.")


def _not_seconds(deed: Deed, rows: Sequence[int]) -> list[int]:
    known = {yarn for (yarn,) in deed.all(select(Second.yarn).where(
        Second.yarn.in_(rows), Second.struck.is_(None)))}
    return [row for row in rows if row not in known]


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
