"""What is said of kits: how many are possible, which colour is short, and what may stand in."""

from datetime import datetime

from app.calculations.codes import shown
from app.calculations.kit_making import LEAST_CONTRAST, Substitute
from app.calculations.moments import day_words
from app.lookups.kit_patterns import KitsNow, PlaceNow
from app.lookups.kits import KitNow
from app.lookups.reorder_ways import DAYS_TO_REDYE, FEWEST_TO_REDYE, working_days_after
from app.window.benches.packing.kit_filling import Bag

_SHOWN = 3  # lots of a place


def kits(count: int) -> str:
    """'1 kit', '9 kits'."""
    return f"{count} kit" + ("" if count == 1 else "s")


def possible_words(found: KitsNow) -> tuple[str, str]:
    """What the number counts, and which colour is the shortest."""
    names = {place.letter: place.name for place in found.pattern.places}
    shortest = " and ".join(f"{letter}, {names[letter]}" for letter in found.shortest)
    many = len(found.shortest) > 1
    return ("kit can be made" if found.possible == 1 else "kits can be made",
            f"the shortest colour{'s are' if many else ' is'} {shortest}")


def place_words(place: PlaceNow, found: KitsNow) -> str:
    """'9 left: 4 of 26·10·WX9, 5 of 26·11·T01; enough for 9 kits.'"""
    lots = found.lots[place.letter]
    said = ", ".join(lot.words for lot in lots[:_SHOWN])
    over = len(lots) - _SHOWN
    more = f" and {over} more lot{'' if over == 1 else 's'}" if over > 0 else ""
    of = f": {said}{more}" if lots else ""
    return f"{found.left(place.letter)} left{of}; enough for {kits(found.by_letter[place.letter])}."


def bag_place_words(place: PlaceNow, bag: Bag) -> str:
    """What of a place lies in the bag: '26·14·K14-7M and 2C'."""
    inside = bag.of(place.letter)
    marks = ", ".join(shown(one.tag.mark) for one in inside)
    stands_in = next((one.tag.colourway_name for one in inside if one.stands_in), "")
    return f"In the bag: {f'{stands_in}, ' if stands_in else ''}{marks}." if inside else ""


def short_words(found: KitsNow, now: datetime) -> str:
    """'12 kits want 3 more of C, Wet Thatch Tuesday. Dyed anew, it would be ready by …'"""
    if not found.asked:
        return ""
    if not found.short:
        return f"There is enough for {kits(found.asked)}."
    names = {place.letter: place.name for place in found.pattern.places}
    lacking = ", ".join(f"{one.role} ({names[one.role]}) is short by {one.skeins}"
                        for one in found.short)
    ready = day_words(working_days_after(now, DAYS_TO_REDYE))
    few = any(one.skeins < FEWEST_TO_REDYE for one in found.short)
    least = f", at least {FEWEST_TO_REDYE} skeins a pot" if few else ""
    return (f"Of {kits(found.asked)}, {found.possible} can be made: {lacking}. "
            f"Dyed anew, ready by {ready}{least}.")


def stand_in_words(found: KitsNow) -> list[str]:
    """One sentence for each colour that may stand in where it is short, or why none is told."""
    places = {place.letter: place for place in found.pattern.places}
    asking = [one.role for one in found.short] or list(found.shortest)
    said = []
    for letter in asking:
        of = found.stand_ins.get(letter)
        allowed = places[letter].stand_ins
        if of is None and allowed:
            said.append(f"For {letter} may stand in {', '.join(one.name for one in allowed)}; "
                        f"contrast is not known: no card of {', '.join(found.contrast_unknown)} "
                        "was read as the others were.")
        elif of:
            said += [_stand_in(letter, one) for one in of]
        elif asking:
            said.append(f"Nothing that may stand in for {letter} is left." if allowed
                        else f"The pattern allows nothing in the place of {letter}.")
    return said


def made_words(bag: KitNow) -> str:
    """What lies in a bag, lot by lot: 'Ferry Ledger, Tarnfield 4-ply, 26·14·K14: 2.'"""
    counted: dict[str, int] = {}
    for one in bag.skeins:
        lot = shown(one.lot) if one.lot else "its lot has no code yet"
        of = f"{one.colourway}, {one.base}, {lot}"
        counted[of] = counted.get(of, 0) + 1
    return "\n".join(f"{count} × {of}" for of, count in sorted(counted.items()))


def _stand_in(letter: str, one: Substitute) -> str:
    if one.warning:
        return f"{one.warning} Enough for {kits(one.kits)}."
    gaps = [gap for gap in one.contrasts if abs(gap.before) >= LEAST_CONTRAST]
    nearest = min(gaps, key=lambda gap: abs(gap.after), default=None)
    least = f", at least {abs(nearest.after):.0f} L* (to {nearest.against})" if nearest else ""
    return (f"For {letter} {one.name} may stand in: enough for {kits(one.kits)}, the contrast is "
            f"kept{least}.")
