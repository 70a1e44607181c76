"""Boards go into the steamer, and their lots are born: all of them on one screen."""

from collections.abc import Sequence
from random import Random

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QVBoxLayout

from app.lookups.pot_steps import PotAtWork, pots_at_work
from app.lookups.trays import BoardNow, TraysNow, trays_now
from app.problems import Refused
from app.window.bench import Around
from app.window.benches.pots.pot_cards import EVERY, step_words
from app.window.cords.hand import Hand
from app.window.look.look import Gap, Size
from app.window.parts.big_code import BigCode
from app.window.parts.card import Actions, Card
from app.window.parts.key_button import KeyButton
from app.window.parts.take_down import take_down
from app.window.parts.words import SECOND, Digits, Words
from app.window.session import Done
from app.work.dividing import skeins
from app.work.dyeing import lift
from app.work.painting import Steamed, into_steamer


class Steaming(Hand):
    """All boards that wait are meant, unless one is scanned; DONE sets them in."""

    def __init__(self, around: Around, steamer: int, number: int) -> None:
        super().__init__(around)
        self.steamer, self.number = steamer, number
        self._going_in = False
        self.boards: list[BoardNow] = []
        self._chosen: set[int] = set()
        self.which = Words("", Size.LARGE, bold=True)
        self.set_in = KeyButton("They are in the steam", "Enter", strong=True)
        self.set_in.clicked.connect(self.done)
        card = Card(in_hand=True)
        card.add_row(Words("Steamer", Size.TITLE, ink=SECOND, wrap=False), Digits(str(number)),
                     None)
        card.add(self.which, Words("Steam scalds: open it away from you. Count from full steam, "
                                   "30 to 45 minutes.", ink=SECOND))
        card.add_last(Actions(self.set_in, self.put_away("Leave it")))
        self.body.addWidget(card)
        self.look()

    def take_board(self, board: BoardNow) -> bool:
        """Only the boards that are scanned go in."""
        if board.laid:
            self._chosen.add(board.id)
            self._show()
        else:
            self.around.trouble(Refused(f"Nothing lies on board {board.number}.",
                                        "Scan the board that goes in."))
        return True

    def take_steamer(self, steamer: int) -> bool:
        """The same steamer once more changes nothing."""
        return steamer == self.steamer

    def done(self) -> None:
        """They are in: the lots are born."""
        self._going_in = True
        self.do(into_steamer, [board.id for board in self._meant()], self.steamer, Random(),
                then=self._born)

    def look(self) -> None:
        """Look up what waits, and what is in it already."""
        self.ask(self._show_trays, trays_now)

    def _born(self, done: Done[Steamed]) -> None:
        self.over.emit(InSteam(self.around, done.answer["baths"], born=True))

    def _show_trays(self, trays: TraysNow) -> None:
        self.boards = list(trays.boards)
        self._show()
        if not self.boards and not self._going_in:  # else its own answer is on the way
            self.ask(self._show_in_steam, pots_at_work)

    def _show_in_steam(self, pots: Sequence[PotAtWork]) -> None:
        baths = [work.pot.bath for work in pots if work.steamer == self.number]
        if baths and not self.boards:
            self.over.emit(InSteam(self.around, baths))

    def _meant(self) -> list[BoardNow]:
        return [board for board in self.boards if not self._chosen or board.id in self._chosen]

    def _show(self) -> None:
        meant = self._meant()
        numbers = ", ".join(str(board.number) for board in meant)
        count = sum(board.count for board in meant)
        which = "Board" if len(meant) == 1 else "Boards"
        self.which.setText(f"{which} {numbers}: {skeins(count)}" if meant
                           else "No painted board waits.")
        if meant:
            self.set_in.allow()
        else:
            self.set_in.refuse("Lay yarn on a board first.")


class InSteam(Hand):
    """The lots of a steamer run, each with its code at bench size and its minutes."""

    def __init__(self, around: Around, baths: Sequence[int], *, born: bool = False) -> None:
        super().__init__(around)
        self.baths = tuple(baths)
        self.codes: list[BigCode] = []
        self.headline = Words(ink=SECOND)
        self.minutes = Words("", Size.LARGE, bold=True)
        self.born = born
        self._lots = QVBoxLayout()
        self._lots.setSpacing(Gap.HAIR)
        self._lift = KeyButton("Out of the steam", "L")
        self._lift.clicked.connect(self._out)
        card = Card(in_hand=True)
        card.add(self.headline, self._lots, self.minutes)
        card.add_last(Actions(self._lift, *self.other_keys(), self.put_away()))
        self.body.addWidget(card)
        self._works: list[PotAtWork] = []
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.tick)
        self._timer.start(EVERY)
        self.look()

    def tick(self) -> None:
        """Look at the clock."""
        if self._works:
            minutes, words = step_words(self._works[0], self.around.session.now())
            self.minutes.setText(f"{minutes} {words}")

    def look(self) -> None:
        """Look up what is still in it."""
        self.ask(self._show, pots_at_work)

    def _show(self, pots: Sequence[PotAtWork]) -> None:
        here = [work for work in pots if work.pot.bath in self.baths]
        if not here:
            self.over.emit(None)
            return
        take_down(self._lots)
        lots = [(work, lot) for work in here for lot in work.pot.lots]
        self.codes = [BigCode(lot.code, 96 if len(lots) == 1 else Size.HUGE) for _, lot in lots]
        for code, (work, lot) in zip(self.codes, lots, strict=True):
            self._lots.addWidget(code)
            self._lots.addWidget(Words(
                f"{work.pot.colourway}: {skeins(lot.count)} of {lot.base}", Size.LEAD, bold=True))
        self._works = here
        self.tick()
        write = "its code" if len(lots) == 1 else "each code"
        self.headline.setText(
            f"{'A new lot' if len(lots) == 1 else f'{len(lots)} new lots'}: write {write} on the "
            "cord's card." if self.born else "In the steam. L when it is out.")

    def _out(self) -> None:
        for bath in self.baths:
            self.do(lift, bath)
