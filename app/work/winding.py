"""The reel: skeins of one origin are one group, whatever cones feed the reel's other places."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from sqlalchemy import select

from app.calculations.codes import shown
from app.calculations.units import metres, milligrams
from app.calculations.winding import grams_in
from app.lookups.cones import cone_facts
from app.lookups.ties import open_ties
from app.problems import Refused
from app.records import Cone, Draw, Waste, Yarn
from app.store.deed import Deed
from app.work.bundling import number_of, tie_on
from app.work.dividing import skeins

OVERDRAWN = Decimal("1.03")


@dataclass(frozen=True, slots=True)
class Drawn:
    """So many millimetres, as wound, of one cone."""

    cone: int
    mm: int


@dataclass(frozen=True, slots=True)
class Wound:
    """Skeins of one origin: one cone for all of them, or two for one skein over a join."""

    draws: tuple[Drawn, ...]
    count: int
    put_up: str
    tie: str


def wind(deed: Deed, reel: Sequence[Wound], disc: int | None = None) -> list[int]:
    """One winding: a group for each origin, tied on one disc if one is given.

    Refused: a disc on a live bundle, a join of more than one skein. A cone that gives more than it
    holds has given it: that is said and kept.
    """
    if not reel or any(wound.count < 1 for wound in reel):
        raise Refused("Nothing was wound; nothing was saved.", "Count the skeins.")
    groups = [_wound(deed, wound) for wound in reel]
    if disc is not None:
        tie_on(deed, disc, groups)
    deed.say(f"wound {_told(deed, reel)}{_on(deed, disc)}")
    return groups


def end_cone(deed: Deed, cone: int, waste_mg: int, why: str = "end of the cone") -> int:
    """The cone is empty: what was left at its end is waste, and weighed."""
    facts = cone_facts(deed.connection, cone)
    if waste_mg < 1:
        raise Refused("The end of a cone weighs something; nothing was saved.",
                      "Weigh what is left of it.")
    if facts.ended:
        raise Refused(f"{shown(facts.code)} was ended before; nothing was saved.",
                      "Look at its card: is it this cone?")
    left = facts.fibre_mg - facts.drawn_mg - waste_mg
    if abs(left) * 100 > facts.fibre_mg:
        deed.note(f"{shown(facts.code)}: {abs(left) / 1000:.0f} g "
                  f"{'are missing' if left > 0 else 'too much'} in its balance. "
                  "Look for a skein that was not booked, or booked twice.")
    deed.say(f"ended {shown(facts.code)}, {waste_mg / 1000:g} g waste")
    return deed.add(Waste(cone=cone, mg=waste_mg, why=why))


def _wound(deed: Deed, wound: Wound) -> int:
    if len(wound.draws) > 1 and wound.count > 1:
        raise Refused("Only one skein can span a join; nothing was saved.",
                      "Book the skein with the join by itself.")
    facts = [cone_facts(deed.connection, draw.cone) for draw in wound.draws]
    if len({one.base for one in facts}) > 1:
        raise Refused("Two bases cannot be one skein; nothing was saved.",
                      "Scan the cone that was on the reel.")
    masses = [
        milligrams(grams_in(metres(draw.mm), Decimal(one.millitex) / 1000))
        for draw, one in zip(wound.draws, facts, strict=True)
    ]
    group = deed.add(Yarn(kind="group", base=facts[0].base, put_up=wound.put_up,
                          count=wound.count, mg=sum(masses), tie=wound.tie))
    deed.add_all([
        Draw(cone=draw.cone, yarn=group, mg=mg, mm=draw.mm, basis="scanned")
        for draw, mg in zip(wound.draws, masses, strict=True)
    ])
    for one, mg in zip(facts, masses, strict=True):
        code = shown(one.code)
        gave = one.drawn_mg + mg
        if gave > one.fibre_mg * OVERDRAWN:
            deed.note(f"{code} gave {gave / 1000:.0f} g, and held {one.fibre_mg / 1000:.0f} g "
                      "at standard moisture: count again, or another cone was on the reel.")
        if len(facts) == 1 and wound.tie in open_ties(deed.connection, one.base, one.id):
            deed.note(f"{wound.tie.capitalize()} ties are worn by another open cone of "
                      f"{one.base_name}: take another colour, or keep the two out of one pot.")
    return group


def _told(deed: Deed, reel: Sequence[Wound]) -> str:
    parts = []
    for wound in reel:
        codes = [shown(deed.value(select(Cone.code).where(Cone.id == draw.cone)))
                 for draw in wound.draws]
        parts.append(f"{skeins(wound.count, wound.put_up)} of {' and '.join(codes)}, "
                     f"{wound.tie} ties")
    return "; ".join(parts)


def _on(deed: Deed, disc: int | None) -> str:
    return "" if disc is None else f", on disc {number_of(deed, disc)}"
