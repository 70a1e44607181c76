"""What was seen of a lot's water: whether it bled, and how sure it is that this lot did."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, select

from app.lookups.walks import below
from app.records import DeedRow, InLoad, LoadReading
from app.store.dialect import among, listed


@dataclass(frozen=True, slots=True)
class Bled:
    """The last look at a lot's water: 0 none, 1 slight, 2 strong; `alone` if nothing else was in
    it, else another lot may have bled."""

    how: int
    alone: bool

    @property
    def words(self) -> str:
        """'bleeds strongly', 'in a water that bled strongly'; '' for none."""
        if self.how == 0:
            return ""
        how = "slightly" if self.how == 1 else "strongly"
        return f"bleeds {how}" if self.alone else f"in a water that bled {how}"


_LOOKS = (
    select(LoadReading.load, LoadReading.yarn, LoadReading.value, DeedRow.happened)
    .join(InLoad, InLoad.load == LoadReading.load)
    .join(DeedRow, DeedRow.seq == LoadReading.deed)
    .where(LoadReading.kind == "bleed", LoadReading.struck.is_(None), InLoad.struck.is_(None),
           among(InLoad.yarn, "ids"),
           LoadReading.yarn.is_(None) | (LoadReading.yarn == InLoad.yarn))
    .order_by(DeedRow.happened, LoadReading.id)
)
_IN_LOADS = select(InLoad.load, InLoad.yarn).where(among(InLoad.load, "ids"),
                                                   InLoad.struck.is_(None))


def bled(connection: Connection, lots: Iterable[int], at: datetime) -> Mapping[int, Bled]:
    """{lot: how its water looked last} by that moment; one that was never looked at is left out."""
    found = {}
    for lot in lots:
        rows = set(below(connection, "lot", lot))
        looks = [look for look in connection.execute(_LOOKS, {"ids": listed(rows)})
                 if look.happened <= at]
        if looks:
            last = looks[-1]
            beside = connection.execute(_IN_LOADS, {"ids": listed([last.load])}).all()
            alone = last.yarn is not None or all(one.yarn in rows for one in beside)
            found[lot] = Bled(last.value, alone)
    return found
