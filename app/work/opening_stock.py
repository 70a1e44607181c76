"""The first day: what lay in the house before the book began, with its old codes."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import select

from app.calculations.codes import bare_characters
from app.calculations.old_lot_codes import LONGEST, no_old_lot
from app.problems import Refused
from app.records import (
    Base,
    BaseVersion,
    Colourway,
    DyeLot,
    InBath,
    PutUp,
    RecipeVersion,
    Yarn,
)
from app.store.deed import Deed
from app.work.dividing import skeins
from app.work.dyeing import name_colourway


@dataclass(frozen=True, slots=True)
class OldLot:
    """A lot from before: its code as it stands on its tags, its cones not known."""

    code: str
    base_version: int
    colourway: int
    count: int
    put_up: str = "skein"


def open_lot(deed: Deed, old: OldLot, mg_each: int) -> int:
    """An old lot as a pile; nobody knows its cones, and the book says so. The pile."""
    code = bare_characters(old.code)
    _may_be_opened(deed, old, code)
    base = deed.value(select(BaseVersion.base).where(BaseVersion.id == old.base_version))
    lot = deed.add(DyeLot(code=code, bath=None, base=base, colourway=old.colourway))
    pile = deed.add(Yarn(kind="pile", base=base, put_up=old.put_up, count=old.count,
                         mg=mg_each * old.count, base_version=old.base_version))
    deed.add(InBath(yarn=pile, lot=lot, basis="stated"))
    deed.say(f"opened old lot {old.code}: {skeins(old.count, old.put_up)}")
    return pile


@dataclass(frozen=True, slots=True)
class LayHere:
    """The same in the words of who finds it: base and colourway by name, put-up as described."""

    code: str
    base: str
    colourway: str
    count: int
    put_up: str = "skein"


def open_lots(deed: Deed, lots: Sequence[LayHere]) -> list[int]:
    """Old lots that lay here, each as a pile; a colourway that is new is named with it. The piles.

    Each member is taken to hold what a tag of its put-up says. Refused: a base or put-up that is
    not described, a code that is in the book.
    """
    if not lots:
        raise Refused("No old lot was named; nothing was saved.", "Write its code.")
    piles = []
    for one in lots:
        version, mg_each = _as_described(deed, one)
        old = OldLot(one.code, version, _colourway(deed, one.colourway), one.count, one.put_up)
        piles.append(open_lot(deed, old, mg_each))
    if len(lots) > 1:
        deed.say(f"opened {len(lots)} old lots, {sum(one.count for one in lots)} in all")
    return piles


def _as_described(deed: Deed, one: LayHere) -> tuple[int, int]:
    """The base version that its tags are printed from, and the milligrams of one."""
    version = deed.value(
        select(BaseVersion.id).join(Base, Base.id == BaseVersion.base)
        .where(Base.name == one.base, Base.struck.is_(None), BaseVersion.struck.is_(None))
        .order_by(BaseVersion.number.desc()))
    mg = None if version is None else deed.value(select(PutUp.nominal_mg).where(
        PutUp.base_version == version, PutUp.name == one.put_up, PutUp.struck.is_(None)))
    if mg is None:
        what = one.base if version is None else f"A {one.put_up} of {one.base}"
        raise Refused(f"{what or 'No base'} is not described in the book; nothing was saved.",
                      "Describe it first.")
    return version, mg


def _colourway(deed: Deed, name: str) -> int:
    words = name.strip()
    row: int | None = deed.value(select(Colourway.id).where(
        Colourway.name == words, Colourway.struck.is_(None)))
    if row is None:
        recipe = name_colourway(deed, words)
        row = deed.value(select(RecipeVersion.colourway).where(RecipeVersion.id == recipe))
    assert row is not None
    return row


def _may_be_opened(deed: Deed, old: OldLot, code: str) -> None:
    if not code:
        raise Refused("An old lot needs the code that stands on its tags; nothing was saved.",
                      "Read its tag, or give it a code of its own.")
    if old.count < 1:
        raise Refused(f"{old.count} of lot {old.code} cannot lie here; nothing was saved.",
                      "Count them.")
    if deed.value(select(DyeLot.id).where(DyeLot.code == code)):
        raise Refused(f"Lot {old.code} is in the book already; nothing was saved.",
                      "Look it up instead.")
    if (why := no_old_lot(code)) is not None:
        raise Refused(f"{old.code[:LONGEST]} {why[0]}; nothing was saved.", why[1])
