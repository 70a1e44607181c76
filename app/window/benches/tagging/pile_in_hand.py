"""The pile in hand: printing at the right, its counts and the scanned tags at the left."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.calculations.codes import shown
from app.calculations.moments import day_words
from app.calculations.units import grams
from app.lookups.printed import TIED_ON, VOID, PrintedTag
from app.lookups.tag_table import OnTable, on_table
from app.lookups.things import Found, by_code
from app.lookups.untagged import Untagged, bare_for
from app.problems import Refused
from app.scanning.saying import void_words
from app.window.bench import Around, Bench
from app.window.benches.tagging.choosing import FELL_OFF, SPOILED, Choosing
from app.window.benches.tagging.hold_card import HoldCard
from app.window.benches.tagging.pile_card import PileCard
from app.window.benches.tagging.print_card import PrintCard, Wanted
from app.window.benches.tagging.printing import Sheets, print_anew, print_pile
from app.window.in_turn import InTurn
from app.window.papers import open_paper
from app.window.parts.card import SideBySide
from app.window.parts.findings import Finding
from app.window.session import Done
from app.work.matching import new_tag
from app.work.tagging import apply_tag, spoil_tags

_TAKE_IT = "Take that pile in hand"
_ON_THAT, _ONE_MORE = "Yes, on that one", "No, on one more than was counted"
_REASONS = {SPOILED: "not fit to hang", FELL_OFF: "fell off or lost"}


class PileInHand(Bench):
    """A bench for one pile; `left` when it is put away, `other_pile` when another is wanted."""

    left = Signal()
    other_pile = Signal(int)

    def __init__(self, around: Around, pile: int) -> None:
        super().__init__(around)
        self.pile, self._turn = pile, InTurn(self)
        self.table: OnTable | None = None
        self.tag: PrintedTag | None = None
        self.file: Path | None = None
        self._of_bare: int | None = None  # the tag that may be meant for a skein without one
        self.tied: list[int] = []  # skeins, since this pile was taken in hand
        self.pile_card, self.print_card = PileCard(), PrintCard()
        self.pile_card.add(self.print_card.texts)
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
        self.ask(self._show, on_table, self.pile)

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
            self._turn.ask(partial(self._bare_came, tag), bare_for, tag.id)

    def _bare_came(self, tag: PrintedTag, bare: Sequence[Untagged]) -> None:
        """A skein of this lot wears no tag: the tag may be meant for it."""
        again, self._of_bare = tag.id == self._of_bare, tag.id
        if again or not bare:
            self._tie(tag, bare[0] if bare else None)
            return
        first = bare[0]
        self._show_tag(tag, "was printed for this lot")
        self.around.found(
            [Finding(
                f"1 {first.put_up} of this lot, {grams(first.mg):.1f} g, has been without a tag "
                f"since {day_words(first.since)}: does {shown(tag.mark)} go on it? Scan it once "
                "more for yes.",
                (_ON_THAT, _ONE_MORE))],
            lambda _finding, answer: self._tie(tag, first if answer == _ON_THAT else None))

    def _tie(self, tag: PrintedTag, bare: Untagged | None) -> None:
        self._of_bare = None
        self.around.found((), lambda _finding, _answer: None)
        if bare is None:
            self.do(apply_tag, tag.id, then=partial(self._tied_on, tag))
        else:
            self.do(new_tag, bare.yarn, tag.id,
                    then=lambda _done: self._now_wears(tag, bare.yarn))

    def _now_wears(self, tag: PrintedTag, yarn: int) -> None:
        self.tied.append(yarn)
        self._show_tag(tag, "is tied on")

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
        problem = self.print_card.refusal()
        if problem is not None:
            self.around.trouble(problem)
        else:
            self.print_card.say_print()

    def spoil(self) -> None:
        """Tags are spoiled: which ones?"""
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
        if not isinstance(self.aside, Choosing):
            self._put_aside(HoldCard(table.holds) if table.holds else self.print_card)

    def _put_aside(self, card: QWidget) -> None:
        """What stands at the right."""
        old, self.aside = self.aside, card
        if old is card:
            return
        old.hide()
        if old is not self.print_card:
            self._right.removeWidget(old)
            old.deleteLater()
        self._right.addWidget(card)
        card.show()

    def _tied_on(self, tag: PrintedTag, done: Done[int]) -> None:
        self.tied.append(done.answer)
        self._show_tag(tag, "is tied on")
        if tag.pile not in (None, self.pile):
            sentence = (
                f"{shown(tag.mark)} belongs to another pile: it is tied on there, and not "
                "counted here."
            )
            self.around.found(
                [Finding(sentence, (_TAKE_IT, "Go on"))],
                lambda _finding, answer: self._answered(tag, answer),
            )

    def _answered(self, tag: PrintedTag, answer: str) -> None:
        if answer == _TAKE_IT and tag.pile is not None:
            self.other_pile.emit(tag.pile)

    def _show_tag(self, tag: PrintedTag | None, words: str) -> None:
        self.tag = tag
        self.pile_card.show_tag(tag, words)

    def _print(self, wanted: Wanted) -> None:
        pile = self.pile
        self.run(lambda session: print_pile(session, pile, wanted), self._printed)

    def _print_anew(self, tags: Sequence[PrintedTag]) -> None:
        skeins = tuple(tag.skein for tag in tags if tag.skein is not None)
        wanted = Wanted(self.print_card.plan, None, "")
        if skeins:
            self.run(lambda session: print_anew(session, skeins, wanted), self._printed)

    def _printed(self, done: Done[Sheets]) -> None:
        self.file = done.answer.file
        self._show_tag(None, "")
        self.pile_card.open.setHidden(self.file is None)
        self.say("; ".join(done.answer.printed.left_out))
        self._open()

    def _open(self) -> None:
        if self.file is not None:
            open_paper(self.file)

    def _ask_which(self, why: str) -> None:
        if self.table is None:
            return
        choosing = Choosing(why, self.table.tags)
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
        self.print_card.printing.connect(self._print)
        self.print_card.spoiled.connect(self.spoil)
        self.print_card.fell_off.connect(lambda: self._ask_which(FELL_OFF))
        self.pile_card.anew.clicked.connect(
            lambda: self._print_anew([self.tag] if self.tag else [])
        )
        self.pile_card.open.clicked.connect(self._open)
        self.pile_card.leave.clicked.connect(self.left)
