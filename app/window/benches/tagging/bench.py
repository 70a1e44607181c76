"""The tag table: a pile by its disc, its tags from the printer, each tied on with one scan."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from app.calculations.codes import Kind, numbered, shown
from app.lookups.now import NOW
from app.lookups.piles import Pile, piles_on
from app.lookups.printed import PrintedTag, tag_with
from app.lookups.reel import DiscNow, disc_now
from app.lookups.shelves import ShelfNow, shelf_with
from app.lookups.tag_table import PileToTag, piles_to_tag
from app.problems import NotFound
from app.scanning.balance_lines import is_weight
from app.scanning.resolve import Resolution, resolve
from app.scanning.saying import no_such_plate
from app.window.bench import Around, Bench
from app.window.benches.tagging.code_kinds import kind_of
from app.window.benches.tagging.counting import Counting
from app.window.benches.tagging.end_of_day import EndOfDay
from app.window.benches.tagging.pile_in_hand import PileInHand
from app.window.benches.tagging.piles_card import PilesCard
from app.window.benches.tagging.sheet_plan import SheetTold
from app.window.benches.tagging.shelf_in_hand import ShelfInHand
from app.window.faults.at_hand import FaultsAtHand
from app.window.in_turn import InTurn
from app.window.parts.action_plates import COUNTS, DONE, SECONDS

_CONCERNED = frozenset((
    "yarn", "part", "tag", "tag_on", "tags_in_hand", "print_sheet", "setting", "hold", "clear",
    "on_bundle", "plate_stay", "whereabouts", "stocktake", "counted", "put_up_weight",
    "room_reading"))
_FIGURES = "0123456789.,"


class TaggingBench(Bench):
    """Either the piles that wait, or one of them in hand."""

    def __init__(self, around: Around) -> None:
        super().__init__(around)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.turn = InTurn(self)
        self.piles = PilesCard()
        self.piles.chosen.connect(self.take_pile)
        self.piles.day_ends.connect(self.count_day)
        self.in_hand: PileInHand | None = None
        self.shelf: ShelfInHand | Counting | EndOfDay | None = None
        self._asks_which = False
        self._met_in_hand: dict[int, set[str]] = {}
        self._sheet: SheetTold | None = None
        self.in_front = self.faults = FaultsAtHand(
            self, self.turn, lambda: self.in_hand.seen() if self.in_hand else None)
        self.body.addWidget(self.piles)
        self.body.addStretch(1)

    def entered(self) -> None:
        """Look at the table; keys belong to the bench now."""
        self.setFocus()
        self.look_again(_CONCERNED)

    def look_again(self, kinds: frozenset[str]) -> None:
        """Look again at the piles, and at the one in hand."""
        if not kinds & _CONCERNED:
            return
        if self.in_hand is not None:
            self.in_hand.look()
        elif self.shelf is not None:
            self.shelf.look()
        elif not self._asks_which:
            self.ask(self._show_piles, piles_to_tag)

    def take_pile(self, pile: int) -> None:
        """Take this pile in hand."""
        self._asks_which = False
        self.put_away(look=False)
        self.in_hand = PileInHand(self.around, pile, self._sheet)
        self.in_hand.left.connect(self.put_away)
        self.in_hand.other_pile.connect(self.take_pile)
        self.in_hand.pile_card.fault.clicked.connect(self.faults.report)
        self.in_hand.pile_card.good.clicked.connect(self.faults.good)
        self.piles.hide()
        self.body.insertWidget(0, self.in_hand)
        self.setFocus()

    def take_shelf(self, shelf: ShelfNow) -> None:
        """Take this shelf in hand; what was just tied on goes there."""
        tied = tuple(self.in_hand.tied) if self.in_hand is not None else ()
        self._asks_which = False
        self.put_away(look=False)
        in_hand = ShelfInHand(self.around, shelf, tied)
        in_hand.counting.connect(lambda: self.count_shelf(in_hand.shelf))
        self._take(in_hand)

    def count_shelf(self, shelf: ShelfNow) -> None:
        """Every tag that is scanned now was met there."""
        self.put_away(look=False)
        self._take(Counting(self.around, shelf))

    def count_day(self) -> None:
        """Every tag that is scanned now lies here and hangs on no skein."""
        self.put_away(look=False)
        self._take(EndOfDay(self.around, self._met_in_hand))

    def _take(self, shelf: ShelfInHand | Counting | EndOfDay) -> None:
        self.shelf = shelf
        shelf.left.connect(self.put_away)
        self.piles.hide()
        self.body.insertWidget(0, shelf)
        self.setFocus()

    def put_away(self, *, look: bool = True) -> None:
        """Nothing is in hand."""
        if self.in_hand is not None and self.in_hand.table is not None:
            self._sheet = self.in_hand.print_card.sheet
        for old in (self.in_hand, self.shelf):
            if old is not None:
                old.hide()
                old.deleteLater()
        self.in_hand = self.shelf = None
        self.around.show_trail(())
        self.piles.show()
        if look:
            self._asks_which = False
            self.setFocus()
            self.ask(self._show_piles, piles_to_tag)

    def take(self, code: str) -> bool:
        """Discs, lots, tags, shelves, and the plates DONE, SECONDS and COUNT."""
        kind = kind_of(code)
        if kind in (Kind.DISC, Kind.LOT, Kind.SHELF):
            self._take_up(kind, code)
        elif kind is Kind.SKEIN and self.shelf is not None:
            self.turn.then(partial(self._to_shelf, code))
        elif kind is Kind.SKEIN:
            self.turn.ask(partial(self._tag_came, code), tag_with, code)
        elif code in COUNTS:
            self.turn.then(lambda: self._count(COUNTS[code]))
        elif code in (DONE, SECONDS):
            self.turn.then(lambda: self._plate(code))
        else:
            return False
        return True

    def take_again(self, code: str) -> bool:
        """The trigger bounced: the tag was counted once."""
        self.say(f"{shown(code)} was scanned twice: counted once")
        return True

    def take_other(self, text: str) -> bool:
        """A balance that types as fast as a scanner, where a weight is wanted."""
        return (self.in_hand is not None and is_weight(text)
                and self.in_hand.balance.weigh(text))

    def press(self, key: str) -> bool:
        """Figures choose; + and − change how many are printed."""
        if super().press(key):
            return True
        if self.in_hand is not None and key in _FIGURES and self.in_hand.balance.write_figure(key):
            return True
        if key.isdigit():
            self._count(int(key))
            return True
        if self.in_hand is not None and key in "+-−":
            self.in_hand.print_card.step(1 if key == "+" else -1)
            return True
        return False

    def seek(self, words: str) -> bool:
        """A tag of the pile by its two characters, a disc by its number, a lot by a part of it."""
        mark = self.in_hand.mark(words) if self.in_hand is not None else None
        if mark is not None:
            return self.take(mark)
        self.turn.ask(self._resolved, resolve, words, True, frozenset({"disc", "lot", "shelf"}))
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.in_hand is None or not self.in_hand.walk(event.key()):
            super().keyPressEvent(event)

    def _take_up(self, kind: Kind, code: str) -> None:
        """A disc, a lot or a shelf, unless tags that were told would be lost by it."""
        told = self.in_hand.told() if self.in_hand is not None else None
        if told is not None:
            self.around.trouble(told)
        elif kind is Kind.DISC:
            self.turn.ask(partial(self._disc_came, code[1:-1]), disc_now, code, NOW)
        elif kind is Kind.LOT:
            self.turn.ask(partial(self._lot_came, code), piles_to_tag)
        else:
            self.turn.ask(partial(self._shelf_came, code), shelf_with, code)

    def _resolved(self, answer: Resolution) -> None:
        found = [answer.found] if answer.found else list(answer.choices)
        if len(found) == 1 and found[0].kind in ("disc", "lot", "shelf"):
            self.take(found[0].code)
        else:
            self.around.trouble(NotFound(answer.sentence, answer.next_step))

    def _disc_came(self, number: str, disc: DiscNow | None) -> None:
        if disc is None:
            self.around.trouble(no_such_plate(numbered(Kind.DISC, int(number)).text, "disc"))
        elif disc.bundle is None:
            self.around.trouble(
                NotFound(f"Disc {number} hangs on nothing.", "Scan the disc that lies on the pile.")
            )
        else:
            self.turn.ask(partial(self._piles_came, number), piles_on, disc.id, NOW)

    def _piles_came(self, number: str, piles: Sequence[Pile]) -> None:
        ids = [pile.id for pile in piles]
        if not ids:
            self.around.trouble(
                NotFound(
                    f"The cord on disc {number} is not counted yet, so it has no tags.",
                    "Count it by tie colour at the finishing table first.",
                )
            )
        elif len(ids) == 1:
            self._begin(ids[0])
        else:
            self.turn.ask(partial(self._ask_which, f"disc {number}", ids), piles_to_tag)

    def _lot_came(self, code: str, piles: Sequence[PileToTag]) -> None:
        ids = [pile.facts.id for pile in piles if pile.facts.lot == code]
        name = f"lot {shown(code)}"
        if not ids:
            self.around.trouble(
                NotFound(
                    f"No pile of {name} waits for tags.",
                    "Its skeins wear them already, or were not counted yet.",
                )
            )
        elif len(ids) == 1:
            self._begin(ids[0])
        else:
            self._ask_which(name, ids, piles)

    def _ask_which(self, what: str, ids: Sequence[int], piles: Sequence[PileToTag]) -> None:
        self.put_away(look=False)
        self._asks_which = True
        these = [pile for pile in piles if pile.facts.id in ids]
        self.piles.show_piles(these, f"{len(these)} piles of {what}: which one?")

    def _begin(self, pile: int) -> None:
        self.around.found((), lambda _finding, _answer: None)
        if self.in_hand is None or self.in_hand.pile != pile:
            self.take_pile(pile)

    def _tag_came(self, code: str, tag: PrintedTag | None) -> None:
        if tag is None:
            self.around.trouble(
                NotFound(
                    f"{shown(code)} was never printed.",
                    "Scan it once more, or spoil it by hand.",
                )
            )
            return
        if self.in_hand is None and tag.pile is not None:
            self.take_pile(tag.pile)
        if self.in_hand is not None:
            self.in_hand.take_tag(tag)

    def _shelf_came(self, code: str, shelf: ShelfNow | None) -> None:
        if shelf is None:
            self.around.trouble(no_such_plate(code, "shelf"))
        elif not isinstance(self.shelf, ShelfInHand | Counting) or (
                self.shelf.shelf.id != shelf.id):
            self.around.found((), lambda _finding, _answer: None)
            self.take_shelf(shelf)

    def _to_shelf(self, mark: str) -> None:
        if self.shelf is not None:
            self.shelf.take_tag(mark)

    def _count(self, number: int) -> None:
        if self.in_hand is not None:
            self.in_hand.choose(number)
        elif isinstance(self.shelf, EndOfDay | Counting):
            self.shelf.choose(number)
        elif self.shelf is None:
            self.piles.choose(number)

    def _plate(self, code: str) -> None:
        if self.shelf is not None and code == DONE:
            self.shelf.done()
        elif self.in_hand is None:
            self.around.trouble(NotFound("No pile is in hand.", "Scan the disc of a pile first; or "
                                         "a shelf, which DONE counts."))
        elif code == DONE:
            self.in_hand.done()
        else:
            self.in_hand.spoil()

    def _show_piles(self, piles: Sequence[PileToTag]) -> None:
        if not self._asks_which:
            self.piles.show_piles(piles)
