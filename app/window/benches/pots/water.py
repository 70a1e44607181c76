"""The bath of a pot that is being filled: its weigh-out, the water to add, whether it fits."""

from collections.abc import Sequence
from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.moments import moment_words
from app.lookups.pot_filling import BathAsked, Weighed
from app.window.look.look import Gap
from app.window.parts.card import Actions
from app.window.parts.findings import Finding
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, BigNumber, Words
from app.work.dividing import skeins

ALL_IN_ONE = "All in this one"
_COUNTED = {2: "Two", 3: "Three", 4: "Four"}


class Water(QWidget):
    """`with_weighing` gives the Weighed that is poured, or none."""

    with_weighing = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.weighed: Sequence[Weighed] = ()
        self.poured: Weighed | None = None
        self._declined: set[int] = set()
        self.add_l, self.why = BigNumber(), Words(ink=SECOND)
        self.weigh_out = Words()
        self.change = KeyButton("With the weigh-out", "F7")
        self.change.clicked.connect(self.other)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(Gap.HAIR)
        for words in (self.weigh_out, Actions(self.change), self.add_l, self.why):
            column.addWidget(words)
        self._show_weigh_out()
        self.show_bath(None)

    def show_weighed(self, weighed: Sequence[Weighed]) -> None:
        """What was weighed for these bundles; the only one for just these is taken by itself."""
        self.weighed = weighed
        still = self.poured and next(
            (one for one in weighed if one.weighing == self.poured.weighing), None)
        own = [one for one in weighed if one.for_all]
        if still is None and len(own) == 1 and own[0].weighing not in self._declined:
            still = own[0]
        self._pour(still)

    def show_bath(self, bath: BathAsked | None) -> None:
        """The water to add, huge enough for the tap, and how it is reckoned."""
        if bath is not None:
            self.add_l.show_number(*_to_add(bath))
        self.why.setText(_reckoned(bath) if bath else "")
        for words in (self.add_l, self.why):
            words.setVisible(bath is not None)

    def other(self) -> None:
        """The next weigh-out for these bundles, and after the last one none."""
        at = next((n for n, one in enumerate(self.weighed)
                   if self.poured and one.weighing == self.poured.weighing), -1)
        if self.poured:
            self._declined.add(self.poured.weighing)
        self._pour(self.weighed[at + 1] if at + 1 < len(self.weighed) else None)

    def leave(self) -> None:
        """What was weighed is not poured here."""
        if self.poured:
            self._declined.add(self.poured.weighing)
            self._pour(None)

    def _pour(self, weighed: Weighed | None) -> None:
        changed = (weighed and weighed.weighing) != (self.poured and self.poured.weighing)
        self.poured = weighed
        self._show_weigh_out()
        if changed:
            self.with_weighing.emit(weighed)

    def _show_weigh_out(self) -> None:
        one = self.poured
        if one is not None:
            part = "" if one.for_all else ", not for just these bundles"
            self.weigh_out.setText(
                f"Weigh-out {one.weighing} goes in: {one.recipe.colourway}, version "
                f"{one.recipe.number}, {moment_words(one.begun)}{part}.")
        elif self.weighed:
            which = ("One weigh-out is" if len(self.weighed) == 1
                     else f"{len(self.weighed)} weigh-outs are")
            self.weigh_out.setText(f"{which} for these bundles and not poured yet.")
        at = self.weighed.index(one) if one in self.weighed else -1
        last = at + 1 >= len(self.weighed)
        self.change.say("Without a weigh-out" if last else
                        f"With weigh-out {self.weighed[at + 1].weighing}")
        for widget in (self.weigh_out, self.change):
            widget.setVisible(bool(self.weighed))


def too_much(bath: BathAsked | None, pot: int) -> Finding | None:
    """More than the pot takes, with the way out as an answer; none where it fits or none knows."""
    if bath is None or not bath.too_much:
        return None
    sentence = (f"{_litres(bath.level_l)} L with the yarn, and pot {pot} takes "
                f"{_litres(bath.usable_l)} L.")
    answers = [ALL_IN_ONE]
    many = len(bath.pots)
    if many > 1:
        counts = " + ".join(str(count) for count in bath.pots)
        sentence += f" {counts} skeins in {_COUNTED.get(many, str(many)).lower()} pots make "
        sentence += f"{_COUNTED.get(many, str(many)).lower()} lots, each with its own code."
        answers.insert(0, f"{_COUNTED.get(many, str(many))} pots")
    if bath.widest:
        sentence += f" At {bath.widest} : 1 all of it fits."
    return Finding(sentence, tuple(answers))


def _to_add(bath: BathAsked) -> tuple[str, str]:
    if bath.to_add_l < 0:
        return "0", "L of water to add: the yarn and the stocks bring more than the whole bath"
    full = ": TOO FULL for this pot" if bath.too_much else ""
    return _litres(bath.to_add_l, 1), f"L of water to add{full}"


def _reckoned(bath: BathAsked) -> str:
    parts = [f"{skeins(bath.skeins)}, {bath.dry_g:.0f} g dry, at {bath.ratio:.0f} : 1: "
             f"{_litres(bath.bath_l)} L of bath."]
    if bath.in_yarn_l:
        parts.append(f"The wet yarn brings {_litres(bath.in_yarn_l)} L.")
    else:
        parts.append("By the book the yarn goes in dry.")
    if bath.in_stocks_l:
        parts.append(f"The stocks bring {_litres(bath.in_stocks_l)} L.")
    of = f" of {_litres(bath.usable_l)} L" if bath.usable_l else ""
    parts.append(f"With the yarn it stands at {_litres(bath.level_l)} L{of}.")
    return " ".join(parts)


def _litres(litres: Decimal | None, places: int = 2) -> str:
    number = round(litres or Decimal(0), places).normalize()
    return f"{number:f}"
