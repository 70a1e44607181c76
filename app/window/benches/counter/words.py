"""What the counter says: how many are left, where they lie, and in a sentence where the rest are.
"""

from collections import Counter
from collections.abc import Sequence
from datetime import datetime

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.calculations.moments import day_words
from app.lookups.agreed import OfferKept
from app.lookups.bought import Bought
from app.lookups.counter import UNSOLD, AtCounter, Tagged
from app.lookups.holds import HoldFacts
from app.lookups.kits import KitNow
from app.lookups.lot_lines import LotLine
from app.lookups.prices import money_words
from app.lookups.told_faults import told_words

MOST_OFFERS = 2
"""Offers that are told of a lot, the last ones."""
_ORDER = ("shelf", "table", "put by", "kit", "taken", "fair", "sent", "given", "lost",
          "discarded", None)
_GONE = {"given": "given away", "lost": "lost", "discarded": "thrown away", "fair": "at a fair",
         "table": "on the table, not on a shelf yet"}


def pieces(count: int, put_up: str = "skein") -> str:
    """'1 skein', '5 minis'."""
    return f"{count:,} {put_up}" + ("" if count == 1 else "s")


def left_words(lot: AtCounter) -> tuple[str, str, str]:
    """The number that decides, what it counts, and metres and places."""
    free, count = lot.free, lot.left.count
    put_ups = Counter(one.put_up for one in free)
    kind = next(iter(put_ups), "skein") if len(put_ups) < 2 else "piece"
    counts = f"{kind if count == 1 else f'{kind}s'} left to sell"
    if len(put_ups) > 1:
        counts += f" of {listing(pieces(n, put_up) for put_up, n in put_ups.items())}"
    return f"{count}", counts, " · ".join(filter(None, (_metres(lot), *_places(free))))


def rest_words(lot: AtCounter, now: datetime) -> str:
    """'9 were made: 3 on shelf 004; 1 put by until 4 May 2026 for Osk; 5 sold (buyer known).'

    Where some became something else, what came of them wears tags too: nothing is added up.
    """
    states = sorted(lot.skeins, key=lambda one: (_ORDER.index(one.state), one.order_of_place))
    parts = [f"{count}\u00a0{words}" for words, count in
             Counter(_state(one, now) for one in states).items()]
    if lot.undone:
        parts.append(f"{lot.undone} that {'wears' if lot.undone == 1 else 'wear'} no tag of it now")
    made = len(lot.skeins) + lot.undone
    if lot.remade:
        parts.append(f"{lot.remade} more {'was' if lot.remade == 1 else 'were'} made into "
                     "something else")
        return f"{made} {'wears its tag' if made == 1 else 'wear its tags'}: {'; '.join(parts)}."
    if not made:
        return "No skein of it wears a tag yet."
    return f"{made} {'was' if made == 1 else 'were'} made: {'; '.join(parts)}."


def promised_words(lot: AtCounter) -> str:
    """What orders still want of it, and whether that many are there."""
    if not lot.promises:
        return ""
    orders = listing(dict.fromkeys(promise.order for promise in lot.promises))
    many = "orders" if len({promise.order for promise in lot.promises}) > 1 else "order"
    said = f"{lot.left.promised} {_are(lot.left.promised)} promised to {many} {orders}"
    if lot.left.short:
        return f"{said}, and {lot.left.short} of them {_are(lot.left.short)} not there any more."
    return f"{said}, and not counted as left."


def offers_words(lot: AtCounter) -> str:
    """'Offered 3 May 2026 to Bo Ek, who wanted 2: nearest lot 26·06·H3W, 0.1 apart; taken.'

    What was taken of the lot itself is left out: it is seen where it lies now.
    """
    told = [one for one in lot.offers if (one.way, one.answer) != ("same lot", "taken")]
    return "\n".join(_offer(one) for one in told[:MOST_OFFERS])


def price_words(lot: AtCounter) -> str:
    """'24.50 EUR each', 'skein 24.50 · mini 6.00'; nothing where none is set."""
    prices = {one.put_up: one.price for one in lot.skeins if one.price is not None}
    if not prices:
        return ""
    if len(prices) == 1:
        return f"{money_words(next(iter(prices.values())), lot.currency)} each"
    return " · ".join(f"{put_up} {money_words(price, lot.currency)}"
                      for put_up, price in prices.items())


def skein_words(one: Tagged, now: datetime) -> str:
    """This very skein: 'This skein, 26·15·R6F 7M: sold 18 Apr 2026 to Osk, order T3.'"""
    state = _sold(one) if one.state == "sent" else _state(one, now)
    second = f" A second: {one.second}." if one.second else ""
    return f"This skein, {shown(one.mark)}: {state}.{second}"


def faults_words(one: Tagged) -> str:
    """What was told of this very skein, where nobody saw it good since."""
    return " ".join(told_words(told, "this skein") for told in one.told)


def hold_words(hold: HoldFacts) -> str:
    """'Cone C·0114·F: oil in the yarn. Ask OW, Osk Wray.'"""
    return f"{hold.on[:1].upper()}{hold.on[1:]}: {hold.why}. Ask {hold.ask}."


