"""HOLD at the tag table: why nothing is printed, and whom to ask."""

from collections.abc import Sequence

from app.calculations.moments import moment_words
from app.lookups.holds import HoldFacts
from app.window.look.look import Size
from app.window.parts.card import Card
from app.window.parts.hold_plate import HoldPlate
from app.window.parts.words import SECOND, Words


class HoldCard(Card):
    """The plate, the reason in a sentence, and who placed it."""

    def __init__(self, holds: Sequence[HoldFacts]) -> None:
        super().__init__()
        self.ask = [f"Ask {hold.ask}." for hold in holds]
        self.add_row(HoldPlate(size=Size.LARGE), None)
        self.add(Words("No tags are printed for this pile.", Size.TITLE, bold=True))
        for hold, ask in zip(holds, self.ask, strict=True):
            on = f"{hold.on[0].upper()}{hold.on[1:]}"
            self.add(
                Words(f"{on}: {hold.why}", Size.LEAD, bold=True),
                Words(f"On hold since {moment_words(hold.since)}. {ask}", Size.LEAD),
            )
        self.add(
            Words(
                "Tags that were printed before may still be tied on: they say which skein it is.",
                ink=SECOND,
            )
        )
