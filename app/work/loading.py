"""Soak, wash, spin, rail, steamer: a load joins the rows on the scanned cords by water or steam."""

from collections.abc import Sequence

from sqlalchemy import func, select

from app.lookups.load_warnings import before_load
from app.lookups.loads import places_at
from app.problems import NotFound, Refused
from app.records import InLoad, Load, Yarn
from app.store.deed import Deed
from app.work.bundling import yarn_on
from app.work.dividing import must_be_whole, skeins


def into_load(
    deed: Deed, step: str, *, discs: Sequence[int] = (), yarn: Sequence[int] = (),
    plate: int | None = None,
) -> int:
    """These cords, or rows without one, were in one load; half a lot may be in another.

    Discs mean what they hung on when it happened. Noted and kept: too many lots in one water,
    a soak that was too long, a disc that is a pile's card, yarn that was not lifted. The load.
    """
    rows = dict.fromkeys([*yarn, *(row for disc in discs for row in yarn_on(deed, disc))])
    if not rows:
        raise Refused("Nothing is in the load; nothing was saved.", "Scan the discs first.")
    for row in rows:
        must_be_whole(deed, row)
    where = _where(deed, plate)
    for finding in before_load(deed.connection, list(rows), step, deed.happened):
        deed.note(finding)
    load = deed.add(Load(step=step, plate=plate))
    deed.add_all([InLoad(yarn=row, load=load, basis="scanned") for row in rows])
    count = deed.value(select(func.sum(Yarn.count)).where(Yarn.id.in_(list(rows))))
    deed.say(f"{step} {load}{where}: {skeins(count)}")
    return load


def _where(deed: Deed, plate: int | None) -> str:
    """' in soak tub 3', and nothing where no place was written."""
    if plate is None:
        return ""
    place = places_at(deed.connection, [plate]).get(plate)
    if place is None:
        raise NotFound("This plate is not in the book; nothing was saved.",
                       "Make it at the Desk first.")
    return f" {place.where}"
