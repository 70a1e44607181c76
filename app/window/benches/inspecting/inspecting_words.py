"""What the inspector reads of a lot: the number that decides, and the rest in sentences."""

from app.calculations.cards import why_not
from app.calculations.grey_scales import change
from app.calculations.moments import day_words
from app.calculations.shade import Lamp
from app.calculations.shade_difference import Difference
from app.lookups.lot_shade import ByEye, LotShade, VerdictNow
from app.window.benches.inspecting.looking import Inspected
from app.window.parts.swatch import Zone
from app.window.shades.beside import Shown, zones_of
from app.window.shades.shade_words import (
    card_words,
    fine_words,
    lamps_words,
    told,
    zone_words,
)

NONE = "–"
"""In the place of a number that is not there."""
REASONS = ("uneven", "streaks", "stained", "off shade")
"""Why a lot is sold as seconds or held, for hands without a keyboard."""


def decides(found: Inspected) -> tuple[str, str, str]:
    """The number, what it counts, and what it means; words alone where there is none."""
    shade, against = found.shade, found.shade.from_standard
    if against is None:
        if shade.by_eye:
            first = shade.by_eye[0]
            return str(first.step), f"by eye, against {first.against or 'the standard'}", \
                "Not measured."
        return NONE, "not held against the standard", _why_not(shade)
    zone = zone_words(against)
    counts = "from the standard" + (f", {zone}" if zone else "")
    return str(against.decisive), counts, f"{_capital(told(against.judged(found.bands)))}."


def _why_not(shade: LotShade) -> str:
    """Why there is no number, and what to do; findings beside it are not said twice."""
    if not shade.cards:
        return "Its card was not read: type a reading, or hold it against the grey scale."
    if shade.standard_why_not == why_not({}, {})[0]:
        return "The standard of this colourway and base was not read: read its card too."
    return "" if shade.standard_why_not in " ".join(shade.findings) else shade.standard_why_not


def sentences(found: Inspected) -> list[str]:
    """The last lot, other lamps, the eye, the cards, and the verdict."""
    shade, said = found.shade, []
    if shade.from_last is not None:
        last = shade.from_last
        said.append(f"{last.compared.decisive} from the last lot, {last.code}: "
                    f"{told(last.compared.judged(found.bands))}.")
    elif shade.cards:
        said.append("No lot before it was read alike, so there is no step from the last.")
    if shade.from_standard is not None:
        apart = shade.from_standard.decisive
        said.append(f"From the standard: {fine_words(apart)}{_grey_words(apart)}.")
    if shade.from_standard is not None and (lamps := lamps_words(shade.from_standard)):
        said.append(f"From the standard under each lamp: {lamps}.")
    said += [_by_eye(one) for one in shade.by_eye]
    said += [f"Read{f', zone {card.zone}' if card.zone else ''}: {card_words(card.colour)}; "
             f"{card.person}, {day_words(card.at)}." for card in shade.cards]
    if not shade.cards and not shade.by_eye:
        said.append("Not measured, and not held against the grey scale.")
    return said


def verdict_words(verdict: VerdictNow | None) -> str:
    """What was decided last, by whom and when."""
    if verdict is None:
        return "No verdict yet."
    more = ", ".join(filter(None, (verdict.name, verdict.why)))
    return (f"Decided: {verdict.verdict}{f', {more}' if more else ''} "
            f"({verdict.person}, {day_words(verdict.at)}).")


def swatches(found: Inspected) -> list[Shown]:
    """The lot beside its standard and the last lot, in the light in which they were held."""
    shade = found.shade
    against, last = shade.from_standard, shade.from_last
    own = _own(found)
    if against is None:
        kept = Shown("the standard", (), none="not read alike" if shade.cards else "not compared")
    else:
        kept = Shown("the standard", zones_of(*(one.standard for one in against.usual.values())),
                     (str(against.decisive),))
    if last is None:
        return [kept, own]
    before = last.compared
    return [kept, own, Shown(f"last: {last.code}",
                             zones_of(*(one.standard for one in before.usual.values())),
                             (str(before.decisive),))]


def _own(found: Inspected) -> Shown:
    shade = found.shade
    for compared in (shade.from_standard, shade.from_last and shade.from_last.compared):
        if compared:
            return Shown(found.shown, zones_of(*(one.other for one in compared.usual.values())),
                         ("in hand",))
    if shade.cards:
        looked = shade.cards[0].colour.viewing
        cards = [card.colour for card in shade.cards if card.colour.viewing == looked]
        return Shown(found.shown, zones_of(*cards), ("in hand", str(looked)))
    if shade.swatch:
        return Shown(found.shown, (Zone(shade.swatch),), ("in hand", "chosen by eye"))
    return Shown(found.shown, (), ("in hand",))


def _grey_words(apart: Difference) -> str:
    """The step of the grey scale that ISO 105-A05 reckons, in the daylight and dry as it asks."""
    looked = apart.standard.viewing
    if looked.lamp is not Lamp.D65 or looked.wet:
        return ""
    step = change(apart.standard, apart.other).step
    return f"; {step} on the grey scale for change, by the formula of ISO 105-A05"


def _by_eye(one: ByEye) -> str:
    lamp = f", {one.lamp}" if one.lamp else ""
    return (f"By eye: {one.step} on the grey scale for {one.scale} against "
            f"{one.against or 'the standard'}{lamp}; {one.person}, {day_words(one.at)}.")


def _capital(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
