"""How yarn becomes other yarn: every part is a new row, and the row that was divided is closed.

What is later divided inherits baths and loads through its parent; nothing inherits what happened
after it left.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from sqlalchemy import bindparam, func, select

from app.calculations.codes import shown
from app.calculations.moments import moment_words
from app.lookups.present import GONE, TOOK, WASTED
from app.lookups.skeins import named_by_tag
from app.problems import NotFound, Refused
from app.records import DeedRow, OnBundle, Part, Yarn
from app.store.deed import Deed


@dataclass(frozen=True, slots=True)
class Rest:
    """Members and mass of a row that were not taken out of it yet."""

    members: int
    mg: int


_REST = (
    select(Yarn.count.label("members"), Yarn.mg, TOOK.label("took"), GONE.label("gone"),
           WASTED.label("wasted"))
    .where(Yarn.id == bindparam("yarn"), Yarn.struck.is_(None))
)
_AS_WOUND = select(Yarn.base, Yarn.put_up, Yarn.tie).where(Yarn.id == bindparam("yarn"))
_CLOSED = select(Yarn.closed).where(Yarn.id == bindparam("yarn"))
_DIVIDED = (
    select(func.min(DeedRow.happened)).join(Part, Part.deed == DeedRow.seq)
    .where(Part.parent == bindparam("yarn"), Part.took > 0, Part.struck.is_(None))
)


def rest(deed: Deed, yarn: int) -> Rest:
    """What is left of a row; raises Refused where it was never so."""
    row = deed.one(_REST, yarn=yarn)
    if row is None:
        raise Refused("This yarn is not in the book any more.", "Look the thing up again.")
    return Rest(row.members - row.took, row.mg - row.gone - row.wasted)


def make(
    deed: Deed, kind: str, sources: Sequence[tuple[int, int]], basis: str = "scanned",
    gave: int | None = None, put_up: str | None = None,
) -> int:
    """A new row out of others, `sources` = (parent, how many members).

    Masses are shared so that they add up exactly: the last member takes the remainder. `gave` is
    how many members come of one parent's, where that differs (minis of a skein).
    """
    shares = []
    for parent, took in sources:
        left = rest(deed, parent)
        if not 0 < took <= left.members:
            raise Refused(f"There are {left.members} left, not {took}; nothing was saved.",
                          "Count again.")
        shares.append(left.mg if took == left.members else left.mg * took // left.members)
    rows = [deed.one(_AS_WOUND, yarn=parent) for parent, _ in sources]
    first, ties = rows[0], {row.tie for row in rows}
    child = deed.add(Yarn(
        kind=kind, base=first.base, put_up=put_up or first.put_up,
        count=gave or sum(took for _, took in sources), mg=sum(shares),
        tie=ties.pop() if len(ties) == 1 and kind != "skein" else None,
    ))
    deed.add_all([
        Part(child=child, parent=parent, took=took, gave=gave or took, mg=mg, basis=basis)
        for (parent, took), mg in zip(sources, shares, strict=True)
    ])
    return child


def close(deed: Deed, yarn: int) -> None:
    """The row is done with: what it was divided into goes on as new rows."""
    must_be_open(deed, yarn)
    deed.change(Yarn, yarn, closed=deed.seq)
    deed.end(OnBundle, yarn)


def must_be_known(deed: Deed, yarn: Collection[int]) -> None:
    """Raises NotFound where one of these is no yarn of the book."""
    known = {row for (row,) in deed.all(
        select(Yarn.id).where(Yarn.id.in_(yarn), Yarn.struck.is_(None)))}
    if set(yarn) - known:
        raise NotFound("This skein is not in the book; nothing was saved.", "Scan its tag.")


def must_be_open(deed: Deed, yarn: int) -> None:
    """Raises Refused where the row is done with."""
    if deed.value(_CLOSED, yarn=yarn):
        raise Refused("This yarn was already divided, mixed or counted; nothing was saved.",
                      "Scan what it became.")


def must_be_whole(deed: Deed, yarn: int) -> None:
    """Into a bath or load goes a row that was whole then.

    Raises Refused where it was divided before the deed happened, or was never so.
    """
    rest(deed, yarn)
    divided = deed.value(_DIVIDED, yarn=yarn)
    if divided is not None and divided <= deed.happened:
        raise Refused(f"This yarn was divided on {moment_words(divided)}; nothing was saved.",
                      "Scan what it became.")


def skeins(count: int, put_up: str = "skein") -> str:
    """'1 skein', '5 minis': a count with its word."""
    return f"{count} {put_up}" if count == 1 else f"{count} {put_up}s"


def mark_of(deed: Deed, yarn: int) -> str:
    """A skein's mark for a sentence: '26·15·R6F 7M', or that it wears none."""
    named = named_by_tag(deed.connection, [yarn]).get(yarn)
    return "A skein without a tag" if named is None else shown(named.mark)
