"""From which lots the lines of open orders can be filled now, and where these skeins lie."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.calculations.codes import shown
from app.lookups.counter import place_words
from app.lookups.left_to_sell import Left, left_of
from app.lookups.orders import LineNow
from app.records import DyeLot, Plate, Whereabouts, Yarn
from app.store.dialect import among, listed

_LOOKED_AT = 300  # newest lots of a base, where no colourway is named


@dataclass(frozen=True, slots=True)
class Offer:
    """Free skeins of one lot for one line, and how many lie in which place."""

    lot: int
    code: str | None
    count: int
    places: tuple[tuple[str, int], ...]

    @property
    def words(self) -> str:
        """'26·15·R6F: 2 on shelf 003, 2 on shelf 007', '26·15·R6F: 2 of the 5 on shelf 003'."""
        code = shown(self.code) if self.code else "a lot without a code yet"
        lying = sum(count for _, count in self.places)
        some = f"{self.count} of the " if self.count < lying else ""
        return f"{code}: {some}" + ", ".join(f"{count} on {place}" for place, count in self.places)


_LOTS = (
    select(DyeLot.id, DyeLot.code, DyeLot.colourway, DyeLot.base)
    .where(DyeLot.struck.is_(None)).order_by(DyeLot.id.desc())
)
_LIES = (
    select(Whereabouts.yarn, Yarn.put_up, Plate.kind, Plate.code, Plate.words)
    .join(Yarn, Yarn.id == Whereabouts.yarn).outerjoin(Plate, Plate.id == Whereabouts.place)
    .where(among(Whereabouts.yarn, "ids"), Whereabouts.until.is_(None),
           Whereabouts.struck.is_(None))
    .order_by(Plate.code, Whereabouts.yarn)
)


@dataclass(frozen=True, slots=True)
class _Lies:
    put_up: str
    place: str


def offers(connection: Connection, lines: Sequence[LineNow]) -> Mapping[int, tuple[Offer, ...]]:
    """{line: lots}; the lot that it was begun with comes first, then what can fill it whole.

    Of those that can, the smallest is first: it leaves the larger ones to larger orders. A lot that
    the line was promised is the only one, and what others were promised is not offered.
    """
    fitting = {line.id: _fitting(connection, line) for line in lines if line.open}
    codes = {lot: code for lots in fitting.values() for lot, code in lots}
    forms = {None, *(line.put_up for line in lines if line.id in fitting)}
    left = {form: left_of(connection, codes, form) for form in forms}
    lies = _lies(connection, left[None])
    return {line.id: _in_order(line, [
                _offer(line, lot, code, (left[None][lot], left[line.put_up][lot]),
                       lies.get(lot, ())) for lot, code in fitting[line.id]])
            for line in lines if line.id in fitting}


def free_of_lots(
    connection: Connection, codes: Mapping[int, str | None], put_up: str | None = None
) -> Mapping[int, Offer]:
    """What of each lot, given with its code, lies free for anybody, and where."""
    whole, form = (left_of(connection, codes, of) for of in (None, put_up))
    lies, offers = _lies(connection, whole), {}
    for lot, code in codes.items():
        free = [one for one in lies.get(lot, ()) if put_up in (None, one.put_up)]
        places = Counter(one.place for one in free)
        offers[lot] = Offer(lot, code, min(len(free), whole[lot].count, form[lot].count),
                            tuple(places.items()))
    return offers


def _in_order(line: LineNow, found: Sequence[Offer]) -> tuple[Offer, ...]:
    whole = [offer for offer in found if offer.count >= line.open]
    part = [offer for offer in found if 0 < offer.count < line.open]
    begun = {one.lot for one in line.skeins}
    return tuple(sorted((*sorted(whole, key=lambda offer: offer.count),
                         *sorted(part, key=lambda offer: -offer.count)),
                        key=lambda offer: offer.lot not in begun))


def _fitting(connection: Connection, line: LineNow) -> tuple[tuple[int, str | None], ...]:
    """(lot, code) of every lot whose yarn is what the line wants."""
    if line.lot is not None:
        return ((line.lot, line.lot_code),)
    if not line.is_read:
        return ()
    question = _LOTS
    if line.base is not None:
        question = question.where(DyeLot.base == line.base)
    question = (question.limit(_LOOKED_AT) if line.colourway is None
                else question.where(DyeLot.colourway == line.colourway))
    return tuple((row.id, row.code) for row in connection.execute(question))


def _lies(connection: Connection, left: Mapping[int, Left]) -> Mapping[int, list[_Lies]]:
    """{lot: its free skeins}, lowest place first."""
    lot_of = {yarn: lot for lot, one in left.items() for yarn in one.skeins}
    found: dict[int, list[_Lies]] = defaultdict(list)
    for row in connection.execute(_LIES, {"ids": listed(lot_of)}):
        found[lot_of[row.yarn]].append(
            _Lies(row.put_up, place_words(row.kind, row.code, row.words)))
    return found


def _offer(
    line: LineNow, lot: int, code: str | None, left: Sequence[Left], lies: Sequence[_Lies]
) -> Offer:
    """`left` is what is left of the lot and of the line's own put-up of it."""
    own = line.open if line.lot == lot else 0
    free = [one for one in lies if line.put_up in (None, one.put_up)]
    may_go = min(max(0, len(one.skeins) - (one.promised - own)) for one in left)
    places = Counter(one.place for one in free)
    return Offer(lot, code, min(len(free), may_go), tuple(places.items()))
