"""The cards of two lots held against each other: each zone by itself, each lamp by itself."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations

from app.calculations.shade import Colour, Lamp, Viewing
from app.calculations.shade_difference import Difference, difference, differs_by_lamp
from app.calculations.shade_words import USUAL, Bands, Judged, judge, judge_by_zone

Looked = tuple[Viewing, str]
"""How a card was looked at, and of which zone it is; '' where the skein has none."""

Cards = Mapping[Looked, Colour]


def plain_card(cards: Cards) -> Colour | None:
    """The card that others are ranked by: of the whole skein, dry and in daylight if there is one.
    """
    whole = sorted((viewing.wet, viewing.lamp != "D65", number) for number, (viewing, zone)
                   in enumerate(cards) if not zone)
    return [*cards.values()][whole[0][-1]] if whole else None


@dataclass(frozen=True, slots=True)
class Compared:
    """All cards of a lot against those of another that were looked at alike; never none."""

    differences: Mapping[Looked, Difference]

    @property
    def usual(self) -> Mapping[str, Difference]:
        """By zone, in the light that comes first: daylight where both were read in it."""
        first = min((viewing for viewing, _ in self.differences), key=_order)
        return {zone: one for (viewing, zone), one in self.differences.items()
                if viewing == first}

    @property
    def decisive(self) -> Difference:
        """The difference to decide on: the worst zone's."""
        return max(self.usual.values(), key=lambda one: one.at_worst)

    def judged(self, bands: Bands = USUAL) -> Judged:
        """In words; a multi-coloured yarn by its worst zone."""
        zones = self.usual
        return judge(zones[""], bands) if set(zones) == {""} else judge_by_zone(
            zones, bands).judged

    @property
    def by_lamp(self) -> bool:
        """Whether the two match in one light and not in another."""
        return any(
            zone == other_zone and at.lamp != other_at.lamp and differs_by_lamp(one, other)
            for ((at, zone), one), ((other_at, other_zone), other)
            in combinations(self.differences.items(), 2))


def compared(standard: Cards, other: Cards) -> Compared | None:
    """Every two cards that were looked at alike; none where there are no such two."""
    alike = {looked: difference(colour, other[looked])
             for looked, colour in standard.items() if looked in other}
    return Compared(alike) if alike else None


def why_not(standard: Cards, other: Cards) -> tuple[str, str]:
    """Why two lots cannot be compared, and what to do: not read, wet against dry, another lamp."""
    if not standard or not other:
        return ("One of the two was not read with an instrument; nothing was compared.",
                "Read its card, or hold both against the grey scale.")
    wet = [{viewing.wet for viewing, _ in cards} for cards in (standard, other)]
    if not wet[0] & wet[1]:
        return ("One was read wet and one dry; wet yarn is 5 to 10 L* darker, so nothing was "
                "compared.", "Let the wet card dry and rest for 2 hours, and read it again.")
    return ("The two were not read alike, by the same lamp, observer and zone; nothing was "
            "compared.", "Read both under the same lamp.")


def _order(viewing: Viewing) -> tuple[bool, int, int]:
    return viewing.wet, list(Lamp).index(viewing.lamp), viewing.observer
