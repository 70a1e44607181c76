"""The finishing table: the count by tie colour comes before the scissors, and makes piles."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace

from sqlalchemy import select

from app.lookups.finishing import NO_TIE, Expected, expected_by_tie
from app.lookups.rails import taken_down_early
from app.problems import Refused
from app.records import OnBundle, Told, Yarn
from app.store.deed import Deed
from app.work.bundling import free_empty_disc
from app.work.dividing import close, make, must_be_open, rest, skeins


def finish(deed: Deed, yarn: Sequence[int], counted: Mapping[str, int]) -> list[int]:
    """Count by tie colour: a pile for each, with what the tie tells; the piles.

    Too few: the rest is missing. Too many: the ones over are of no known origin.
    """
    if not yarn or any(count < 0 for count in counted.values()) or not sum(counted.values()):
        raise Refused("Nothing was counted; nothing was saved.", "Count the skeins by tie colour.")
    for row in yarn:
        must_be_open(deed, row)
    cords = [cord for (cord,) in deed.all(select(OnBundle.bundle).where(
        OnBundle.yarn.in_(yarn), OnBundle.until.is_(None), OnBundle.struck.is_(None)))]
    for sentence in taken_down_early(deed.connection, yarn, deed.happened):
        deed.note(sentence)
    expected: Sequence[Expected] = _apart_by_tie(deed, list(yarn))
    _compare(deed, expected, counted)
    expected = _with_strangers(deed, expected, counted)
    piles = [
        pile for one in expected if (pile := _pile(deed, one, counted.get(one.tie, 0)))
    ]
    strange = {tie: n for tie, n in counted.items() if n and tie not in {e.tie for e in expected}}
    for tie, count in strange.items():
        deed.note(f"{skeins(count)} {_with(tie)}: nothing on this cord is like that. "
                  "They stand apart, their lot and cone not known.")
        piles.append(_unknown(deed, yarn[0], count, tie, "pile"))
    for row in dict.fromkeys(row for one in expected for row in one.rows):
        close(deed, row)
    for pile in piles if cords else ():
        deed.begin(OnBundle(yarn=pile, bundle=cords[0]))
    for cord in cords:
        free_empty_disc(deed, cord)
    told = ", ".join(f"{n} {tie}" for tie, n in counted.items() if n)
    deed.say(f"counted {skeins(sum(counted.values()))}: {told}")
    return piles


def _apart_by_tie(deed: Deed, rows: list[int]) -> tuple[Expected, ...]:
    """Rows that wear one tie colour cannot be told apart: they are one pool from here on."""
    while True:
        expected = expected_by_tie(deed.connection, rows)
        alike = next((one.rows for one in expected if len(one.rows) > 1), None)
        if alike is None:
            return expected
        pool = make(deed, "group", [(row, rest(deed, row).members) for row in alike],
                    basis="counted")
        for row in alike:
            close(deed, row)
        rows = [row for row in rows if row not in alike] + [pool]


def _with_strangers(
    deed: Deed, expected: Sequence[Expected], counted: Mapping[str, int]
) -> list[Expected]:
    """Too many of a mixed row that was split: nobody can say which tie the strangers wear."""
    met: dict[int, int] = {}
    for row, of_row in _split_rows(expected).items():
        over = sum(counted.get(one.tie, 0) for one in of_row) - rest(deed, row).members
        if over > 0:
            strangers = _unknown(deed, row, over, None, "group")
            met[row] = make(deed, "group", [(row, rest(deed, row).members), (strangers, over)],
                            basis="counted")
            close(deed, row)
            close(deed, strangers)
    return [
        one if (pool := met.get(one.rows[0])) is None
        else replace(one, most=counted.get(one.tie, 0), rows=(pool,), told=())
        for one in expected
    ]


def _split_rows(expected: Sequence[Expected]) -> dict[int, list[Expected]]:
    """Rows of which only all ties together are known."""
    rows: dict[int, list[Expected]] = defaultdict(list)
    for one in expected:
        rows[one.rows[0]].append(one)
    return {row: of_row for row, of_row in rows.items()
            if any(one.count < one.most for one in of_row)}


def _pile(deed: Deed, expected: Expected, count: int) -> int | None:
    (row,) = expected.rows
    members = min(count, expected.most, rest(deed, row).members)
    over = count - members
    if not over:
        return _taken(deed, expected, "pile", members) if count else None
    strangers = _unknown(deed, row, over, expected.worn, "group" if members else "pile")
    if not members:
        return strangers
    sure = _taken(deed, expected, "group", members)
    pile = make(deed, "pile", [(sure, members), (strangers, over)], basis="counted")
    close(deed, sure)
    close(deed, strangers)
    return pile


def _taken(deed: Deed, expected: Expected, kind: str, members: int) -> int:
    taken = make(deed, kind, [(expected.rows[0], members)], basis="counted")
    deed.add_all([
        Told(yarn=taken, pool=pool, parent=parent, count=members, basis="recognised")
        for pool, parent in expected.told
    ])
    return taken


def _unknown(deed: Deed, like: int, count: int, tie: str | None, kind: str) -> int:
    base, put_up, mg, members = deed.one(
        select(Yarn.base, Yarn.put_up, Yarn.mg, Yarn.count).where(Yarn.id == like))
    return deed.add(Yarn(kind=kind, base=base, put_up=put_up, count=count,
                         mg=mg // members * count, tie=tie))


def _compare(deed: Deed, expected: Sequence[Expected], counted: Mapping[str, int]) -> None:
    for one in expected:
        count = counted.get(one.tie, 0)
        if count > one.most:
            _too_many(deed, f"{skeins(count - one.most)} {_with(one.tie)}")
        elif count < one.count == one.most:
            _missing(deed, f"{skeins(one.count - count)} {_with(one.tie)}")
    for row, of_row in _split_rows(expected).items():
        count = sum(min(counted.get(one.tie, 0), one.most) for one in of_row)
        short = rest(deed, row).members - count
        if short > 0:
            _missing(deed, skeins(short))
        elif short < 0:
            _too_many(deed, skeins(-short))


def _missing(deed: Deed, which: str) -> None:
    deed.note(f"{which} missing at the count: look in the basins, the machine and under the rack.")


def _too_many(deed: Deed, which: str) -> None:
    deed.note(f"{which} too many: of no known cone. Look which other cord is short.")


def _with(tie: str) -> str:
    return "without a tie" if tie.startswith(NO_TIE) else f"with {tie} ties"
