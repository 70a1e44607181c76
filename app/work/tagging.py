"""The tag table: printed is not applied, applied is not sold, and a reprint voids the old one."""

import json
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from sqlalchemy import bindparam, select

from app.calculations.codes import shown
from app.lookups.certainty import held_by, nearest
from app.lookups.printed import SHEETS, sheets_used
from app.lookups.tagging import PileFacts, pile_facts
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.records import (
    InBath,
    OnBundle,
    Part,
    PrintSheet,
    Setting,
    Tag,
    TagOn,
    Whereabouts,
    Yarn,
)
from app.store.deed import Deed
from app.work.bundling import free_empty_disc
from app.work.dividing import close, make, rest

EXTRA_SKEIN = "an extra skein"
"""Why a tag is printed for one more than was counted."""


@dataclass(frozen=True, slots=True)
class Printing:
    """Tags that were drawn and proven on paper: their marks, words and places on the stock.

    `cells` says where each stands, counted row by row from 1 over all sheets of the printing; it
    may pass over some, and is empty where that is not known.
    """

    pile: int
    marks: tuple[str, ...]
    words: str
    stock: str
    cells: tuple[int, ...] = ()
    version: int | None = None
    """The base version whose text is printed, where a pile holds two."""
    why: str = ""
    """Why more than the count: spoiled, fell off, EXTRA_SKEIN."""


def may_print(facts: PileFacts, count: int, version: int | None, why: str) -> int:
    """The base version to print from, or Refused with the reason and the way out."""
    if facts.holds:
        raise Refused("HOLD: no tags are printed for this pile.", "Ask who placed the hold.")
    if len(facts.lots) != 1 or facts.lot is None:
        raise Refused(_which_lot(facts), "Separate them, or ask the owner.")
    if count > facts.to_print and not why.strip():
        raise Refused(f"{facts.applied + facts.waiting} of {facts.counted} printed: "
                      f"why {count} more?", "Say what happened to them, or print fewer.")
    if version is not None and version not in facts.versions:
        raise Refused("These words are not of this yarn.", "Choose the words of its cones.")
    if version is None and len(facts.versions) != 1:
        raise Refused("Two compositions lie in one pile; nothing was printed."
                      if facts.versions else "The composition of this pile is not known.",
                      "The owner says which text is printed.")
    return version or facts.versions[0]


def print_tags(deed: Deed, printing: Printing) -> list[int]:
    """Tags leave the printer; each has its own mark, never used again. The tags."""
    facts = pile_facts(deed.connection, printing.pile)
    version = may_print(facts, len(printing.marks), printing.version, printing.why)
    cells = printing.cells or (None,) * len(printing.marks)
    sheet = deed.add(PrintSheet(stock=printing.stock, first_cell=cells[0] or 1, why=printing.why))
    tags = deed.add_all([
        Tag(mark=mark, lot=_only(facts.lots), pile=printing.pile, base_version=version,
            words=printing.words, sheet=sheet, cell=cell)
        for mark, cell in zip(printing.marks, cells, strict=True)
    ])
    deed.say(f"printed {_tags(len(tags))} for {shown(facts.lot or '')}")
    return tags


def keep_sheet(
    deed: Deed, stock: str, used: Collection[int], *, of_tags: bool = True
) -> None:
    """These cells of the sheet in hand are used now: printed, jammed, or skipped as not there.

    The stock of tags comes first, for the next are printed on it; a card changes no order.
    """
    before = sheets_used(deed.connection)
    others = {name: cells for name, cells in before.items() if name != stock}
    sheets = {stock: used} | others if of_tags else {**before, stock: used}
    told = {name: sorted(cells) for name, cells in sheets.items()}
    deed.add(Setting(key=SHEETS, value=json.dumps(told)))


def spoil_tags(deed: Deed, tags: Sequence[int], why: str) -> None:
    """Printed tags that will never hang: jammed, torn, one too many."""
    if not why.strip():
        raise Refused("A spoiled tag needs its reason; nothing was saved.", "Say what happened.")
    if not tags:
        raise Refused("No tag was scanned; nothing was saved.", "Scan the spoiled ones.")
    for tag in tags:
        row = deed.one(select(Tag.mark, Tag.void).where(Tag.id == tag, Tag.struck.is_(None)))
        if row is None:
            raise NotFound("This tag is not in the book; nothing was saved.",
                           "Scan a tag of this studio.")
        if row.void:
            raise Refused(f"{shown(row.mark)} is void already; nothing was saved.",
                          "Throw it away.")
        if _hangs_on(deed, tag) is not None:
            raise Refused(f"{shown(row.mark)} hangs on a skein; nothing was saved.",
                          "Print another for the skein instead: that voids this one.")
        deed.change(Tag, tag, void=deed.seq)
    deed.say(f"spoiled {_tags(len(tags))}: {why}")


_TAG = select(Tag.mark, Tag.void, Tag.pile, Tag.lot, Tag.successor).where(
    Tag.id == bindparam("tag"), Tag.struck.is_(None))
_HANGS_ON = select(TagOn.yarn).where(
    TagOn.tag == bindparam("tag"), TagOn.until.is_(None), TagOn.struck.is_(None))
_CLOSED = select(Yarn.closed).where(Yarn.id == bindparam("pile"))


