"""Lines that are filled from several lots: how far these are apart, and whether it was settled."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import Connection, Row, func, select

from app.calculations.codes import shown
from app.calculations.listing import listing
from app.lookups.agreed import apart_by_card
from app.lookups.shade_bands import shade_bands
from app.records import DyeLot, LineAgreed, Tag, TagOn, Whereabouts
from app.store.dialect import among, listed

_CAME = (
    select(Whereabouts.line, Tag.lot, Whereabouts.state, func.min(Whereabouts.deed).label("came"))
    .join(TagOn, (TagOn.yarn == Whereabouts.yarn) & TagOn.until.is_(None)
          & TagOn.struck.is_(None))
    .join(Tag, Tag.id == TagOn.tag)
    .where(among(Whereabouts.line, "ids"), Whereabouts.until.is_(None),
           Whereabouts.state.in_(("taken", "sent")), Whereabouts.struck.is_(None))
    .group_by(Whereabouts.line, Tag.lot, Whereabouts.state)
    .order_by(Whereabouts.line, Tag.lot)
)
_AGREED = (
    select(LineAgreed.line, func.max(LineAgreed.deed).label("deed"))
    .where(among(LineAgreed.line, "ids"), LineAgreed.struck.is_(None))
    .group_by(LineAgreed.line)
)
_CODES = select(DyeLot.id, DyeLot.code).where(among(DyeLot.id, "ids"))


def unsettled(connection: Connection, lines: Iterable[int]) -> Mapping[int, str]:
    """{line: what is to be asked} of lines with several lots ready to be sent or sent before.

    What was agreed stands until yarn of one more lot is taken for the line.
    """
    ids = {"ids": listed(lines)}
    came: dict[int, dict[int, int]] = defaultdict(dict)
    sent: dict[int, set[int]] = defaultdict(set)
    row: Row[*tuple[Any, ...]]
    for row in connection.execute(_CAME, ids):
        if row.state == "sent":
            sent[row.line].add(row.lot)
        else:
            came[row.line][row.lot] = row.came
    agreed = {one.line: one.deed for one in connection.execute(_AGREED, ids)}
    return {line: several_words(connection, lots.keys() | sent[line])
            for line, lots in came.items()
            if len(lots.keys() | sent[line]) > 1
            and any(deed > agreed.get(line, 0) for lot, deed in lots.items()
                    if lot not in sent[line])}


def several_words(connection: Connection, lots: Iterable[int]) -> str:
    """What is to be settled of one line from several lots, and how far they are apart."""
    of = set(lots)
    codes = {row.id: shown(row.code or "a lot without a code")
             for row in connection.execute(_CODES, {"ids": listed(of)})}
    found = apart_by_card(connection, of)
    apart = "how far apart they are was not measured" if found is None else (
        f"the least alike are {found.decisive} apart, "
        f"{found.judged(shade_bands(connection)).at_worst} at worst")
    return (f"One line from {len(of)} lots: {listing(sorted(codes.values()))}; {apart}. "
            "Ask the customer, or put a card about alternating rows in.")
