"""The bench of wash and dry: place and discs make a load; scanner only, hands are wet."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.cautions import Step
from app.calculations.codes import Kind, read
from app.lookups.bundles import BundleFacts
from app.lookups.loads import PLACES, InPlace, place_with
from app.lookups.now import NOW
from app.lookups.rails import WashNow, wash_now
from app.lookups.reel import DiscNow, disc_now
from app.problems import NotFound
from app.scanning.resolve import Resolution, resolve
from app.scanning.saying import no_such_plate
from app.window.bench import Around, Bench
from app.window.benches.washing.filling import Filling
from app.window.benches.washing.nothing import Nothing, Waiting
from app.window.benches.washing.place_cards import PlaceCards
from app.window.benches.washing.rinsing import InWater, wash_in
from app.window.benches.washing.room_card import RoomCard
from app.window.cords.hand import Hand, take_plate
from app.window.cords.mixing import Mixing
from app.window.cords.splitting import Splitting
from app.window.in_turn import InTurn
from app.window.parts.action_plates import MIXED
from app.window.parts.card import SideBySide
from app.window.parts.cautions_card import CautionsCard
from app.window.parts.sight import to_top
from app.work.readings import room

_CONCERNED = frozenset(
    {
        "load",
        "in_load",
        "load_reading",
        "bath",
        "in_bath",
        "yarn",
        "part",
        "on_bundle",
        "plate_stay",
        "plate",
        "hold",
        "colourway",
    }
)
_SOUGHT = frozenset({"disc", *PLACES})


class WashingBench(Bench):
    """One load is in hand at a time, beside it what waits, below it the places in use."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.waiting, self.places = Waiting(), PlaceCards()
        self.waiting.chosen.connect(self._open)
        self.places.chosen.connect(self._place_came)
        self.hand: Hand = Nothing(around)
        self.load: Filling | None = None  # waits while a cord of it is split or mixed
        table = QWidget()
        self._place = QVBoxLayout(table)
        self._place.setContentsMargins(0, 0, 0, 0)
        self.body.addWidget(SideBySide(table, self.waiting, shares=(5, 4)))
        self.body.addWidget(self.places)
        self.room, self._rail_load = RoomCard(), 0
        self.room.read.connect(self._read_room)
        self.body.addWidget(self.room)
        self.body.addStretch(1)
        self.body.addWidget(CautionsCard("At the wash and the drain", Step.RINSE, Step.DRAIN))
        self._join(self.hand)

    def entered(self) -> None:
        """Look at the water and the rails; keys belong to the bench now."""
        self.setFocus()
        self.look_again(_CONCERNED)

    def look_again(self, kinds: frozenset[str]) -> None:
        """Look again at the places, and at what is in hand."""
        if kinds & _CONCERNED:
            self.ask(self._show_work, wash_now, NOW, self.around.session.now())
            self.hand.look()

    def take_in_hand(self, hand: Hand | None) -> None:
        """This comes in the place of what was in hand; after a split the load goes on."""
        old = self.hand
        self.hand = hand or self.load or Nothing(self.around)
        if self.hand is self.load:
            self.load = None
            self.hand.show()
            self.hand.look()
        else:
            self._join(self.hand)
        old.hide()
        if old is not self.load:
            old.deleteLater()
        if not isinstance(self.hand, Filling):
            self.around.show_trail(())
        to_top(self)
        self.setFocus()

    def take(self, code: str) -> bool:
        """Places, discs, and the plates DONE, MIXED, SPLIT and COUNT."""
        kind = read(code).kind
        if kind in PLACES:
            self.turn.ask(lambda place: self._place_read(code, place), place_with, code, NOW)
        elif kind is Kind.DISC:
            self.turn.ask(lambda disc: self._disc_came(code, disc), disc_now, code, NOW)
        else:
            return take_plate(code, self.turn, lambda: self.hand, self._start)
        return True

    def press(self, key: str) -> bool:
        """Figures choose or count; a letter is a key that shows it."""
        if super().press(key):
            return True
        if key.isdigit():
            self.hand.count(int(key) or 10)
        return key.isdigit()

    def seek(self, words: str) -> bool:
        """A disc or a place by its number: 31, U1, L2."""
        if not any(character.isdigit() for character in words):
            return False
        self.turn.ask(self._resolved, resolve, words, True, _SOUGHT)
        return True

    def _resolved(self, answer: Resolution) -> None:
        found = [answer.found] if answer.found else list(answer.choices)
        if len(found) == 1 and found[0].kind in _SOUGHT:
            self.take(found[0].code)
        else:
            self.around.trouble(NotFound(answer.sentence, answer.next_step))

    def _place_read(self, code: str, place: InPlace | None) -> None:
        if place is None:
            self.around.trouble(
                NotFound(
                    f"{read(code).grouped} is no tub, machine, rail or steamer in the book.",
                    "Make its plate at the Desk, with a word for what it is: soak tub.",
                )
            )
        else:
            self._place_came(place)

    def _place_came(self, place: InPlace) -> None:
        if self.hand.take_place(place):
            return
        wash = wash_in(place)
        if wash is None or self.load is not None:
            self._fill().take_place(place)
        else:
            self.around.found((), lambda _finding, _answer: None)
            self.take_in_hand(InWater(self.around, place, wash))

    def _disc_came(self, code: str, disc: DiscNow | None) -> None:
        if disc is None:
            self.around.trouble(no_such_plate(code, "disc"))
        elif not self.hand.take_disc(disc):
            self._fill().take_disc(disc)

    def _open(self, cord: BundleFacts) -> None:
        self._disc_came("", DiscNow(cord.disc, cord.number, cord))

    def _fill(self) -> Filling:
        """The load in hand: the one that waits, or a new one."""
        filling = self.load or Filling(self.around)
        self.around.found((), lambda _finding, _answer: None)
        self.take_in_hand(None if filling is self.load else filling)
        return filling

    def _start(self, plate: str) -> None:
        """SPLIT or MIXED; a load that is in hand waits for it."""
        self.around.found((), lambda _finding, _answer: None)
        if isinstance(self.hand, Filling):
            self.load = self.hand
        self.take_in_hand(Mixing(self.around) if plate == MIXED else Splitting(self.around))

    def _join(self, hand: Hand) -> None:
        hand.over.connect(self.take_in_hand)
        hand.wanted.connect(self._start)
        self._place.addWidget(hand)

    def _read_room(self, decidegrees: int, permille: int) -> None:
        self.do(room, self._rail_load, decidegrees, permille, then=lambda _: self.setFocus())

    def _show_work(self, now: WashNow) -> None:
        self.waiting.show_cords(now.work.waiting)
        self.places.show_places(now.work.places, now.dry)
        self._rail_load = now.rail_load or 0
        self.room.show_room(now.room)
        self.room.setVisible(now.rail_load is not None)
