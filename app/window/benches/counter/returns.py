"""What comes back over the counter: looked at before it is anybody else's, or one of an order's."""

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from app.calculations.codes import shown
from app.lookups.bought import Bought
from app.lookups.counter import AtCounter, Tagged
from app.problems import BadInput
from app.window.benches.counter.asking import FoundCard, NumberedAsk, ShelfCard
from app.window.benches.counter.till import Till
from app.window.benches.counter.words import hold_words, plate_words
from app.window.parts.card import Actions
from app.window.parts.fields import Field
from app.window.parts.hold_plate import HoldLine
from app.window.parts.key_button import KeyButton
from app.window.parts.words import Words
from app.work.moving import To, move
from app.work.returning import (
    AS_IT_LEFT,
    NOT_YET,
    SMELLS,
    WOUND,
    came_back_untagged,
    taken_back,
)

_APART = ("It may not be sold again while the hold stands: lay it apart, on no shelf for sale. "
          "Scanning a shelf still says that it is as it left and lies there.")


class ReturnCard(NumberedAsk):
    """Was it wound, does it smell? Answers with the look, the place, and how it is known.

    By a key it is where the others lie, as stated: no plate was scanned. What is on hold does not
    go there: its first answer keeps it away from sale.
    """

    wants = "Press 1 to 4, or scan the COUNT plate with that number."

    def __init__(self, lot: AtCounter, skein: Tagged) -> None:
        holds = lot.holds_of(skein)
        super().__init__(f"{shown(skein.mark)} came back: look at it first",
                         _APART if holds else
                         "Scanning a shelf says that it is as it left and lies there.")
        of = f" of order {skein.order}" if skein.order else ""
        place = lot.free[0] if lot.free and not holds else None
        there = f", on {plate_words(place.place_words)}" if place else ""
        looks = [(AS_IT_LEFT, f"As it left{there}"), (WOUND, f"Was wound: a second{there}"),
                 (SMELLS, "It smells: report it"), (NOT_YET, "Look at it later")]
        if holds:
            looks = [(NOT_YET, "Keep it apart, look at it later"), *looks[:-1]]
        self.keys = [KeyButton(words, str(number), strong=number == 1)
                     for number, (_, words) in enumerate(looks, 1)]
        for key, (look, _) in zip(self.keys, looks, strict=True):
            key.clicked.connect(lambda _=False, look=look: self.answered.emit(
                (look, place.place if place else None, "stated")))
        self.lay_out(*(HoldLine(hold_words(hold), here=False) for hold in holds),
                     Words(f"{lot.line.colourway}, {lot.line.base}{of}. Is it wound as we wind it? "
                           "Does it smell of smoke, scent or damp?"), Actions(*self.keys))

    def shelf(self, place: int, words: str) -> bool:
        self.answered.emit((AS_IT_LEFT, place, "scanned"))
        return True


class UntaggedCard(FoundCard):
    """One of an order's without its tag: base, weight, and what it looks like where that tells.

    Answers with the base, mg, and the lots of the colourway that it looks like; none for any.
    """

    def __init__(
        self, order: str, bases: Sequence[tuple[int, str]], base: str,
        lots: Mapping[str, tuple[int, ...]],
    ) -> None:
        super().__init__(f"One of order {order} came back without its tag",
                         "It stays one of those the order sent, as the customer says.", bases, base)
        self._lots = lots
        self.looks = Field("Looks like", self._read_looks, " or ".join(lots))
        self.looks.line.returnPressed.connect(self.save)
        self.add(self.looks)
        if len(lots) < 2:
            self.looks.hide()

    def save(self) -> None:
        lots = self.looks.value()
        if lots is None:
            self.looks.line.setFocus()
            return
        base, grams = self.told()
        if base is not None and grams is not None:
            self.answered.emit((base, grams, lots))

    def _read_looks(self, text: str) -> tuple[int, ...]:
        """Nothing written is any of them."""
        words = text.casefold().split()
        fits = [name for name in self._lots if all(word in name.casefold() for word in words)]
        if words and len(fits) != 1:
            raise BadInput(f"Which is it: {' or '.join(self._lots)}?")
        return self._lots[fits[0]] if words else ()


class Returns:
    """One skein after the other."""

    def __init__(self, till: Till) -> None:
        self._till = till

    def came(self, lot: AtCounter, skein: Tagged | None) -> None:
        """A sold skein is here with its tag: ask how it looks."""
        if skein is None:
            return
        card = ReturnCard(lot, skein)
        card.answered.connect(lambda told: self._taken(skein, *told))
        self._till.asks.emit(card)

    def untagged(
        self, order: str, bases: Sequence[tuple[int, str]], base: str, bought: Sequence[Bought]
    ) -> None:
        """One of this order came back without its tag: ask what it is."""
        lots: dict[str, list[int]] = defaultdict(list)
        for one in bought:
            if one.lot is not None and one.number == order:
                lots[one.lot.colourway].append(one.lot.lot)
        card = UntaggedCard(order, bases, base, {name: tuple(of) for name, of in lots.items()})
        card.answered.connect(lambda told: self._do(
            came_back_untagged, told[0], told[1], order, lots=told[2]))
        self._till.asks.emit(card)

    def _taken(self, skein: Tagged, look: str, place: int | None, basis: str) -> None:
        def then() -> None:
            if place is None and look in (AS_IT_LEFT, WOUND) and not skein.holds:
                card = ShelfCard(f"{shown(skein.mark)}: on which shelf?")
                card.answered.connect(lambda told: self._do(
                    move, [skein.yarn], To("shelf", place=told[0])))
                self._till.asks.emit(card)

        self._do(taken_back, [skein.yarn], look, skein.order, place, basis, then=then)

    def _do(
        self, deed: Callable[..., Any], *args: Any, then: Callable[[], None] | None = None,
        **more: Any,
    ) -> None:
        def done(_done: Any) -> None:
            self._till.asks.emit(None)
            if then is not None:
                then()

        self._till.do(deed, *args, then=done, **more)
