"""Skeins in hand: finished ones, by their tags, that are to become something else."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtWidgets import QVBoxLayout

from app.calculations.codes import LOT_LENGTH, Kind, numbered, shown
from app.lookups.finished import FinishedSkein, ScannedTag, finished_skeins, reasons
from app.lookups.now import NOW
from app.lookups.reel import DiscNow
from app.lookups.trails import trail_of
from app.problems import NotFound, Problem, Refused
from app.scanning.saying import void_words
from app.window.bench import Around
from app.window.benches.finishing.cutting import Cutting, weights
from app.window.benches.finishing.gathering import Gathering
from app.window.benches.finishing.remade import Remade
from app.window.benches.finishing.seconds import CallingSeconds
from app.window.benches.finishing.skein_row import SkeinRow
from app.window.cords.hand import Hand
from app.window.faults.fault_card import Seen
from app.window.look.look import Gap, Size
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.sight import bring
from app.window.parts.take_down import take_down
from app.window.parts.words import BigNumber, CodeWords, Words
from app.window.session import Done
from app.work.dividing import skeins
from app.work.moving import call_second
from app.work.remaking import cut, gather

_ONE = "One skein at a time."


class SkeinsInHand(Hand):
    """Gathers finished skeins; then minis, balls, a cord once more, or seconds."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.skeins: list[FinishedSkein] = []
        self.total, self.lots = BigNumber(), CodeWords("", Size.TITLE)
        self.name = Words("", Size.LEAD, bold=True)
        self.minis, self.balls = KeyButton("Minis", "M"), KeyButton("Balls", "B")
        self.cord, self.seconds = KeyButton("Back on a cord", "C"), KeyButton("Seconds", "S")
        self.fault, self.good = KeyButton("A fault", "F1"), KeyButton("Seen good", "F9")
        self.minis.clicked.connect(partial(self.cut_into, "mini"))
        self.balls.clicked.connect(partial(self.cut_into, "ball"))
        self.cord.clicked.connect(self.gather)
        self.seconds.clicked.connect(self.call_seconds)
        self._rows, self._asks = QVBoxLayout(), QVBoxLayout()
        self._rows.setSpacing(Gap.HAIR)
        self.asked: Cutting | Gathering | CallingSeconds | None = None
        self._keys = Actions(
            self.minis, self.balls, self.cord, self.seconds, self.fault, self.good,
            self.put_away("Lay all back")
        )
        card = Card("Skeins in hand", in_hand=True)
        head = card.add_row(self.total, self.name, self.lots)
        head.setStretch(1, 1)
        card.add(self._keys, self._asks, self._rows)
        self.body.addWidget(card)

    def take_skein(self, skein: FinishedSkein) -> None:
        """One more in hand; a second scan of it changes nothing."""
        if skein.yarn in [one.yarn for one in self.skeins]:
            self.say(f"{shown(skein.mark)} is in hand already")
            return
        self.skeins.append(skein)
        self._leave()
        self._show()
        self.ask(self.around.show_trail, trail_of, skein.mark, NOW)

    def take_disc(self, disc: DiscNow) -> bool:
        """The disc of the cord they go on, once that was asked for."""
        if not isinstance(self.asked, Gathering):
            return False
        if disc.bundle is not None:
            self.around.trouble(
                Refused(
                    f"Disc {disc.number} hangs on {skeins(disc.bundle.count)} already; nothing was "
                    "gathered.",
                    "Take a disc that hangs on nothing.",
                )
            )
        else:
            gathered = partial(self._gathered, tuple(self.skeins), disc.number)
            self.do(gather, self._yarn(), disc.id, then=gathered)
        return True

    def count(self, number: int) -> None:
        """How many it becomes, or which reason."""
        if isinstance(self.asked, Cutting | CallingSeconds):
            self.asked.choose(number)

    def done(self) -> None:
        """What was asked for is done."""
        if isinstance(self.asked, Cutting | CallingSeconds):
            self.asked.say_done()

    def cut_into(self, put_up: str) -> None:
        """How many minis or balls, and what was lost."""
        if len(self.skeins) != 1:
            self.around.trouble(
                Refused("Several skeins are in hand; nothing was cut.", "Lay back all but one.")
            )
            return
        cutting = Cutting(self.skeins[0], put_up)
        cutting.ready.connect(self._cut)
        self._ask_for(cutting)

    def gather(self) -> None:
        """Onto which cord?"""
        self._ask_for(Gathering(len(self.skeins)))

    def call_seconds(self) -> None:
        """What is seen?"""
        calling = CallingSeconds()
        calling.ready.connect(lambda why: self.do(call_second, self._yarn(), why, then=self._left))
        self._ask_for(calling)
        self.ask(calling.show_reasons, reasons)

    def seen(self) -> Seen | None:
        """All of them, as they are looked at."""
        marks = {one.yarn: shown(one.mark) for one in self.skeins}
        return Seen(", ".join(marks.values()), "inspection", marks) if marks else None

    def look(self) -> None:
        """They may have been cut, gathered or called seconds meanwhile, or that was taken back."""
        marks = [skein.mark for skein in self.skeins]
        self.ask(partial(self._show_again, marks), finished_skeins, marks)

    def _show_again(self, asked: Sequence[str], found: Sequence[FinishedSkein]) -> None:
        now = {skein.mark: skein for skein in found}
        kept = [skein for skein in self.skeins if skein.mark in now or skein.mark not in asked]
        if [now.get(one.mark, one) for one in kept] != self.skeins:
            self.skeins = [now.get(one.mark, one) for one in kept]
            self._show()
        if not self.skeins and self.asked is None:
            self.over.emit(None)

    def _yarn(self) -> tuple[int, ...]:
        return tuple(skein.yarn for skein in self.skeins)

    def _ask_for(self, asked: Cutting | Gathering | CallingSeconds) -> None:
        self._leave()
        self.asked = asked
        asked.left.connect(self._leave)
        self._asks.addWidget(asked)
        self._keys.hide()
        asked.begin()
        bring(asked)

    def _leave(self) -> None:
        """Nothing is asked for any more."""
        if self.asked is not None:
            self.asked.hide()
            self.asked.deleteLater()
            self.asked = None
        self._keys.show()
        self.setFocus()

    def _left(self, _done: Done[None]) -> None:
        self._leave()

    def _cut(self, put_up: str, count: int, waste_mg: int) -> None:
        (skein,) = self.skeins
        self.do(
            cut,
            skein.yarn,
            count,
            put_up,
            waste_mg,
            then=partial(self._was_cut, skein, put_up, count, waste_mg),
        )

    def _was_cut(
        self, skein: FinishedSkein, put_up: str, count: int, waste_mg: int, done: Done[int]
    ) -> None:
        became = skeins(count, put_up)
        words = (
            f"{became} of {skein.lot}",
            weights(skein.mg, count, waste_mg),
            f"They wait at Tagging for {'its tag' if count == 1 else 'their tags'}.",
        )
        lot = skein.mark[:LOT_LENGTH]
        self.over.emit(Remade(self.around, done.answer, words, [skein.mark], lot))

    def _gathered(self, these: Sequence[FinishedSkein], disc: str, done: Done[int]) -> None:
        words = (
            f"{skeins(len(these))} on disc {disc}",
            "To be dyed once more, scan the disc at Pots & trays; to be washed, at Wash & dry.",
            "They are counted and tagged anew when they come back.",
        )
        marks = [skein.mark for skein in these]
        code = numbered(Kind.DISC, int(disc)).text
        self.over.emit(Remade(self.around, done.answer, words, marks, code))

    def _show(self) -> None:
        count = len(self.skeins)
        self.total.show_number(str(count), skeins(count).partition(" ")[2])
        lots = list(dict.fromkeys(skein.lot for skein in self.skeins))
        names = dict.fromkeys(skein.colourway for skein in self.skeins)
        bases = dict.fromkeys(skein.base for skein in self.skeins)
        self.lots.show_code(lots[0] if len(lots) == 1 else f"{len(lots)} lots")
        self.name.setText(f"{' and '.join(names)}\n{' and '.join(bases)}")
        for key in (self.minis, self.balls):
            if count == 1:
                key.allow()
            else:
                key.refuse(_ONE)
        take_down(self._rows)
        for skein in self.skeins:
            line = SkeinRow(skein)
            line.out.connect(partial(self._lay_back, skein))
            self._rows.addWidget(line)

    def _lay_back(self, skein: FinishedSkein) -> None:
        self.skeins.remove(skein)
        self._leave()
        if self.skeins:
            self._show()
        else:
            self.over.emit(None)


def why_not(code: str, tag: ScannedTag) -> Problem | None:
    """Why a scanned tag cannot be taken in hand, or nothing where it can."""
    if tag.found is None:
        return NotFound(f"{shown(code)} was never printed.", "Scan the tag once more.")
    if tag.found.void:
        return Refused(void_words(tag.found), "Throw this tag away.")
    if tag.skein is None:
        return Refused(
            f"{shown(code)} hangs on no skein yet.", "Tie it on at Tagging with a scan first."
        )
    if tag.skein.state == "sent":
        return Refused(
            f"{shown(code)} is sold by the book; it was not taken in hand.",
            "Take it back as a return first.",
        )
    return None
