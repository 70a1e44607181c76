"""MIXED and SPLIT: what cannot be told apart is one row with exact counts, and says so."""

from collections.abc import Sequence

from sqlalchemy import func, select

from app.lookups.certainty import parting
from app.lookups.thread import thread
from app.lookups.walks import above, below
from app.problems import Refused
from app.records import OnBundle, Part, Told, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.bundling import add_to_cord, free_empty_disc, tie_on
from app.work.dividing import close, make, rest, skeins
from app.work.promising import note_for_orders


def mix(deed: Deed, yarn: Sequence[int], disc: int | None = None) -> int:
    """Cords cut, piles pushed together: one row, nobody can tell; counts by origin stay exact."""
    rows = list(dict.fromkeys(yarn))
    if len(rows) < 2:
        raise Refused("Only one thing was scanned; nothing was saved.",
                      "Scan all that met, then DONE.")
    kinds = _kinds_alike(deed, rows)
    bundles = [_cord_of(deed, row) for row in rows]
    pool = make(deed, "pile" if kinds == {"pile"} else "group",
                [(row, rest(deed, row).members) for row in rows], basis="counted")
    for row in rows:
        close(deed, row)
    cord = next((bundle for bundle in bundles if bundle is not None), None)
    if disc is not None:
        add_to_cord(deed, disc, [pool])
    elif cord is not None:
        deed.begin(OnBundle(yarn=pool, bundle=cord))
    for bundle in bundles:
        if bundle is not None:
            free_empty_disc(deed, bundle)
    deed.say(f"mixed {skeins(deed.value(select(Yarn.count).where(Yarn.id == pool)))} "
             f"of {len(rows)} origins")
    return pool


def split(deed: Deed, yarn: int, counts: Sequence[int], discs: Sequence[int] = ()) -> list[int]:
    """One row becomes several: the first stays on its cord, the others take the discs in order."""
    left = rest(deed, yarn).members
    if len(counts) < 2 or sum(counts) != left or min(counts) < 1:
        raise Refused(f"{' and '.join(map(str, counts))} do not make {left}; nothing was saved.",
                      "Count both parts.")
    cord = _cord_of(deed, yarn)
    kind = deed.value(select(Yarn.kind).where(Yarn.id == yarn))
    parts = [make(deed, kind, [(yarn, count)], basis="counted") for count in counts]
    close(deed, yarn)
    for part, disc in zip(parts[1:], discs, strict=False):
        tie_on(deed, disc, [part])
    if cord is not None:
        for part in (parts[0], *parts[1 + len(discs):]):
            deed.begin(OnBundle(yarn=part, bundle=cord))
    deed.say(f"split {left} into {' and '.join(map(str, counts))}")
    return parts


def lose(deed: Deed, yarn: int, count: int) -> list[int]:
    """Some are gone; they stay members of whatever pool they came from. Kept row, lost row.

    A tagged skein is lost as it is, with its tag.
    """
    left = rest(deed, yarn).members
    if not 0 < count <= left:
        raise Refused(f"{count} of {left} cannot be lost; nothing was saved.", "Count again.")
    cord, kind = _cord_of(deed, yarn), deed.value(select(Yarn.kind).where(Yarn.id == yarn))
    deed.say(f"lost {skeins(count)}")
    if kind in ("skein", "find"):
        note_for_orders(deed, [yarn])
        deed.begin(Whereabouts(yarn=yarn, state="lost", basis="counted"))
        return [yarn]
    rows = [make(deed, kind, [(yarn, n)], basis="counted") for n in (left - count, count) if n]
    close(deed, yarn)
    deed.begin(Whereabouts(yarn=rows[-1], state="lost", basis="counted"))
    if cord is not None and left > count:
        deed.begin(OnBundle(yarn=rows[0], bundle=cord))
    if cord is not None:
        free_empty_disc(deed, cord)
    return rows


def recognise(deed: Deed, yarn: int, pool: int, parent: int, basis: str = "recognised") -> int:
    """A new fact: these, out of that pool, are of that parent.

    Said once at a pool; what is made of them inherits it.
    """
    line = {*above(deed.connection, [yarn]), *below(deed.connection, "yarn", yarn)}
    said = {row for (row,) in deed.all(
        select(Told.yarn).where(Told.pool == pool, Told.struck.is_(None)))}
    if said & line:
        raise Refused("This was told already, for it or a part of it; nothing was saved.",
                      "Take that back first if it was wrong.")
    if yarn == pool or parting(thread(deed.connection, [yarn]), yarn) != pool:
        raise Refused("This yarn did not come straight out of that pool; nothing was saved.",
                      "Begin with the pool it came out of last.")
    gave = deed.value(select(Part.gave).where(
        Part.child == pool, Part.parent == parent, Part.struck.is_(None)))
    if gave is None:
        raise Refused("Nothing of that went into this pool; nothing was saved.",
                      "Choose one of the origins of this pool.")
    count = deed.value(select(Yarn.count).where(Yarn.id == yarn))
    told = deed.value(select(func.coalesce(func.sum(Told.count), 0)).where(
        Told.pool == pool, Told.parent == parent, Told.struck.is_(None)))
    if told + count > gave:
        deed.note(f"These counts do not fit: {told + count} told of {gave} that went in.")
    deed.say(f"recognised {skeins(count)}")
    return deed.add(Told(yarn=yarn, pool=pool, parent=parent, count=count, basis=basis))


def _kinds_alike(deed: Deed, rows: Sequence[int]) -> set[str]:
    looks = deed.all(select(Yarn.kind, Yarn.base, Yarn.put_up).where(Yarn.id.in_(rows)))
    kinds = {look.kind for look in looks}
    if kinds - {"group", "pile"}:
        raise Refused("A skein with its tag can be told apart, and so can a find; nothing was "
                      "saved.", "Mix what wears no tags, and match a find first.")
    if len({(look.base, look.put_up) for look in looks}) > 1:
        raise Refused("These are different bases or put-ups: they can be told apart; "
                      "nothing was saved.", "Mix those that are alike.")
    return kinds


def _cord_of(deed: Deed, yarn: int) -> int | None:
    bundle: int | None = deed.value(select(OnBundle.bundle).where(
        OnBundle.yarn == yarn, OnBundle.until.is_(None), OnBundle.struck.is_(None)))
    return bundle
