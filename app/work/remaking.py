"""Finished skeins that become something else: minis, balls, or a cord that is dyed once more."""

from collections.abc import Sequence

from sqlalchemy import select

from app.lookups.certainty import nearest
from app.lookups.thread import thread
from app.problems import Refused
from app.records import OnBundle, Tag, TagOn, Waste, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.bundling import add_to_cord
from app.work.dividing import close, make, rest, skeins


def cut(deed: Deed, skein: int, count: int, put_up: str, waste_mg: int) -> int:
    """One skein becomes minis or balls, to be tagged one by one: the new pile.

    They keep the lot; the old tag is void, and what is lost in the cutting is weighed.
    """
    left = rest(deed, skein)
    if count < 1 or left.members != 1:
        raise Refused(f"{skeins(count, put_up)} cannot be made of this; nothing was saved.",
                      "Scan the tag of one whole skein.")
    if not 0 <= waste_mg < left.mg:
        raise Refused(f"{waste_mg / 1000:g} g cannot be lost of {left.mg / 1000:g} g; nothing was "
                      "saved.", "Weigh what was lost.")
    if waste_mg:
        deed.add(Waste(yarn=skein, mg=waste_mg, why=f"made into {skeins(count, put_up)}"))
    pile = make(deed, "pile", [(skein, 1)], gave=count, put_up=put_up)
    _undress(deed, skein)
    close(deed, skein)
    deed.say(f"1 skein became {skeins(count, put_up)}")
    return pile


def gather(deed: Deed, tagged: Sequence[int], disc: int | None = None) -> int:
    """Back on a cord for an overdye or a rewash: tags come off and are void. The new row."""
    rows = list(dict.fromkeys(tagged))
    if not rows:
        raise Refused("No skein was scanned; nothing was saved.", "Scan their tags.")
    bases = {deed.value(select(Yarn.base).where(Yarn.id == row)) for row in rows}
    if len(bases) > 1:
        raise Refused("Two bases cannot be one row; nothing was saved.", "Gather them apart.")
    group = make(deed, "group", [(row, 1) for row in rows])
    for row in rows:
        _undress(deed, row)
        close(deed, row)
    if disc is not None:
        add_to_cord(deed, disc, [group])
    lots = nearest(thread(deed.connection, [group]), group, "lot")
    if len(lots) > 1:
        deed.note(f"Skeins of {len(lots)} lots on one cord: after the bath they are one lot, "
                  "with both in their past.")
    deed.say(f"gathered {skeins(len(rows))}, their tags are void")
    return group


def _undress(deed: Deed, skein: int) -> None:
    for (tag,) in deed.all(select(TagOn.tag).where(
            TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None))):
        deed.change(Tag, tag, void=deed.seq)
    deed.end(TagOn, skein)
    deed.end(Whereabouts, skein)
    deed.end(OnBundle, skein)
