"""Everything that is on hold: where it was placed, why, whom to ask, and what it stops."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.exchange.tracing import STATE_WORDS
from app.lookups.certainty import held_by
from app.lookups.destinations import destinations
from app.lookups.holds import HoldFacts, live_holds
from app.lookups.thread import thread
from app.window.benches.desk.desk_words import how_many
from app.window.benches.desk.hold_row import HoldRow
from app.window.benches.desk.kept_recalls_card import KeptRecallsCard
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.why_card import WhyCard, in_place_of
from app.window.parts.words import SECOND, Words


@dataclass(frozen=True, slots=True)
class Stopped:
    """A hold, and what of its yarn stands still."""

    hold: HoldFacts
    words: str


def stopped(connection: Any) -> tuple[Stopped, ...]:
    """All holds that stand, each with what it stops."""
    return tuple(Stopped(hold, _stops(connection, hold)) for hold in live_holds(connection))


def _stops(connection: Any, hold: HoldFacts) -> str:
    below = [row for row in destinations(connection, *hold.source).rows if not row.again]
    if not below:
        return "Nothing of it was made yet that it could stop."
    above = thread(connection, [row.yarn for row in below])
    states: dict[str, int] = {}
    for row in below:  # another hold may reach what was cleared of this one
        held = hold.id in held_by(above, row.yarn)
        state = STATE_WORDS.get(row.state, row.state) if held else "cleared"
        states[state] = states.get(state, 0) + row.count
    cleared = states.pop("cleared", 0)
    parts = [f"{count} {state}" for state, count in states.items()]
    parts += [f"{cleared} cleared"] if cleared else []
    return f"Reaches {how_many(sum(states.values()))}: {'; '.join(parts)}."


class HoldsPage(QWidget):
    """A card a hold; `opened` gives the hold whose thing is wanted, `lift` the one to end,
    `recalled` the one whose list is wanted.
    """

    opened = Signal(object)  # HoldFacts
    lift = Signal(object)
    recalled = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[HoldRow] = []
        self.who_keys: list[KeyButton] = []
        self.why: WhyCard | None = None
        self._cards: list[QWidget] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(Gap.PART)
        self.kept = KeptRecallsCard()
        self._column.addWidget(self.kept)
        self._column.addStretch(1)

    def show_holds(self, holds: Sequence[Stopped]) -> None:
        """Show the holds that stand now."""
        for old in self._cards:
            self._column.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.rows, self.who_keys = [], []
        self._cards = [self._card(one) for one in holds] or [_nothing()]
        for card in self._cards:
            self._column.insertWidget(self._column.indexOf(self.kept), card)

    def ask_why(self, card: WhyCard | None) -> None:
        """Put the question above the holds, or take it away."""
        in_place_of(self._column, 0, self.why, card)
        self.why = card

    def _card(self, one: Stopped) -> Card:
        card = Card()
        row = HoldRow(one.hold)
        row.lift.connect(self.lift)
        self.rows.append(row)
        below = KeyButton("Show where it is")
        below.clicked.connect(_telling(self.opened.emit, one.hold))
        card.add(row)
        who = KeyButton("Who has it")
        who.clicked.connect(_telling(self.recalled.emit, one.hold))
        self.who_keys.append(who)
        card.add(Words(one.words), Actions(who, below))
        below.setVisible(one.hold.code is not None)
        return card


def _telling(tell: Callable[[HoldFacts], None], hold: HoldFacts) -> Callable[[], None]:
    return lambda: tell(hold)


def _nothing() -> Card:
    card = Card(in_hand=True)
    card.add(
        Words("Nothing is on hold.", Size.TITLE, bold=True),
        Words("To hold something, bring it in hand and press H, or scan the plate HOLD. One hold "
              "on a cone or a lot stops everything made of it.", ink=SECOND),
    )
    return card
