"""The finishing bench: scan a disc, count by tie colour, and only then cut."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import Kind, numbered, read
from app.lookups.bundles import PILED, BundleFacts, bundles_now
from app.lookups.finished import ScannedTag, scanned_tag
from app.lookups.loads import wet_work
from app.lookups.met_untagged import one_lot_of, to_look_for
from app.lookups.now import NOW
from app.lookups.piles import Pile, counted_last, piles_on
from app.lookups.reel import DiscNow, disc_now
from app.lookups.studio import tie_colours
from app.lookups.things import Found
from app.lookups.trails import trail_of
from app.problems import NotFound, Refused
from app.scanning.resolve import Resolution, resolve
from app.scanning.saying import no_such_plate
from app.window.bench import Around, Bench
from app.window.benches.finishing.counted import Counted
from app.window.benches.finishing.counting import Counting
from app.window.benches.finishing.nothing import nothing
from app.window.benches.finishing.remaking import SkeinsInHand, why_not
from app.window.benches.finishing.tally import Tally
from app.window.benches.finishing.waiting import Waiting
from app.window.cords.hand import Hand
from app.window.faults.at_hand import FaultsAtHand
from app.window.faults.fault_card import Seen
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE, MIXED, SECONDS, SPLIT
from app.window.parts.card import SideBySide
from app.window.parts.sight import to_top
from app.work.finishing import finish

_CONCERNED = frozenset(
    {
        "yarn",
        "part",
        "on_bundle",
        "plate_stay",
        "in_bath",
        "bath",
        "hold",
        "tag",
        "second",
        "in_load",
    }
)
_KEYS = {int(Qt.Key.Key_Left): -1, int(Qt.Key.Key_Right): 1}


class FinishingBench(Bench):
    """One cord on the table at a time, or finished skeins that become something else."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.disc: DiscNow | None = None
        self.card: QWidget = nothing()
        self.waiting = Waiting()
        self.waiting.chosen.connect(
            lambda cord: self._disc_came(cord.number, DiscNow(cord.disc, cord.number, cord))
        )
        self._threads: Sequence[str] = ()
        self._lot: Found | None = None
        self.in_front = self.faults = FaultsAtHand(self, self.turn, self._seen)
        table = QWidget()
        self._table = QVBoxLayout(table)
        self._table.setContentsMargins(0, 0, 0, 0)
        self._table.addWidget(self.card)
        self._table.addStretch(1)
        self.body.addWidget(SideBySide(table, self.waiting, shares=(7, 4)))
        self.body.addStretch(1)

    def entered(self) -> None:
        """Look up what waits; keys belong to the bench now."""
        self.setFocus()
        self.ask(self._show_threads, tie_colours)
        self.look_again(_CONCERNED)

    def look_again(self, kinds: frozenset[str]) -> None:
        """What waits, and whether the cord in hand is still as it was."""
        if not kinds & _CONCERNED:
            return
        self.ask(self.waiting.show_cords, bundles_now, NOW)
        self.ask(self.waiting.show_work, wet_work, NOW)
        self.ask(self.waiting.show_piles, counted_last, 6)
        if self.hand is not None:
            self.hand.look()
        if self.disc is not None:
            self.ask(self._show_disc, disc_now, _code(self.disc.number), NOW)

    def take(self, code: str) -> bool:
        """Discs, tags, and the plates DONE, COUNT, MIXED, SPLIT and SECONDS."""
        kind = read(code).kind
        if kind is Kind.DISC:
            self.turn.ask(lambda disc: self._disc_came(code[1:-1], disc), disc_now, code, NOW)
        elif kind is Kind.SKEIN:
            self.turn.ask(lambda tag: self._tag_came(code, tag), scanned_tag, code)
        elif code in COUNTS:
            self.turn.then(lambda: self._count(COUNTS[code]))
        elif code == DONE:
            self.turn.then(self._done)
        elif code == MIXED:
            self.turn.then(self._strange)
        elif code in (SPLIT, SECONDS):
            self.turn.then(lambda: self._remake(code))
        else:
            return False
        return True

    def press(self, key: str) -> bool:
        """Figures count, + and − put right."""
        if super().press(key):
            return True
        if not isinstance(self.card, Counting):
            return False
        if key.isdigit():
            self.card.figure(int(key))
        elif key in "+-−":
            self.card.step(1 if key == "+" else -1)
        else:
            return False
        return True

    def seek(self, words: str) -> bool:
        """A disc by its number."""
        if not any(character.isdigit() for character in words):
            return False
        self.turn.ask(self._resolved, resolve, words, True, frozenset({"disc"}))
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        counting = self.card if isinstance(self.card, Counting) else None
        if counting is not None and event.key() in _KEYS:
            counting.walk(_KEYS[event.key()])
        elif counting is not None and event.key() == Qt.Key.Key_Backspace:
            counting.forget()
        else:
            super().keyPressEvent(event)

    def _resolved(self, answer: Resolution) -> None:
        found = [answer.found] if answer.found else list(answer.choices)
        if len(found) == 1 and found[0].kind == "disc":
            self.take(found[0].code)
        else:
            self.around.trouble(NotFound(answer.sentence, answer.next_step))

    @property
    def hand(self) -> Hand | None:
        """Finished skeins in hand, or what they became."""
        return self.card if isinstance(self.card, Hand) else None

    def _tag_came(self, code: str, tag: ScannedTag) -> None:
        wrong = why_not(code, tag)
        if wrong is not None:
            self.around.trouble(wrong)
        elif tag.skein is not None:
            if not isinstance(self.card, SkeinsInHand):
                self.disc = None
                self.around.found((), lambda _finding, _answer: None)
                self._show_hand(self._skeins())
            assert isinstance(self.card, SkeinsInHand)
            self.card.take_skein(tag.skein)

    def _skeins(self) -> SkeinsInHand:
        skeins = SkeinsInHand(self.around)
        skeins.fault.clicked.connect(self.faults.report)
        skeins.good.clicked.connect(self.faults.good)
        return skeins

    def _show_hand(self, hand: Hand | None) -> None:
        """What skeins became comes in their place; after that nothing is in hand."""
        if hand is None:
            self._put_away()
            return
        hand.over.connect(self._show_hand)
        self._show(hand)

    def _remake(self, plate: str) -> None:
        if not isinstance(self.card, SkeinsInHand):
            self.around.trouble(
                Refused("No finished skein is in hand; nothing was saved.", "Scan its tag first.")
            )
        elif plate == SECONDS:
            self.card.call_seconds()
        else:
            self.card.cut_into("mini")

    def _disc_came(self, number: str, disc: DiscNow | None) -> None:
        if disc is not None and self.hand is not None and self.hand.take_disc(disc):
            return
        if disc is None:
            self.around.trouble(no_such_plate(_code(number), "disc"))
        elif disc.bundle is None:
            self.around.trouble(
                NotFound(f"Disc {number} hangs on nothing.", "Scan the disc that is on the yarn.")
            )
        else:
            self.around.found((), lambda _finding, _answer: None)
            self._take_in_hand(disc, disc.bundle)

    def _take_in_hand(self, disc: DiscNow, cord: BundleFacts) -> None:
        self.disc = disc
        self.ask(self.around.show_trail, trail_of, _code(disc.number), NOW)
        self.ask(self._show_lot, one_lot_of, cord.rows)
        if cord.stage == PILED:
            self.ask(lambda piles: self._show_piles(cord, piles), piles_on, disc.id, NOW)
            return
        counting = Counting(cord, Tally.of(cord.ties))
        counting.strange.threads = self._threads
        counting.done.connect(self._finish)
        counting.left.connect(self._put_away)
        counting.fault.clicked.connect(self.faults.report)
        self._show(counting)
        self.ask(counting.show_look_for, to_look_for, cord.rows, self.around.session.now())

    def _show_disc(self, disc: DiscNow | None) -> None:
        """After a deed: the cord was counted, its count was taken back, or it is gone."""
        if disc is None or disc.bundle is None:
            self._put_away()
        elif not (isinstance(self.card, Counting) and self.card.cord.rows == disc.bundle.rows):
            self._take_in_hand(disc, disc.bundle)

    def _show_piles(self, cord: BundleFacts, piles: Sequence[Pile]) -> None:
        counted = Counted(cord, piles)
        counted.left.connect(self._put_away)
        counted.fault.clicked.connect(self.faults.report)
        self._show(counted)

    def _seen(self) -> Seen | None:
        """The skeins in hand, else the lot of the cord on the table, as stated."""
        if isinstance(self.card, SkeinsInHand):
            return self.card.seen()
        lot = self._lot if self.disc is not None else None
        return None if lot is None else Seen(lot.shown, "inspection", lot=lot.id)

    def _show_lot(self, lot: Found | None) -> None:
        self._lot = lot

    def _put_away(self) -> None:
        self.disc = None
        self.around.show_trail(())
        self._show(nothing())

    def _show(self, card: QWidget) -> None:
        old, self.card = self.card, card
        self._table.insertWidget(0, card)
        old.hide()
        old.deleteLater()
        to_top(self)
        self.setFocus()

    def _finish(self) -> None:
        if isinstance(self.card, Counting):
            self.do(finish, self.card.cord.rows, self.card.tally.counted())

    def _count(self, number: int) -> None:
        if self.hand is not None:
            self.hand.count(number)
        elif isinstance(self.card, Counting):
            self.card.plate(number)
        else:
            self.around.trouble(
                Refused("No cord is on the table; nothing was counted.", "Scan its disc first.")
            )

    def _done(self) -> None:
        if self.hand is not None:
            self.hand.done()
        if not isinstance(self.card, Counting):
            return
        now = self.card.tally.now
        if self.card.tally.open and now.counted is None:
            self.around.trouble(
                Refused(
                    f"The {now.tie} ties are not counted yet.",
                    "Count them before the scissors: tap, figures or COUNT.",
                )
            )
        self.card.say_done()

    def _strange(self) -> None:
        if isinstance(self.card, Counting):
            self.card.ask_strange()

    def _show_threads(self, threads: Sequence[str]) -> None:
        self._threads = threads


def _code(number: str) -> str:
    return numbered(Kind.DISC, int(number)).text
