"""The first day: what lay in the house before the book began, with its old codes."""

from dataclasses import dataclass

from sqlalchemy import select

from app.calculations.codes import bare_characters
from app.problems import Refused
from app.records import BaseVersion, DyeLot, InBath, Yarn
from app.store.deed import Deed
from app.work.dividing import skeins


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
    if not code or deed.value(select(DyeLot.id).where(DyeLot.code == code)):
        raise Refused(f"Lot {old.code} is in the book already; nothing was saved.",
                      "Look it up instead.")
    base = deed.value(select(BaseVersion.base).where(BaseVersion.id == old.base_version))
    lot = deed.add(DyeLot(code=code, bath=None, base=base, colourway=old.colourway))
    pile = deed.add(Yarn(kind="pile", base=base, put_up=old.put_up, count=old.count,
                         mg=mg_each * old.count, base_version=old.base_version))
    deed.add(InBath(yarn=pile, lot=lot, basis="stated"))
    deed.say(f"opened old lot {old.code}: {skeins(old.count, old.put_up)}")
    return pile
