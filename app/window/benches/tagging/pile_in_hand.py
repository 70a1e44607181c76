"""The pile in hand: printing at the right, its counts and the scanned tags at the left."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.exchange.shelf_cards import CardSheet, card_sheet, lot_card
from app.exchange.tag_stocks import tag_stocks
from app.lookups.met_untagged import one_lot_of
from app.lookups.printed import TIED_ON, VOID, PrintedTag
from app.lookups.tag_table import OnTable, on_table
from app.lookups.things import Found, by_code
from app.problems import Refused
from app.scanning.saying import void_words
from app.window.bench import Around, Bench
from app.window.benches.tagging import printing
from app.window.benches.tagging.at_balance import AtBalance
from app.window.benches.tagging.choosing import FELL_OFF, JAMMED, SPOILED, Choosing
from app.window.benches.tagging.hold_card import HoldCard
from app.window.benches.tagging.pile_card import PileCard
from app.window.benches.tagging.print_card import PrintCard
from app.window.benches.tagging.sheet_plan import SheetTold, Wanted
from app.window.benches.tagging.tying_on import TyingOn
from app.window.benches.tagging.weigh_card import WeighCard
from app.window.faults.fault_card import Seen
from app.window.in_turn import InTurn
from app.window.papers import open_paper
from app.window.parts.card import SideBySide
from app.window.parts.sight import bring
from app.window.session import Done
from app.work.tagging import spoil_tags

_REASONS = {SPOILED: "not fit to hang", FELL_OFF: "fell off or lost", JAMMED: "jammed"}


class PileInHand(Bench):
    """A bench for one pile; `left` when it is put away, `other_pile` when another is wanted."""

    left = Signal()
    other_pile = Signal(int)

    def __init__(self, around: Around, pile: int, sheet: SheetTold | None = None) -> None:
        super().__init__(around)
        self.pile = pile
        self._tying = TyingOn(self, InTurn(self), pile)
        self.table: OnTable | None = None
        self.tag: PrintedTag | None = None
        self.file: Path | None = None
        self.tied: list[int] = []  # skeins, since this pile was taken in hand
        self.skein: int | None = None  # that wears the tag which was scanned last
        self.lot: Found | None = None
        self.pile_card, self.print_card = PileCard(), PrintCard(sheet)
        self.pile_card.add(self.print_card.texts)
        self.balance = AtBalance(self, self._sell_as)
        self.aside: QWidget = self.print_card
        right = QWidget()
        self._right = QVBoxLayout(right)
        self._right.setContentsMargins(0, 0, 0, 0)
        self._right.addWidget(self.print_card)
        self.body.addWidget(SideBySide(self.pile_card, right, shares=(4, 3)))
        self._join()
        self.look()

    def look(self) -> None:
        """Look up the pile again."""
        self.ask(self.print_card.show_stocks, tag_stocks)
        self.ask(self._show, on_table, self.pile)
        self.balance.look()
        self.ask(self._show_lot, one_lot_of, [self.pile])

    def seen(self) -> Seen | None:
        """The skein whose tag was scanned last, else the lot."""
        if self.tag is not None and self.skein is not None:
            mark = shown(self.tag.mark)
            return Seen(mark, "tag table", {self.skein: mark})
        lot = self.lot
        return None if lot is None else Seen(lot.shown, "tag table", lot=lot.id)

    def take_tag(self, tag: PrintedTag) -> None:
        """A tag was scanned: tied on, told as gone, or taken in hand because it hangs already."""
        if isinstance(self.aside, Choosing):
            self._tell_gone(self.aside, tag)
        elif tag.state == VOID:
            self._show_tag(None, "")
            self.ask(self._tell_void, by_code, tag.mark)
        elif tag.state == TIED_ON:
            self._show_tag(tag, "hangs on its skein already: counted once")
        else:
            self._tying.scan(tag)

    def _tell_void(self, found: Found | None) -> None:
        if found is not None:
            self.around.trouble(Refused(void_words(found), "Throw it away."))

    def mark(self, words: str) -> str | None:
        """The code of the tag of this pile that ends in these two characters, or none."""
        tags = self.table.tags if self.table else ()
        return next((tag.mark for tag in tags if tag.mark[-2:] == words.upper()), None)

    def choose(self, number: int) -> None:
        """A figure or COUNT plate: one of two texts, or a reason."""
        texts = list(self.table.texts) if self.table else []
        if len(texts) > 1 and self.print_card.version is None and number <= len(texts):
            self.print_card.choose_text(texts[number - 1])
        elif self.aside is self.print_card and 0 < number <= len(self.print_card.reasons):
            self.print_card.reasons[number - 1].click()

    def done(self) -> None:
        """DONE: what was told as gone is gone; else the tags are printed."""
        if isinstance(self.aside, Choosing):
            self.aside.say_done()
            return
        if isinstance(self.aside, WeighCard):
            self.aside.save()
            return
        problem = self.print_card.refusal()
        if problem is not None:
            self.around.trouble(problem)
        else:
            self.print_card.say_print()

    def told(self) -> Refused | None:
        """Tags that were told as gone and are not kept yet: they would be lost with the pile."""
        if not isinstance(self.aside, Choosing) or not self.aside.gone:
            return None
        return Refused(f"{self.aside.count_words}: that is not kept yet; this pile stays in hand.",
                       "Press Enter to keep that, or F8 to leave it; then scan once more.")

    def spoil(self) -> None:
        """Tags are spoiled: which ones? At the balance it is a second that was weighed."""
        if isinstance(self.aside, WeighCard):
            self.balance.second()
        else:
            self._ask_which(SPOILED)

    def walk(self, key: int) -> bool:
        """Arrow keys walk over the cells of the sheet."""
        if isinstance(self.aside, PrintCard | Choosing):
            return self.aside.picture.walk(key)
        return False

    def _show(self, table: OnTable) -> None:
        self.table = table
        self.pile_card.show_table(table)
        self.print_card.show_table(table)
        self.around.show_trail(table.stops)
        self.balance.left(table.facts.left)
        if not isinstance(self.aside, Choosing | WeighCard):
            self._put_aside(HoldCard(table.holds) if table.holds else self.print_card)

    def _put_aside(self, card: QWidget) -> None:
        """What stands at the right."""
        old, self.aside = self.aside, card
        if old is card:
            return
        if old is self.balance.card:
            self.balance.end()
        focus = QApplication.focusWidget()
        if focus is not None and old.isAncestorOf(focus):
            self.setFocus()  # else the next key would be typed into the scan line
        old.hide()
        if old is not self.print_card:
            self._right.removeWidget(old)
            old.deleteLater()
        self._right.addWidget(card)
        card.show()
        has_its_key = isinstance(card, Choosing | WeighCard)
        for key in (self.pile_card.leave, self.pile_card.weigh):
            key.setHidden(has_its_key)
        if has_its_key:
            bring(card)

    def _tag_told(self, tag: PrintedTag, words: str, skein: int | None) -> None:
        if skein is not None:
            self.tied.append(skein)
        self._show_tag(tag, words, skein)

    def _show_tag(self, tag: PrintedTag | None, words: str, skein: int | None = None) -> None:
        self.tag = tag
        self.skein = skein or (tag.skein if tag else None)
        self.pile_card.show_tag(tag, words)
        self.pile_card.good.setHidden(self.skein is None)
        if tag is not None and self.skein is not None:
            self.balance.tag(self.skein, tag.mark)

    def _show_lot(self, lot: Found | None) -> None:
        self.lot = lot

    def _weigh(self) -> None:
        """What lies on the balance is weighed, until it is left."""
        card = self.balance.begin(self.pile, self.skein, self.tag.mark if self.tag else "")
        card.leave.clicked.connect(self._told)
        self._put_aside(card)
        card.setFocus()
        bring(card)
        self.look()

    def _sell_as(self, weight: int, skein: int, whole_g: int) -> None:
        on = printing.corrected(self, Wanted(self.print_card.plan))
        light = weight, skein, whole_g
        self.run(lambda session: printing.print_sold_as(session, light, on), self._sold)

    def _sold(self, done: Done[printing.Sheets]) -> None:
        self.balance.settled()
        self._printed(done)

    def _print(self, wanted: Wanted) -> None:
        pile, on = self.pile, printing.corrected(self, wanted)
        self.run(lambda session: printing.print_pile(session, pile, on), self._printed)

    def _print_card(self, on: CardSheet) -> None:
        pile, wanted = self.pile, printing.card_wanted(self, on, self.print_card.plan)
        self.run(lambda session: printing.print_card(session, lot_card, pile, wanted, on.kept),
                 self._printed)

    def _anew(self) -> None:
        """In place of the tag that was scanned last; a second press finds none."""
        tag = self.tag
        if tag is not None:
            self._show_tag(None, "")
            self._print_anew([tag])

    def _print_anew(self, tags: Sequence[PrintedTag]) -> None:
        skeins = tuple(tag.skein for tag in tags if tag.skein is not None)
        wanted = printing.corrected(self, Wanted(self.print_card.plan))
        if skeins:
            self.run(lambda session: printing.print_anew(session, skeins, wanted), self._printed)

    def _printed(self, done: Done[printing.Sheets]) -> None:
        self.file = done.answer.file
        self._show_tag(None, "")
        self.pile_card.open.setHidden(self.file is None)
        printing.put_out_sheets(self, done.answer)

    def _open(self) -> None:
        if self.file is not None:
            open_paper(self.file)

    def _ask_which(self, why: str) -> None:
        if self.table is None:
            return
        choosing = Choosing(why, self.table.tags, self.print_card.known.named)
        choosing.chosen.connect(partial(self._gone, why))
        choosing.left.connect(self._told)
        self._put_aside(choosing)

    def _tell_gone(self, choosing: Choosing, tag: PrintedTag) -> None:
        mine = next((one for one in choosing.tags if one.id == tag.id), None)
        if mine is None or not choosing.toggle(mine):
            self.around.trouble(
                Refused(
                    f"{shown(tag.mark)} is no tag of this pile that can be {choosing.why}.",
                    "Scan those of this pile, or leave it.",
                )
            )

    def _gone(self, why: str, tags: Sequence[PrintedTag]) -> None:
        self._told()
        waiting = [tag.id for tag in tags if tag.skein is None]
        if waiting:
            self.do(spoil_tags, waiting, _REASONS[why])
        self._print_anew([tag for tag in tags if tag.skein is not None])

    def _told(self) -> None:
        self._put_aside(self.print_card)
        self.look()

    def _join(self) -> None:
        self._tying.told.connect(self._tag_told)
        self._tying.other_pile.connect(self.other_pile)
        self.print_card.printing.connect(self._print)
        self.print_card.spoiled.connect(self.spoil)
        self.print_card.fell_off.connect(lambda: self._ask_which(FELL_OFF))
        self.print_card.jammed.connect(lambda: self._ask_which(JAMMED))
        self.pile_card.anew.clicked.connect(self._anew)
        self.pile_card.open.clicked.connect(self._open)
        self.pile_card.weigh.clicked.connect(self._weigh)
        self.pile_card.lot_card.clicked.connect(
            lambda: self.ask(self._print_card, card_sheet, self.print_card.stock.name))
        self.pile_card.leave.clicked.connect(self.left)
