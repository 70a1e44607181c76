"""A book of years in a second: the fan-outs of a real studio, written week by week."""

import sqlite3
from contextlib import closing
from pathlib import Path

from app.records import (
    Cone,
    Draw,
    DyeLot,
    InBath,
    InLoad,
    Load,
    Part,
    PrintSheet,
    Tag,
    TagOn,
    Waste,
    Whereabouts,
    Yarn,
)
from app.store.deed import Deed
from tests.makers import EACH_MG, LONG_MM, Studio

SIZES = (7, 6)
"""Skeins of one cone in two groups; the second goes, with that of the next cone, into one pot."""
WEEK = 10 * 2 * sum(SIZES)
"""Skeins that one deed writes."""


def week(deed: Deed, first: int, skeins: int) -> None:
    """So many tagged skeins: 13 of each cone, in lots of 7 and mixed lots of 12; most are sold.

    The first cone and lot are numbered from the `first` skein on.
    """
    pairs = -(-skeins // (2 * sum(SIZES)))
    cones = deed.add_all([
        Cone(code=f"X{first + number}", delivery=1, supplier_lot=1, base_version=1,
             gross_mg=1_520_000, tare_mg=64_000) for number in range(2 * pairs)])
    deed.add_all([Waste(cone=cone, mg=EACH_MG, why="end of the cone") for cone in cones])
    groups = deed.add_all([_used(deed, "group", size) for _ in cones for size in SIZES])
    deed.add_all([
        Draw(cone=cone, yarn=groups[2 * place + half], mg=size * EACH_MG, mm=size * LONG_MM,
             basis="scanned")
        for place, cone in enumerate(cones) for half, size in enumerate(SIZES)])
    pools = deed.add_all([_used(deed, "group", 12) for _ in range(pairs)])
    deed.add_all([
        _part(pools[place // 2], groups[2 * place + 1], 6) for place in range(2 * pairs)])
    dyed = [(group, 7) for group in groups[::2]] + [(pool, 12) for pool in pools]
    lots = deed.add_all([
        DyeLot(code=f"L{first + number}", bath=None, base=1, colourway=1)
        for number in range(len(dyed))])
    deed.add_all([InBath(yarn=row, lot=lot, basis="scanned")
                  for (row, _), lot in zip(dyed, lots, strict=True)])
    washes = deed.add_all([Load(step="wash") for _ in dyed[::2]])
    deed.add_all([InLoad(yarn=row, load=washes[place // 2], basis="scanned")
                  for place, (row, _) in enumerate(dyed)])
    piles = deed.add_all([_used(deed, "pile", count) for _, count in dyed])
    deed.add_all([_part(pile, row, count)
                  for pile, (row, count) in zip(piles, dyed, strict=True)])
    sheets = deed.add_all([PrintSheet(stock="swing tag", first_cell=1) for _ in piles])
    _tag(deed, [(pile, lot, sheet) for pile, lot, sheet, (_, count) in
                zip(piles, lots, sheets, dyed, strict=True) for _ in range(count)])
    deed.say(f"wrote {skeins} skeins")


def _tag(deed: Deed, of: list[tuple[int, int, int]]) -> None:
    rows = deed.add_all([_yarn("skein", 1) for _ in of])
    deed.add_all([_part(row, pile, 1) for row, (pile, _, _) in zip(rows, of, strict=True)])
    tags = deed.add_all([
        Tag(mark=f"L{lot}-{row}", lot=lot, pile=pile, base_version=1, words="{}", sheet=sheet)
        for row, (pile, lot, sheet) in zip(rows, of, strict=True)])
    hung = [TagOn(tag=tag, yarn=row) for tag, row in zip(tags, rows, strict=True)]
    where = [Whereabouts(yarn=row, state="table" if row % 6 == 0 else "given", basis="scanned")
             for row in rows]
    for stay in (*hung, *where):
        stay.since = deed.happened
    deed.add_all(hung)
    deed.add_all(where)


def _yarn(kind: str, count: int) -> Yarn:
    return Yarn(kind=kind, base=1, put_up="skein", count=count, mg=count * EACH_MG, tie="red")


def _used(deed: Deed, kind: str, count: int) -> Yarn:
    """A row that is done with."""
    row = _yarn(kind, count)
    row.closed = deed.seq
    return row


def _part(child: int, parent: int, count: int) -> Part:
    return Part(child=child, parent=parent, took=count, gave=count, mg=count * EACH_MG,
                basis="counted")


def analysed(studio: Studio, skeins: int) -> Studio:
    """The studio with that many skeins more, and the statistics that its database plans by."""
    studio.cone()
    for first in range(0, skeins, WEEK):
        studio.do(week, first, min(WEEK, skeins - first))
    with closing(sqlite3.connect(studio.book.path)) as raw, raw:
        raw.execute("ANALYZE")
    studio.book.close()
    return studio


def copy_of(file: Path, folder: Path) -> Path:
    """A file of one's own to write in."""
    path = folder / "large.book"
    path.write_bytes(file.read_bytes())
    return path
