"""The studio's own words: what every tag says of who made the yarn."""

from collections.abc import Mapping

from PySide6.QtCore import Signal

from app.window.parts.card import Actions, Card
from app.window.parts.fields import TextField
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, Words

_FIELDS = {
    "name": ("Studio", "as it stands on every tag"),
    "address": ("Address", "where a buyer can write to"),
    "origin": ("Origin", "Spun in …, dyed by hand at …"),
    "differ": ("About lots", "Lots differ: use one lot, or alternate two rows."),
}


class StudioCard(Card):
    """`chosen` gives the words that were written, by the name of their setting."""

    chosen = Signal(dict)

    def __init__(self) -> None:
        super().__init__("What tags say of the studio")
        self.fields = {key: TextField(name, hint) for key, (name, hint) in _FIELDS.items()}
        self.keep_key = KeyButton("Keep these words")
        self.add(*self.fields.values())
        self.add(Words("Tags that were printed keep the words they were printed with. What must "
                       "stand on a tag differs by market: local law decides.", ink=SECOND))
        self.add_last(Actions(self.keep_key))
        self.keep_key.clicked.connect(self._keep)
        for field in self.fields.values():
            field.line.returnPressed.connect(self._keep)

    def show_words(self, words: Mapping[str, str]) -> None:
        """Show what stands, but never over what is being written."""
        for key, field in self.fields.items():
            if not field.line.isModified():
                field.line.setText(words[key])

    def kept(self) -> None:
        """The words are in the book."""
        for field in self.fields.values():
            field.line.setModified(False)

    def _keep(self) -> None:
        self.chosen.emit({key: field.value() or "" for key, field in self.fields.items()})
