"""Finished skeins that become something else: minis, balls, or a cord that is dyed once more."""

from collections.abc import Sequence

from sqlalchemy import select

from app.lookups.certainty import nearest
from app.lookups.skeins import then_of
from app.lookups.thread import thread
from app.problems import Refused
from app.records import OnBundle, Part, Tag, TagOn, Waste, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.bundling import add_to_cord
from app.work.dividing import close, make, must_be_known, rest, skeins
from app.work.moving import WORDS
from app.work.promising import note_for_orders


def cut(deed: Deed, skein: int, count: int, put_up: str, waste_mg: int) -> int:
    """One skein becomes minis or balls, to be tagged one by one: the new pile.

    They keep the lot; the old tag is void, and what is lost in the cutting is weighed.
    """
    must_be_known(deed, [skein])
    left = rest(deed, skein)
    if count < 1 or left.members != 1:
        raise Refused(f"{skeins(count, put_up)} cannot be made of this; nothing was saved.",
                      "Scan the tag of one whole skein.")
    if not 0 <= waste_mg < left.mg:
        raise Refused(f"{waste_mg / 1000:g} g cannot be lost of {left.mg / 1000:g} g; nothing was "
                      "saved.", "Weigh what was lost.")
    _must_be_told_apart(deed, [skein])
    note_for_orders(deed, [skein])
    if waste_mg:
        deed.add(Waste(yarn=skein, mg=waste_mg, why=f"made into {skeins(count, put_up)}"))
    pile = make(deed, "pile", [(skein, 1)], gave=count, put_up=put_up)
    _undress(deed, skein)
    close(deed, skein)
    deed.say(f"1 skein became {skeins(count, put_up)}")
    return pile


def gather(deed: Deed, tagged: Sequence[int], disc: int | None = None) -> int:
    """Back on a cord for an overdye or a rewash: tags come off and are void. The new row.

    Their ties were cut when they were counted first: none of them is told by its tie again.
    """
    rows = list(dict.fromkeys(tagged))
    if not rows:
        raise Refused("No skein was scanned; nothing was saved.", "Scan their tags.")
    must_be_known(deed, rows)
    _must_be_told_apart(deed, rows)
    if len({tuple(look) for look in deed.all(
            select(Yarn.base, Yarn.put_up).where(Yarn.id.in_(rows)))}) > 1:
        raise Refused("Two bases or put-ups cannot be one row; nothing was saved.",
                      "Gather them apart.")
    note_for_orders(deed, rows)
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


def _must_be_told_apart(deed: Deed, rows: Sequence[int]) -> None:
    """Only what is one skein by itself; marked where it was with someone else.

    A find that is not matched, or one of several, stands beside the totals as it is.
    """
    for row in rows:
        then = then_of(deed.connection, row, deed.happened)
        if then not in (None, "table", "shelf"):
            deed.note(f"A skein of these was {WORDS[then]}: look whose it is.")
        kind = deed.value(select(Yarn.kind).where(Yarn.id == row))
        if kind != "skein" and not (kind == "find" and _was_missing(deed, row)):
            raise Refused("This is no skein with a tag, and nobody knows which it is; nothing was "
                          "saved.", "Scan a tag; match what was found without one first.")


def _was_missing(deed: Deed, found: int) -> bool:
    return deed.value(
        select(Part.id).join(Yarn, Yarn.id == Part.parent)
        .where(Part.child == found, Part.struck.is_(None), Yarn.kind != "candidates")) is not None


def _undress(deed: Deed, skein: int) -> None:
    for (tag,) in deed.all(select(TagOn.tag).where(
            TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None))):
        deed.change(Tag, tag, void=deed.seq)
    deed.end(TagOn, skein)
    deed.end(Whereabouts, skein)
    deed.end(OnBundle, skein)
