"""Soak, wash, spin, rail, steamer: a load joins the rows on the scanned cords by water or steam."""

from collections.abc import Sequence

from sqlalchemy import func, select

from app.problems import Refused
from app.records import InLoad, Load, Yarn
from app.store.deed import Deed
from app.work.bundling import number_of, yarn_on
from app.work.dividing import must_be_whole, skeins

STEPS = ("soak", "wash", "spin", "rail", "steamer")


def into_load(
    deed: Deed, step: str, *, discs: Sequence[int] = (), yarn: Sequence[int] = (),
    plate: int | None = None,
) -> int:
    """These cords, or rows without one, were in one load; half a lot may be in another.

    Discs mean what they hung on when it happened. The load.
    """
    rows = dict.fromkeys([*yarn, *(row for disc in discs for row in yarn_on(deed, disc))])
    if not rows:
        raise Refused("Nothing is in the load; nothing was saved.", "Scan the discs first.")
    for row in rows:
        must_be_whole(deed, row)
    load = deed.add(Load(step=step, plate=plate))
    deed.add_all([InLoad(yarn=row, load=load, basis="scanned") for row in rows])
    count = deed.value(select(func.sum(Yarn.count)).where(Yarn.id.in_(list(rows))))
    where = "" if plate is None else f" in {number_of(deed, plate)}"
    deed.say(f"{step} {load}{where}: {skeins(count)}")
    return load
