"""Dye jars: opened, refilled, weighed; a refill is a new fill with the rest of the old one."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import func, select

from app.calculations.codes import Kind, numbered
from app.lookups.jars import JarNow, jar_now
from app.problems import NotFound, Refused
from app.records import Fill, FillPart, FillReading, Jar, SupplierLot
from app.store.deed import Deed
from app.work.receiving import supplier_named

GAP_MG = 500  # that a jar may differ from its lines unsaid; common practice, no source
STRONGEST = 3000  # per mille of the standard: beyond it a digit slipped


@dataclass(frozen=True, slots=True)
class JarIn:
    """A jar on the shelf: what is in it, by its maker's lots and weights."""

    number: int
    dye: str
    parts: tuple[tuple[int, int], ...]
    """(supplier lot, milligrams)."""
    strength_permille: int | None = None
    expires: datetime | None = None


@dataclass(frozen=True, slots=True)
class Refill:
    """What is tipped into a jar. `lot` is a maker's lot in the book, or the words on its label."""

    lot: int | str | None
    mg: int
    strength_permille: int | None = None
    """Of the mixture; the old strength says nothing of it."""
    expires: datetime | None = None
    left_mg: int | None = None
    """What was still in the jar, where it was weighed; else it is reckoned."""


def open_jar(deed: Deed, jar_in: JarIn) -> int:
    """A jar with what is in it, as its fill 1. The fill."""
    code = numbered(Kind.JAR, jar_in.number).text
    if deed.value(select(Jar.id).where(Jar.code == code, Jar.struck.is_(None))):
        raise Refused(f"There is a jar {jar_in.number} already; nothing was saved.",
                      "A refill is a deed of its own.")
    mg = sum(mg for _, mg in jar_in.parts)
    if not jar_in.parts or min(mg for _, mg in jar_in.parts) <= 0:
        raise Refused("A jar is opened with what is in it; nothing was saved.", "Weigh it.")
    _must_be_a_strength(jar_in.strength_permille)
    jar = deed.add(Jar(code=code, dye=jar_in.dye))
    fill = deed.add(Fill(jar=jar, number=1, mg=mg, strength_permille=jar_in.strength_permille,
                         expires=jar_in.expires))
    deed.add_all([FillPart(fill=fill, supplier_lot=lot, mg=mg) for lot, mg in jar_in.parts])
    deed.say(f"opened jar {jar_in.number}, {jar_in.dye}: {mg / 1000:g} g")
    return fill


@dataclass(frozen=True, slots=True)
class NewJar:
    """A jar as it comes from the shop: its maker and lot by their words, and what it weighs."""

    number: int
    dye: str
    maker: str
    lot: str | None
    mg: int
    strength_permille: int | None = None
    expires: datetime | None = None


def open_new_jar(deed: Deed, new: NewJar) -> int:
    """A jar of one lot, with its maker put into the book where it is not there yet. The fill."""
    if not new.dye.strip():
        raise Refused("Nobody said which dye is in it; nothing was saved.",
                      "Write its name as the recipes say it.")
    lot = supplier_lot(deed, supplier_named(deed, new.maker), new.lot)
    return open_jar(deed, JarIn(new.number, " ".join(new.dye.split()), ((lot, new.mg),),
                                new.strength_permille, new.expires))


def refill(deed: Deed, jar: int, new: Refill) -> int:
    """A new lot tipped onto what was left: the next fill, whose strength is asked again. The fill.

    It keeps until the earlier of the days that the rest and the new lot are good for.
    """
    now = _jar(deed, jar)
    if new.mg <= 0 or (new.left_mg or 0) < 0:
        raise Refused("A refill weighs something; nothing was saved.", "Weigh what goes in.")
    _must_be_a_strength(new.strength_permille)
    left = now.left_mg if new.left_mg is None else new.left_mg
    if new.left_mg is not None:
        deed.add(FillReading(fill=now.fill, kind="weighed mg", value=new.left_mg))
        _say_gap(deed, now, new.left_mg)
    if left <= 0 and new.left_mg is None:
        deed.note(f"By its lines nothing was left in jar {now.shown}: the new fill counts as the "
                  "new lot alone. If something was in it, weigh it and enter the refill again.")
    number = deed.value(select(func.max(Fill.number)).where(Fill.jar == jar)) + 1
    days = [day for day in (now.expires if left > 0 else None, new.expires) if day]
    fill = deed.add(Fill(
        jar=jar, number=number, mg=max(0, left) + new.mg,
        strength_permille=new.strength_permille, expires=min(days, default=None)))
    lot = _lot(deed, now, new.lot)
    rest = [FillPart(fill=fill, from_fill=now.fill, mg=left)] if left > 0 else []
    deed.add_all([*rest, FillPart(fill=fill, supplier_lot=lot, mg=new.mg)])
    if new.strength_permille is None:
        deed.note(f"The strength of fill {number} is not known: weigh it out as it is, or dye a "
                  "sample against the standard and say its strength.")
    deed.say(f"refilled jar {now.shown}, {now.dye}: fill {number}, {max(0, left) / 1000:g} g left "
             f"and {new.mg / 1000:g} g new")
    return fill


