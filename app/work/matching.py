"""Skeins without a tag, or with another lot's: what they are is said only on evidence."""

from collections.abc import Sequence

from sqlalchemy import select

from app.lookups.walks import above
from app.problems import Refused
from app.records import Base, DyeLot, Part, Tag, TagOn, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.dividing import rest, skeins


def find(deed: Deed, base: int, mg: int, put_up: str = "skein") -> int:
    """Yarn without a tag: it stands beside all totals until something says what it is."""
    found = deed.add(Yarn(kind="find", base=base, put_up=put_up, count=1, mg=mg))
    deed.begin(Whereabouts(yarn=found, state="table", basis="scanned"))
    name = deed.value(select(Base.name).where(Base.id == base))
    deed.say(f"found a {put_up} of {name} without a tag")
    return found


def is_one_of(deed: Deed, found: int, candidates: Sequence[int], basis: str = "stated") -> int:
    """The find is one of these (an order's skeins, say): one of them counts as back.

    Which of them stays unknown; what they share is known. The row of the candidates.
    """
    _must_be_find(deed, found)
    rows = list(dict.fromkeys(candidates))
    if not rows:
        raise Refused("It has to be one of something; nothing was saved.",
                      "Choose the order or the lot it may come from.")
    first = deed.one(select(Yarn.base, Yarn.put_up).where(Yarn.id == rows[0]))
    mg = sum(deed.value(select(Yarn.mg).where(Yarn.id == row)) for row in rows)
    pool = deed.add(Yarn(kind="candidates", base=first.base, put_up=first.put_up,
                         count=len(rows), mg=mg))
    deed.add_all([Part(child=pool, parent=row, took=0, gave=1, mg=0, basis=basis) for row in rows])
    deed.add(Part(child=found, parent=pool, took=1, gave=1, mg=0, basis=basis))
    deed.say(f"the find is one of {skeins(len(rows))}, as {basis}")
    return pool


def is_missing_from(deed: Deed, found: int, row: int, basis: str = "recognised") -> None:
    """The find is one that was missing at that count."""
    _must_be_find(deed, found)
    left = rest(deed, row)
    if left.members < 1 or not deed.value(select(Yarn.closed).where(Yarn.id == row)):
        raise Refused("Nothing is missing there; nothing was saved.",
                      "Look which count was short.")
    mg = left.mg // left.members
    deed.add(Part(child=found, parent=row, took=1, gave=1, mg=mg, basis=basis))
    deed.change(Yarn, found, mg=mg)
    deed.say("the find is the one that was missing")


def belongs_to(deed: Deed, skein: int, pile: int, basis: str = "matched") -> None:
    """A tag hangs on another lot's skein: the false link is struck, the right one written.

    The tag comes off and is void; the skein wants one of its own lot.
    """
    link = deed.one(select(Part.id, Part.mg).where(Part.child == skein, Part.struck.is_(None)))
    if link is None:
        raise Refused("This is no tagged skein; nothing was saved.", "Scan its tag.")
    if skein in above(deed.connection, [pile]):
        raise Refused("A skein cannot come from what was made of it; nothing was saved.",
                      "Choose the pile it came from.")
    if rest(deed, pile).members < 1:
        deed.note("That pile now has one too many: one of its own tags hangs elsewhere.")
    deed.change(Part, link.id, struck=deed.seq)
    deed.add(Part(child=skein, parent=pile, took=1, gave=1, mg=link.mg, basis=basis))
    for (tag,) in deed.all(select(TagOn.tag).where(
            TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None))):
        deed.change(Tag, tag, void=deed.seq)
    deed.end(TagOn, skein)
    deed.say(f"a skein belongs to another lot, as {basis}")


def new_tag(deed: Deed, skein: int, tag: int) -> None:
    """A skein without a tag gets one that was printed for it."""
    if deed.value(select(TagOn.id).where(TagOn.yarn == skein, TagOn.until.is_(None),
                                         TagOn.struck.is_(None))):
        raise Refused("This skein wears a tag; nothing was saved.", "Print another instead.")
    void, lot = deed.one(select(Tag.void, DyeLot.code).join(DyeLot, DyeLot.id == Tag.lot)
                         .where(Tag.id == tag))
    if void:
        raise Refused(f"This tag of {lot} is void; nothing was saved.", "Print another.")
    deed.begin(TagOn(tag=tag, yarn=skein))
    deed.say(f"tied a tag of {lot} on")


def _must_be_find(deed: Deed, found: int) -> None:
    kind = deed.value(select(Yarn.kind).where(Yarn.id == found, Yarn.struck.is_(None)))
    matched = deed.value(select(Part.id).where(Part.child == found, Part.struck.is_(None)))
    if kind != "find" or matched:
        raise Refused("This is no find, or it was matched already; nothing was saved.",
                      "Take the earlier match back first.")
