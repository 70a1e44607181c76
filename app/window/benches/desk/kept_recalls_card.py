"""Recall lists that were kept before: when, of what, how much they held, and how long they took."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout

from app.calculations.moments import took_words
from app.lookups.past_recalls import PastRecall
from app.window.benches.desk.desk_words import long_moment
from app.window.look.look import Gap
from app.window.parts.card import Card
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

NONE = "None was kept yet. Practise one: list who has it, look it through, then keep it."


class KeptRecallsCard(Card):
    """A line each, the newest first; one for practice is told apart from one in earnest."""

    def __init__(self) -> None:
        super().__init__("Recalls that were kept")
        self.lines: list[Words] = []
        self._lines = QVBoxLayout()
        self._lines.setSpacing(Gap.SMALL)
        self.add(self._lines)

    def show_recalls(self, recalls: Sequence[PastRecall]) -> None:
        """Show what was kept so far."""
        take_down(self._lines)
        self.lines = [Words(_line(one)) for one in recalls] or [Words(NONE, ink=SECOND)]
        for line in self.lines:
            self._lines.addWidget(line)


def _line(one: PastRecall) -> str:
    why = "practice" if one.practice else "in earnest"
    return (f"{long_moment(one.at)} · {why} · {one.on} · {one.accounted:,} of {one.count:,} "
            f"accounted for · took {took_words(one.seconds)} · {one.person}")
