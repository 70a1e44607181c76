"""The shade check: what an instrument or the eye says of a lot, and what is decided of it.

All of it has happened when it is written, so nothing is refused but what cannot be.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Executable, select

from app.calculations.codes import shown
from app.calculations.grey_scales import Step
from app.calculations.shade import Colour
from app.lookups.certainty import held_by
from app.lookups.lot_shade import TEN, lot_shade
from app.lookups.shades import MILLI
from app.lookups.thread import thread
from app.problems import NotFound, Refused
from app.records import (
    Base,
    ChosenSwatch,
    Colourway,
    Cone,
    DyeLot,
    GreyStep,
    InBath,
    ShadeReading,
    Verdict,
)
from app.records.shades import SCALES, VERDICTS
from app.store.deed import Deed
from app.work.holding import hold

_SWATCH = re.compile(r"#[0-9A-Fa-f]{6}")


@dataclass(frozen=True, slots=True)
class ShadeIn:
    """A card that was read: of a lot, of a colourway's standard on a base, or of a cone."""

    colour: Colour
    lot: int | None = None
    standard: tuple[int, int] | None = None
    """Colourway and base."""
    cone: int | None = None
    zone: str = ""
    came: str = "typed"
    instrument: str = ""


@dataclass(frozen=True, slots=True)
class VerdictIn:
    """What is decided of a lot: a one-off has a name; seconds and a hold say why."""

    verdict: str
    name: str = ""
    why: str = ""


def read_shade(deed: Deed, card: ShadeIn) -> int:
    """One card as it was read; what looks wrong with it is noted. The reading."""
    (reading,) = read_shades(deed, [card])
    return reading


def read_shades(deed: Deed, cards: Sequence[ShadeIn]) -> list[int]:
    """Several cards in one go; the readings."""
    if not cards:
        raise Refused("No card was read; nothing was saved.", "Read a card, or choose a swatch.")
    things = [_thing(deed, card) for card in cards]
    rows = deed.add_all([_reading(card) for card in cards])
    lots = dict.fromkeys(card.lot for card in cards if card.lot is not None)
    for lot in lots:
        _note(deed, lot, several=len(lots) > 1)
    deed.say(_read_words(cards, things))
    return rows


def grey_step(
    deed: Deed, lot: int, step: Step, against: int | None = None, scale: str = "change",
    lamp: str = "",
) -> int:
    """The eye's step of a grey scale: against the standard, or against another lot."""
    code = _lot(deed, lot)
    if scale not in SCALES:
        raise Refused(f"There is no grey scale for {scale}; nothing was saved.",
                      f"Choose {' or '.join(SCALES)}.")
    if against == lot:
        raise Refused("A lot cannot be held against itself; nothing was saved.",
                      "Choose the standard or another lot.")
    other = "the standard" if against is None else _lot(deed, against)
    deed.say(f"{code} against {other}: {step} on the grey scale for {scale}")
    return deed.add(GreyStep(lot=lot, against=against, scale=scale, lamp=lamp,
                             half_steps=TEN - list(Step).index(step)))


def choose_swatch(deed: Deed, lot: int, swatch: str) -> int:
    """Nothing was measured: a colour chosen by eye to show the lot by, never reckoned with."""
    code = _lot(deed, lot)
    if not _SWATCH.fullmatch(swatch):
        raise Refused(f"“{swatch}” is no colour for a swatch; nothing was saved.",
                      "Choose one like #1B856E.")
    deed.say(f"{code} was not measured: swatch {swatch.upper()} chosen by eye")
    return deed.add(ChosenSwatch(lot=lot, swatch=swatch.upper()))


def decide(deed: Deed, lot: int, said: VerdictIn) -> int:
    """The inspector's verdict; 'hold' puts the hold on the lot. The verdict.

    It lifts no hold: that is a deed of its own, with who and why.
    """
    code, name, why = _lot(deed, lot), said.name.strip(), said.why.strip()
    _must_be_said(said.verdict, name, why)
    if said.verdict == "hold":
        hold(deed, "lot", lot, why)
    elif _is_held(deed, lot):
        deed.note(f"{code} stays on HOLD until somebody lifts it and says why.")
    if said.verdict in ("standard", "sister group"):
        _note(deed, lot)
    words = f"one-off, {name}" if said.verdict == "one-off" else said.verdict
    deed.say(f"{code}: {words}" + (f", {why}" if why else ""))
    return deed.add(Verdict(lot=lot, verdict=said.verdict, name=name, why=why))