def age_words(dyed: datetime | None, now: datetime) -> str:
    """'dyed 6 Apr 2026, 3 weeks ago'."""
    if dyed is None:
        return "from before the book"
    days = (now - dyed).days
    for length, unit in ((365, "year"), (30, "month"), (7, "week"), (1, "day")):
        if days >= (2 * length if length > 1 else 1):
            return f"dyed {day_words(dyed)}, {days // length} {unit}" + (
                "" if days // length == 1 else "s") + " ago"
    return f"dyed {day_words(dyed)}"


def left_short(line: LotLine) -> str:
    """'3 left', '0 left'."""
    return f"{line.left.count} left"


def bought_words(one: Bought) -> str:
    """'2 skeins, 18 Apr 2026, order T3, 1 came back; customer agreed 18 Apr 2026'."""
    parts = [pieces(one.count, one.put_up)] if one.count else []
    if one.waiting:
        parts.append(f"{pieces(one.waiting, one.put_up)} taken, not sent yet")
    if not one.count and not one.waiting:
        parts.append(f"{pieces(one.wanted, one.put_up)} wanted, "
                     + ("called off" if one.over else "none taken yet"))
    parts += [day_words(one.placed), f"order {one.number}"]
    if one.back:
        parts.append(f"{one.back} came back")
    settled = f"; {one.agreed.how} {day_words(one.agreed.at)}" if one.agreed else ""
    return ", ".join(parts) + settled


def bag_count(kit: KitNow) -> str:
    """'2 skeins and 1 mini': what a kit bag holds."""
    put_ups = Counter(one.put_up for one in kit.skeins)
    return listing(pieces(count, put_up) for put_up, count in put_ups.items())


def bag_words(kit: KitNow) -> str:
    """'Coal Hatch, Downholm DK: 26·10·WX9 K4. Seventh Buoy, …': what is in a kit bag."""
    by_yarn: dict[str, list[str]] = {}
    for one in kit.skeins:
        by_yarn.setdefault(f"{one.colourway}, {one.base}", []).append(shown(one.mark))
    return " ".join(f"{yarn}: {listing(marks)}." for yarn, marks in by_yarn.items())


def plate_words(place_words: str) -> str:
    """'shelf 004' of 'shelf 004, by the window': as short as a key wants it."""
    return place_words.partition(",")[0]


def fetch_words(chosen: Sequence[Tagged]) -> str:
    """'7M and K2 from shelf 004, 9X from shelf 007': just these marks are fetched."""
    by_place: dict[str, list[str]] = {}
    for one in chosen:
        by_place.setdefault(one.place_words or _GONE.get(one.state or "", "not known where"),
                            []).append(one.mark.rpartition("-")[2])
    return ", ".join(f"{listing(marks)} from {place}" for place, marks in by_place.items())


def _offer(one: OfferKept) -> str:
    whom = one.name or (f"customer {one.customer}" if one.customer else "")
    to = f" to {whom}, who wanted {one.wanted}" if whom else f", {one.wanted} wanted"
    other = f" {shown(one.other)}" if one.other else ""
    apart = "" if one.ciede2000 is None else f", {one.ciede2000:.1f} apart"
    return f"Offered {day_words(one.at)}{to}: {one.way}{other}{apart}; {one.answer}."


def _metres(lot: AtCounter) -> str:
    """Of those left; where several put-ups lie there, what surely is left of their metres."""
    lengths = [one.mm for one in lot.free]
    known = sorted(mm for mm in lengths if mm is not None)
    if not lot.left.count or len(known) < len(lengths):
        return ""
    least = "at least " if lot.left.promised and len(set(known)) > 1 else ""
    return f"{least}{sum(known[:lot.left.count]) / 1000:,.0f} m"


def _places(free: Sequence[Tagged]) -> list[str]:
    return [f"{count} on {place}" for place, count in
            Counter(one.place_words for one in free).items()]


def _state(one: Tagged, now: datetime) -> str:
    state = _plain_state(one, now)
    state += " under a void tag" if one.void else ""
    return f"{state}, on HOLD" if one.holds and one.state in UNSOLD else state


def _plain_state(one: Tagged, now: datetime) -> str:
    if one.state == "shelf":
        return f"on {one.place_words}"
    if one.state == "put by":
        name = f" for {one.name}" if one.name else ""
        if one.ends and one.ends <= now:
            return f"put by{name}, over since {_on(one.ends)}"
        return f"put by until {_on(one.ends)}{name}"
    if one.state == "kit":
        return "in an unsold kit" + (f", {one.kit}" if one.kit else "")
    if one.state == "taken":
        return f"taken for order {one.order}, not sent yet"
    if one.state == "sent":
        return "sold (buyer not known)" if one.customer is None else "sold (buyer known)"
    return _GONE.get(one.state or "", "not known where")


def _sold(one: Tagged) -> str:
    buyer = "without a name" if one.customer is None else (
        f"to {one.name}" if one.name else "to someone whose name was removed")
    return f"sold {_on(one.since)} {buyer}, order {one.order}"


def _are(count: int) -> str:
    return "is" if count == 1 else "are"


def _on(moment: datetime | None) -> str:
    return day_words(moment) if moment else "a day not known"
