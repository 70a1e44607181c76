"""SPLIT: some skeins of a cord go on with another disc."""

from functools import partial

from app.calculations.codes import Kind, numbered
from app.lookups.bundles import BundleFacts
from app.lookups.meeting import Heap, heap
from app.lookups.now import NOW
from app.lookups.reel import DiscNow
from app.lookups.trails import trail_of
from app.problems import NotFound, Refused
from app.window.bench import Around
from app.window.cords.cord_row import CordRow
from app.window.cords.hand import Hand
from app.window.look.look import Size
from app.window.parts.card import Actions, Card, SideBySide
from app.window.parts.count_pad import CountPad
from app.window.parts.key_button import KeyButton
from app.window.parts.words import SECOND, BigNumber, Words
from app.window.session import Done
from app.work.dividing import skeins
from app.work.mixing import split


class Splitting(Hand):
    """Asks for the cord, how many stay and how many go, and the second disc."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.disc: DiscNow | None = None
        self.row, self.of, self.stay = 0, 0, 0
        self.second: DiscNow | None = None
        self.choices: Heap | None = None
        self._which: Actions | None = None
        self.asks = Words("", Size.TITLE, bold=True)
        self.stays, self.goes = BigNumber(), BigNumber()
        self._numbers = SideBySide(self.stays, self.goes)
        self._card = Card("Split", in_hand=True)
        self._card.add(self.asks, self._numbers)
        self._card.add_last(Actions(self.put_away("Leave it")))
        self.body.addWidget(self._card)
        self._show()

    def take_disc(self, disc: DiscNow) -> bool:
        """First the disc of the cord, then the one that is tied on the other part."""
        if self.disc is None:
            self._begin(disc)
        elif not self.stay:
            self.around.trouble(
                Refused(
                    f"It is not counted yet how many stay on disc {self.disc.number}.",
                    "Count them, then scan the second disc.",
                )
            )
        else:
            self.second = disc
            counts = (self.stay, self.of - self.stay)
            self.do(split, self.row, counts, (disc.id,), then=self._parted)
        return True

    def count(self, number: int) -> None:
        """Which of them part; then how many stay; a second count is how many go, and must fit."""
        if not self.row:
            if self.choices is not None and 0 < number <= len(self.choices.rows):
                self._part(number - 1)
            return
        if self.stay and self.stay + number == self.of:
            return
        if self.stay:
            self.around.trouble(
                Refused(
                    f"{self.stay} and {number} do not make {self.of}; nothing was saved.",
                    "Count both parts again.",
                )
            )
            self.stay = 0
        elif self.of and not 0 < number < self.of:
            self.around.trouble(
                Refused(f"Of {self.of}, {number} cannot stay and some go.", "Count what stays.")
            )
        elif self.of:
            self.stay = number
        self._show()

    def _begin(self, disc: DiscNow) -> None:
        cord = disc.bundle
        if cord is None:
            self.around.trouble(
                NotFound(
                    f"Disc {disc.number} hangs on nothing.", "Scan the disc that is on the yarn."
                )
            )
            return
        self.disc = disc
        self._card.add(CordRow(cord))
        code = numbered(Kind.DISC, int(disc.number)).text
        self.ask(self.around.show_trail, trail_of, code, NOW)
        self.ask(partial(self._look_at, cord), heap, cord.rows)

    def _look_at(self, cord: BundleFacts, found: Heap) -> None:
        self.choices = found
        if len(found.rows) == 1:
            self._part(0)
            return
        self.asks.setText("Which of them part?")
        keys = []
        for number, (row, count) in enumerate(zip(found.rows, found.counts, strict=True), 1):
            tie = next((one.tie for one in cord.ties if row in one.rows), "")
            key = KeyButton(f"{count} {tie}", str(number))
            key.clicked.connect(partial(self._part, number - 1))
            keys.append(key)
        self._which = Actions(*keys)
        self._card.add(self._which)

    def _part(self, place: int) -> None:
        assert self.choices is not None
        row, count = self.choices.rows[place], self.choices.counts[place]
        if count < 2:
            self.around.trouble(
                Refused("One skein cannot be split.", "Tie another disc on at winding.")
            )
            self.over.emit(None)
            return
        self.row, self.of = row, count
        if self._which is not None:
            self._which.hide()
        pad = CountPad("stay", 1, min(count - 1, 20))
        pad.counted.connect(self._tapped)
        self._card.add(pad)
        self._show()

    def _tapped(self, number: int) -> None:
        self.stay = 0
        self.count(number)

    def _show(self) -> None:
        self._numbers.setVisible(bool(self.stay))
        if self.disc is None:
            self.asks.setText("Scan the disc whose skeins part.")
        elif self.stay:
            goes = self.of - self.stay
            self.asks.setText("Scan the second disc.")
            self.stays.show_number(str(self.stay), f"stay on disc {self.disc.number}")
            self.goes.show_number(str(goes), "go on the second disc")
        elif self.of:
            self.asks.setText(f"How many of {self.of} stay on disc {self.disc.number}?")

    def _parted(self, done: Done[list[int]]) -> None:
        assert self.disc is not None
        assert self.second is not None
        goes = self.of - self.stay
        self.over.emit(
            Parted(
                self.around,
                (
                    f"{skeins(self.stay)} on disc {self.disc.number}, "
                    f"{goes} on disc {self.second.number}",
                    f"{self.of} were split. Each part goes on by its own disc.",
                ),
            )
        )


class Parted(Hand):
    """A cord that was split: which disc carries how many."""

    def __init__(self, around: Around, words: tuple[str, str]) -> None:
        super().__init__(around)
        self.told = Words(words[0], Size.LARGE, bold=True)
        card = Card("Split", in_hand=True)
        card.add(self.told, Words(words[1], ink=SECOND))
        card.add_last(Actions(self.put_away()))
        self.body.addWidget(card)
