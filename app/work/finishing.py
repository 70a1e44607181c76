"""The finishing table: the count by tie colour comes before the scissors, and makes piles."""

from collections.abc import Mapping, Sequence

from sqlalchemy import select

from app.lookups.finishing import NO_TIE, Expected, expected_by_tie
from app.problems import Refused
from app.records import OnBundle, Told, Yarn
from app.store.deed import Deed
from app.work.dividing import close, make, rest, skeins


def finish(deed: Deed, yarn: Sequence[int], counted: Mapping[str, int]) -> list[int]:
    """Count by tie colour: a pile for each, with what the tie tells; the piles.

    Too few: the rest is missing. Too many: the ones over are of no known origin.
    """
    if not yarn or any(count < 0 for count in counted.values()) or not sum(counted.values()):
        raise Refused("Nothing was counted; nothing was saved.", "Count the skeins by tie colour.")
    cord = deed.value(select(OnBundle.bundle).where(
        OnBundle.yarn.in_(yarn), OnBundle.until.is_(None), OnBundle.struck.is_(None)))
    expected = expected_by_tie(deed.connection, yarn)
    piles = [
        pile for one in expected if (pile := _pile(deed, one, counted.get(one.tie, 0)))
    ]
    strange = {tie: n for tie, n in counted.items() if n and tie not in {e.tie for e in expected}}
    for tie, count in strange.items():
        deed.note(f"{skeins(count)} with {tie} ties: nothing on this cord wears {tie}. "
                  "They stand apart, their lot and cone not known.")
        piles.append(_unknown(deed, yarn[0], count, tie, "pile"))
    for row in yarn:
        close(deed, row)
    if cord is not None:
        for pile in piles:
            deed.begin(OnBundle(yarn=pile, bundle=cord))
    _compare(deed, expected, counted)
    told = ", ".join(f"{n} {tie}" for tie, n in counted.items() if n)
    deed.say(f"counted {skeins(sum(counted.values()))}: {told}")
    return piles


def _pile(deed: Deed, expected: Expected, count: int) -> int | None:
    members, over = min(count, expected.count), max(0, count - expected.count)
    if not members:
        return None
    row = _one_row(deed, expected)
    if not over:
        pile = make(deed, "pile", [(row, members)], basis="counted")
        _tell(deed, expected, pile, members)
    else:
        sure = make(deed, "group", [(row, members)], basis="counted")
        _tell(deed, expected, sure, members)
        strangers = _unknown(deed, row, over, expected.tie, "group")
        pile = make(deed, "pile", [(sure, members), (strangers, over)], basis="counted")
        close(deed, sure)
        close(deed, strangers)
    if row not in expected.rows and row != expected.pool:
        close(deed, row)
    return pile


def _tell(deed: Deed, expected: Expected, yarn: int, members: int) -> None:
    if expected.pool is not None and expected.tells is not None:
        deed.add(Told(yarn=yarn, pool=expected.pool, parent=expected.tells, count=members,
                      basis="recognised"))


def _one_row(deed: Deed, expected: Expected) -> int:
    """Rows that wear one tie colour cannot be told apart: they are one pool from here on."""
    if expected.pool is not None:
        return expected.pool
    if len(expected.rows) == 1:
        return expected.rows[0]
    return make(deed, "group", [(row, rest(deed, row).members) for row in expected.rows],
                basis="counted")


def _unknown(deed: Deed, like: int, count: int, tie: str, kind: str) -> int:
    base, put_up, mg, members = deed.one(
        select(Yarn.base, Yarn.put_up, Yarn.mg, Yarn.count).where(Yarn.id == like))
    return deed.add(Yarn(kind=kind, base=base, put_up=put_up, count=count,
                         mg=mg // members * count, tie=None if tie == NO_TIE else tie))


def _compare(deed: Deed, expected: Sequence[Expected], counted: Mapping[str, int]) -> None:
    for one in expected:
        count = counted.get(one.tie, 0)
        if count < one.count:
            deed.note(f"{skeins(one.count - count)} with {one.tie} ties missing at the count: "
                      "look in the basins, the machine and under the rack.")
        elif count > one.count:
            deed.note(f"{skeins(count - one.count)} with {one.tie} ties too many: of no known "
                      "cone. Look which other cord is short.")
