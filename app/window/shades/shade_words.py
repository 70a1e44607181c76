"""What the numbers of a shade say, in words."""

from collections.abc import Sequence

from app.calculations.cards import Compared
from app.calculations.listing import listing
from app.calculations.shade import Colour
from app.calculations.shade_difference import Difference
from app.calculations.shade_words import USUAL, Bands, Judged, judge
from app.lookups.shade_map import ShadeMap, Together

MOST_CODES = 4
"""Lots that a sentence names by their codes."""


def lab_words(colour: Colour) -> str:
    """'L* 25.1, a* 8.0, b* −20.5'."""
    return f"L* {number(colour.lightness)}, a* {number(colour.a)}, b* {number(colour.b)}"


def card_words(colour: Colour) -> str:
    """How it was read: 'L* …, D65, 2°, dry, the mean of 4, 0.4 apart'."""
    times = "1 reading" if colour.readings == 1 else f"the mean of {colour.readings}"
    spread = "" if colour.spread is None else f", {colour.spread:.1f} apart"
    return f"{lab_words(colour)}; {colour.viewing}, {times}{spread}"


def told(judged: Judged) -> str:
    """'looks the same; as the readings may err, alternate two rows for 6–8 cm'."""
    if judged.at_worst is judged.shown:
        return str(judged.shown)
    return f"{judged.shown}; as the readings may err, {judged.at_worst}"


def pair_words(apart: Difference, bands: Bands = USUAL) -> str:
    """Two lots side by side: '0.6 ± 0.5 apart: looks the same'."""
    return f"{apart} apart: {told(judge(apart, bands))}"


def fine_words(apart: Difference) -> str:
    """The numbers for those who want them: 'CIEDE2000 2.57, CMC(2:1) 2.83'."""
    return f"CIEDE2000 {apart.ciede2000:.2f}, CMC(2:1) {apart.cmc:.2f}"


def lamps_words(against: Compared) -> str:
    """The number under every lamp, where there are several: 'D65 0.6 ± 0.5, F11 1.4 ± 0.5'."""
    said = [f"{viewing.lamp} {one}" for (viewing, zone), one in against.differences.items()]
    return ", ".join(said) if len({v.lamp for v, _ in against.differences}) > 1 else ""


def zone_words(against: Compared) -> str:
    """The zone that the number is of, where the yarn has zones."""
    zone = next(name for name, one in against.usual.items() if one is against.decisive)
    return f"zone {zone}, the worst of {len(against.usual)}" if zone else ""


def map_words(shades: ShadeMap) -> str:
    """How many groups the lots make, and whether fewer would do."""
    lots = len(shades.lots)
    if lots < 2:
        return ""
    groups = "1 group" if len(shades.groups) == 1 else f"{len(shades.groups)} groups"
    proven = "fewer would not do" if shades.fewest else "fewer may do"
    sure = "" if len(shades.groups) == 1 else f"; {proven}"
    return f"{lots} lots in {groups} of which every two are within {shades.limit:.1f}{sure}."


def group_words(shades: ShadeMap, group: Together) -> str:
    """'26·14·K14 and 26·14·M32 go together, 0.60 apart at most'; many by their numbers."""
    lots = [shades.lots[place].code for place in group.lots]
    if len(lots) == 1:
        return f"{lots[0]} goes with none of them."
    said = listing(lots) if len(lots) <= MOST_CODES else f"Lots {runs(group.lots)}"
    return f"{said} go together, {group.worst:.2f} apart at most."


def runs(places: Sequence[int]) -> str:
    """Numbers in the picture: '1 to 7, 10, 11 and 13 to 15'."""
    found: list[list[int]] = []
    for number in sorted(place + 1 for place in places):
        if found and number == found[-1][-1] + 1:
            found[-1].append(number)
        else:
            found.append([number])
    said = [[f"{run[0]} to {run[-1]}"] if len(run) > 2 else list(map(str, run)) for run in found]
    return listing([words for run in said for words in run])


def left_out_words(shades: ShadeMap) -> str:
    """Lots that are not in the picture, and why."""
    said = []
    if shades.older:
        more = "1 older lot was" if shades.older == 1 else f"{shades.older} older lots were"
        said.append(f"{more} read and not shown.")
    if shades.not_read:
        were = "was" if len(shades.not_read) == 1 else "were"
        said.append(f"{listing(shades.not_read)} {were} not read in this light.")
    return " ".join(said)


def step_words(shades: ShadeMap, place: int) -> str:
    """One lot: its numbers, how far from the standard and from the last, and what is left."""
    step, left = shades.lots[place], shades.left[place]
    parts = [lab_words(step.colour)]
    if step.from_standard:
        parts.append(f"{step.from_standard} from the standard")
    if step.from_last:
        parts.append(f"{step.from_last} from the last")
    parts.append(f"{left} left" if left else "none left")
    return ", ".join(parts)


def named(shades: ShadeMap, place: int) -> str:
    """A lot by its number in the picture and its code."""
    return f"{place + 1} {shades.lots[place].code}"


def number(value: float, digits: int = 1) -> str:
    """With a minus as wide as a plus; never −0.0."""
    text = f"{value:.{digits}f}"
    return text.replace("-", "−") if float(text) else text.lstrip("-")
