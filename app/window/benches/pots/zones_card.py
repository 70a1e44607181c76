"""The bottles of a board: its zones in the order of pouring, each with its letter and mL."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.calculations.moments import moment_words
from app.lookups.trays import BOTTLES_KEEP, Bottles, Poured
from app.window.look.look import Gap, Size
from app.window.parts.card import Card
from app.window.parts.key_button import KeyButton
from app.window.parts.swatch import Swatch
from app.window.parts.swatch import Zone as Shown
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, CodeWords, Words


class ZonesCard(Card):
    """`again` gives the letter of a bottle that was filled again: a new set, and a new lot.

    `new_lot` says so, and is put where it is seen first.
    """

    again = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("the bottles")
        self.headline, self.age = Words("", Size.LEAD, bold=True), Words(ink=SECOND)
        self.new_lot, self.puddle = Words("", Size.TITLE, bold=True), Words(bold=True)
        self.lines: list[str] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(Gap.SMALL)
        self.add(self.headline, self.age, self.puddle, self._rows)

    def show_bottles(self, bottles: Bottles, mg: int, old: bool) -> None:
        """The set, and what each bottle gives for so much yarn; none laid yet is 100 g."""
        self.headline.setText(f"{bottles.recipe.colourway}, bottle set {bottles.number}")
        what = f"Bottle {bottles.refilled} filled again" if bottles.refilled else "Filled"
        keep = (f" Older than {BOTTLES_KEEP.total_seconds() / 3600:.0f} hours: shake it and look "
                "for dye at the bottom." if old else "")
        known = "" if bottles.known else " Nothing was weighed for it."
        self.age.setText(f"{what} {moment_words(bottles.filled)}.{known}{keep}")
        self.new_lot.setText(
            f"NEW LOT: bottle {bottles.refilled} was filled again. What is painted from here on is "
            "a lot of its own." if bottles.refilled else "")
        self.new_lot.setVisible(bool(bottles.refilled))
        self._show_rows(bottles, mg)
        fits = bottles.fits
        self.puddle.setText(
            "" if not fits.over_ml else
            f"{bottles.ml_per_100_g} mL on 100 g, and a skein spun to 80 % takes "
            f"{fits.room_ml:.0f} mL: it puddles, and the middle turns muddy."
            + (f" Spin it to {fits.pick_up_at_most * 100:.0f} %." if fits.pick_up_at_most else ""))
        self.puddle.setVisible(bool(fits.over_ml))

    def _show_rows(self, bottles: Bottles, mg: int) -> None:
        take_down(self._rows)
        self.lines = []
        for zone in bottles.zones:
            self.lines.append(_line(zone, mg))
            self._rows.addWidget(self._row(zone, mg))

    def _row(self, zone: Poured, mg: int) -> QWidget:
        row = QWidget()
        row.setAccessibleName(_line(zone, mg))
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(Gap.LINE)
        line.addWidget(CodeWords(zone.letter, Size.LARGE))
        line.addWidget(Swatch([Shown(zone.swatch)] if zone.swatch else (), none="no swatch"))
        line.addWidget(Words(f"{zone.ml_on(mg):.0f} mL", Size.LARGE, bold=True, wrap=False))
        words = Words(f"{zone.name} {zone.share_permille / 10:g}\u00a0%".strip(), ink=SECOND)
        line.addWidget(words, 1)
        if zone.ml_per_100_g:
            again = KeyButton("Filled again", zone.letter if zone.letter not in "MSL" else "")
            again.setAccessibleName(f"Filled again: bottle {zone.letter}")
            again.clicked.connect(lambda: self.again.emit(zone.letter))
            line.addWidget(again, 0, Qt.AlignmentFlag.AlignVCenter)
        return row


def _line(zone: Poured, mg: int) -> str:
    return f"bottle {zone.letter}: {zone.ml_on(mg):.0f} mL"
