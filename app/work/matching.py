"""Skeins without a tag, or with another lot's: what they are is said only on evidence."""

from collections.abc import Collection, Sequence

from sqlalchemy import ColumnElement, select
from sqlalchemy.orm import aliased

from app.calculations.codes import shown
from app.lookups.certainty import nearest
from app.lookups.present import has_a_place
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.records import Base, DyeLot, Part, Tag, TagOn, Whereabouts, Yarn
from app.store.deed import Deed
from app.work.dividing import must_be_known, rest, skeins
from app.work.tagging import clear_table, one_more

_OF_POOL = aliased(Part)


def find(deed: Deed, base: int, mg: int, put_up: str = "skein") -> int:
    """Yarn without a tag: it stands beside all totals until something says what it is."""
    name = deed.value(select(Base.name).where(Base.id == base, Base.struck.is_(None)))
    if name is None:
        raise NotFound("This base is not in the book; nothing was saved.", "Choose its base.")
    if mg < 1:
        raise Refused("A find weighs something; nothing was saved.", "Weigh it.")
    found = deed.add(Yarn(kind="find", base=base, put_up=put_up, count=1, mg=mg))
    deed.begin(Whereabouts(yarn=found, state="table", basis="scanned"))
    deed.say(f"found a {put_up} of {name} without a tag")
    return found


def is_one_of(deed: Deed, found: int, candidates: Sequence[int], basis: str = "stated") -> int:
    """The find is one of these (an order's skeins, say): one of them counts as back.

    Which of them stays unknown; what they share is known. Refused where other finds stand for all
    of them already. The row of the candidates.
    """
    _must_be_find(deed, found)
    rows = list(dict.fromkeys(candidates))
    if not rows:
        raise Refused("It has to be one of something; nothing was saved.",
                      "Choose the order or the lot it may come from.")
    must_be_known(deed, rows)
    looks = deed.all(select(Yarn.base, Yarn.put_up, Yarn.count, Yarn.mg).where(Yarn.id.in_(rows)))
    if any(look.count != 1 for look in looks):
        raise Refused("It can be one of single skeins only; nothing was saved.",
                      "If it was missing at a count, say which count.")
    first, mg = looks[0], sum(look.mg for look in looks)
    pool = deed.add(Yarn(kind="candidates", base=first.base, put_up=first.put_up,
                         count=len(rows), mg=mg))
    deed.add_all([Part(child=pool, parent=row, took=0, gave=1, mg=0, basis=basis) for row in rows])
    deed.add(Part(child=found, parent=pool, took=1, gave=1, mg=0, basis=basis))
    if not has_a_place(deed.connection, found):
        raise Refused("Other finds stand for all of these already; nothing was saved.",
                      "Keep it as a find, and look which match was wrong.")
    deed.say(f"the find is one of {skeins(len(rows))}, as {basis}")
    return pool


def is_missing_from(deed: Deed, found: int, row: int, basis: str = "recognised") -> None:
    """The find is one that was missing at that count, or that is still on that pile by the book."""
    _must_be_find(deed, found)
    left = rest(deed, row)
    of = deed.one(select(Yarn.kind, Yarn.closed).where(Yarn.id == row))
    waits = of is not None and of.kind == "pile" and not of.closed
    if left.members < 1 or not (waits or (of is not None and of.closed)):
        raise Refused("Nothing is missing there; nothing was saved.",
                      "Look which count was short.")
    mg = left.mg // left.members
    deed.add(Part(child=found, parent=row, took=1, gave=1, mg=mg, basis=basis))
    deed.change(Yarn, found, mg=mg)
    if waits and left.members == 1:
        clear_table(deed, row)
    deed.say(f"the find is the one that was {'counted and never tagged' if waits else 'missing'}")


def belongs_to(deed: Deed, skein: int, pile: int, basis: str = "matched") -> None:
    """A tag hangs on another lot's skein: the false link is struck, the right one written.

    The tag comes off and is void; the skein wants one of its own lot, and so does the skein that
    the tag was printed for. Base, put-up and wound mass are those of the right pile.
    """
    link = deed.one(
        select(Part.id, Part.parent, Yarn.closed).join(Yarn, Yarn.id == Part.child)
        .where(Part.child == skein, Part.struck.is_(None), Yarn.kind == "skein"))
    if link is None:
        raise Refused("This is no tagged skein; nothing was saved.", "Scan its tag.")
    if link.closed:
        raise Refused("This skein became something else; nothing was saved.",
                      "Take that back first, then say where it belongs.")
    must_be_known(deed, [pile])
    if deed.value(select(Yarn.kind).where(Yarn.id == pile)) not in ("pile", "group"):
        raise Refused("A skein comes out of a pile; nothing was saved.",
                      "Choose the pile it came from.")
    if rest(deed, pile).members < 1:
        deed.note("That pile now has one too many: one of its own tags hangs elsewhere.")
        pile = one_more(deed, pile, _only_lot(deed, pile))
    left = rest(deed, pile)
    right = deed.one(select(Yarn.base, Yarn.put_up, Yarn.closed).where(Yarn.id == pile))
    mg = left.mg // left.members
    deed.change(Part, link.id, struck=deed.seq)
    deed.add(Part(child=skein, parent=pile, took=1, gave=1, mg=mg, basis=basis))
    deed.change(Yarn, skein, base=right.base, put_up=right.put_up, mg=mg)
    _lies_there_again(deed, link.parent)
    if left.members == 1 and not right.closed:
        clear_table(deed, pile)
    for (tag,) in deed.all(select(TagOn.tag).where(
            TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None))):
        deed.change(Tag, tag, void=deed.seq)
    deed.end(TagOn, skein)
    deed.say(f"a skein belongs to another lot, as {basis}")


