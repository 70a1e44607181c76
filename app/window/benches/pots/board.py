"""A tray board in hand: its discs, the bottles it is painted from, and when it is done."""

from collections.abc import Callable
from functools import partial

from PySide6.QtWidgets import QVBoxLayout

from app.lookups.reel import DiscNow
from app.lookups.trays import BOTTLES_KEEP, HUNDRED_G_MG, BoardNow, Bottles, TraysNow, trays_now
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.pots.zones_card import ZonesCard
from app.window.cords.cord_row import CordRow
from app.window.cords.hand import Hand
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Digits, Words
from app.window.session import Done
from app.work.dividing import skeins
from app.work.painting import lay_on_board
from app.work.stocks import fill_bottles, refill_bottle


class Board(Hand):
    """A board: discs go on it, a set of bottles is chosen by its figure, DONE says it is painted.
    """

    def __init__(self, around: Around, board: BoardNow) -> None:
        super().__init__(around)
        self.board, self.discs = board, list[DiscNow]()
        self.trays = TraysNow((), (), (), {})
        self.bottles: Bottles | None = None
        self.total, self.lies = Words("", Size.TITLE, bold=True), Words(ink=SECOND)
        self.painted = KeyButton("Board done", "Enter", strong=True)
        self.painted.clicked.connect(self.done)
        self.zones = ZonesCard()
        self.zones.again.connect(self._again)
        self.sets: list[KeyButton] = []
        self._rows, self._choices = QVBoxLayout(), QVBoxLayout()
        self.body.addWidget(SideBySide(self._card(), self._right(), shares=(1, 1)))
        self._show()
        self.look()

    def take_disc(self, disc: DiscNow) -> bool:
        """A disc is laid on the board; a second scan of it changes nothing."""
        if self.goes_in(disc, [one.id for one in self.discs], "nothing was laid",
                        "Scan the disc that is on the yarn, or tie it on at Winding first.",
                        "on the board"):
            self.discs.append(disc)
            self._show()
        return True

    def take_board(self, board: BoardNow) -> bool:
        """The same board changes nothing; before anything lies on it another one is taken."""
        if board.id != self.board.id and self.discs:
            self.around.trouble(Refused(
                f"Board {self.board.number} is not done yet; nothing was saved.",
                "DONE says that it is painted; F8 leaves it."))
            return True
        return board.id == self.board.id

    def count(self, number: int) -> None:
        """A set of bottles; after the sets come the recipes whose bottles are filled anew."""
        if 0 < number <= len(self.sets):
            self.sets[number - 1].click()

    def done(self) -> None:
        """It is painted, once it is said what and from which bottles."""
        rows = [row for disc in self.discs if disc.bundle for row in disc.bundle.rows]
        if not rows:
            why = "Scan a disc that lies on it."
        elif self.bottles is None:
            why = "Choose the bottles by their figure, or scan COUNT."
        else:
            self.do(lay_on_board, self.board.id, rows, self.bottles.id,
                    then=lambda _: self.over.emit(None))
            return
        self.around.trouble(Refused("The board is not done yet; nothing was saved.", why))

    def look(self) -> None:
        """Look up the bottles and what lies on the board."""
        self.ask(self._show_trays, trays_now)

    def _show_trays(self, trays: TraysNow) -> None:
        self.trays = trays
        chosen = self.bottles and self.bottles.recipe.version
        of_laid = {one.bottles for one in self.board.laid}
        self.bottles = next(
            (one for one in trays.bottles
             if one.recipe.version == chosen or (chosen is None and one.id in of_laid)),
            trays.bottles[0] if len(trays.bottles) == 1 else None)
        self._show_choices()
        self._show()

    def _show_choices(self) -> None:
        take_down(self._choices)
        filled = [(f"{one.recipe.colourway}, set {one.number}", partial(self._choose, one))
                  for one in self.trays.bottles]
        fresh = [(f"Fill new bottles: {one.colourway}", partial(self._fill, one.version))
                 for one in self.trays.recipes]
        self.sets = []
        for n, (words, act) in enumerate([*filled, *fresh][:9], 1):
            self.sets.append(_key(words, str(n), act))
        for key, bottles in zip(self.sets, self.trays.bottles, strict=False):
            key.setCheckable(True)
            key.setChecked(bottles is self.bottles)
        if self.sets:
            self._choices.addWidget(Actions(*self.sets))
        else:
            self._choices.addWidget(Words(
                "No recipe has zones yet: write one at the desk.", ink=SECOND))

    def _choose(self, bottles: Bottles) -> None:
        self.bottles = bottles
        for key, one in zip(self.sets, self.trays.bottles, strict=False):
            key.setChecked(one is bottles)
        self._show()

    def _fill(self, version: int) -> None:
        def filled(_: Done[int]) -> None:
            self.bottles = None
            self.ask(self._show_filled, trays_now)

        self.do(fill_bottles, version, self.trays.weighed.get(version), then=filled)

    def _show_filled(self, trays: TraysNow) -> None:
        self.bottles = trays.bottles[0]
        self._show_trays(trays)

    def _again(self, letter: str) -> None:
        """A new set is a new lot, and that is said aloud."""
        words = f"bottle {letter} filled again: a new set, and a new lot"
        if self.bottles is not None:
            weighed = self.trays.weighed.get(self.bottles.recipe.version)
            self.do(refill_bottle, self.bottles.id, letter, weighed,
                    then=lambda _: self.say(words))

    def _card(self) -> Card:
        card = Card(in_hand=True)
        card.add_row(Words("Board", Size.TITLE, ink=SECOND, wrap=False),
                     Digits(str(self.board.number)), None)
        self._rows.setSpacing(Gap.HAIR)
        card.add(self.zones.new_lot, self.total, self.lies, self._rows)
        card.add_last(Actions(self.painted, *self.other_keys(), self.put_away("Leave it")))
        return card

    def _right(self) -> Card:
        card = Card("Painted from")
        card.add(self._choices, self.zones)
        return card

    def _show(self) -> None:
        count = sum(disc.bundle.count for disc in self.discs if disc.bundle)
        mg = sum(disc.bundle.mg for disc in self.discs if disc.bundle)
        self.total.setText(f"{skeins(count)}, {mg / 1000:.0f} g" if count
                           else "Scan the discs that lie on it.")
        self.lies.setText(f"{skeins(self.board.count)} lie on it already." if self.board.laid
                          else "")
        self.lies.setVisible(bool(self.board.laid))
        take_down(self._rows)
        for disc in self.discs:
            if disc.bundle is not None:
                line = CordRow(disc.bundle, "Take out")
                line.out.connect(partial(self._take_out, disc))
                self._rows.addWidget(line)
        self.zones.setVisible(self.bottles is not None)
        self.zones.new_lot.setVisible(self.bottles is not None)
        if self.bottles is not None:
            old = self.around.session.now() - self.bottles.filled > BOTTLES_KEEP
            self.zones.show_bottles(self.bottles, mg or HUNDRED_G_MG, old)

    def _take_out(self, disc: DiscNow) -> None:
        self.discs.remove(disc)
        self._show()


def _key(words: str, key: str, act: Callable[[], None]) -> KeyButton:
    button = KeyButton(words, key)
    button.clicked.connect(lambda: act())
    return button