def apply_tag(deed: Deed, tag: int) -> int:
    """The tag is tied on: from now on this skein is one that can be told. The skein."""
    row = deed.one(_TAG, tag=tag)
    if row is None:
        raise NotFound("This tag is not in the book; nothing was saved.",
                       "Scan a tag of this studio.")
    if row.void:
        raise Refused(f"{shown(row.mark)} is void{_by(deed, row.successor)}; nothing was saved.",
                      "Throw it away.")
    if _hangs_on(deed, tag) is not None:
        raise Refused(f"{shown(row.mark)} hangs on its skein already; it was counted once.",
                      "Scan the next tag.")
    pile = _open_heir(deed, row.pile)
    if pile != row.pile:
        _look_at_heir(deed, pile, row.lot, row.mark)
    left = rest(deed, pile).members
    if left < 1 and _more_than_counted(deed, row.pile):
        pile, left = one_more(deed, pile, row.lot), 1
        deed.note("One more than was counted: its cone is not known, its lot is what its tag says. "
                  "Look which other count is short.")
    if left < 1:
        raise Refused(f"All skeins of this pile wear tags: {shown(row.mark)} is one too many.",
                      "Spoil it, or count the pile again.")
    skein = make(deed, "skein", [(pile, 1)])
    deed.begin(TagOn(tag=tag, yarn=skein))
    deed.begin(Whereabouts(yarn=skein, state="table", basis="scanned"))
    if left == 1:
        clear_table(deed, pile)
    deed.say(f"tied {shown(row.mark)} on")
    return skein


def reprint(deed: Deed, skein: int, mark: str, words: str, sheet: tuple[str, int]) -> int:
    """A new tag for a tagged skein: the old one is void and names its successor. The new tag.

    `sheet` is its stock, and its cell over all sheets of the printing.
    """
    old = deed.one(
        select(Tag.id, Tag.mark, Tag.lot, Tag.pile, Tag.base_version)
        .join(TagOn, TagOn.tag == Tag.id)
        .where(TagOn.yarn == skein, TagOn.until.is_(None), TagOn.struck.is_(None)))
    if old is None:
        raise NotFound("No tag hangs on this skein; nothing was saved.",
                       "Scan the tag that it wears.")
    if held_by(thread(deed.connection, [skein]), skein):
        raise Refused("HOLD: no tag is printed for this skein.", "Ask who placed the hold.")
    row = deed.add(PrintSheet(stock=sheet[0], first_cell=sheet[1]))
    new = deed.add(Tag(mark=mark, lot=old.lot, pile=old.pile, base_version=old.base_version,
                       words=words, sheet=row, cell=sheet[1]))
    deed.end(TagOn, skein)
    deed.change(Tag, old.id, void=deed.seq, successor=new)
    deed.begin(TagOn(tag=new, yarn=skein))
    deed.say(f"printed {shown(mark)} in place of {shown(old.mark)}")
    return new


def _more_than_counted(deed: Deed, pile: int) -> bool:
    """Whether tags were printed for more skeins of this pile than were counted."""
    extra: int | None = deed.value(
        select(Tag.id).join(PrintSheet, PrintSheet.id == Tag.sheet)
        .where(Tag.pile == pile, Tag.void.is_(None), Tag.struck.is_(None),
               PrintSheet.why == EXTRA_SKEIN))
    return extra is not None


def one_more(deed: Deed, pile: int, lot: int | None) -> int:
    """One more lay in a pile than was counted, of this lot and of no known cone. A pile of it."""
    base, put_up, mg, members = deed.one(
        select(Yarn.base, Yarn.put_up, Yarn.mg, Yarn.count).where(Yarn.id == pile))
    one = deed.add(Yarn(kind="pile", base=base, put_up=put_up, count=1, mg=mg // members))
    if lot is not None:
        deed.add(InBath(yarn=one, lot=lot, basis="stated"))
    return one


def _open_heir(deed: Deed, pile: int) -> int:
    """The pile, or what it was mixed into since the tag was printed."""
    while deed.value(_CLOSED, pile=pile):
        heirs = deed.all(
            select(Part.child).join(Yarn, Yarn.id == Part.child)
            .where(Part.parent == pile, Part.struck.is_(None), Yarn.kind == "pile"))
        if not heirs:
            return pile
        if len(heirs) > 1:
            raise Refused("The pile of this tag was split; nothing was saved.",
                          "Print a tag for the pile the skein lies on.")
        pile = heirs[0][0]
    return pile


def _look_at_heir(deed: Deed, pile: int, lot: int, mark: str) -> None:
    """It is tied on all the same: what it says may not be true of this skein."""
    lots = nearest(thread(deed.connection, [pile]), pile, "lot")
    if lots != {lot}:
        deed.note(f"{shown(mark)} was printed before its pile was mixed with another lot: "
                  "this skein may be of that one. Separate them, or ask the owner.")


def clear_table(deed: Deed, pile: int) -> None:
    """The last of a pile went off it: the pile is done with, and its disc is free."""
    bundle = deed.value(select(OnBundle.bundle).where(
        OnBundle.yarn == pile, OnBundle.until.is_(None), OnBundle.struck.is_(None)))
    close(deed, pile)
    if bundle is not None:
        free_empty_disc(deed, bundle)


def _hangs_on(deed: Deed, tag: int) -> int | None:
    yarn: int | None = deed.value(_HANGS_ON, tag=tag)
    return yarn


def _by(deed: Deed, successor: int | None) -> str:
    mark = deed.value(select(Tag.mark).where(Tag.id == successor)) if successor else None
    return f", {shown(mark)} took its place" if mark else ""


def _which_lot(facts: PileFacts) -> str:
    if len(facts.lots) > 1:
        return f"{len(facts.lots)} lots lie in one pile; nothing was printed."
    return "The lot of this pile is not known, or still without its code; nothing was printed."


def _only(lots: tuple[int | None, ...]) -> int:
    (lot,) = lots
    assert lot is not None
    return lot


def _tags(count: int) -> str:
    return "1 tag" if count == 1 else f"{count} tags"