def weigh_jar(deed: Deed, jar: int, mg: int) -> int:
    """The powder in a jar on the balance, without its glass; a gap to its lines is said."""
    now = _jar(deed, jar)
    if mg < 0:
        raise Refused("Nothing weighs less than nothing; nothing was saved.",
                      "Take the weight of the empty jar again.")
    deed.say(f"weighed jar {now.shown}: {mg / 1000:g} g")
    _say_gap(deed, now, mg)
    return deed.add(FillReading(fill=now.fill, kind="weighed mg", value=mg))


def say_strength(deed: Deed, jar: int, permille: int) -> int:
    """The strength of what is in a jar against the standard (1000), by a dyed sample."""
    now = _jar(deed, jar)
    _must_be_a_strength(permille)
    deed.say(f"jar {now.shown}, fill {now.number}: {permille / 10:g} % of the standard")
    return deed.add(FillReading(fill=now.fill, kind="strength permille", value=permille))


def set_reorder(deed: Deed, jar: int, mg: int | None) -> None:
    """Below this weight more is bought; none: nobody is told."""
    now = _jar(deed, jar)
    if mg is not None and mg <= 0:
        raise Refused("More is bought before nothing is left; nothing was saved.",
                      "Give the weight at which to buy.")
    deed.change(Jar, jar, reorder_mg=mg)
    deed.say(f"jar {now.shown}: " + ("nobody is told when to buy" if mg is None
                                     else f"buy below {mg / 1000:g} g"))


def supplier_lot(deed: Deed, supplier: int, said: str | None) -> int:
    """A maker's lot of dye or a spinner's batch, by what its label says."""
    row: int | None = deed.value(select(SupplierLot.id).where(
        SupplierLot.supplier == supplier, SupplierLot.struck.is_(None),
        SupplierLot.said.is_(None) if said is None else SupplierLot.said == said))
    return row or deed.add(SupplierLot(supplier=supplier, said=said))


def _jar(deed: Deed, jar: int) -> JarNow:
    now = jar_now(deed.connection, jar)
    if now is None:
        raise NotFound("This jar is not in the book; nothing was saved.", "Open it first.")
    return now


def _lot(deed: Deed, now: JarNow, said: int | str | None) -> int:
    """A maker's lot; words on a label are those of the maker of what was in the jar before."""
    if isinstance(said, int):
        known: Any = deed.value(select(SupplierLot.id).where(
            SupplierLot.id == said, SupplierLot.struck.is_(None)))
        if known is None:
            raise NotFound("This maker's lot is not in the book; nothing was saved.",
                           "Say the words on its label.")
        return said
    maker = deed.value(select(SupplierLot.supplier).where(
        SupplierLot.id == max(now.parts, key=lambda part: part.share).supplier_lot))
    return supplier_lot(deed, maker, (said or "").strip() or None)


def _must_be_a_strength(permille: int | None) -> None:
    if permille is not None and not 0 < permille <= STRONGEST:
        raise Refused(f"{permille / 10:g} % of the standard is no strength of a dye; nothing was "
                      "saved.", "As strong as the standard is 100 %.")


def _say_gap(deed: Deed, now: JarNow, mg: int) -> None:
    gap = mg - now.left_mg
    if abs(gap) > GAP_MG:
        deed.note(f"Jar {now.shown} weighs {mg / 1000:g} g, {now.left_mg / 1000:g} g by its lines:"
                  f" {abs(gap) / 1000:g} g {'more' if gap > 0 else 'less'}. Another jar that is "
                  "off the other way by as much was scanned in its place.")
