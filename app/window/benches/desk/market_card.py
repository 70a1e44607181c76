"""The market tags are printed for: its words on a tag at once, what it refuses, what it warns of.
"""

from collections.abc import Mapping
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.label_phrases import language_name
from app.calculations.label_words import LabelWords, label_words
from app.calculations.markets import MARKETS, local_law_decides, market
from app.lookups.market_words import tag_facts
from app.lookups.sample_tags import Samples
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, FactLine, Words

_NONE = "No market: as described"
_PARTS = {"fibre": "Fibre", "net": "Net contents", "ounces": "Ounces, yards", "care": "Care",
          "origin": "Origin"}


class MarketCard(Card):
    """`kept` gives market and language by the names of their settings."""

    kept = Signal(dict)

    def __init__(self) -> None:
        super().__init__("Market and language")
        self.market, self.language = "", ""
        titles = {"": _NONE} | {key: market(key).title.removeprefix("the ") for key in MARKETS}
        self.markets = {key: KeyButton(title) for key, title in titles.items()}
        self.languages: dict[str, KeyButton] = {}
        self._languages = QVBoxLayout()
        self._spoken = Words("Language", ink=SECOND)
        self.keep_key = KeyButton("Keep market and language", strong=True)
        self.stands = Words()
        for key, button in self.markets.items():
            button.setCheckable(True)
            button.clicked.connect(partial(self.choose, key))
        self.keep_key.clicked.connect(
            lambda: self.kept.emit({"market": self.market, "language": self.language}))
        self.add(Actions(*self.markets.values()), self._spoken, self._languages, self.stands)
        self.law = Words(local_law_decides(), bold=True)
        self.add(self.law, Words("Tags that were printed keep their words.", ink=SECOND))
        self.add_last(Actions(self.keep_key))
        self.changed = TagInMarketCard()
        self._chosen: tuple[str, str] | None = None
        self.choose("")

    def show_samples(self, samples: Samples) -> None:
        """What was chosen, and the bases to show it on; a choice that is not kept yet stays."""
        before, self._chosen = self._chosen, (samples.market, samples.language)
        if before is None or before == (self.market, self.language):
            known = samples.market if samples.market in self.markets else ""
            self.market, self.language = known, samples.language
        self.changed.samples = samples
        self._show()

    def choose(self, key: str) -> None:
        """Look at this market, in its first language."""
        self.market, self.language = key, market(key).languages[0] if key else ""
        self._show()

    def speak(self, language: str) -> None:
        """Look at it in this language."""
        self.language = language
        self._show()

    def _show(self) -> None:
        for key, button in self.markets.items():
            button.setChecked(key == self.market)
        take_down(self._languages)
        spoken = market(self.market).languages if self.market else ()
        language = self.language or (spoken[0] if spoken else "")
        self.languages = {one: KeyButton(language_name(one)) for one in spoken}
        for one, button in self.languages.items():
            button.setCheckable(True)
            button.setChecked(one == language)
            button.clicked.connect(partial(self.speak, one))
        self._languages.addWidget(Actions(*self.languages.values()))
        self._spoken.setVisible(bool(spoken))
        kept = self._chosen in (None, (self.market, self.language))
        self.stands.setText("" if kept else "Not kept yet: tags are printed as before.")
        self.stands.setVisible(not kept)
        self.changed.show_words(self.market, language)


class TagInMarketCard(Card):
    """What the tag of one base says there, line by line, with what stands in its way."""

    def __init__(self) -> None:
        super().__init__(in_hand=True)
        self.samples = Samples((), "", "")
        self._at, self._shown = 0, ("", "")
        self.base = Words("", Size.LEAD, bold=True)
        self.lines: Mapping[str, FactLine] = {part: FactLine(name)
                                              for part, name in _PARTS.items()}
        self.said: list[str] = []
        self.other_key = KeyButton("Another base")
        self._says = QVBoxLayout()
        self._says.setSpacing(Gap.SMALL)
        self.add(self.base, *self.lines.values(), self._says)
        self.add_last(Actions(self.other_key))
        self.other_key.clicked.connect(self._another)

    def show_words(self, key: str, language: str) -> None:
        """The tag as this market reads it in this language."""
        self._shown = key, language
        texts = self.samples.texts
        for line in self.lines.values():
            line.setVisible(bool(texts))
        self.other_key.setVisible(len(texts) > 1)
        if not texts:
            self.base.setText("No base is described yet: that is done at Receiving.")
            self._tell(())
            return
        text = texts[self._at % len(texts)]
        self.base.setText(f"On a tag of {text.base}")
        label = label_words(tag_facts(text), market(key), language) if key else None
        for part, line in self.lines.items():
            words = str(getattr(label or text, part)).replace("|", " ") or "nothing"
            by_law = label is not None and getattr(label, f"{part}_by_law", False)
            line.show_fact(f"{words} (must be there)" if by_law else words)
        self._tell(_said(label))

    def _another(self) -> None:
        self._at += 1
        self.show_words(*self._shown)

    def _tell(self, said: tuple[tuple[str, bool], ...]) -> None:
        take_down(self._says)
        self.said = [words for words, _ in said]
        for words, refused in said:
            self._says.addWidget(Words(words, bold=refused))


def _said(label: LabelWords | None) -> tuple[tuple[str, bool], ...]:
    if label is None:
        return ()
    refused = tuple((f"Not printed: {one.told}", True) for one in label.refusals)
    warned = tuple((f"Look at it: {one.told}", False) for one in label.warnings)
    return refused + warned or (("Nothing stands in its way by the rules that are known here.",
                                 False),)
