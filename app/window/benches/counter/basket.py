"""The basket: the tags that were scanned, what each costs, and why one of them may not be sold."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from app.calculations.codes import shown
from app.lookups.counter import AtCounter, Tagged
from app.lookups.lot_lines import LotLine
from app.lookups.prices import money_words
from app.window.benches.counter.words import hold_words, pieces


@dataclass(frozen=True, slots=True)
class Item:
    """One skein on the counter."""

    skein: Tagged
    line: LotLine
    currency: str = ""
    asks: tuple[str, ...] = ()
    """Of its holds: what each is, and whom to ask."""
    over: bool = False
    """Whether the day that it was put by until is over."""

    @property
    def shown(self) -> str:
        """Its mark as people read it."""
        return shown(self.skein.mark)

    def trouble(self, customer: int | None) -> str:
        """Why it may not be sold to this customer, or to nobody known; nothing if it may."""
        one = self.skein
        if one.holds:
            return " ".join(("HOLD.", *self.asks))
        theirs = customer is not None and customer == one.customer
        if one.state == "put by" and not (self.over or theirs):
            return f"put by for {one.name or 'somebody'}: sell it to them, or scan its shelf"
        if one.state == "kit":
            return "in a kit: scan its bag to sell or open it"
        if one.state == "taken":
            return f"taken for order {one.order}"
        if one.state in ("lost", "given", "discarded", None):
            return "not on a shelf by the book: scan the shelf it lies on first"
        return ""


def item_of(lot: AtCounter, skein: Tagged, now: datetime) -> Item:
    """A scanned skein with what the book says of its lot."""
    asks = tuple(hold_words(hold) for hold in lot.holds_of(skein))
    over = skein.ends is not None and skein.ends <= now
    return Item(skein, lot.line, lot.currency, asks, over)


class Basket:
    """What lies on the counter, in the order it was scanned."""

    def __init__(self) -> None:
        self.items: list[Item] = []

    def __bool__(self) -> bool:
        return bool(self.items)

    def __contains__(self, mark: str) -> bool:
        return any(item.skein.mark == mark for item in self.items)

    @property
    def yarn(self) -> tuple[int, ...]:
        """The skeins in it."""
        return tuple(item.skein.yarn for item in self.items)

    @property
    def lots(self) -> tuple[int, ...]:
        """The lots they are of."""
        return tuple(dict.fromkeys(item.line.lot for item in self.items))

    def put(self, item: Item) -> None:
        """One more; the same again takes the place of the first."""
        self.take_out(item.skein.mark)
        self.items.append(item)

    def take_out(self, mark: str) -> None:
        """This one is not wanted."""
        self.items = [item for item in self.items if item.skein.mark != mark]

    def empty(self) -> None:
        """Nothing lies there any more."""
        self.items = []

    def refresh(self, lots: Mapping[int, AtCounter], now: datetime) -> None:
        """As the book says now; what was sold meanwhile is out."""
        self.items = [
            item_of(lot, skein, now) for item in self.items
            if (lot := lots.get(item.line.lot)) is not None
            and (skein := lot.tagged(item.skein.mark)) is not None and skein.state != "sent"
        ]

    def trouble(self, customer: int | None) -> str:
        """Why these may not be sold to this customer, or to nobody known; nothing if they may."""
        return _first(self.items, [item.trouble(customer) for item in self.items])

    def trouble_with_all(self) -> str:
        """Why they may be sold to nobody at all, whoever it is kept for."""
        return _first(self.items, [item.trouble(item.skein.customer) for item in self.items])

    def sum_words(self) -> str:
        """'3 skeins of 2 lots · 73.50', or for how many no price is set."""
        many = f"{_pieces(self.items)} of {len(self.lots)} lot{'' if len(self.lots) == 1 else 's'}"
        prices = [item.skein.price for item in self.items]
        known = [price for price in prices if price is not None]
        if not known:
            return f"{many} · no price is set"
        missing = len(prices) - len(known)
        more = f", and {missing} without a price" if missing else ""
        return f"{many} · {money_words(sum(known), self.items[0].currency)}{more}"


def _first(items: Sequence[Item], troubles: Sequence[str]) -> str:
    return next((f"{item.shown}: {why}" for item, why in zip(items, troubles, strict=True)
                 if why), "")


def _pieces(items: Iterable[Item]) -> str:
    counts: dict[str, int] = {}
    for item in items:
        counts[item.skein.put_up] = counts.get(item.skein.put_up, 0) + 1
    return ", ".join(pieces(count, put_up) for put_up, count in counts.items())
