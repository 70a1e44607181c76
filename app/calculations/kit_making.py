"""Kits: how many the stock allows, which colour is short, and what may stand in for it.

A kit takes all its skeins of one colour from one lot. Common practice, no source.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import copysign

from app.calculations.given import more_than_nothing, not_below_nothing
from app.calculations.shade import Colour, must_be_comparable
from app.calculations.shade_difference import ciede2000
from app.problems import BadInput

LEAST_CONTRAST = 20.0  # L* between two colours of a pattern; below it the pattern is lost

Card = Mapping[str, int]
"""The skeins a kit needs, by colour role: A 2, B 1 ..."""

Stock = Mapping[str, Sequence[int]]
"""The skeins left of each lot, by colour role."""


@dataclass(frozen=True, slots=True)
class Kits:
    """How many kits each colour allows, and so how many can be made."""

    by_role: Mapping[str, int]

    @property
    def possible(self) -> int:
        """As many as the shortest colour allows."""
        return min(self.by_role.values())

    @property
    def shortest(self) -> tuple[str, ...]:
        """The colours that allow no more than can be made."""
        return tuple(role for role, kits in self.by_role.items() if kits == self.possible)


@dataclass(frozen=True, slots=True)
class Short:
    """A colour that is short for the kits asked for: the skeins that are missing."""

    role: str
    skeins: int


def kits(card: Card, stock: Stock) -> Kits:
    """The kits that can be made of the stock, none with a colour from two lots."""
    if not card:
        raise BadInput("The kit card names no colour.", "Write down what a kit needs.")
    return Kits({role: _kits_of(role, skeins, stock) for role, skeins in card.items()})


def short_for(asked: int, card: Card, stock: Stock) -> tuple[Short, ...]:
    """What is missing for so many kits, as new skeins of one lot each."""
    not_below_nothing("number of kits", asked)
    return tuple(
        Short(role, (asked - made) * card[role])
        for role, made in kits(card, stock).by_role.items()
        if made < asked
    )


@dataclass(frozen=True, slots=True)
class Contrast:
    """The L* gap to another colour of the kit, before and with a substitute.

    Above 0 where this colour is the lighter one.
    """

    against: str
    before: float
    after: float

    def is_lost(self, least: float = LEAST_CONTRAST) -> bool:
        """Whether there was contrast and the substitute leaves too little, or turns it round."""
        return abs(self.before) >= least and self.after * copysign(1, self.before) < least


@dataclass(frozen=True, slots=True)
class Candidate:
    """A colour that is allowed to stand in, and the skeins left of each of its lots."""

    name: str
    colour: Colour
    lots: Sequence[int]


@dataclass(frozen=True, slots=True)
class Substitute:
    """An allowed colour in the place of another: kits it is enough for, and its contrasts."""

    name: str
    kits: int
    ciede2000: float
    contrasts: tuple[Contrast, ...]

    @property
    def warning(self) -> str:
        """A sentence where contrast is lost, else nothing."""
        lost = [one for one in self.contrasts if one.is_lost()]
        if not lost:
            return ""
        gaps = ", ".join(f"{abs(one.after):.0f} L* to {one.against}" for one in lost)
        return f"{self.name} leaves too little contrast or turns it round: {gaps}."


def substitutes(
    role: str, card: Card, colours: Mapping[str, Colour], allowed: Sequence[Candidate]
) -> tuple[Substitute, ...]:
    """What may stand in for a colour: those that keep the contrast first, then the nearest.

    One that loses contrast is warned of, not hidden; one without skeins for a single kit is left
    out.
    """
    if set(colours) != set(card) or role not in card:
        raise BadInput(
            "The colours do not fit the kit card; no substitute was looked for.",
            "Give a colour for each role of the card, and one of these roles to fill.",
        )
    must_be_comparable(
        colour.viewing for colour in (*colours.values(), *(one.colour for one in allowed))
    )
    fits = [_in_place_of(role, card, colours, one) for one in allowed]
    usable = [one for one in fits if one.kits]
    return tuple(sorted(usable, key=lambda one: (bool(one.warning), one.ciede2000, one.name)))


def _in_place_of(
    role: str, card: Card, colours: Mapping[str, Colour], candidate: Candidate
) -> Substitute:
    contrasts = tuple(
        Contrast(
            other,
            colours[role].lightness - colour.lightness,
            candidate.colour.lightness - colour.lightness,
        )
        for other, colour in colours.items()
        if other != role
    )
    return Substitute(
        candidate.name,
        _kits_of(candidate.name, card[role], {candidate.name: candidate.lots}),
        ciede2000(colours[role].lab, candidate.colour.lab),
        contrasts,
    )


def _kits_of(role: str, skeins: int, stock: Stock) -> int:
    more_than_nothing(f"number of skeins of {role}", skeins)
    lots = stock.get(role, ())
    for left in lots:
        not_below_nothing(f"number of skeins left of {role}", left)
    return sum(left // skeins for left in lots)