def _must_be_said(verdict: str, name: str, why: str) -> None:
    if verdict not in VERDICTS:
        raise Refused(f"“{verdict}” is no verdict; nothing was saved.",
                      f"Choose one of: {', '.join(VERDICTS)}.")
    if verdict == "one-off" and not name:
        raise Refused("A one-off needs a name; nothing was saved.", "Say what it is sold as.")
    if verdict in ("seconds", "hold") and not why:
        raise Refused(f"{'Seconds need' if verdict == 'seconds' else 'A hold needs'} the reason; "
                      "nothing was saved.", "Say what is seen.")


def _is_held(deed: Deed, lot: int) -> bool:
    yarn = [row for (row,) in deed.all(select(InBath.yarn).where(
        InBath.lot == lot, InBath.struck.is_(None)))]
    found = thread(deed.connection, yarn)
    return bool(found.holds) and any(held_by(found, row) for row in yarn)


def _note(deed: Deed, lot: int, several: bool = False) -> None:
    before = f"{_lot(deed, lot)}: " if several else ""
    for finding in lot_shade(deed.connection, lot).findings:
        deed.note(before + finding)


def _reading(card: ShadeIn) -> ShadeReading:
    colour, (colourway, base) = card.colour, card.standard or (None, None)
    return ShadeReading(
        lot=card.lot, colourway=colourway, base=base, cone=card.cone, zone=card.zone.strip(),
        l_milli=round(colour.lightness * MILLI), a_milli=round(colour.a * MILLI),
        b_milli=round(colour.b * MILLI), lamp=colour.viewing.lamp,
        observer=int(colour.viewing.observer), wet=int(colour.viewing.wet),
        readings=colour.readings,
        spread_milli=None if colour.spread is None else round(colour.spread * MILLI),
        came=card.came, instrument=card.instrument.strip())


def _thing(deed: Deed, card: ShadeIn) -> str:
    """What was read, in words; raises where it is not one thing of the book."""
    if (card.lot, card.standard, card.cone).count(None) != 2:
        raise Refused("A card is of one thing: a lot, a standard or a cone; nothing was saved.",
                      "Choose which.")
    if card.lot is not None:
        return _lot(deed, card.lot)
    if card.cone is not None:
        return f"cone {_code(deed, select(Cone.code).where(Cone.id == card.cone), 'cone')}"
    colourway, base = card.standard or (0, 0)
    names = deed.one(
        select(Colourway.name, Base.name.label("base")).join(Base, Base.id == base)
        .where(Colourway.id == colourway, Colourway.struck.is_(None)))
    if names is None:
        raise NotFound("This colourway or base is not in the book; nothing was saved.",
                       "Choose them again.")
    return f"the standard of {names.name} on {names.base}"


def _lot(deed: Deed, lot: int) -> str:
    return _code(deed, select(DyeLot.code).where(DyeLot.id == lot, DyeLot.struck.is_(None)), "lot")


def _code(deed: Deed, question: Executable, kind: str) -> str:
    row = deed.one(question)
    if row is None:
        raise NotFound(f"This {kind} is not in the book; nothing was saved.", "Scan it again.")
    return shown(row.code) if row.code else "a lot without a code"


def _read_words(cards: Sequence[ShadeIn], things: Sequence[str]) -> str:
    if len(cards) > 1:
        return f"read {len(cards)} cards of {len(set(things))} things"
    colour = cards[0].colour
    times = "1 reading" if colour.readings == 1 else f"{colour.readings} readings"
    lab = " ".join(f"{value:.1f}" for value in colour.lab)
    return f"read {things[0]}: {lab}, {colour.viewing}, {times}"
