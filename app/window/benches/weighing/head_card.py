"""What is weighed for: colourway and version, the dry weight and where it is from."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QVBoxLayout

from app.lookups.at_balance import AtBalance
from app.window.benches.weighing.weigh_words import for_what, title
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch, Zone
from app.window.parts.words import OneLine, Words


class HeadCard(Card):
    """Stays above the balance while a weigh-out is in hand."""

    def __init__(self) -> None:
        super().__init__()
        self.title, self.facts = Words("", Size.LEAD, bold=True), OneLine("", second=True)
        self.place = Words("", Size.LEAD, bold=True, wrap=False)
        self._swatch = Swatch(size=QSize(72, 48), none="no swatch")
        words = QVBoxLayout()
        words.setSpacing(Gap.HAIR)
        words.addWidget(self.title)
        words.addWidget(self.facts)
        row = self.add_row(self._swatch)
        row.addLayout(words, 1)
        row.addWidget(self.place)
        self.paper_key = KeyButton("Sheet", "F3")
        self.paper_key.setAccessibleName("Sheet as paper")
        row.addWidget(self.paper_key)

    def show_weighing(self, now: AtBalance) -> None:
        """Show what this weigh-out is for, and how many of its lines are in."""
        swatch = now.recipe.swatch if now.recipe else None
        self._swatch.setVisible(now.recipe is not None)
        self._swatch.show_zones([Zone(swatch)] if swatch else (), now.out.colourway or "")
        self.title.setText(title(now.out))
        self.facts.say("one jar, or part of another stock, made up with water"
                       if now.out.purpose == "stock" else for_what(now))
        self.paper_key.setVisible(now.recipe is not None)
        taken = sum(one.is_taken for one in now.wanted)
        self.place.setText(f"{taken} of {len(now.wanted)} in" if now.wanted else "")
