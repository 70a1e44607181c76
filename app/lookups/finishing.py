"""What the finishing table expects, by tie colour, before the scissors destroy the ties."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, select

from app.records import Part, Yarn
from app.store.dialect import among, listed

NO_TIE = "no tie"


@dataclass(frozen=True, slots=True)
class Expected:
    """So many skeins with this tie: whole rows, or the members of a pool from some parents."""

    tie: str
    count: int
    rows: tuple[int, ...]
    pool: int | None
    parents: tuple[int, ...]

    @property
    def tells(self) -> int | None:
        """The one parent that this tie tells inside a pool."""
        return self.parents[0] if len(self.parents) == 1 else None


_ROWS = select(Yarn.id, Yarn.tie, Yarn.count).where(among(Yarn.id, "ids"))
_PARENTS = (
    select(Part.child, Part.parent, Part.gave, Yarn.tie)
    .join(Yarn, Yarn.id == Part.parent)
    .where(among(Part.child, "ids"), Part.struck.is_(None))
    .order_by(Part.id)
)


def expected_by_tie(connection: Connection, rows: Sequence[int]) -> tuple[Expected, ...]:
    """Skeins by tie colour, in the order of the rows."""
    whole: dict[str, list[int]] = defaultdict(list)
    counts: Counter[str] = Counter()
    pools = []
    for row, tie, count in connection.execute(_ROWS, {"ids": listed(rows)}):
        if tie is None:
            pools.append(row)
        else:
            whole[tie].append(row)
            counts[tie] += count
    found = [Expected(tie, counts[tie], tuple(whole[tie]), None, ()) for tie in whole]
    return (*found, *(part for pool in pools for part in _in_pool(connection, pool)))


def _in_pool(connection: Connection, pool: int) -> tuple[Expected, ...]:
    parents: dict[str, list[int]] = defaultdict(list)
    counts: Counter[str] = Counter()
    for _, parent, gave, tie in connection.execute(_PARENTS, {"ids": listed([pool])}):
        parents[tie or NO_TIE].append(parent)
        counts[tie or NO_TIE] += gave
    if not counts:
        count = connection.execute(select(Yarn.count).where(Yarn.id == pool)).scalar_one()
        return (Expected(NO_TIE, count, (pool,), None, ()),)
    return tuple(
        Expected(tie, counts[tie], (), pool, tuple(parents[tie])) for tie in counts
    )
