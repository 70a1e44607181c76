"""The winding bench: scan a cone, count its skeins, scan a disc."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from app.calculations.codes import Code, Kind, numbered, read
from app.lookups.now import NOW
from app.lookups.reel import DiscNow, OnReel, disc_now, on_reel
from app.problems import NotFound
from app.scanning.saying import no_such_plate
from app.window.bench import Around
from app.window.benches.winding.at_the_reel import AtTheReel
from app.window.benches.winding.reel import Group, Skeins
from app.window.benches.winding.said import code_said
from app.window.benches.winding.winding_words import code_of, hangs_on
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE, HOLD, MIXED, SPLIT
from app.window.parts.findings import Finding

_PLATES = {DONE, MIXED, HOLD, SPLIT, *COUNTS}


class WindingBench(AtTheReel):
    """Takes scans, typed words and keys, in their order, to what they ask for."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setAccessibleName("winding")
        self._turn = InTurn(self)
        self._finished = 0  # cone of which DONE asked, with nothing counted, whether it is
        self._hear_cards()

    def take(self, code: str) -> bool:
        """Cones, discs, and the plates DONE, COUNT, SPLIT, MIXED and HOLD."""
        scanned = read(code)
        if scanned.kind not in (Kind.CONE, Kind.DISC) and code not in _PLATES:
            return False
        self._put(scanned)
        return True

    def press(self, key: str) -> bool:
        """Digits count, or choose the fault; letters press the keys that show them."""
        if not key.isdigit() or self.reel.in_hand is None:
            return super().press(key)
        if self.cards.asks is self.cards.fault:
            self.cards.fault.count(int(key))
        else:
            self.cards.count.type_digit(key)
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter that came so fast after a digit that no shortcut heard it."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._done()
        else:
            super().keyPressEvent(event)

    def seek(self, words: str) -> bool:
        """A count, a key, or a cone or disc by its number."""
        code = code_said(words)
        if code is not None:
            self._put(code)
            return True
        if words.isdigit() and self.reel.in_hand is not None and len(words) < 3:
            self.count(int(words))
            return True
        return len(words) == 1 and super().press(words)

    def _put(self, code: Code) -> None:
        """A code takes its turn."""
        if code.kind is Kind.CONE:
            self._turn.ask(
                lambda cone: self._cone_came(code, cone),
                lambda book: on_reel(
                    book, code.text, self.around.session.at, self._ties_that_stay()
                ),
            )
        elif code.kind is Kind.DISC:
            self._turn.ask(lambda disc: self._disc_came(code, disc), disc_now, code.text, NOW)
        else:
            self._turn.then(lambda: self._plate(code))

    def _plate(self, code: Code) -> None:
        self._finished = 0
        if self.reel.in_hand is None:
            self.around.trouble(
                NotFound("No cone is on the reel yet; nothing was noted.", "Scan the cone first.")
            )
        elif code.text in COUNTS:
            self._count_plate(COUNTS[code.text])
        else:
            {DONE: self._done, SPLIT: self.other_form, MIXED: self.ran_out, HOLD: self.fault}[
                code.text
            ]()

    def _cone_came(self, code: Code, cone: OnReel | None) -> None:
        finished, self._finished = self._finished, 0
        if cone is None:
            self.around.trouble(
                NotFound(
                    f"{code.grouped} is no cone in the book.",
                    "Read its card once more, or receive it first.",
                )
            )
        elif self.cards.asks is self.cards.join:
            self.went_on(cone)
        else:
            self.put_on(cone)
            if finished == cone.facts.id:
                self.finished()

    def _disc_came(self, code: Code, disc: DiscNow | None) -> None:
        self._finished = 0
        refused = self.cards.live_disc.disc if self.cards.asks is self.cards.live_disc else None
        if disc is None:
            self.around.trouble(no_such_plate(code.text, "disc"))
        elif disc.bundle is None:
            self._free_disc(disc)
        elif not self.reel.total:
            self.around.found(
                [Finding(hangs_on(disc.number, disc.bundle), ("Put away",))],
                lambda _finding, _answer: None,
            )
        elif refused and refused.id == disc.id:
            self.take_off(disc)
        else:
            self.cards.live_disc.refuse(disc, self.reel.total)
            self.turn_to(self.cards.live_disc)

    def _free_disc(self, disc: DiscNow) -> None:
        if self.reel.total:
            self.tie_on(disc)
        elif self.reel.in_hand is None:
            self.around.trouble(
                NotFound(
                    f"Disc {disc.number} hangs on nothing, and no cone is on the reel.",
                    "Scan the cone first.",
                )
            )
        else:
            self.disc = disc
            self.go_on()

    def _count_plate(self, number: int) -> None:
        if self.cards.asks is self.cards.end:
            self.cards.end.count(number)
        elif self.cards.asks is self.cards.fault:
            self.cards.fault.count(number)
        else:
            self.cards.count.forget_digits()
            self.count(number)

    def _done(self) -> None:
        """The plate DONE, or Enter: what comes next for the card that asks."""
        cards = self.cards
        if cards.asks is cards.count:
            self._count_done()
        elif cards.asks is cards.threads:
            self.reel.go_on()
            self.turn_to(cards.count)
        elif cards.asks is cards.end:
            cards.end.save()
        elif cards.asks is cards.fault:
            cards.fault.save()
        elif cards.asks is cards.live_disc:
            self.go_on()

    def _count_done(self) -> None:
        group = self.reel.in_hand
        if self.reel.total and self.disc is not None:
            self.tie_on(self.disc)
        elif self.reel.total and self.cards.count.disc.isVisible():
            self.cards.count.name_disc()
        elif self.reel.total:
            self.cards.count.ask_disc()
        elif isinstance(group, Skeins):
            self._finished = group.cone.facts.id
            self.say(f"Nothing is counted. If {code_of(group)} is finished, scan it once more.")

    def _take_up(self, group: Group) -> None:
        self.reel.take_up(group)
        self.cards.count.forget_digits()
        self.go_on()

    def _tie_with(self, tie: str) -> None:
        self.reel.tie_with(tie)
        self._show_reel()

    def _hear_cards(self) -> None:
        cards = self.cards
        cards.start.chosen.connect(self.take)
        cards.cord.taken_up.connect(self._take_up)
        cards.count.counted.connect(self.count)
        cards.count.disc_named.connect(lambda number: self._put(numbered(Kind.DISC, number)))
        cards.count.tie_on.clicked.connect(self._count_done)
        cards.cone.form.clicked.connect(self.other_form)
        cards.count.ran_out.clicked.connect(self.ran_out)
        cards.cone.other_thread.clicked.connect(lambda: self.turn_to(cards.threads))
        cards.count.end.clicked.connect(self.finished)
        cards.count.fault.clicked.connect(self.fault)
        cards.threads.chosen.connect(self._tie_with)
        cards.threads.done.connect(self._done)
        cards.join.cone_chosen.connect(self.take)
        cards.end.weighed.connect(self.weighed)
        cards.fault.seen.connect(self.seen)
        cards.live_disc.taken_off.connect(self.take_off)
        for card in (cards.join, cards.end, cards.fault, cards.live_disc):
            card.given_up.connect(self.go_on)
