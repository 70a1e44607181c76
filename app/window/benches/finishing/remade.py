"""What skeins became: what they are now, and which tags are void."""

from collections.abc import Sequence

from app.calculations.codes import shown
from app.lookups.finished import is_believed
from app.lookups.now import NOW
from app.lookups.trails import trail_of
from app.window.bench import Around
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.card import Actions, Card
from app.window.parts.words import SECOND, Words


class Remade(Hand):
    """Told until something else is scanned; gone when it was taken back."""

    def __init__(
        self,
        around: Around,
        yarn: int,
        words: tuple[str, str, str],
        void: Sequence[str],
        trail: str,
    ) -> None:
        super().__init__(around)
        self.yarn = yarn
        self.ask(around.show_trail, trail_of, trail, NOW)
        what, how, following = words
        self.told = Words(what, Size.LARGE, bold=True)
        self.how = Words(how, Size.LEAD, bold=True)
        self.void = Words(_void(void), bold=True)
        card = Card(in_hand=True)
        card.add(self.told, self.how, self.void, Words(following, ink=SECOND))
        card.add_last(Actions(self.put_away()))
        self.body.addWidget(card)

    def look(self) -> None:
        """It may have been taken back."""
        self.ask(self._stands, is_believed, self.yarn)

    def _stands(self, stands: bool) -> None:
        if not stands:
            self.over.emit(None)


def _void(marks: Sequence[str]) -> str:
    if len(marks) == 1:
        return f"Void now: {shown(marks[0])}. Throw its tag away."
    return f"Void now: {', '.join(map(shown, marks))}. Cut these tags off and throw them away."
