"""The versions of a recipe so far: what each holds, what it changed, and what was dyed by it."""

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout

from app.calculations.moments import day_words
from app.lookups.recipe_amounts import VersionSeen
from app.window.look.look import Gap
from app.window.parts.card import Card
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Words

SHOWN = 8  # versions, the newest first
_LOTS = 6  # lots named of each


class HistoryCard(Card):
    """A sentence or two for each version; the first line is what tells them apart."""

    def __init__(self) -> None:
        super().__init__("Versions so far")
        self.lines: list[str] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Gap.HAIR)
        self.add(self._rows)

    def show_versions(self, versions: Sequence[VersionSeen]) -> None:
        """Show these, the newest first; those that were only named say nothing."""
        take_down(self._rows)
        written = [one for one in versions if one.recipe.is_written]
        self.lines = [line for one in written[:SHOWN] for line in sentences(one)]
        if len(written) > SHOWN:
            self.lines.append(f"{len(written) - SHOWN} before them are in the book too.")
        for line in self.lines:
            first = line.startswith("Version ")
            self._rows.addWidget(Words(line, bold=first, ink="" if first else SECOND))
        self.setVisible(bool(written))


def sentences(one: VersionSeen) -> tuple[str, ...]:
    """'Version 2, 6 Apr 2026: Y1 lemon 0.22 → 0.25 %.', all it holds, and its lots."""
    use = one.use
    said = one.changed or use.reason
    head = f"Version {use.number}, {day_words(use.written)}" + (f": {said}." if said else ".")
    why = f"Why: {use.reason}. " if one.changed and use.reason else ""
    holds = ", ".join(f"{amount.named} {amount.words}" for amount in one.amounts)
    return head, f"{why}{holds}.", _lots(use.lots, frozen=use.frozen)


def _lots(lots: Sequence[str], *, frozen: bool) -> str:
    if not lots:
        return ("It was weighed out, so it stays as it is." if frozen
                else "Nothing was dyed by it yet.")
    named = ", ".join(lots[:_LOTS])
    more = f" and {len(lots) - _LOTS} more" if len(lots) > _LOTS else ""
    count = "1 lot" if len(lots) == 1 else f"{len(lots)} lots"
    return f"Dyed by it: {count}, {named}{more}."
