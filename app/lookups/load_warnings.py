"""What looks wrong about a load, each tied to a fact: few, for all are read with wet hands."""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from sqlalchemy import Connection, select

from app.lookups.certainty import nearest
from app.lookups.discs import disc_of
from app.lookups.loads import IN_BATH, last_of
from app.lookups.thread import thread
from app.lookups.together import not_together
from app.records import Yarn
from app.store.dialect import among, listed

MOST_LOTS = 4
"""Lots in one load of water; more is too many to keep an eye on (common practice, no source)."""
LONG_SOAK = timedelta(hours=36)
"""After so long in the soak yarn begins to smell (common practice, no source)."""
APART = "Not together: "
_WATER = ("soak", "wash", "spin")


def before_load(
    connection: Connection, rows: Sequence[int], step: str | None, at: datetime
) -> tuple[str, ...]:
    """What looks wrong about these rows going into this step at that moment."""
    if not rows:
        return ()
    apart = (f"{APART}{one}" for one in not_together(connection, rows, step, at))
    found = (*apart, *_many_lots(connection, rows, step), *_too_long(connection, rows, at),
             *_counted(connection, rows), *_in_pot(connection, rows, step, at))
    return tuple(dict.fromkeys(found))


def _many_lots(connection: Connection, rows: Sequence[int], step: str | None) -> Iterator[str]:
    found = thread(connection, rows)
    lots = {lot for row in rows for lot in nearest(found, row, "lot") if lot}
    if step in _WATER and len(lots) > MOST_LOTS:
        yield f"{len(lots)} lots in one {step}: what bleeds in it is on all of them."


def _too_long(connection: Connection, rows: Sequence[int], at: datetime) -> Iterator[str]:
    for row, met in last_of(connection, rows, at).items():
        if met.step == "soak" and at - met.happened > LONG_SOAK:
            hours = int((at - met.happened).total_seconds() // 3600)
            yield f"{_cord(connection, row)} was in the soak for {hours} hours: smell at it."


def _counted(connection: Connection, rows: Sequence[int]) -> Iterator[str]:
    piles = connection.execute(
        select(Yarn.id).where(among(Yarn.id, "ids"), Yarn.kind == "pile"), {"ids": listed(rows)}
    ).scalars()
    for pile in piles:
        yield (f"{_cord(connection, pile)} is the card of a pile that was counted: "
               "is it the right disc?")


def _in_pot(
    connection: Connection, rows: Sequence[int], step: str | None, at: datetime
) -> Iterator[str]:
    if step != "steamer":
        for row, met in last_of(connection, rows, at).items():
            if met.step == IN_BATH:
                yield f"{_cord(connection, row)} is in the pot still by the book: lift it there."


def _cord(connection: Connection, row: int) -> str:
    disc = disc_of(connection, row)
    return f"Disc {disc}" if disc else "A cord without a disc"
