"""At the counter: what is sold, kept or promised to someone, who may be new, as one deed."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import select

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.lookups.prices import price_of
from app.problems import NotFound, Refused
from app.records import Base, Colourway, DyeLot, Whereabouts
from app.store.deed import Deed
from app.work.dividing import skeins
from app.work.kits import sell_kit
from app.work.moving import put_by
from app.work.selling import OrderIn, Wanted, know_customer, place_order, sell, till_number


@dataclass(frozen=True, slots=True)
class Buyer:
    """Someone the book knows, or the name of someone new."""

    customer: int | None = None
    name: str = ""


def sell_to(deed: Deed, tagged: Sequence[int], buyer: Buyer) -> int:
    """Sold to someone with a name. The order that keeps it."""
    customer = known(deed, buyer)
    order = sell(deed, tagged, customer)
    deed.say(f"sold {skeins(len(set(tagged)))} to customer {customer}")
    return order


def sell_kit_to(deed: Deed, kit: int, buyer: Buyer) -> int:
    """A kit bag is sold whole to someone with a name. The order that keeps it."""
    return sell_kit(deed, kit, known(deed, buyer))


def keep_for(
    deed: Deed, tagged: Sequence[int], until: datetime, buyer: Buyer, place: int | None = None,
    basis: str = "scanned",
) -> None:
    """Put by for someone until a day: in this place, else each where it lies now.

    Where their tags were not scanned, only said which they are, they are put by as stated.
    """
    rows = list(dict.fromkeys(tagged))
    if not rows:
        raise Refused("No skein was chosen; nothing was put by.",
                      "Scan their tags, or say how many.")
    customer = known(deed, buyer)
    by_place: dict[int | None, list[int]] = defaultdict(list)
    for row in rows:
        by_place[place or _place_now(deed, row)].append(row)
    for there, those in by_place.items():
        put_by(deed, those, there, until, customer, basis)
    deed.say(f"put by {skeins(len(rows))} until {day_words(until)}")


def promise(
    deed: Deed, lot: int, count: int, buyer: Buyer, put_up: str = "skein"
) -> str:
    """An order by hand for this lot, to be fetched later; its number. Refused: more than is left.
    """
    row = deed.one(
        select(DyeLot.code, DyeLot.base, DyeLot.colourway, Colourway.name,
               Base.name.label("base_name"))
        .join(Colourway, Colourway.id == DyeLot.colourway).join(Base, Base.id == DyeLot.base)
        .where(DyeLot.id == lot, DyeLot.struck.is_(None)))
    if row is None:
        raise NotFound("This lot is not in the book; nothing was promised.", "Scan its tag.")
    price = price_of(deed.connection, row.base, put_up)
    number, customer = till_number(deed), known(deed, buyer)
    wanted = Wanted(f"{row.name}, {row.base_name}", count, lot, price, row.colourway, row.base,
                    put_up)
    place_order(deed, OrderIn(number, deed.happened, "shop", (wanted,), customer))
    deed.say(f"promised {skeins(count, put_up)} of {shown(row.code or 'a lot without a code')}, "
             f"order {number}")
    return number


def known(deed: Deed, buyer: Buyer) -> int:
    """The customer; one who is new is known from here on."""
    return know_customer(deed, buyer.name) if buyer.customer is None else buyer.customer


def _place_now(deed: Deed, yarn: int) -> int | None:
    place: int | None = deed.value(select(Whereabouts.place).where(
        Whereabouts.yarn == yarn, Whereabouts.until.is_(None), Whereabouts.struck.is_(None)))
    return place
