"""What is added at the pot: a line of the bath, never a change of the recipe."""

from dataclasses import dataclass

from sqlalchemy import select

from app.lookups.weigh_sources import against
from app.problems import NotFound, Refused
from app.records import Bath, Component, WeighLine
from app.store.deed import Deed
from app.work.sources import amount_words, must_be_one_amount, source_in_book


@dataclass(frozen=True, slots=True)
class Addition:
    """More acid, or "a bit more yellow": what, how much, and why."""

    bath: int
    component: int | None = None
    fill: int | None = None
    stock: int | None = None
    mg: int | None = None
    ul: int | None = None
    why: str = ""


def addition(deed: Deed, added: Addition) -> int:
    """It has happened at the pot; a dye takes the lot off its recipe, acid does not. The line."""
    bath = deed.one(select(Bath.recipe_version).where(Bath.id == added.bath, Bath.struck.is_(None)))
    if bath is None:
        raise NotFound("This bath is not in the book; nothing was saved.", "Scan its pot.")
    source = source_in_book(deed, added.fill, added.stock)
    row = None if added.component is None else deed.one(
        select(Component.substance, Component.role).where(
            Component.id == added.component, Component.struck.is_(None)))
    what = (row and row.substance) or (source and source.dye) or added.why.strip()
    if not what:
        raise Refused("Nobody said what was added; nothing was saved.", "Scan its jar, or name it.")
    must_be_one_amount(added.mg, added.ul, added.fill, added.stock)
    if source:
        for sentence in against(deed.connection, source, deed.happened):
            deed.note(sentence)
    if source or (row and row.role == "dye"):
        deed.note(f"{what} was added at the pot: this lot is off its recipe, and no sister of "
                  "others.")
    deed.say(f"added {amount_words(added.mg, added.ul)} {what} to bath {added.bath}")
    return deed.add(WeighLine(
        bath=added.bath, component=added.component, fill=added.fill, stock=added.stock,
        kind="addition", mg=added.mg, ul=added.ul, why=added.why, taken=deed.seq))