def _only_lot(deed: Deed, pile: int) -> int | None:
    lots = nearest(thread(deed.connection, [pile]), pile, "lot")
    return next(iter(lots)) if len(lots) == 1 else None


def _lies_there_again(deed: Deed, pile: int) -> None:
    """A pile whose tags seemed to be all tied on has a skein of its own that still wants one."""
    went_on = deed.value(
        select(Yarn.id).join(Part, Part.child == Yarn.id)
        .where(Part.parent == pile, Part.struck.is_(None), Yarn.kind != "skein"))
    closed = deed.value(select(Yarn.closed).where(Yarn.id == pile, Yarn.kind == "pile"))
    if closed and went_on is None:
        deed.change(Yarn, pile, closed=None)


def new_tag(deed: Deed, skein: int, tag: int) -> None:
    """A skein without a tag gets one that was printed for its lot.

    Where it is known which skein it was, the mark that this one lost is void from here on.
    """
    must_be_known(deed, [skein])
    if _worn_by(deed, TagOn.yarn == skein):
        raise Refused("This skein wears a tag; nothing was saved.", "Print another instead.")
    row = deed.one(
        select(Tag.mark, Tag.void, Tag.lot, DyeLot.code).join(DyeLot, DyeLot.id == Tag.lot)
        .where(Tag.id == tag, Tag.struck.is_(None)))
    if row is None:
        raise NotFound("This tag is not in the book; nothing was saved.",
                       "Scan a tag of this studio.")
    if row.void:
        raise Refused(f"{shown(row.mark)} is void; nothing was saved.", "Print another.")
    if _worn_by(deed, TagOn.tag == tag):
        raise Refused(f"{shown(row.mark)} hangs on another skein; nothing was saved.",
                      "Print another.")
    lots = nearest(thread(deed.connection, [skein]), skein, "lot")
    if lots != {row.lot}:
        raise Refused(f"{shown(row.mark)} was printed for {_lot_shown(row.code)}, and this skein "
                      f"is of {_lots_shown(deed, lots)}; nothing was saved.",
                      "Print one for its own lot, or say first what it is.")
    deed.begin(TagOn(tag=tag, yarn=skein))
    lost = _void_the_lost(deed, skein, tag)
    deed.say(f"tied {shown(row.mark)} on" + (f": {shown(lost)} is void" if lost else ""))


def _void_the_lost(deed: Deed, found: int, tag: int) -> str:
    """The mark of the one skein that a find was said to be; nothing where it may be several."""
    rows = deed.all(
        select(_OF_POOL.parent).join(Part, Part.parent == _OF_POOL.child)
        .where(Part.child == found, Part.struck.is_(None), _OF_POOL.struck.is_(None),
               _OF_POOL.took == 0))
    if len(rows) != 1:
        return ""
    (was,) = rows[0]
    worn = deed.one(
        select(Tag.id, Tag.mark).join(TagOn, TagOn.tag == Tag.id)
        .where(TagOn.yarn == was, TagOn.until.is_(None), TagOn.struck.is_(None)))
    if worn is None:
        return ""
    deed.end(TagOn, was)
    deed.change(Tag, worn.id, void=deed.seq, successor=tag)
    mark: str = worn.mark
    return mark


def _worn_by(deed: Deed, which: ColumnElement[bool]) -> bool:
    return deed.value(select(TagOn.id).where(
        which, TagOn.until.is_(None), TagOn.struck.is_(None))) is not None


def _lots_shown(deed: Deed, lots: Collection[int | None]) -> str:
    if None in lots or not lots:
        return "a lot that nobody knows"
    codes = deed.all(select(DyeLot.code).where(DyeLot.id.in_(lots)).order_by(DyeLot.code))
    return " or ".join(_lot_shown(code) for (code,) in codes)


def _lot_shown(code: str | None) -> str:
    return shown(code) if code else "a lot without a code"


def _must_be_find(deed: Deed, found: int) -> None:
    must_be_known(deed, [found])
    kind = deed.value(select(Yarn.kind).where(Yarn.id == found))
    matched = deed.value(select(Part.id).where(Part.child == found, Part.struck.is_(None)))
    if kind != "find" or matched:
        raise Refused("This is no find, or it was matched already; nothing was saved.",
                      "Take the earlier match back first.")
