"""Who wound on which day: a reel set wrong or a tie too tight spoils all of one day."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime, tzinfo
from fractions import Fraction

from sqlalchemy import Connection, bindparam, select

from app.lookups.thread import Own, Thing, Thread
from app.lookups.walks import below
from app.records import DeedRow, Draw, Touched
from app.store.dialect import among, listed

WINDER_DAY = "winder-day"
NEAR = 5_000
"""Entries before and after in which the rest of the day is looked for: some weeks of work."""

_WOUND = (
    select(Draw.yarn, DeedRow.person, DeedRow.happened, DeedRow.seq)
    .join(DeedRow, DeedRow.seq == Draw.deed)
    .where(among(Draw.yarn, "ids"), Draw.struck.is_(None)).distinct().order_by(DeedRow.seq)
)
_AROUND = select(DeedRow.seq, DeedRow.happened).where(
    DeedRow.seq.between(bindparam("first"), bindparam("last")),
    DeedRow.person == bindparam("person"), DeedRow.name == "wind")
_DRAWN = (
    select(Draw.yarn).join(Touched, (Touched.tbl == "draw") & (Touched.row == Draw.id))
    .where(among(Touched.deed, "ids"), Draw.struck.is_(None)).distinct()
)


class WinderDays:
    """Each winder's day as a thing of the thread, numbered in the order they are met."""

    def __init__(self, zone: tzinfo | None) -> None:
        self._zone = zone
        self._numbers: dict[tuple[str, date], int] = {}
        self._seqs: dict[int, list[int]] = {}

    @property
    def words(self) -> Mapping[int, str]:
        """{number: 'WN, 4 May 2026'}."""
        return {number: f"{person}, {day.day} {day:%b %Y}"
                for (person, day), number in self._numbers.items()}

    def added(self, connection: Connection, above: Thread) -> Thread:
        """The thread, where each wound row also carries its winder's day."""
        own: dict[int, Mapping[Thing, Own]] = dict(above.own)
        for row, person, happened, seq in connection.execute(
                _WOUND, {"ids": listed(above.count)}):
            number = self._numbers.setdefault(
                (person, self._day(happened)), len(self._numbers) + 1)
            self._seqs.setdefault(number, []).append(seq)
            own[row] = {**own.get(row, {}), (WINDER_DAY, number): Own(Fraction(1), "scanned")}
        return replace(above, own=own)

    def below(self, connection: Connection, number: int) -> set[int]:
        """All that came of what this person wound on that day."""
        person, day = next(key for key, one in self._numbers.items() if one == number)
        seqs = self._seqs[number]
        around = connection.execute(_AROUND, {
            "first": seqs[0] - NEAR, "last": seqs[-1] + NEAR, "person": person})
        same = [seq for seq, happened in around if self._day(happened) == day]
        wound = connection.execute(_DRAWN, {"ids": listed(same)}).scalars().all()
        return {one for row in wound for one in below(connection, "yarn", row)}

    def _day(self, at: datetime) -> date:
        return at.astimezone(self._zone).date()
