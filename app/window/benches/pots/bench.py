"""The bench of pots and trays: pot and discs make a bath, and the lot's code is born."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout

from app.calculations.cautions import Step
from app.calculations.codes import Kind, read
from app.lookups.jars import JarNow, jar_with
from app.lookups.now import NOW
from app.lookups.pot_plates import PotPlate, pot_with
from app.lookups.pot_steps import pots_at_work
from app.lookups.reel import DiscNow, disc_now
from app.lookups.things import Found, by_code
from app.lookups.trays import BoardNow, board_with
from app.lookups.weigh_sources import StockNow, stock_with
from app.problems import NotFound
from app.scanning.resolve import Resolution, resolve
from app.scanning.saying import no_such_plate
from app.window.bench import Around, Bench
from app.window.benches.pots.board import Board
from app.window.benches.pots.filling import Filling
from app.window.benches.pots.lots import Lots
from app.window.benches.pots.nothing import Nothing
from app.window.benches.pots.pot_cards import PotCards
from app.window.benches.pots.steaming import InSteam, Steaming
from app.window.cords.hand import Hand, take_plate
from app.window.cords.mixing import Mixing
from app.window.cords.splitting import Splitting
from app.window.in_turn import InTurn
from app.window.parts.action_plates import MIXED
from app.window.parts.cautions_card import CautionsCard

_CONCERNED = frozenset(
    {
        "bath",
        "dye_lot",
        "in_bath",
        "yarn",
        "part",
        "on_bundle",
        "plate_stay",
        "plate",
        "hold",
        "recipe_version",
        "bath_reading",
        "on_board",
        "bottle_set",
        "weighing",
        "colourway",
    }
)

_AT_THE_POT = "At the pot", Step.POT
_AT_THE_STEAMER = "At the steamer", Step.STEAM


class PotsBench(Bench):
    """One thing is in hand at a time; below it the pots in use."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.pots = PotCards(around.session.now)
        self.pots.chosen.connect(self._open)
        self.hand: Hand = Nothing(around)
        self._place = QVBoxLayout()
        self.body.addLayout(self._place)
        self.body.addWidget(self.pots)
        self.body.addStretch(1)
        self.cautions = CautionsCard(*_AT_THE_POT)
        self.body.addWidget(self.cautions)
        self.take_in_hand(self.hand)

    def entered(self) -> None:
        """Look at the pots; keys belong to the bench now."""
        self.setFocus()
        self.look_again(_CONCERNED)

    def look_again(self, kinds: frozenset[str]) -> None:
        """Look again at the pots, and at what is in hand."""
        if kinds & _CONCERNED:
            self.ask(self.pots.show_pots, pots_at_work)
            self.hand.look()

    def take_in_hand(self, hand: Hand | None) -> None:
        """This comes in the place of what was in hand."""
        old, self.hand = self.hand, hand or Nothing(self.around)
        self.hand.over.connect(self.take_in_hand)
        self.hand.wanted.connect(self._start)
        if not isinstance(self.hand, Lots):
            self.around.show_trail(())
        self.pots.setVisible(not isinstance(self.hand, Filling | Board))
        self.body.insertWidget(0 if isinstance(self.hand, Nothing) else 1, self.pots)
        self.cautions.show_steps(*_mind(self.hand))
        self._place.addWidget(self.hand)
        if old is not self.hand:
            self.setFocus()
            old.hide()
            old.deleteLater()

    def take(self, code: str) -> bool:
        """Pots, discs, jars, boards, steamers, and the plates DONE, MIXED, SPLIT and COUNT."""
        things = self._things(code)
        kind = read(code).kind
        if kind in things:
            things[kind]()
        else:
            return take_plate(code, self.turn, lambda: self.hand, self._start)
        return True

    def _things(self, code: str) -> dict[Kind, Callable[[], None]]:
        """What is asked of the book for a thing of each kind that belongs here."""
        ask = self.turn.ask
        return {
            Kind.POT: lambda: ask(lambda pot: self._pot_came(code, pot), pot_with, code),
            Kind.DISC: lambda: ask(lambda disc: self._disc_came(code, disc), disc_now, code, NOW),
            Kind.JAR: lambda: ask(lambda jar: self._jar_came(code, jar), jar_with, code),
            Kind.BOARD: lambda: ask(lambda one: self._board_came(code, one), board_with, code),
            Kind.STEAMER: lambda: ask(lambda one: self._steamer_came(code, one), by_code, code),
        }

    def press(self, key: str) -> bool:
        """Figures count or choose; a letter is a key that shows it, or begins a name."""
        if super().press(key):
            return True
        if key.isdigit():
            self.hand.count(int(key) or 10)
            return True
        return key.isalpha() and self.hand.write(key)

    def seek(self, words: str) -> bool:
        """A disc or pot by its number."""
        if not any(character.isdigit() for character in words):
            return False
        self.turn.ask(self._resolved, resolve, words, True, frozenset({"disc", "pot"}))
        return True

    def _resolved(self, answer: Resolution) -> None:
        found = [answer.found] if answer.found else list(answer.choices)
        if len(found) == 1 and found[0].kind in ("disc", "pot"):
            self.take(found[0].code)
        else:
            self.around.trouble(NotFound(answer.sentence, answer.next_step))

    def _begin(self, hand: Hand) -> None:
        """Something else is in hand: what was said of the thing before is out of the way."""
        self.around.found((), lambda _finding, _answer: None)
        self.take_in_hand(hand)

    def _pot_came(self, code: str, pot: PotPlate | None) -> None:
        if pot is None:
            self.around.trouble(
                NotFound(
                    f"{read(code).grouped} is no pot in the book.", "Make its plate at the Desk."
                )
            )
        elif not self.hand.take_pot(pot):
            self._begin(
                Filling(self.around, pot)
                if pot.bath is None
                else Lots(self.around, pot.bath, plate=pot)
            )

    def _disc_came(self, code: str, disc: DiscNow | None) -> None:
        if disc is None:
            self.around.trouble(no_such_plate(code, "disc"))
        elif not self.hand.take_disc(disc):
            pot = self.hand.plate if isinstance(self.hand, Lots) else None
            filling = Filling(self.around, pot)
            self._begin(filling)
            filling.take_disc(disc)

    def _start(self, plate: str) -> None:
        self._begin(Mixing(self.around) if plate == MIXED else Splitting(self.around))

    def _open(self, bath: int) -> None:
        """A card: a bath, or the whole run that it is steamed in."""
        works = [card.work for card in self.pots.cards]
        work = next((one for one in works if one.pot.bath == bath), None)
        if work is not None and work.steams:
            run = [one.pot.bath for one in works if one.steams and one.pot.deed == work.pot.deed]
            self._begin(InSteam(self.around, run))
        else:
            self._begin(Lots(self.around, bath))

    def _jar_came(self, code: str, jar: JarNow | None) -> None:
        """A jar, or a bottle of stock that wears a jar's plate."""
        def stock_came(stock: StockNow | None) -> None:
            if jar is None and stock is None:
                self.around.trouble(NotFound(f"{read(code).grouped} is no jar in the book.",
                                             "Open it at Weighing first."))
            elif not self.hand.take_source(jar, stock):
                self.around.trouble(NotFound(
                    "No bath is in hand, so nothing was added.", "Scan the pot first."))

        self.turn.ask(stock_came, stock_with, code)

    def _board_came(self, code: str, board: BoardNow | None) -> None:
        if board is None:
            self.around.trouble(_no_plate(code, "tray board"))
        elif not self.hand.take_board(board):
            self._begin(Board(self.around, board))

    def _steamer_came(self, code: str, found: Found | None) -> None:
        if found is None:
            self.around.trouble(_no_plate(code, "steamer"))
        elif not self.hand.take_steamer(found.id):
            self._begin(Steaming(self.around, found.id, int(code[1:-1])))


def _mind(hand: Hand) -> tuple[str, Step]:
    """What the work that is in hand may do to a person."""
    if isinstance(hand, Board):
        return "While dye is laid on", Step.PAINT
    return _AT_THE_STEAMER if isinstance(hand, Steaming | InSteam) else _AT_THE_POT


def _no_plate(code: str, what: str) -> NotFound:
    return NotFound(f"{read(code).grouped} is no {what} in the book.",
                    "Make its plate at the Desk.")
